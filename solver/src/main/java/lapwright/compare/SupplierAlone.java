package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.Shortage;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The same jobs with everything bought from one supplier.
 *
 * @param supplier name
 * @param plan null when no plan was found
 * @param lacking ids of the materials that cannot be planned that way; empty when there is a plan,
 *     or when the time was over
 */
public record SupplierAlone(String supplier, @Nullable CheckedPlan plan, List<String> lacking) {
  public SupplierAlone {
    Objects.requireNonNull(supplier);
    lacking = List.copyOf(lacking);
    if (plan != null && !lacking.isEmpty()) {
      throw new IllegalArgumentException("a plan that lacks " + lacking);
    }
  }

  /**
   * Plans with each supplier alone, by name; nothing where fewer than two offer anything.
   *
   * @param effort shared evenly; what one plan leaves of its share goes to the next
   */
  public static List<SupplierAlone> each(
      Planner planner, Shop shop, List<MaterialOrder> orders, Effort effort) {
    TreeSet<String> suppliers = new TreeSet<>();
    for (MaterialOrder order : orders) {
      for (Supply supply : order.supplies()) {
        if (supply instanceof Supply.Offer offer && !offer.supplier().isEmpty()) {
          suppliers.add(offer.supplier());
        }
      }
    }
    List<SupplierAlone> answers = new ArrayList<>();
    if (suppliers.size() < 2) {
      return answers;
    }
    int left = suppliers.size();
    for (String supplier : suppliers) {
      long remaining = effort.remainingNanos();
      long end = remaining - remaining / (left + 1);
      left--;
      Effort share =
          effort.alsoStoppedBy(() -> effort.remainingNanos() < end).tellingInstead(progress -> {});
      answers.add(one(supplier, planner, shop, orders, share));
    }
    return answers;
  }

  private static SupplierAlone one(
      String supplier, Planner planner, Shop shop, List<MaterialOrder> orders, Effort effort) {
    PlanResult result =
        planner.plan(
            shop,
            orders.stream().map(order -> order.onlyFrom(List.of(supplier))).toList(),
            Map.of(),
            effort);
    if (result instanceof PlanResult.Planned planned) {
      return new SupplierAlone(supplier, planned.plan(), List.of());
    }
    return new SupplierAlone(
        supplier,
        null,
        result instanceof PlanResult.Impossible impossible
            ? impossible.shortages().stream().map(Shortage::material).toList()
            : List.of());
  }
}
