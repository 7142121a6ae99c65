package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;

/**
 * How a piece is to be cut, beyond its length.
 *
 * <p>A piece with angled ends is planned by its greatest length, from point to point, and followed
 * by the widest of its cuts: what lies beside its sloping ends is not used for another piece.
 *
 * @param ends angles of its ends
 * @param depth of the section in the plane of angled ends; 0 when the ends are square, or on a
 *     piece whose material tells it
 * @param oneWay true when it is never turned end for end
 * @param mayBeShort how much shorter it may be cut where that saves stock
 */
public record CutRules(PieceEnds ends, Length depth, boolean oneWay, Length mayBeShort) {
  /** Square ends, either end first, exact length. */
  public static final CutRules PLAIN =
      new CutRules(PieceEnds.SQUARE, Length.ZERO, false, Length.ZERO);

  public CutRules {
    Objects.requireNonNull(ends);
    if (depth.units() < 0 || mayBeShort.units() < 0) {
      throw new IllegalArgumentException("a depth or a shortness is negative");
    }
  }

  public CutRules withDepth(Length sectionDepth) {
    return new CutRules(ends, sectionDepth, oneWay, mayBeShort);
  }

  public CutRules asOneWay() {
    return new CutRules(ends, depth, true, mayBeShort);
  }

  /** The same for a piece that must have its full length. */
  public CutRules atFullLength() {
    return new CutRules(ends, depth, oneWay, Length.ZERO);
  }

  /** What the piece's widest cut takes along the stick. */
  public Length cutWidth(Length kerf) {
    return ends.steepest().cutWidth(kerf);
  }

  /** From the long points to the short points, both ends together. */
  public Length skew() {
    return ends.skew(depth);
  }

  /**
   * What the sloping ends leave beside the piece, as a length of stick: half of {@link #skew},
   * rounded up.
   */
  public Length wedges() {
    long skew = skew().units();
    return Length.ofUnits(skew / 2 + skew % 2);
  }
}
