package lapwright.bench.method;

import lapwright.effort.Effort;
import lapwright.problem.StickProblem;

/** A way to solve a cutting stock problem. */
public interface Method {
  /** The name by which the command line picks it. */
  String name();

  /** One line for the help. */
  String description();

  /**
   * Solves as well as the effort allows. Peers serve problems without hold only.
   *
   * @param threads how many may be used, at least 1
   */
  Answer solve(StickProblem problem, Effort effort, int threads);
}
