package lapwright.exact;

import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * Which costs can be reached at all: R = { sum_j P_j y_j : 0 &lt;= y_j &lt;= Y_j }. A bound may be
 * raised to the least element of R at or above it.
 *
 * <p>A bit for each amount up to the cost of a known solution, made when first needed; time
 * O(amount x stocks x log packs / 64). Beyond {@value #GREATEST_AMOUNT} amounts only the common
 * divisor is used, which the reduction has made 1.
 */
public final class ReachableCosts {
  static final long GREATEST_AMOUNT = 10_000_000;

  private final StickProblem problem;
  private long[] bits = new long[0];
  private long upTo = -1;

  public ReachableCosts(StickProblem problem) {
    this.problem = problem;
  }

  /**
   * The least reachable cost at or above a bound.
   *
   * @param known a cost that is reached; the answer is never above it unless the bound is
   */
  public long atLeast(long bound, long known) {
    if (bound >= known || known > GREATEST_AMOUNT) {
      return bound;
    }
    if (known > upTo) {
      fill((int) known);
    }
    for (long amount = bound; amount < known; amount++) {
      if ((bits[(int) (amount >> 6)] >>> amount & 1) != 0) {
        return amount;
      }
    }
    return known;
  }

  private void fill(int greatest) {
    bits = new long[(greatest >> 6) + 1];
    bits[0] = 1;
    upTo = greatest;
    for (Stock stock : problem.stocks()) {
      long cost = stock.packCost();
      if (cost == 0) {
        continue;
      }
      long left = Math.min(stock.mostPacks(), greatest / cost);
      for (long packs = 1; left > 0; packs *= 2) {
        long taken = Math.min(packs, left);
        addShifted((int) (taken * cost));
        left -= taken;
      }
    }
  }

  /** bits |= bits shifted up. */
  private void addShifted(int shift) {
    int words = shift >> 6;
    int rest = shift & 63;
    for (int to = bits.length - 1; to >= words; to--) {
      long moved = bits[to - words] << rest;
      if (rest > 0 && to > words) {
        moved |= bits[to - words - 1] >>> (64 - rest);
      }
      bits[to] |= moved;
    }
  }
}
