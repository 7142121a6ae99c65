package lapwright.exact;

import java.util.Arrays;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Fills a stick as full as it can be around the longest item that is left: subset sums in a bit
 * set, and among the fullest the longest items. The minimum-bin-slack way of filling (J. Gupta and
 * J. Ho, Production Planning and Control 10, 1999). Time O(stages x capacity / 64) a stick; not
 * thread-safe.
 *
 * <p>Where that is too much, lengths are rounded to a coarser grid, items up and what is left of a
 * stick down, so that what fits there fits.
 */
final class FullestFill implements GreedyFill.StickFiller {
  /** Word operations of a fill beyond which lengths are rounded. */
  private static final long MOST_WORK = 1_000_000;

  /** Positions of the longest stick on a grid that is rounded to. */
  private static final long POSITIONS = 8_192;

  private final StickProblem problem;
  private final long grid;
  private long[][] reach = new long[0][];
  private int[] stageItem = new int[0];
  private int[] stageCopies = new int[0];

  FullestFill(StickProblem problem) {
    this.problem = problem;
    long longest = problem.stocks().stream().mapToLong(Stock::capacity).max().orElse(0);
    grid = work(problem, longest) <= MOST_WORK ? 1 : Math.max(1, longest / POSITIONS);
  }

  /** Word operations of a fill on the exact lengths, at most. */
  private static long work(StickProblem problem, long longest) {
    long stages = 0;
    for (Item item : problem.items()) {
      stages += 64 - Long.numberOfLeadingZeros(Math.min(item.demand(), longest / item.size()));
    }
    return stages * (longest / 64 + 1);
  }

  @Override
  public void fill(int stock, int[] left, int[] counts) {
    Arrays.fill(counts, 0);
    Stock stick = problem.stocks().get(stock);
    List<Item> items = problem.items();
    int first = -1;
    for (int i = 0; i < counts.length && first < 0; i++) {
      if (left[i] > 0 && fitsAlone(items.get(i), stick)) {
        first = i;
      }
    }
    if (first < 0) {
      return;
    }
    counts[first] = 1;
    Item forced = items.get(first);
    if (forced.small() && forced.size() > stick.smallCapacity()) {
      return;
    }
    long room =
        ((forced.small() ? stick.smallCapacity() : stick.capacity()) - forced.size()) / grid;
    int words = (int) (room >> 6) + 1;
    int stages = 0;
    ready(0, words);
    Arrays.fill(reach[0], 0, words, 0);
    reach[0][0] = 1;
    for (int i = first; i < counts.length; i++) {
      long size = Numbers.ceilDiv(items.get(i).size(), grid);
      long available = Math.min(left[i] - (i == first ? 1 : 0), room / size);
      for (long copies = 1; available > 0; copies *= 2) {
        int taken = (int) Math.min(copies, available);
        available -= taken;
        stages++;
        ready(stages, words);
        stageItem[stages] = i;
        stageCopies[stages] = taken;
        shiftOr(reach[stages - 1], reach[stages], taken * size, words);
      }
    }
    int at = highest(reach[stages], (int) room);
    for (int t = stages; t > 0 && at > 0; t--) {
      if ((reach[t - 1][at >> 6] >>> at & 1) == 0) {
        counts[stageItem[t]] += stageCopies[t];
        at -= (int) (stageCopies[t] * Numbers.ceilDiv(items.get(stageItem[t]).size(), grid));
      }
    }
  }

  private static boolean fitsAlone(Item item, Stock stick) {
    return item.small()
        ? item.size() <= stick.smallCapacity()
            || (stick.wholeUse() && item.size() == stick.capacity())
        : item.size() <= stick.capacity();
  }

  private void ready(int stage, int words) {
    if (reach.length <= stage) {
      reach = Arrays.copyOf(reach, 2 * stage + 16);
      stageItem = Arrays.copyOf(stageItem, reach.length);
      stageCopies = Arrays.copyOf(stageCopies, reach.length);
    }
    if (reach[stage] == null || reach[stage].length < words) {
      reach[stage] = new long[words];
    }
  }

  /** to = from | from shifted up. */
  private static void shiftOr(long[] from, long[] to, long shift, int words) {
    int whole = (int) (shift >> 6);
    int rest = (int) (shift & 63);
    System.arraycopy(from, 0, to, 0, Math.min(whole, words));
    if (rest == 0) {
      for (int w = whole; w < words; w++) {
        to[w] = from[w] | from[w - whole];
      }
    } else {
      if (whole < words) {
        to[whole] = from[whole] | from[0] << rest;
      }
      for (int w = whole + 1; w < words; w++) {
        to[w] = from[w] | from[w - whole] << rest | from[w - whole - 1] >>> (64 - rest);
      }
    }
  }

  private static int highest(long[] bits, int most) {
    for (int at = most; at > 0; at--) {
      if ((bits[at >> 6] >>> at & 1) != 0) {
        return at;
      }
    }
    return 0;
  }
}
