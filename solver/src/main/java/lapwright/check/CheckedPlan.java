package lapwright.check;

import java.util.List;
import java.util.Objects;
import lapwright.plan.OrderPlan;

/**
 * A plan that keeps every rule and whose bounds were recomputed. Made only by {@link PlanCheck}.
 */
public final class CheckedPlan {
  private final OrderPlan plan;
  private final List<MaterialBound> bounds;

  CheckedPlan(OrderPlan plan, List<MaterialBound> bounds) {
    this.plan = Objects.requireNonNull(plan);
    this.bounds = List.copyOf(bounds);
  }

  public OrderPlan plan() {
    return plan;
  }

  /** The recomputed bounds, in the order of the plan's materials. */
  public List<MaterialBound> bounds() {
    return bounds;
  }
}
