package lapwright.exact;

import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * First-fit decreasing over several stocks, a pattern at a time: each stock is filled with the
 * longest items that fit, the stock that costs least for the length it fills is taken, and the
 * pattern is cut as often as the demand allows. Time O(patterns x stocks x items).
 *
 * <p>With one stock and unit demands this is first-fit decreasing (D. Johnson, 1973).
 */
final class GreedyFill {
  private final StickProblem problem;
  private final StickFiller filler;

  GreedyFill(StickProblem problem, StickFiller filler) {
    this.problem = problem;
    this.filler = filler;
  }

  /** Fills a stick of one stock. */
  interface StickFiller {
    /**
     * Writes how many of each item the stick is to hold, a proper pattern and no more than is left.
     */
    void fill(int stock, int[] left, int[] counts);
  }

  /** Longest first, as many as fit. */
  static StickFiller longestFirst(StickProblem problem) {
    return (stock, left, counts) -> {
      Stock stick = problem.stocks().get(stock);
      List<Item> items = problem.items();
      long room = stick.capacity();
      boolean other = false;
      for (int i = 0; i < counts.length; i++) {
        counts[i] = 0;
        Item item = items.get(i);
        if (left[i] == 0 || item.size() > room) {
          continue;
        }
        if (item.small() && !other) {
          if (stick.wholeUse() && item.size() == stick.capacity()) {
            counts[i] = 1;
            return;
          }
          room = Math.min(room, stick.smallCapacity());
          other = true;
        }
        counts[i] = (int) Math.min(left[i], room / item.size());
        room -= counts[i] * item.size();
        other |= counts[i] > 0;
      }
    };
  }

  /** A complete solution, or null when supply is short for this way of filling. */
  @Nullable Layout complete(Layout.Builder begun) {
    Layout.Builder builder = new Layout.Builder(problem, begun);
    int[] left = builder.left();
    long[] sticks = builder.sticks();
    int[] counts = new int[left.length];
    long restLength = 0;
    for (int i = 0; i < left.length; i++) {
      if (left[i] < 0) {
        return null;
      }
      restLength += left[i] * problem.items().get(i).size();
    }
    while (restLength > 0) {
      int bestStock = -1;
      long bestFilled = 0;
      double bestRate = 0;
      int[] best = null;
      for (int j = 0; j < sticks.length; j++) {
        Stock stock = problem.stocks().get(j);
        if (sticksToBeHad(stock, sticks[j]) == 0) {
          continue;
        }
        filler.fill(j, left, counts);
        long filled = 0;
        for (int i = 0; i < counts.length; i++) {
          filled += counts[i] * problem.items().get(i).size();
        }
        if (filled == 0) {
          continue;
        }
        double rate = priceOfNext(stock, sticks[j], restLength) / filled;
        if (best == null || rate < bestRate || (rate == bestRate && filled > bestFilled)) {
          best = counts.clone();
          bestStock = j;
          bestRate = rate;
          bestFilled = filled;
        }
      }
      if (best == null) {
        return null;
      }
      Pattern pattern = Pattern.ofCounts(bestStock, best);
      Stock stock = problem.stocks().get(bestStock);
      long times = Math.min(pattern.mostTimes(left), sticksToBeHad(stock, sticks[bestStock]));
      if (times * bestFilled > restLength / 2 && stock.packSize() > 1) {
        times = 1;
      }
      pattern.addTo(left, (int) -times);
      sticks[bestStock] += times;
      restLength -= times * bestFilled;
      builder.add(pattern, (int) times);
    }
    return builder.buildIfComplete();
  }

  private static long sticksToBeHad(Stock stock, long used) {
    return stock.isLimited()
        ? (long) stock.mostPacks() * stock.packSize() - used
        : Integer.MAX_VALUE;
  }

  /** What the next stick costs: nothing in an opened pack, else its share of what will be used. */
  private static double priceOfNext(Stock stock, long used, long restLength) {
    if (used % stock.packSize() != 0) {
      return 0;
    }
    double needed = Math.ceil((double) restLength / Math.max(1, stock.capacity()));
    return stock.packCost() / Math.min(stock.packSize(), needed);
  }
}
