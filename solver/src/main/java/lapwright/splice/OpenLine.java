package lapwright.splice;

import lapwright.problem.SpliceProblem.Splits.Anywhere;

/**
 * A line with joints anywhere of which some pieces are settled and the rest is still to be cut. Not
 * thread-safe.
 */
final class OpenLine {
  private final Anywhere rules;
  private final long longest;
  private int settled;
  private long settledLength;

  /**
   * @param longestUsable of any stick
   * @param settled pieces
   * @param settledLength of them together
   */
  OpenLine(Anywhere rules, long longestUsable, int settled, long settledLength) {
    this.rules = rules;
    longest = Math.min(longestUsable, rules.longest());
    this.settled = settled;
    this.settledLength = settledLength;
  }

  OpenLine copy() {
    return new OpenLine(rules, longest, settled, settledLength);
  }

  /** What so many further pieces add up to where they are the last ones. */
  long rest(int pieces) {
    return rules.sumOf(settled + pieces) - settledLength;
  }

  /** The fewest further pieces that may finish it; -1 when none do. */
  int fewest() {
    for (int n = 1; settled + n <= rules.mostPieces(); n++) {
      if (mayBe(n)) {
        return n;
      }
    }
    return -1;
  }

  /** True when so many further pieces may finish it. */
  boolean mayBe(int pieces) {
    return settled + pieces <= rules.mostPieces()
        && rest(pieces) <= pieces * longest
        && rest(pieces) >= pieces * least(pieces);
  }

  /** The shortest piece that may be cut next where so many are to come. */
  long shortest(int pieces) {
    return Math.max(least(pieces), rest(pieces) - (pieces - 1) * longest);
  }

  /** The longest piece that may be cut next where so many are to come. */
  long longest(int pieces) {
    return Math.min(longest, rest(pieces) - (pieces - 1) * least(pieces));
  }

  private long least(int pieces) {
    return settled + pieces == 1 ? rules.shortestAtEnd() : rules.leastAnywhere();
  }

  long step() {
    return rules.step();
  }

  /** Settles a piece. */
  void lay(long length) {
    settled++;
    settledLength += length;
  }
}
