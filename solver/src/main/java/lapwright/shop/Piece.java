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
 */
public record Piece(String material, String mark, Length length, int qty, String purpose) {
  public Piece {
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
}
