package lapwright.exact;

import java.util.List;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.problem.StickSolution.Status;

/**
 * Solves one material's problem, and proves how good the solution is.
 *
 * <p>Deterministic and single-threaded: the same problem and start give the same solution, as long
 * as the effort is not spent before the method ends by itself. Thread-safe.
 */
public final class StickSolver {
  private StickSolver() {}

  /**
   * Solves.
   *
   * @param start a feasible solution to begin from, or nothing; the result never costs more
   */
  public static StickSolution solve(StickProblem problem, List<PatternUse> start, Effort effort) {
    return solve(problem, start, true, Long.MAX_VALUE, effort);
  }

  /**
   * Solves with little work, for one of many problems of which the best is then solved in earnest:
   * no search beyond the root, and solutions of equal cost are not told apart.
   *
   * @param ceiling only a solution that costs less is wanted; without one nothing may be found
   */
  public static StickSolution draft(StickProblem problem, long ceiling, Effort effort) {
    return solve(problem, List.of(), false, ceiling, effort);
  }

  private static StickSolution solve(
      StickProblem problem, List<PatternUse> start, boolean thorough, long ceiling, Effort effort) {
    Reduction reduction = Reduction.of(problem);
    Effort told =
        effort.tellingInstead(
            progress ->
                effort.report(
                    new Progress(
                        progress.subject(),
                        progress.cost() < 0 ? -1 : reduction.rawCost(progress.cost()),
                        reduction.rawCost(progress.bound()),
                        progress.done())));
    Search search =
        new Search(
            reduction.reduced(),
            reduction.greatestSum(),
            thorough,
            reduction.reducedCost(ceiling),
            told);
    if (!start.isEmpty()) {
      Layout given = reduction.reduce(start);
      if (given == null) {
        throw new IllegalArgumentException("the start is no solution of the problem");
      }
      search.offer(given);
    }
    search.run();
    Layout best = search.best();
    if (best == null) {
      return new StickSolution(
          search.isImpossible() ? Status.IMPOSSIBLE : Status.NOTHING_FOUND,
          List.of(),
          List.of(),
          -1,
          0,
          null);
    }
    StickCertificate certificate = reduction.expand(search.certificate());
    if (thorough) {
      best = Polish.of(reduction, best);
    }
    Reduction.Expanded expanded = reduction.expand(best);
    Status status =
        search.bound() >= best.cost()
            ? Status.PROVED
            : search.isClaimed() ? Status.CLAIMED : Status.OPEN;
    return new StickSolution(
        status,
        expanded.patterns(),
        expanded.packs(),
        reduction.rawCost(best.cost()),
        reduction.rawCost(Math.min(search.bound(), best.cost())),
        certificate);
  }
}
