package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;

/**
 * Lines of one material that a job needs, each covered by pieces joined end to end.
 *
 * @param material id of the material
 * @param mark what the drawing calls it; never empty, because its pieces are named after it
 * @param length covered length, net, positive
 * @param qty lines for one copy of the job, at least 1
 * @param addAtStart what the first piece is longer than the covered length: corner lap, return, hem
 * @param addAtEnd the same for the last piece
 * @param purpose what it is for, in the user's words; empty when not given
 */
public record Run(
    String material,
    String mark,
    Length length,
    int qty,
    Length addAtStart,
    Length addAtEnd,
    JointRules rules,
    String purpose) {
  public Run {
    Objects.requireNonNull(material);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(rules);
    Objects.requireNonNull(purpose);
    if (mark.isEmpty()) {
      throw new IllegalArgumentException("a run without a mark");
    }
    if (length.units() <= 0 || qty < 1) {
      throw new IllegalArgumentException("run " + mark + ": length and quantity are positive");
    }
    if (addAtStart.units() < 0 || addAtEnd.units() < 0) {
      throw new IllegalArgumentException("run " + mark + ": an addition is negative");
    }
  }

  /** The same with another number of lines. */
  public Run withQty(int lines) {
    return new Run(material, mark, length, lines, addAtStart, addAtEnd, rules, purpose);
  }

  /** The same under another mark. */
  public Run withMark(String other) {
    return new Run(material, other, length, qty, addAtStart, addAtEnd, rules, purpose);
  }
}
