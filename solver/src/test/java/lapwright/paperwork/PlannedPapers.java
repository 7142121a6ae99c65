package lapwright.paperwork;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapwright.OrderMaker;
import lapwright.PlanResult;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;

/** Checked plans for the papers' tests. */
final class PlannedPapers {
  private PlannedPapers() {}

  static CheckedPlan plan(MaterialOrder... orders) {
    return plan(OrderMaker.shop(), orders);
  }

  static CheckedPlan plan(Shop shop, MaterialOrder... orders) {
    return ((PlanResult.Planned)
            OrderMaker.planner(1).plan(shop, List.of(orders), Map.of(), Effort.unlimited()))
        .plan();
  }

  /** Empty when the order is impossible. */
  static Optional<CheckedPlan> planIfPossible(MaterialOrder order) {
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    return result instanceof PlanResult.Planned planned
        ? Optional.of(planned.plan())
        : Optional.empty();
  }

  /**
   * Thirteen posts and ten braces of one job from 20 ft tube and an offcut that is a post. Our own
   * numbers, worked by hand.
   */
  static CheckedPlan postsAndBraces() {
    return plan(
        new OrderMaker("tube")
            .saw("3/32\"", "1/2\"", "3\"")
            .shortBy("1/4\"")
            .keep("24\"")
            .offer("20'", "41.00")
            .rack("R7", "9'-11\"", Ends.SAWN)
            .need("shed", "P1", 13, "9'-11\"")
            .need("shed", "B1", 10, "3'-10\"")
            .make());
  }
}
