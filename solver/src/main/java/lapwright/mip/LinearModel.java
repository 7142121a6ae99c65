package lapwright.mip;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;

/**
 * A linear program min c x, row bounds, column bounds, to which columns are added: GLOP with
 * presolve off, which keeps its basis from one solve to the next.
 *
 * <p>From scratch the dual simplex method is used: costs are not negative as a rule, so that the
 * slack basis is dual feasible, and it takes far less time a step. A basis that is kept is primal
 * feasible when columns were added, and the primal method goes on from it.
 *
 * <p>Holds native memory: close it. Not thread-safe; separate models may be used side by side. A
 * missing bound is {@link Double#POSITIVE_INFINITY} or its negative, never a large number, which
 * makes the engine stop abnormally.
 */
public final class LinearModel implements AutoCloseable {
  private final MPSolver solver;
  private final MPSolverParameters parameters;
  private final List<MPConstraint> rows = new ArrayList<>();
  private final List<MPVariable> columns = new ArrayList<>();
  private boolean fromScratch = true;

  public LinearModel() {
    NativeSolver.load();
    solver = new MPSolver("", MPSolver.OptimizationProblemType.GLOP_LINEAR_PROGRAMMING);
    parameters = new MPSolverParameters();
    parameters.setIntegerParam(
        MPSolverParameters.IntegerParam.PRESOLVE,
        MPSolverParameters.PresolveValues.PRESOLVE_OFF.swigValue());
  }

  /** Adds a row and returns its index. */
  public int addRow(double least, double most) {
    rows.add(solver.makeConstraint(least, most));
    return rows.size() - 1;
  }

  /** Adds a column and returns its index. */
  public int addColumn(double cost, double least, double most) {
    MPVariable column = solver.makeNumVar(least, most, "");
    solver.objective().setCoefficient(column, cost);
    columns.add(column);
    return columns.size() - 1;
  }

  public void setCoefficient(int row, int column, double value) {
    rows.get(row).setCoefficient(columns.get(column), value);
  }

  public void setCost(int column, double cost) {
    solver.objective().setCoefficient(columns.get(column), cost);
  }

  public void setRowBounds(int row, double least, double most) {
    rows.get(row).setBounds(least, most);
  }

  public void setColumnBounds(int column, double least, double most) {
    columns.get(column).setBounds(least, most);
  }

  public int columnCount() {
    return columns.size();
  }

  /** Forgets the basis, so that the next solve starts from scratch. */
  public void forgetBasis() {
    fromScratch = true;
    solver.reset();
  }

  /**
   * Solves. Values are copied at once: reading them after a change of the model gives zeros.
   *
   * @param limitNanos give up after that long; {@link Long#MAX_VALUE} without a limit
   */
  public LinearResult solve(long limitNanos) {
    parameters.setIntegerParam(
        MPSolverParameters.IntegerParam.LP_ALGORITHM,
        (fromScratch
                ? MPSolverParameters.LpAlgorithmValues.DUAL
                : MPSolverParameters.LpAlgorithmValues.PRIMAL)
            .swigValue());
    fromScratch = false;
    if (limitNanos != Long.MAX_VALUE) {
      solver.setTimeLimit(Math.max(1, limitNanos / 1_000_000));
    }
    MPSolver.ResultStatus status = solver.solve(parameters);
    Outcome outcome =
        switch (status) {
          case OPTIMAL -> Outcome.OPTIMAL;
          case FEASIBLE -> Outcome.LIMIT;
          case INFEASIBLE -> Outcome.INFEASIBLE;
          case NOT_SOLVED -> Outcome.LIMIT;
          default -> Outcome.ABNORMAL;
        };
    if (outcome != Outcome.OPTIMAL) {
      return new LinearResult(outcome, 0, new double[0], new double[0]);
    }
    double[] values = new double[columns.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = columns.get(i).solutionValue();
    }
    double[] duals = new double[rows.size()];
    for (int i = 0; i < duals.length; i++) {
      duals[i] = rows.get(i).dualValue();
    }
    return new LinearResult(outcome, solver.objective().value(), values, duals);
  }

  /**
   * Solves, and once more from scratch where the engine stops abnormally.
   *
   * @param limitNanos asked before each attempt
   */
  public LinearResult solveSteadily(LongSupplier limitNanos) {
    LinearResult result = solve(limitNanos.getAsLong());
    if (result.outcome() != Outcome.ABNORMAL) {
      return result;
    }
    forgetBasis();
    return solve(limitNanos.getAsLong());
  }

  @Override
  public void close() {
    parameters.delete();
    solver.delete();
  }
}
