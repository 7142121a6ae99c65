package lapwright;

import lapwright.check.CertifiedBound;
import lapwright.demand.RunDemand;
import lapwright.effort.Effort;
import lapwright.layout.LayoutException;
import lapwright.problem.SpliceProblem;
import lapwright.shop.MaterialOrder;
import lapwright.splice.SpliceQuestions;

/** What an order of one material costs at least, without a plan. */
final class QuickBound {
  private QuickBound() {}

  /**
   * Not more than {@code atMost}, and 0 where nothing is known; lots may mix. {@link
   * Long#MAX_VALUE} where there is no plan at all.
   */
  static long of(MaterialOrder order, long atMost, Effort effort) {
    try {
      RunDemand demand = RunDemand.of(order);
      SpliceProblem problem = demand.problem();
      SpliceQuestions.Bound bound = SpliceQuestions.bound(problem, atMost, false, effort);
      return bound.least() == SpliceQuestions.Bound.IMPOSSIBLE
          ? Long.MAX_VALUE
          : Math.min(
              atMost,
              CertifiedBound.of(
                  order, demand.certificate(bound.certificate()), Math.multiplyExact(2, atMost)));
    } catch (LayoutException noSplit) {
      return Long.MAX_VALUE;
    }
  }
}
