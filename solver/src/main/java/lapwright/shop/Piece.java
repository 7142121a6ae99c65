package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;

/**
 * Finished lengths of one material that a job needs, each cut from one stick.
 *
 * @param material id of the material
 * @param mark what the drawing calls it; empty when it has none
 * @param length finished length, positive
 * @param qty how many for one copy of the job, at least 1
 * @param purpose what it is for, in the user's words; empty when not given
 * @param rules how it is to be cut
 * @param measured between which points {@code length} is given
 */
public record Piece(
    String material,
    String mark,
    Length length,
    int qty,
    String purpose,
    CutRules rules,
    Measured measured) {
  public Piece {
    Objects.requireNonNull(rules);
    Objects.requireNonNull(measured);
    Objects.requireNonNull(material);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(purpose);
    if (length.units() <= 0) {
      throw new IllegalArgumentException("piece " + mark + ": length is not positive");
    }
    if (qty < 1) {
      throw new IllegalArgumentException("piece " + mark + ": quantity " + qty);
    }
  }

  /** A piece with square ends. */
  public Piece(String material, String mark, Length length, int qty, String purpose) {
    this(material, mark, length, qty, purpose, CutRules.PLAIN, Measured.LONG_POINT);
  }

  /** The same with another quantity. */
  public Piece withQty(int quantity) {
    return new Piece(material, mark, length, quantity, purpose, rules, measured);
  }

  /** The same under another mark. */
  public Piece withMark(String other) {
    return new Piece(material, other, length, qty, purpose, rules, measured);
  }

  /** How it is cut from a material. */
  public CutRules rulesOn(Material stick) {
    CutRules here = rules;
    if (!here.ends().isSquare() && here.depth().isZero() && stick.depth() != null) {
      here = here.withDepth(stick.depth());
    }
    return stick.oneWay() ? here.asOneWay() : here;
  }

  /** The greatest length of the piece, from point to point, when it is cut from a material. */
  public Length pointToPoint(Material stick) {
    return measured.fromPointToPoint(length, rulesOn(stick));
  }
}
