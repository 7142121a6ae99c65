package lapwright.exact;

import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import org.jspecify.annotations.Nullable;

/**
 * Bounds for one stock length by dual-feasible functions: weights that no pattern can exceed by
 * construction.
 *
 * <p>For t up to half the capacity C: an item longer than C - t weighs C, one shorter than t weighs
 * nothing, the others weigh their size (S. Martello and P. Toth, Discrete Applied Mathematics 28,
 * 1990). For k = 1, 2, ...: with (k + 1) s a multiple of C the item weighs k s, else floor((k + 1)
 * s / C) C, of k C (S. Fekete and J. Schepers, Mathematical Programming 91, 2001). Time O(items^2).
 */
final class DualFeasible {
  private static final int GREATEST_K = 30;

  private DualFeasible() {}

  /** The best bound; null with more than one stock. */
  static LengthBound.@Nullable Proven of(StickProblem problem, PackLimits limits) {
    if (problem.stocks().size() != 1 || problem.stocks().get(0).packSize() != 1) {
      return null;
    }
    long capacity = problem.stocks().get(0).capacity();
    long price = problem.stocks().get(0).packCost();
    List<Item> items = problem.items();
    long[] best = null;
    long bestBound = -1;
    long bestTop = 1;
    NavigableSet<Long> turns = new TreeSet<>();
    for (Item item : items) {
      turns.add(Math.min(item.size(), capacity - item.size() + 1));
    }
    for (long t : turns) {
      if (t < 1 || 2 * t > capacity) {
        continue;
      }
      long[] weights = new long[items.size()];
      for (int i = 0; i < weights.length; i++) {
        long size = items.get(i).size();
        weights[i] = size > capacity - t ? capacity : size < t ? 0 : size;
      }
      long bound = sticks(items, weights, capacity);
      if (bound > bestBound) {
        best = weights;
        bestBound = bound;
        bestTop = capacity;
      }
    }
    for (int k = 1; k <= GREATEST_K; k++) {
      long[] weights = new long[items.size()];
      for (int i = 0; i < weights.length; i++) {
        long scaled = (k + 1) * items.get(i).size();
        weights[i] =
            scaled % capacity == 0 ? k * items.get(i).size() : scaled / capacity * capacity;
      }
      long bound = sticks(items, weights, k * capacity);
      if (bound > bestBound) {
        best = weights;
        bestBound = bound;
        bestTop = k * capacity;
      }
    }
    if (best == null) {
      return null;
    }
    long divisor = Math.max(1, price);
    long scale = bestTop;
    for (int i = 0; i < best.length; i++) {
      best[i] = Math.multiplyExact(best[i], divisor);
    }
    return LengthBound.Proven.of(
        problem, limits, scale, best, List.of(Math.multiplyExact(bestTop, divisor)));
  }

  private static long sticks(List<Item> items, long[] weights, long top) {
    long sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum = Math.addExact(sum, Math.multiplyExact(weights[i], items.get(i).demand()));
    }
    return Numbers.ceilDiv(sum, top);
  }
}
