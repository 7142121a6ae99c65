package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The greatest weight N that the pieces from one stick can add up to: a bounded knapsack in whole
 * numbers,
 *
 * <p>N = max sum W_i a_i, sum (l_i + q) a_i &lt;= capacity, 0 &lt;= a_i &lt;= quantity_i,
 *
 * <p>over patterns in which the offcut or a piece is as long as the hold, or that are one piece
 * exactly as long as an untrimmed stick.
 *
 * <p>Method: the list of undominated (size, weight) after each length (Nemhauser and Ullmann,
 * Management Science 15, 1969), lengths by falling weight a size, without the ways that cannot beat
 * the best one known even if their rest carried weight at the best ratio to come. What matters is
 * how many ways survive, not how fine the grid of lengths is. Where very many survive, a table over
 * all positions takes over; where even that is too large, its positions are made coarser with sizes
 * rounded down, and the answer may then exceed the true N a little, which only weakens the bound.
 */
final class Heaviest {
  /** Ways in a list beyond which a table is made instead. */
  private static final int MOST_WAYS = 400_000;

  /** Cells times pieces that a table may cost. */
  private static final long TABLE_WORK = 400_000_000L;

  private static final int MOST_CELLS = 8_000_000;

  private final List<Item> items;
  private final long capacity;
  private final long capacityHoldingOffcut;
  private final boolean anyShort;
  private long best;

  /**
   * A length with its weight.
   *
   * @param size length and a cut
   * @param held true when the vise can hold the piece at the last cut
   */
  record Item(long size, long weight, long quantity, boolean held) {}

  private Heaviest(List<Item> items, long capacity, long capacityHoldingOffcut, long known) {
    this.items = items;
    this.capacity = capacity;
    this.capacityHoldingOffcut = capacityHoldingOffcut;
    this.anyShort = items.stream().anyMatch(item -> !item.held());
    this.best = known;
  }

  /**
   * No pattern of a stick weighs more.
   *
   * @param all every length with its weight, not negative; their sum of products fits 64 bits
   * @param stick what the pattern is cut from
   */
  static long of(List<Item> all, Stick stick) {
    return of(all, stick, MOST_WAYS, MOST_CELLS);
  }

  /** The same with other limits of the list and of the table. */
  static long of(List<Item> all, Stick stick, int mostWays, int mostCells) {
    long capacity = stick.usableAndCut();
    long known = 0;
    List<Item> fitting = new ArrayList<>();
    long divisor = 0;
    for (Item item : all) {
      if (item.weight() > 0 && item.size() <= capacity) {
        fitting.add(item);
        divisor = gcd(divisor, item.size());
        if (stick.usedWhole(item.size() - stick.kerf())) {
          known = Math.max(known, item.weight());
        }
      }
    }
    if (fitting.isEmpty()) {
      return known;
    }
    List<Item> scaled = new ArrayList<>(fitting.size());
    for (Item item : fitting) {
      scaled.add(
          new Item(
              item.size() / divisor,
              item.weight(),
              Math.min(item.quantity(), capacity / item.size()),
              item.held()));
    }
    scaled.sort(Heaviest::byFallingRatio);
    return new Heaviest(
            scaled,
            capacity / divisor,
            Math.floorDiv(stick.usableAndCutHoldingOffcut(), divisor),
            known)
        .search(mostWays, mostCells);
  }

  private static int byFallingRatio(Item a, Item b) {
    if (Products.less(b.weight(), a.size(), a.weight(), b.size())) {
      return -1;
    }
    if (Products.less(a.weight(), b.size(), b.weight(), a.size())) {
      return 1;
    }
    return Long.compare(b.size(), a.size());
  }

