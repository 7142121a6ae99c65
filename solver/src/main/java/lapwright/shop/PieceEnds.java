package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Angle;
import lapwright.measure.Length;

/**
 * The angles at which the two ends of a piece are cut, both in one plane.
 *
 * @param first of the end that is cut first, from square
 * @param second of the other end
 * @param pointsAcross where the long points of two angled ends lie: false when both are on the same
 *     edge of the section, so that the ends slope towards each other (a brace, seen from the side a
 *     trapezoid); true when they are on opposite edges and the ends slope the same way (a
 *     parallelogram)
 */
public record PieceEnds(Angle first, Angle second, boolean pointsAcross) {
  public static final PieceEnds SQUARE = new PieceEnds(Angle.SQUARE, Angle.SQUARE, false);

  public PieceEnds {
    Objects.requireNonNull(first);
    Objects.requireNonNull(second);
    if (pointsAcross && (first.isSquare() || second.isSquare())) {
      throw new IllegalArgumentException("long points across from each other need two angled ends");
    }
  }

  public boolean isSquare() {
    return first.isSquare() && second.isSquare();
  }

  /** The angle further from square. */
  public Angle steepest() {
    return first.compareTo(second) >= 0 ? first : second;
  }

  /** What both ends together slope along a section: from the long points to the short points. */
  public Length skew(Length depth) {
    return first.skew(depth).plus(second.skew(depth));
  }

  /** As files write it: {@code 45/22.5}. */
  public String word() {
    return isSquare() ? "square" : first.degrees() + "/" + second.degrees();
  }
}
