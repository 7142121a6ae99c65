package lapwright.check;

import java.util.ArrayList;
import java.util.List;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;

/**
 * What a certificate proves of an order that nobody has planned. Weights cannot be wrong, only
 * weak, so those of one order also bound another that is much like it.
 */
public final class CertifiedBound {
  private CertifiedBound() {}

  /**
   * No plan of {@code order} costs less than this.
   *
   * @param order without runs that have expansion gaps, which stand where a plan puts them
   * @param atMost what some plan of the order costs, or more
   * @return 0 where the certificate is no evidence for this order; at most {@code atMost}
   */
  public static long of(MaterialOrder order, Certificate certificate, long atMost) {
    if (order.runs().stream().anyMatch(need -> need.run().rules().expansion() != null)) {
      return 0;
    }
    MaterialPlan unplanned =
        new MaterialPlan(
            order,
            List.of(),
            List.of(),
            atMost,
            atMost,
            0,
            Proof.OPEN,
            certificate,
            Account.NOTHING);
    List<PlanFault> found = new ArrayList<>();
    try {
      Faults faults = new Faults(order.material().id(), found);
      return (RunBoundCheck.isFor(unplanned)
              ? new RunBoundCheck(unplanned, faults).run()
              : new BoundCheck(unplanned, faults).run())
          .filter(bound -> found.isEmpty())
          .map(MaterialBound::bound)
          .orElse(0L);
    } catch (ArithmeticException tooLarge) {
      return 0;
    }
  }
}
