package lapwright.refute;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.colgen.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Patterns that waste no more than a question allows, at weights of any sign.
 *
 * <p>F(i, p) is the greatest weight of items before i that measure exactly p together; H(i, p) the
 * greatest weight that items from i on can add when p is taken, so that a stick of the stock ends
 * within its window. Items in cuts by rounding stay out of the tables: each of their {@link
 * CutItems combinations} is priced by itself and ends H. The best pattern through item i weighs max
 * over p and a of F(i, p) + a w_i + H(i + 1, p + a s_i). Time and memory O(items x capacity), for
 * demands of one.
 *
 * <p>Not thread-safe: it keeps its tables from call to call.
 */
final class WindowTable {
  /** Cells that the tables may have together. */
  private static final long MOST_CELLS = 48_000_000;

  /** What no way leads to; low enough that sums stay recognizable. */
  private static final int NONE = Integer.MIN_VALUE / 4;

  private static final int REACHED = NONE / 2;

  /** Weights are to be so small that no pattern weighs more, by absolute value. */
  static final double GREATEST_WEIGHT = 1 << 27;

  private Question question;
  private final int longest;
  private final int[] weights;
  private final int[][] forward;
  private final int[][] backward;
  private CutItems cutItems;
  private long[] cutDuals = new long[0];
  private int[][] ends = new int[0][];
  private int[][] combinationAt = new int[0][];

  WindowTable(Question question) {
    this.question = question;
    longest = question.longest();
    weights = new int[question.items()];
    forward = new int[question.items() + 1][longest + 1];
    backward = new int[question.items() + 1][longest + 1];
    cutItems = CutItems.none(question);
  }

  /** Puts cuts in force, by their items; {@link CutItems#none} takes them off. */
  void cutBy(CutItems items) {
    cutItems = items;
    cutDuals = new long[items.cuts().size()];
  }

  /** Turns to another question about the same items and stocks, of no greater demands. */
  void ask(Question another) {
    question = another;
  }

  static boolean isFeasible(Question question) {
    return 2 * (question.items() + 1L) * (question.longest() + 1L) <= MOST_CELLS;
  }

  /** Makes the table for weights where no cut is in force. */
  void fill(long[] of) {
    fill(of, new long[cutItems.cuts().size()]);
  }

  /** Makes the table for weights and multipliers of the cuts, not negative. */
  void fill(long[] of, long[] ofCuts) {
    cutDuals = ofCuts.clone();
    for (int i = 0; i < weights.length; i++) {
      weights[i] = Math.toIntExact(of[i]);
    }
    ends = new int[question.stocks()][];
    combinationAt = new int[question.stocks()][];
    Arrays.fill(forward[0], NONE);
    forward[0][0] = 0;
    for (int i = 0; i < weights.length; i++) {
      int[] before = forward[i];
      int[] after = forward[i + 1];
      System.arraycopy(before, 0, after, 0, before.length);
      for (int count = 1, most = most(i); count <= most; count++) {
        int taken = count * question.size(i);
        int weight = count * weights[i];
        for (int p = taken; p <= longest; p++) {
          after[p] = Math.max(after[p], before[p - taken] + weight);
        }
      }
    }
  }

  private int most(int item) {
    return cutItems.holds(item)
        ? 0
        : Math.min(question.demand(item), longest / question.size(item));
  }

  /** The greatest weight of a pattern in the stock's window; null when there is none. */
  @Nullable Long greatest(int stock) {
    int greatest = NONE;
    int[] all = forward[weights.length];
    int[] end = end(stock);
    for (int p = 0; p <= question.capacity(stock); p++) {
      greatest = Math.max(greatest, all[p] + end[p]);
    }
    return greatest < REACHED ? null : (long) greatest;
  }

  /** By length without the items in cuts: what they can add at most to end in the window. */
  private int[] end(int stock) {
    if (ends[stock] != null) {
      return ends[stock];
    }
    int[] end = new int[longest + 1];
    int[] at = new int[longest + 1];
    Arrays.fill(end, NONE);
    for (int z = 0; z < cutItems.count(); z++) {
      int value = Math.toIntExact(cutItems.value(z, weights, cutDuals));
      int from = Math.max(0, question.leastLength(stock) - cutItems.length(z));
      for (int p = from; p <= question.capacity(stock) - cutItems.length(z); p++) {
        if (value > end[p]) {
          end[p] = value;
          at[p] = z;
        }
      }
    }
    ends[stock] = end;
    combinationAt[stock] = at;
    return end;
  }

  /** For each item the best pattern of a stock through it, where that weighs more than a limit. */
  List<Pattern> throughEveryItem(int stock, long moreThan) {
    fillBackward(stock);
    List<Pattern> patterns = new ArrayList<>();
    for (int i = 0; i < weights.length; i++) {
      int best = NONE;
      int bestAt = 0;
      int bestCount = 0;
      int size = question.size(i);
      int[] before = forward[i];
      int[] after = backward[i + 1];
      for (int count = 1, most = most(i); count <= most; count++) {
        int taken = count * size;
        int weight = count * weights[i];
        for (int p = question.capacity(stock) - taken; p >= 0; p--) {
          int sum = before[p] + after[p + taken];
          if (sum + weight > best) {
            best = sum + weight;
            bestAt = p;
            bestCount = count;
          }
        }
      }
      if (best > REACHED && best > moreThan) {
        int[] counts = new int[weights.length];
        counts[i] = bestCount;
        walkDown(i, bestAt, counts);
        int end = walkUp(i + 1, bestAt + bestCount * size, counts);
        cutItems.addTo(counts, combinationAt[stock][end]);
        patterns.add(Pattern.ofCounts(stock, counts));
      }
    }
    addThroughCutItems(stock, moreThan, patterns);
    return patterns;
  }

