package lapwright.colgen;

import java.util.List;
import lapwright.problem.StickProblem;

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

  /** Patterns that fill a stick nearly, to begin with; none where pieces are small. */
  static List<Pattern> closeFits(StickProblem problem) {
    return problem.items().stream().anyMatch(StickProblem.Item::small)
        ? List.of()
        : CloseFits.of(problem);
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
