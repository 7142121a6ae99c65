package lapwright.exact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * The least cost of a small problem by going through every way: for each stock in turn and each
 * number of its sticks, what can have been cut so far, and the least that it cost. A state is a
 * count an item; all arithmetic is whole.
 */
final class EveryWay {
  private static final long NEVER = Long.MAX_VALUE / 4;

  private EveryWay() {}

  /** The least cost, or {@link PatternOracle#IMPOSSIBLE}. */
  static long leastCost(StickProblem problem) {
    int states = 1;
    for (StickProblem.Item item : problem.items()) {
      states *= item.demand() + 1;
    }
    long[] cost = new long[states];
    Arrays.fill(cost, NEVER);
    cost[0] = 0;
    int pieces = problem.items().stream().mapToInt(StickProblem.Item::demand).sum();
    for (Stock stock : problem.stocks()) {
      List<int[]> patterns = new ArrayList<>();
      PatternOracle.list(problem, stock, 0, new int[problem.items().size()], patterns);
      long sticks = Math.min(pieces, (long) stock.mostPacks() * stock.packSize());
      long[] with = cost.clone();
      long[] before = cost;
      for (int stick = 1; stick <= sticks; stick++) {
        long[] after = new long[states];
        Arrays.fill(after, NEVER);
        for (int[] pattern : patterns) {
          addPattern(problem, pattern, before, after);
        }
        long packs = Numbers.ceilDiv(stick, stock.packSize());
        for (int s = 0; s < states; s++) {
          with[s] = Math.min(with[s], after[s] + packs * stock.packCost());
        }
        before = after;
      }
      cost = with;
    }
    return cost[states - 1] >= NEVER ? PatternOracle.IMPOSSIBLE : cost[states - 1];
  }

  private static void addPattern(StickProblem problem, int[] pattern, long[] before, long[] after) {
    int moved = 0;
    int place = 1;
    for (int i = 0; i < pattern.length; i++) {
      moved += place * pattern[i];
      place *= problem.items().get(i).demand() + 1;
    }
    for (int s = 0; s < before.length; s++) {
      if (before[s] < NEVER && fits(problem, pattern, s)) {
        after[s + moved] = Math.min(after[s + moved], before[s]);
      }
    }
  }

  private static boolean fits(StickProblem problem, int[] pattern, int state) {
    int rest = state;
    for (int i = 0; i < pattern.length; i++) {
      int base = problem.items().get(i).demand() + 1;
      if (rest % base + pattern[i] >= base) {
        return false;
      }
      rest /= base;
    }
    return true;
  }
}