  private void addThroughCutItems(int stock, long moreThan, List<Pattern> patterns) {
    int[] best = new int[weights.length];
    int[] bestAt = new int[weights.length];
    int[] bestEnd = new int[weights.length];
    Arrays.fill(best, NONE);
    int[] all = forward[weights.length];
    for (int z = 0; z < cutItems.count() && cutItems.items().length > 0; z++) {
      int value = Math.toIntExact(cutItems.value(z, weights, cutDuals));
      int top = NONE;
      int end = 0;
      int from = Math.max(0, question.leastLength(stock) - cutItems.length(z));
      for (int p = from; p <= question.capacity(stock) - cutItems.length(z); p++) {
        if (all[p] > top) {
          top = all[p];
          end = p;
        }
      }
      for (int item : cutItems.items()) {
        if (top + value > best[item] && cutItems.countOf(z, item) > 0) {
          best[item] = top + value;
          bestAt[item] = z;
          bestEnd[item] = end;
        }
      }
    }
    for (int item : cutItems.items()) {
      if (best[item] > REACHED && best[item] > moreThan) {
        int[] counts = new int[weights.length];
        walkDown(weights.length, bestEnd[item], counts);
        cutItems.addTo(counts, bestAt[item]);
        patterns.add(Pattern.ofCounts(stock, counts));
      }
    }
  }

  private void fillBackward(int stock) {
    int capacity = question.capacity(stock);
    System.arraycopy(end(stock), 0, backward[weights.length], 0, longest + 1);
    for (int i = weights.length - 1; i >= 0; i--) {
      int[] after = backward[i + 1];
      int[] before = backward[i];
      System.arraycopy(after, 0, before, 0, after.length);
      for (int count = 1, most = most(i); count <= most; count++) {
        int taken = count * question.size(i);
        int weight = count * weights[i];
        for (int p = capacity - taken; p >= 0; p--) {
          before[p] = Math.max(before[p], after[p + taken] + weight);
        }
      }
    }
  }

  private void walkDown(int items, int position, int[] counts) {
    int p = position;
    for (int i = items - 1; i >= 0; i--) {
      int count = 0;
      while (forward[i][p - count * question.size(i)] + count * weights[i] != forward[i + 1][p]) {
        count++;
      }
      counts[i] += count;
      p -= count * question.size(i);
    }
  }

  /** Returns where it ended. */
  private int walkUp(int from, int position, int[] counts) {
    int p = position;
    for (int i = from; i < weights.length; i++) {
      int count = 0;
      while (backward[i + 1][p + count * question.size(i)] + count * weights[i] != backward[i][p]) {
        count++;
      }
      counts[i] += count;
      p += count * question.size(i);
    }
    return p;
  }

  /** About how many patterns a stock's window has. */
  double count(int stock) {
    double[] ways = new double[question.capacity(stock) + 1];
    ways[0] = 1;
    for (int i = 0; i < weights.length; i++) {
      double[] before = ways.clone();
      for (int count = 1, most = most(i); count <= most; count++) {
        int taken = count * question.size(i);
        for (int p = taken; p < ways.length; p++) {
          ways[p] += before[p - taken];
        }
      }
    }
    double sum = 0;
    for (int p = question.leastLength(stock); p < ways.length; p++) {
      sum += ways[p];
    }
    return sum;
  }

  /**
   * Adds every pattern of a stock that weighs enough, where no cut is in force; false when there
   * are more than so many.
   */
  boolean list(int stock, long leastWeight, List<Pattern> found, int mostPatterns) {
    int[] counts = new int[weights.length];
    for (int p = question.leastLength(stock); p <= question.capacity(stock); p++) {
      if (!extend(stock, weights.length, p, leastWeight, counts, found, mostPatterns)) {
        return false;
      }
    }
    return true;
  }

  private boolean extend(
      int stock, int i, int p, long missing, int[] counts, List<Pattern> found, int most) {
    if (forward[i][p] < REACHED || forward[i][p] < missing) {
      return true;
    }
    if (i == 0) {
      found.add(Pattern.ofCounts(stock, counts));
      return found.size() <= most;
    }
    int size = question.size(i - 1);
    int copies = Math.min(question.demand(i - 1), p / size);
    boolean goesOn = true;
    for (int count = 0; count <= copies && goesOn; count++) {
      counts[i - 1] = count;
      long rest = missing - (long) count * weights[i - 1];
      goesOn = extend(stock, i - 1, p - count * size, rest, counts, found, most);
    }
    counts[i - 1] = 0;
    return goesOn;
  }
}
