package lapwright.bench.method;

import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import lapwright.effort.Effort;
import lapwright.mip.NativeSolver;
import org.jspecify.annotations.Nullable;

/**
 * One model in one of OR-Tools' MIP engines, on one thread (they ignore the number); closed, it
 * gives its native memory back. Bounds come out of floating point and are an engine's word.
 */
final class MpRun implements AutoCloseable {
  private static final double TOLERANCE = 1e-6;
  private static final long LEAST_MILLIS = 1;

  private final MPSolver solver;
  private MPSolver.@Nullable ResultStatus status;

  MpRun(String engine) {
    NativeSolver.load();
    MPSolver created = MPSolver.createSolver(engine);
    if (created == null) {
      throw new IllegalStateException("OR-Tools has no engine " + engine);
    }
    solver = created;
  }

  MPSolver model() {
    return solver;
  }

  /** Solves within what is left of the effort; true when a solution was found. */
  boolean solve(Effort effort) {
    long millis = Math.max(LEAST_MILLIS, effort.remainingNanos() / 1_000_000);
    solver.setTimeLimit(millis);
    solver.suppressOutput();
    try (Parameters parameters = new Parameters()) {
      status = solver.solve(parameters.parameters);
    }
    return status == MPSolver.ResultStatus.OPTIMAL || status == MPSolver.ResultStatus.FEASIBLE;
  }

  boolean isOptimal() {
    return status == MPSolver.ResultStatus.OPTIMAL;
  }

  boolean isInfeasible() {
    return status == MPSolver.ResultStatus.INFEASIBLE;
  }

  long value(MPVariable variable) {
    return Math.round(variable.solutionValue());
  }

  /** The engine's bound, rounded up; at least {@code other}. */
  long bound(long other) {
    double bound = solver.objective().bestBound();
    return Double.isFinite(bound) && Math.abs(bound) < 1e15
        ? Math.max(other, (long) Math.ceil(bound - TOLERANCE * Math.max(1, Math.abs(bound))))
        : other;
  }

  @Override
  public void close() {
    solver.delete();
  }

  /** No gap but zero is optimal. */
  private static final class Parameters implements AutoCloseable {
    private final MPSolverParameters parameters = new MPSolverParameters();

    Parameters() {
      parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
    }

    @Override
    public void close() {
      parameters.delete();
    }
  }
}
