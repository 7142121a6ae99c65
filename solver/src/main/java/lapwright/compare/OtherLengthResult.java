package lapwright.compare;

import java.util.List;
import java.util.Objects;
import lapwright.Shortage;
import lapwright.check.CheckedPlan;
import lapwright.measure.Length;

/**
 * What if stock came only in another length? Rack and sticks on hand are left aside on both sides,
 * so that the two plans differ in nothing but what is bought.
 *
 * @param stockLength the only length
 * @param now the materials that can be compared, bought in the lengths that are on offer
 * @param then the same materials, bought in that length only, singly and without limit, at the
 *     price per length of the offer that is cheapest per length now (rounded once to 1/10,000, half
 *     up)
 * @param notNow materials that cannot be planned from what is on offer, and why; not in the plans
 * @param notThen materials with pieces that do not fit that length; not in the plans
 */
public record OtherLengthResult(
    Length stockLength,
    CheckedPlan now,
    CheckedPlan then,
    List<Shortage> notNow,
    List<Shortage> notThen) {
  public OtherLengthResult {
    Objects.requireNonNull(stockLength);
    Objects.requireNonNull(now);
    Objects.requireNonNull(then);
    notNow = List.copyOf(notNow);
    notThen = List.copyOf(notThen);
  }
}
