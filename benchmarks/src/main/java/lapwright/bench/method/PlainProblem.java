package lapwright.bench.method;

import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;

/** Problems in which every pattern that fits is proper. */
final class PlainProblem {
  private PlainProblem() {}

  /**
   * Refuses what textbook models do not know.
   *
   * @throws IllegalArgumentException if some piece is too short to be held at the last cut
   */
  static void require(StickProblem problem) {
    if (problem.items().stream().anyMatch(Item::small)
        && problem.stocks().stream().anyMatch(s -> s.smallCapacity() < s.capacity())) {
      throw new IllegalArgumentException("a textbook model does not know about hold");
    }
  }
}