  private long search(int mostWays, int mostCells) {
    best = Math.max(best, greedy());
    long[] smallestFrom = new long[items.size()];
    long smallest = Long.MAX_VALUE;
    for (int i = items.size() - 1; i >= 0; i--) {
      smallest = Math.min(smallest, items.get(i).size());
      smallestFrom[i] = smallest;
    }
    // Ways whose pieces are all shorter than the hold, and ways with a piece that can be held.
    // Where
    // no piece is short, nothing needs telling apart.
    ParetoList shortOnly = anyShort ? ParetoList.ofNothing() : ParetoList.empty();
    ParetoList held = anyShort ? ParetoList.empty() : ParetoList.ofNothing();
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      shortOnly.prune(capacity, best, item.weight(), item.size(), smallestFrom[i]);
      held.prune(capacity, best, item.weight(), item.size(), smallestFrom[i]);
      if (shortOnly.count() + held.count() == 0) {
        return best;
      }
      if (shortOnly.count() + held.count() > mostWays) {
        return Math.min(fractional(), table(mostCells));
      }
      for (long left = item.quantity(), group = 1; left > 0; left -= group, group *= 2) {
        group = Math.min(group, left);
        long size = group * item.size();
        long weight = group * item.weight();
        if (item.held()) {
          ParetoList more = held.with(held, size, weight, capacity);
          held = shortOnly.count() == 0 ? more : more.with(shortOnly, size, weight, capacity);
        } else {
          held = held.with(held, size, weight, capacity);
          shortOnly = shortOnly.with(shortOnly, size, weight, capacity);
        }
      }
      best = Math.max(best, held.heaviest(capacity));
      best = Math.max(best, shortOnly.heaviest(capacityHoldingOffcut));
    }
    return best;
  }

  /** Weight of a pattern filled up by falling ratio. */
  private long greedy() {
    return Math.max(greedy(capacity, true), greedy(capacityHoldingOffcut, false));
  }

  private long greedy(long limit, boolean mustHold) {
    long rest = limit;
    long weight = 0;
    boolean isHeld = !mustHold;
    for (Item item : items) {
      if (item.size() <= rest) {
        long pieces = Math.min(item.quantity(), rest / item.size());
        rest -= pieces * item.size();
        weight += pieces * item.weight();
        isHeld |= item.held();
      }
    }
    return isHeld ? weight : 0;
  }

  /** What the capacity would carry at the best ratio. */
  private long fractional() {
    Item first = items.get(0);
    return Math.max(
        best,
        BigInteger.valueOf(capacity)
            .multiply(BigInteger.valueOf(first.weight()))
            .divide(BigInteger.valueOf(first.size()))
            .longValueExact());
  }

  /** The same by a table over positions, which are made coarser when there are too many. */
  private long table(int limit) {
    long groups = 0;
    for (Item item : items) {
      groups += Long.SIZE - Long.numberOfLeadingZeros(item.quantity());
    }
    long mostCells = Math.min(limit, Math.max(1_000, TABLE_WORK / groups));
    long unit = capacity / mostCells + 1;
    int cells = Math.toIntExact(capacity / unit) + 1;
    long[] shortOnly = new long[anyShort ? cells : 0];
    long[] held = new long[cells];
    Arrays.fill(held, anyShort ? -1 : 0);
    for (Item item : items) {
      for (long left = item.quantity(), group = 1; left > 0; left -= group, group *= 2) {
        group = Math.min(group, left);
        int size = Math.toIntExact(group * item.size() / unit);
        long weight = group * item.weight();
        addTo(held, held, size, weight);
        if (anyShort) {
          addTo(item.held() ? held : shortOnly, shortOnly, size, weight);
        }
      }
    }
    long heaviest = Math.max(best, held[cells - 1]);
    if (anyShort && capacityHoldingOffcut >= 0) {
      heaviest = Math.max(heaviest, shortOnly[Math.toIntExact(capacityHoldingOffcut / unit)]);
    }
    return heaviest;
  }

  private static void addTo(long[] to, long[] from, int size, long weight) {
    for (int position = to.length - 1; position >= size; position--) {
      long before = from[position - size];
      if (before >= 0 && before + weight > to[position]) {
        to[position] = before + weight;
      }
    }
  }

  private static long gcd(long a, long b) {
    while (b != 0) {
      long rest = a % b;
      a = b;
      b = rest;
    }
    return a;
  }
}
