package lapwright.exact;

import java.util.ArrayList;
import java.util.List;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * The bound by length alone: every item weighs its size, at the price per length of one of the
 * stocks, and no pattern weighs more than its capacity. Time O(stocks (stocks + items)).
 */
final class LengthBound {
  private LengthBound() {}

  /** A bound and the weights that prove it. */
  record Proven(long bound, StickCertificate.Weights weights) {
    static Proven of(
        StickProblem problem, PackLimits limits, long scale, long[] weights, List<Long> greatest) {
      return new Proven(
          WeightBound.of(problem, limits, scale, weights, greatest), certificate(scale, weights));
    }
  }

  /** The best of the bounds, one for each stock's price per length. */
  static Proven of(StickProblem problem, PackLimits limits) {
    List<Item> items = problem.items();
    Proven best = null;
    for (Stock base : problem.stocks()) {
      long scale = Math.multiplyExact(base.capacity(), base.packSize());
      if (scale == 0) {
        continue;
      }
      long price = Math.max(1, base.packCost());
      long divisor = Numbers.gcd(scale, price);
      Proven proven = at(problem, limits, scale / divisor, price / divisor);
      if (best == null || proven.bound() > best.bound()) {
        best = proven;
      }
    }
    if (best == null) {
      long[] none = new long[items.size()];
      return new Proven(0, certificate(1, none));
    }
    return best;
  }

  private static Proven at(StickProblem problem, PackLimits limits, long scale, long price) {
    long[] weights = new long[problem.items().size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = Math.multiplyExact(price, problem.items().get(i).size());
    }
    List<Long> greatest = new ArrayList<>();
    for (Stock stock : problem.stocks()) {
      greatest.add(Math.multiplyExact(price, stock.capacity()));
    }
    return Proven.of(problem, limits, scale, weights, greatest);
  }

  static StickCertificate.Weights certificate(long scale, long[] weights) {
    List<Long> list = new ArrayList<>(weights.length);
    for (long weight : weights) {
      list.add(weight);
    }
    return new StickCertificate.Weights(scale, list);
  }
}
