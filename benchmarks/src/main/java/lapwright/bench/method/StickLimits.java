package lapwright.bench.method;

import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * How many sticks of each stock a model needs to offer: no more than there are, no more than a
 * solution of first-fit's cost can pay for, and no more than there are pieces.
 */
final class StickLimits {
  private StickLimits() {}

  static long[] of(StickProblem problem, Answer firstFit) {
    long pieces = problem.items().stream().mapToLong(StickProblem.Item::demand).sum();
    long[] most = new long[problem.stocks().size()];
    for (int j = 0; j < most.length; j++) {
      Stock stock = problem.stocks().get(j);
      most[j] = pieces;
      if (stock.isLimited()) {
        most[j] = Math.min(most[j], (long) stock.mostPacks() * stock.packSize());
      }
      if (firstFit.outcome().hasSolution() && stock.packCost() > 0) {
        most[j] = Math.min(most[j], firstFit.cost() / stock.packCost() * stock.packSize());
      }
    }
    return most;
  }
}
