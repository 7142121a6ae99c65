package lapwright.shop;

import java.time.LocalDate;
import java.util.Objects;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * Pieces of one length that one job needs of one material.
 *
 * @param job name of the job
 * @param due the job's due day; null when not given
 * @param copies how many times the job is built
 * @param mark the drawing's mark; empty when it has none
 * @param length finished length, positive; from point to point where ends are angled
 * @param qty for one copy
 * @param purpose what it is for; empty when not given
 * @param rules how it is to be cut; angled ends come with the section's depth
 * @param firstCopy number of the first of these copies, 1 unless earlier ones are planned already
 */
public record Need(
    String job,
    @Nullable LocalDate due,
    int copies,
    String mark,
    Length length,
    int qty,
    String purpose,
    CutRules rules,
    int firstCopy) {
  public Need {
    Objects.requireNonNull(job);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(purpose);
    Objects.requireNonNull(rules);
    if (length.units() <= 0 || qty < 1 || copies < 1 || firstCopy < 1) {
      throw new IllegalArgumentException(
          "need of " + job + " " + mark + ": length, quantity and copies are positive");
    }
    if (!rules.equals(CutRules.PLAIN)) {
      if (rules.depth().isZero() != rules.ends().isSquare()) {
        throw new IllegalArgumentException(
            "need of " + job + " " + mark + ": angled ends and the section's depth go together");
      }
      if (length.minus(rules.mayBeShort()).minus(rules.skew()).units() <= 0) {
        throw new IllegalArgumentException(
            "need of " + job + " " + mark + ": nothing is left between its ends");
      }
    }
  }

  /** A piece with square ends. */
  public Need(
      String job,
      @Nullable LocalDate due,
      int copies,
      String mark,
      Length length,
      int qty,
      String purpose) {
    this(job, due, copies, mark, length, qty, purpose, CutRules.PLAIN);
  }

  /** Pieces for all copies of the job. */
  public Need(
      String job,
      @Nullable LocalDate due,
      int copies,
      String mark,
      Length length,
      int qty,
      String purpose,
      CutRules rules) {
    this(job, due, copies, mark, length, qty, purpose, rules, 1);
  }

  public Need withLength(Length other) {
    return new Need(job, due, copies, mark, other, qty, purpose, rules, firstCopy);
  }

  public Need withQty(int quantity) {
    return new Need(job, due, copies, mark, length, quantity, purpose, rules, firstCopy);
  }

  public Need withRules(CutRules other) {
    return new Need(job, due, copies, mark, length, qty, purpose, other, firstCopy);
  }

  /**
   * The least length that it takes from a stick beside one plain kerf: its shortest permitted
   * length and what its widest cut takes more than the kerf. Plans and certificates know pieces by
   * it.
   */
  public Length planned(Length kerf) {
    return plannedFull(kerf).minus(rules.mayBeShort());
  }

  /** The same at its full length. */
  public Length plannedFull(Length kerf) {
    return length.plus(rules.cutWidth(kerf)).minus(kerf);
  }

  /** What the vise can grip of it when it is cut as short as permitted. */
  public Length held() {
    return length.minus(rules.mayBeShort()).minus(rules.skew());
  }

  /** Number of the last of these copies. */
  public int lastCopy() {
    return firstCopy + copies - 1;
  }

  /** Pieces over all these copies of the job. */
  public int total() {
    return Math.multiplyExact(qty, copies);
  }
}
