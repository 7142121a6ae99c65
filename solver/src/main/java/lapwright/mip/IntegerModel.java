package lapwright.mip;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;

/**
 * A small integer program min c x with integer columns, solved by SCIP with one thread.
 *
 * <p>The search ends by a number of nodes, so that the same model gives the same answer. Holds
 * native memory: close it. Not thread-safe; separate models may be used side by side.
 */
public final class IntegerModel implements AutoCloseable {
  private final MPSolver solver;
  private final MPSolverParameters parameters;
  private final List<MPConstraint> rows = new ArrayList<>();
  private final List<MPVariable> columns = new ArrayList<>();

  public IntegerModel() {
    NativeSolver.load();
    solver = new MPSolver("", MPSolver.OptimizationProblemType.SCIP_MIXED_INTEGER_PROGRAMMING);
    parameters = new MPSolverParameters();
    parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
  }

  /** Adds a row and returns its index. */
  public int addRow(double least, double most) {
    rows.add(solver.makeConstraint(least, most));
    return rows.size() - 1;
  }

  /** Adds an integer column and returns its index. */
  public int addColumn(double cost, double least, double most) {
    MPVariable column = solver.makeIntVar(least, most, "");
    solver.objective().setCoefficient(column, cost);
    columns.add(column);
    return columns.size() - 1;
  }

  public void setCoefficient(int row, int column, double value) {
    rows.get(row).setCoefficient(columns.get(column), value);
  }

  /** Where the search may begin: a value for every column. */
  public void startFrom(double[] values) {
    solver.setHint(columns.toArray(MPVariable[]::new), values);
  }

  /**
   * Solves.
   *
   * @param mostNodes nodes of the search tree after which the best solution so far is the answer
   * @param limitNanos the same for time; {@link Long#MAX_VALUE} without a limit
   */
  public IntegerResult solve(long mostNodes, long limitNanos) {
    // SCIP would swallow an interrupt of the whole program.
    solver.setSolverSpecificParametersAsString(
        "misc/catchctrlc = FALSE\nlimits/totalnodes = " + mostNodes + "\n");
    if (limitNanos != Long.MAX_VALUE) {
      solver.setTimeLimit(Math.max(1, limitNanos / 1_000_000));
    }
    MPSolver.ResultStatus status = solver.solve(parameters);
    Outcome outcome =
        switch (status) {
          case OPTIMAL -> Outcome.OPTIMAL;
          case FEASIBLE -> Outcome.FEASIBLE;
          case INFEASIBLE -> Outcome.INFEASIBLE;
          case NOT_SOLVED -> Outcome.LIMIT;
          default -> Outcome.ABNORMAL;
        };
    if (!outcome.hasSolution()) {
      return new IntegerResult(outcome, List.of());
    }
    List<Long> values = new ArrayList<>(columns.size());
    for (MPVariable column : columns) {
      values.add(Math.round(column.solutionValue()));
    }
    return new IntegerResult(outcome, values);
  }

  @Override
  public void close() {
    parameters.delete();
    solver.delete();
  }
}
