package lapwright.check;

import lapwright.plan.OrderPlan;

/** For every test that makes a plan: the plan must pass the check. */
public final class SoundPlans {
  private SoundPlans() {}

  /** The checked plan; fails with every fault when the plan is broken. */
  public static CheckedPlan requireSound(OrderPlan plan) {
    Verdict verdict = PlanCheck.check(plan);
    if (verdict instanceof Verdict.Broken broken) {
      throw new AssertionError(
          String.join("\n", broken.faults().stream().map(PlanFault::message).toList()));
    }
    return ((Verdict.Sound) verdict).plan();
  }
}
