package lapwright.plan;

import java.util.Objects;
import lapwright.measure.Length;

/**
 * Equal pieces cut one after the other from each stick of a pattern.
 *
 * @param job whose pieces
 * @param copy which copy of a repeated job, from 1
 * @param mark the drawing's mark; empty when it has none
 * @param length finished length
 * @param qty pieces from each stick, at least 1
 */
public record Cut(String job, int copy, String mark, Length length, int qty) {
  public Cut {
    Objects.requireNonNull(job);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(length);
    if (copy < 1 || qty < 1) {
      throw new IllegalArgumentException("copy " + copy + ", quantity " + qty);
    }
  }
}
