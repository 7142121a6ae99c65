package lapwright.bench.method;

import java.util.List;
import lapwright.bench.method.Answer.Outcome;
import lapwright.effort.Effort;
import lapwright.exact.StickSolver;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution;

/** Lapwright's solver on the bare problem. It uses one thread. */
final class LapwrightSticks implements Method {
  @Override
  public String name() {
    return "lapwright";
  }

  @Override
  public String description() {
    return "Lapwright's solver on the bare problem, its certificate taken as it is";
  }

  @Override
  public Answer solve(StickProblem problem, Effort effort, int threads) {
    StickSolution solution = StickSolver.solve(problem, List.of(), effort);
    Outcome outcome =
        switch (solution.status()) {
          case PROVED -> Outcome.PROVED;
          case CLAIMED -> Outcome.CLAIMED;
          case OPEN -> Outcome.OPEN;
          case IMPOSSIBLE -> Outcome.IMPOSSIBLE;
          case NOTHING_FOUND -> Outcome.NOTHING;
        };
    return new Answer(
        outcome, solution.patterns(), solution.packs(), solution.cost(), solution.bound(), "");
  }
}
