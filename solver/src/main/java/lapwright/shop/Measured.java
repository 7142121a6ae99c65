package lapwright.shop;

import lapwright.measure.Length;

/** Between which points a job gives the length of a piece with angled ends. */
public enum Measured {
  /** From the furthest point of one end to the furthest point of the other. */
  LONG_POINT("long-point"),
  /** From the nearest point of one end to the nearest point of the other. */
  SHORT_POINT("short-point"),
  /** Along the centre line. */
  CENTRE("centre");

  private final String word;

  Measured(String word) {
    this.word = word;
  }

  /** The word that files use. */
  public String word() {
    return word;
  }

  /** The length from point to point of a piece that is given this way, rounded up. */
  Length fromPointToPoint(Length given, CutRules rules) {
    return switch (this) {
      case LONG_POINT -> given;
      case SHORT_POINT -> given.plus(rules.skew());
      case CENTRE -> given.plus(rules.wedges());
    };
  }
}
