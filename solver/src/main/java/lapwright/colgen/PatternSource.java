package lapwright.colgen;

import java.util.List;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * Answers which patterns are worth most at given weights: the pricing problem of column generation,
 * and the exact step behind every bound. Whatever can be cut in patterns implements it; the method
 * above does not care how.
 */
public interface PatternSource {
  /** The source that suits a problem of sticks. */
  static PatternSource of(StickProblem problem) {
    if (PatternTable.cells(problem) <= PatternTable.MOST_CELLS) {
      return new PatternTable(problem);
    }
    return RoundedTable.suits(problem) ? new RoundedTable(problem) : new PatternLists(problem);
  }

  /**
   * The greatest weight of a proper pattern of each stock.
   *
   * @param weights one an item, not negative; patterns need not hold items of weight 0
   * @param limits how many of an item a pattern may hold at most
   * @param thresholds one a stock: patterns of more weight than this are wanted, diverse ones, a
   *     heaviest one of every such stock among them
   * @param most about how many patterns are wanted; 0 for the greatest weights alone
   */
  Priced price(long[] weights, int[] limits, long[] thresholds, int most);

  /**
   * Every pattern of a stock that weighs and measures enough.
   *
   * @param weights one an item, not negative
   * @param limits how many of an item a pattern may hold at most
   * @param leastWeight patterns of less weight are left out
   * @param leastLength shorter patterns are left out
   * @param most give up beyond so many
   * @return null when there are more, when listing them takes too long, or when the source cannot
   */
  default @Nullable List<Pattern> list(
      long[] weights, int[] limits, int stock, long leastWeight, long leastLength, int most) {
    return null;
  }

  /**
   * What pricing found.
   *
   * @param greatest by stock, what no pattern weighs more than: the greatest weight itself, or at
   *     most the threshold where no pattern exceeds it; at least 0, the empty pattern's
   * @param patterns distinct patterns above their stock's threshold
   */
  record Priced(List<Long> greatest, List<Pattern> patterns) {
    public Priced {
      greatest = List.copyOf(greatest);
      patterns = List.copyOf(patterns);
    }
  }
}
