package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import lapwright.ItemBuying;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.Shortage;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The same jobs with everything bought from one supplier.
 *
 * @param supplier name
 * @param plan null when no plan was found
 * @param lacking ids of the materials and items that cannot be planned that way; empty when there
 *     is a plan, or when the time was over
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
   * @param unanswered is told of suppliers that a fault leaves out
   * @param effort shared evenly; what one plan leaves of its share goes to the next
   */
  public static List<SupplierAlone> each(
      Planner planner,
      Shop shop,
      List<MaterialOrder> orders,
      List<ItemOrder> items,
      Unanswered unanswered,
      Effort effort) {
    TreeSet<String> suppliers = new TreeSet<>();
    for (MaterialOrder order : orders) {
      for (Supply supply : order.supplies()) {
        if (supply instanceof Supply.Offer offer && !offer.supplier().isEmpty()) {
          suppliers.add(offer.supplier());
        }
      }
    }
    items.forEach(item -> item.stock().offers().forEach(offer -> suppliers.add(offer.supplier())));
    List<SupplierAlone> answers = new ArrayList<>();
    if (suppliers.size() < 2) {
      return answers;
    }
    int left = suppliers.size();
    for (String supplier : suppliers) {
      int sharing = left-- + 1;
      SupplierAlone answer =
          unanswered.askOrNull(
              "everything from " + supplier,
              () -> one(supplier, planner, shop, orders, items, share(effort, sharing)));
      if (answer != null) {
        answers.add(answer);
      }
    }
    return answers;
  }

  private static Effort share(Effort effort, int sharing) {
    return effort.share(sharing).tellingInstead(progress -> {});
  }

  private static SupplierAlone one(
      String supplier,
      Planner planner,
      Shop shop,
      List<MaterialOrder> orders,
      List<ItemOrder> items,
      Effort effort) {
    List<String> lacking = new ArrayList<>();
    List<ItemOrder> his = new ArrayList<>();
    for (ItemOrder item : items) {
      ItemOrder fromHim = item.onlyFrom(List.of(supplier));
      his.add(fromHim);
      if (ItemBuying.buy(fromHim).missing() > ItemBuying.buy(item).missing()) {
        lacking.add(item.item());
      }
    }
    PlanResult result =
        planner.plan(
            shop,
            orders.stream().map(order -> order.onlyFrom(List.of(supplier))).toList(),
            his,
            Map.of(),
            effort);
    if (result instanceof PlanResult.Planned planned && lacking.isEmpty()) {
      return new SupplierAlone(supplier, planned.plan(), List.of());
    }
    if (result instanceof PlanResult.Impossible impossible) {
      lacking.addAll(0, impossible.shortages().stream().map(Shortage::material).toList());
    }
    return new SupplierAlone(supplier, null, lacking);
  }
}
