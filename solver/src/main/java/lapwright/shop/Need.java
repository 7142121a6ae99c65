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
 * @param length finished length, positive
 * @param qty for one copy
 * @param purpose what it is for; empty when not given
 */
public record Need(
    String job,
    @Nullable LocalDate due,
    int copies,
    String mark,
    Length length,
    int qty,
    String purpose) {
  public Need {
    Objects.requireNonNull(job);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(purpose);
    if (length.units() <= 0 || qty < 1 || copies < 1) {
      throw new IllegalArgumentException(
          "need of " + job + " " + mark + ": length, quantity and copies are positive");
    }
  }

  /** Pieces over all copies of the job. */
  public int total() {
    return Math.multiplyExact(qty, copies);
  }
}
