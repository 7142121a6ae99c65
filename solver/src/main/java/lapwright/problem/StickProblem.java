package lapwright.problem;

import java.util.List;

/**
 * One-dimensional cutting stock with several stock lengths, packs and limited supply.
 *
 * <p>Choose packs y_j of each stock j, 0 &lt;= y_j &lt;= mostPacks_j, and patterns so that every
 * item is cut as often as demanded, no more than packSize_j * y_j patterns come from stock j, and
 * sum of packCost_j * y_j is least. A pattern a of stock j is proper when
 *
 * <ul>
 *   <li>sum size_i a_i &lt;= capacity_j, and
 *   <li>a_i &lt;= demand_i for every item, and
 *   <li>it holds at least one item that is not {@code small}, or sum size_i a_i &lt;=
 *       smallCapacity_j, or it is one single item of size exactly capacity_j and {@code
 *       wholeUse_j}.
 * </ul>
 *
 * The pattern without items is proper. Sizes and capacities are in the units of length, a cut's
 * width added to each size and once to each capacity. Everything is raw: a solver merges equal
 * items, divides by common divisors and groups equal stocks as it likes.
 *
 * @param items with positive sizes and demands
 * @param stocks any order; equal ones are allowed
 * @param keepFrom an offcut at least this long is kept: only solutions of equal cost are told apart
 *     by it
 */
public record StickProblem(List<Item> items, List<Stock> stocks, long keepFrom) {
  public StickProblem {
    items = List.copyOf(items);
    stocks = List.copyOf(stocks);
  }

  /**
   * Equal lengths to be cut.
   *
   * @param size length plus the width of a cut, positive
   * @param demand how many, at least 1
   * @param small true when the item is too short to be held at the last cut
   */
  public record Item(long size, int demand, boolean small) {
    public Item {
      if (size <= 0 || demand < 1) {
        throw new IllegalArgumentException("item of size " + size + ", demand " + demand);
      }
    }
  }

  /**
   * Equal sticks.
   *
   * @param length drawn length of a stick, for telling solutions of equal cost apart
   * @param capacity what the sizes in a pattern may add up to; negative or 0 when nothing fits
   * @param smallCapacity the same for patterns of small items only; at most {@code capacity}
   * @param wholeUse true when a stick that is exactly one item is used without any cut
   * @param tail what the offcut is longer than capacity minus the sizes: the offcut is max(0,
   *     capacity - sum of sizes + tail); at most 0 unless there is no cut to be made
   * @param packCost cost of a pack, at least 0
   * @param packCash money to be spent now for a pack, at least 0, at most {@code packCost}; tells
   *     solutions of equal cost apart
   * @param packSize sticks a pack, at least 1
   * @param mostPacks packs that can be had; {@link Integer#MAX_VALUE} without a limit
   */
  public record Stock(
      long length,
      long capacity,
      long smallCapacity,
      boolean wholeUse,
      long tail,
      long packCost,
      long packCash,
      int packSize,
      int mostPacks) {
    public Stock {
      if (packCost < 0 || packCash < 0 || packCash > packCost) {
        throw new IllegalArgumentException("pack costs " + packCost + ", in cash " + packCash);
      }
      if (packSize < 1 || mostPacks < 0) {
        throw new IllegalArgumentException("packs of " + packSize + ", at most " + mostPacks);
      }
      if (smallCapacity > capacity) {
        throw new IllegalArgumentException("small capacity above capacity");
      }
    }

    public boolean isLimited() {
      return mostPacks != Integer.MAX_VALUE;
    }
  }
}
