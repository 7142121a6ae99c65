package lapwright.plan;

import java.util.Objects;
import lapwright.measure.Length;
import lapwright.shop.CutRules;

/**
 * Equal pieces cut one after the other from each stick of a pattern.
 *
 * @param job whose pieces
 * @param copy which copy of a repeated job, from 1
 * @param mark the drawing's mark; empty when it has none
 * @param length as it is cut, from point to point where ends are angled
 * @param qty pieces from each stick, at least 1
 * @param rules how the piece is to be cut
 * @param shorter how much shorter than the job asks for, within what it permits
 */
public record Cut(
    String job, int copy, String mark, Length length, int qty, CutRules rules, Length shorter) {
  public Cut {
    Objects.requireNonNull(rules);
    Objects.requireNonNull(shorter);
    Objects.requireNonNull(job);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(length);
    if (copy < 1 || qty < 1) {
      throw new IllegalArgumentException("copy " + copy + ", quantity " + qty);
    }
  }

  /** Pieces with square ends at the length that the job asks for. */
  public Cut(String job, int copy, String mark, Length length, int qty) {
    this(job, copy, mark, length, qty, CutRules.PLAIN, Length.ZERO);
  }

  /** What the job asks for. */
  public Length fullLength() {
    return length.plus(shorter);
  }

  /** The length that plans know the piece by, see {@link lapwright.shop.Need#planned}. */
  public Length planned(Length kerf) {
    return fullLength().minus(rules.mayBeShort()).plus(rules.cutWidth(kerf)).minus(kerf);
  }

  /** What the vise can grip of the piece, see {@link lapwright.shop.Need#held}. */
  public Length held() {
    return fullLength().minus(rules.mayBeShort()).minus(rules.skew());
  }

  /** {@code quantity} of the pieces, as long as the job asks for. */
  public Cut full(int quantity) {
    return new Cut(job, copy, mark, fullLength(), quantity, rules, Length.ZERO);
  }

  /** {@code quantity} of the pieces. */
  public Cut withQty(int quantity) {
    return new Cut(job, copy, mark, length, quantity, rules, shorter);
  }
}
