package lapwright.print;

import lapwright.measure.Angle;
import lapwright.shop.PieceEnds;

/** The ends of a piece in the words of somebody who stands at the saw. */
final class EndWords {
  private EndWords() {}

  /** Both ends, and where their long points lie. */
  static String of(PieceEnds ends) {
    Angle first = ends.first();
    Angle second = ends.second();
    if (ends.isSquare()) {
      return "square";
    }
    if (first.isSquare() || second.isSquare()) {
      return "first end " + end(first) + ", second end " + end(second);
    }
    String angles =
        first.equals(second)
            ? "both ends " + end(first)
            : "first end " + end(first) + ", second end " + end(second);
    return angles
        + (ends.pointsAcross()
            ? ", sloping the same way \\ \\: long points on opposite edges"
            : ", sloping towards each other / \\: long points on the same edge");
  }

  private static String end(Angle angle) {
    return angle.isSquare() ? "square" : "at " + angle.degrees();
  }
}
