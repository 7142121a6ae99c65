package lapwright.colgen;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Pairs and triples of pieces that fill a stick nearly, around every item: patterns to begin with
 * where items are many and a stick holds few pieces. Such a program's duals hang on which lengths
 * happen to match, which pricing alone finds out a pattern an item at a time.
 *
 * <p>For every item and each of the stocks that are cheapest for their length: the longest partners
 * that fit, and of the triples that leave least those whose second pieces are farthest apart, so
 * that the columns are diverse. By two pointers over the sorted sizes, time O(stocks items^2).
 */
final class CloseFits {
  private static final int STOCKS = 3;
  private static final int PAIRS = 2;
  private static final int TRIPLES = 4;

  private final List<Item> items;
  private final long shortest;
  private final Set<Pattern> found = new LinkedHashSet<>();

  private CloseFits(StickProblem problem) {
    items = problem.items();
    shortest = items.get(items.size() - 1).size();
  }

  /** Made for a problem without small items; items are in the order of falling sizes. */
  static List<Pattern> of(StickProblem problem) {
    CloseFits fits = new CloseFits(problem);
    List<Integer> stocks = new ArrayList<>();
    for (int j = 0; j < problem.stocks().size(); j++) {
      if (problem.stocks().get(j).capacity() > 0) {
        stocks.add(j);
      }
    }
    stocks.sort(Comparator.comparingDouble(j -> pricePerLength(problem.stocks().get(j))));
    for (int j : stocks.subList(0, Math.min(STOCKS, stocks.size()))) {
      for (int i = 0; i < fits.items.size(); i++) {
        long room = problem.stocks().get(j).capacity() - fits.items.get(i).size();
        fits.addPairs(j, i, room);
        fits.addTriples(j, i, room);
      }
    }
    return List.copyOf(fits.found);
  }

  private static double pricePerLength(Stock stock) {
    return (double) stock.packCost() / stock.packSize() / stock.capacity();
  }

  private void addPairs(int stock, int item, long room) {
    int added = 0;
    for (int k = firstWithin(room); k < items.size() && added < PAIRS; k++) {
      if (k != item || items.get(k).demand() > 1) {
        add(stock, item, k, -1);
        added++;
      }
    }
  }

  private void addTriples(int stock, int item, long room) {
    int m = items.size();
    if (room < 2 * shortest) {
      return;
    }
    long least = Long.MAX_VALUE;
    List<Integer> seconds = new ArrayList<>();
    List<Integer> thirds = new ArrayList<>();
    // As the second piece becomes shorter, the third may become longer, as far as the second.
    int third = m;
    for (int second = firstWithin(room - shortest); second < m; second++) {
      long rest = room - items.get(second).size();
      while (third > second + 1 && items.get(third - 1).size() <= rest) {
        third--;
      }
      int at = Math.max(third, second + 1);
      at += at == item ? 1 : 0;
      if (at >= m || second == item) {
        continue;
      }
      long left = rest - items.get(at).size();
      if (left < least) {
        least = left;
        seconds.clear();
        thirds.clear();
      }
      if (left == least) {
        seconds.add(second);
        thirds.add(at);
      }
    }
    int taken = Math.min(TRIPLES, seconds.size());
    for (int t = 0; t < taken; t++) {
      int at = (int) ((long) t * seconds.size() / taken);
      add(stock, item, seconds.get(at), thirds.get(at));
    }
  }

  /** The longest item that fits into some room; the number of items where none does. */
  private int firstWithin(long room) {
    int low = 0;
    int high = items.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (items.get(middle).size() <= room) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  private void add(int stock, int first, int second, int third) {
    int[] counts = new int[items.size()];
    counts[first]++;
    counts[second]++;
    if (third >= 0) {
      counts[third]++;
    }
    found.add(Pattern.ofCounts(stock, counts));
  }
}
