package lapwright.colgen;

import java.util.Arrays;

/**
 * A cutting pattern: how many of which items come from one stick of a stock. Immutable; equal by
 * value.
 */
public final class Pattern {
  private final int stock;
  private final int[] items;
  private final int[] counts;

  private Pattern(int stock, int[] items, int[] counts) {
    this.stock = stock;
    this.items = items;
    this.counts = counts;
  }

  /** From a count for each item of the problem, most of them 0. */
  public static Pattern ofCounts(int stock, int[] countOfItem) {
    int kinds = 0;
    for (int count : countOfItem) {
      if (count > 0) {
        kinds++;
      }
    }
    int[] items = new int[kinds];
    int[] counts = new int[kinds];
    int k = 0;
    for (int i = 0; i < countOfItem.length; i++) {
      if (countOfItem[i] > 0) {
        items[k] = i;
        counts[k++] = countOfItem[i];
      }
    }
    return new Pattern(stock, items, counts);
  }

  public int stock() {
    return stock;
  }

  /** Number of different items. */
  public int kinds() {
    return items.length;
  }

  /** The item at a place, ascending. */
  public int item(int place) {
    return items[place];
  }

  /** How many of the item at a place, at least 1. */
  public int count(int place) {
    return counts[place];
  }

  /** How many of an item; 0 when it is not in the pattern. */
  public int countOf(int item) {
    int place = Arrays.binarySearch(items, item);
    return place < 0 ? 0 : counts[place];
  }

  /** The same cuts from another stock. */
  public Pattern from(int otherStock) {
    return new Pattern(otherStock, items, counts);
  }

  /** The same cuts from the same stock with so many more, or fewer, of one item. */
  public Pattern with(int item, int more) {
    int place = Arrays.binarySearch(items, item);
    int count = (place < 0 ? 0 : counts[place]) + more;
    int at = place < 0 ? -place - 1 : place;
    int after = place < 0 ? at : at + 1;
    int kept = count > 0 ? 1 : 0;
    int[] itemsThen = new int[at + kept + items.length - after];
    int[] countsThen = new int[itemsThen.length];
    System.arraycopy(items, 0, itemsThen, 0, at);
    System.arraycopy(counts, 0, countsThen, 0, at);
    if (count > 0) {
      itemsThen[at] = item;
      countsThen[at] = count;
    }
    System.arraycopy(items, after, itemsThen, at + kept, items.length - after);
    System.arraycopy(counts, after, countsThen, at + kept, items.length - after);
    return new Pattern(stock, itemsThen, countsThen);
  }

  /** Adds the counts, times a factor, to a count for each item. */
  public void addTo(int[] countOfItem, int factor) {
    for (int k = 0; k < items.length; k++) {
      countOfItem[items[k]] += factor * counts[k];
    }
  }

  /** How often the pattern can be cut before some item has fewer left than it holds. */
  public int mostTimes(int[] left) {
    int most = Integer.MAX_VALUE;
    for (int k = 0; k < items.length; k++) {
      most = Math.min(most, left[items[k]] / counts[k]);
    }
    return most;
  }

  /** Sum of a value an item, such as its size or weight. */
  public long sum(long[] valueOfItem) {
    long sum = 0;
    for (int k = 0; k < items.length; k++) {
      sum += valueOfItem[items[k]] * counts[k];
    }
    return sum;
  }

  /** Pieces in the pattern. */
  public int pieces() {
    int pieces = 0;
    for (int count : counts) {
      pieces += count;
    }
    return pieces;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pattern that
        && stock == that.stock
        && Arrays.equals(items, that.items)
        && Arrays.equals(counts, that.counts);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * stock + Arrays.hashCode(items)) + Arrays.hashCode(counts);
  }

  @Override
  public String toString() {
    return "stock " + stock + " items " + Arrays.toString(items) + " x " + Arrays.toString(counts);
  }
}
