package lapwright.layout;

import lapwright.shop.JointRules;

/**
 * How long the pieces of a line may be, in units of length.
 *
 * @param shortest within the line, at least 1
 * @param shortestAtEnd of the first and the last piece, at least 1
 * @param longest of all
 */
public record PieceLimits(long shortest, long shortestAtEnd, long longest) {
  /** The rules' limits, none longer than {@code usable}. */
  public static PieceLimits of(JointRules.Pieces pieces, long usable) {
    return new PieceLimits(
        Math.max(1, pieces.shortest().units()),
        Math.max(1, pieces.leastAtEnd().units()),
        pieces.longest() == null ? usable : Math.min(usable, pieces.longest().units()));
  }

  /** The least length of a piece. */
  long shortest(boolean atEnd) {
    return atEnd ? shortestAtEnd : shortest;
  }

  /** The least that {@code pieces} pieces in a line add up to. */
  long leastSum(int pieces) {
    return pieces == 1
        ? shortestAtEnd
        : Math.addExact(2 * shortestAtEnd, Math.multiplyExact((pieces - 2L), shortest));
  }
}
