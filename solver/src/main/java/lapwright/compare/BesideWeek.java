package lapwright.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.Shortage;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.shop.ItemOrder;
import lapwright.shop.Job;
import lapwright.shop.MaterialOrder;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supply;

/**
 * A bid by itself, bought new, and the same bid bought together with the jobs of the week; counted
 * goods too.
 *
 * @param bids names of the jobs that are asked about; together they are one bid here
 * @param alone the bid, without rack and sticks on hand
 * @param withStock materials that cannot be bought new, so that {@code alone} uses what is there
 * @param week the other jobs, with rack and sticks on hand; without materials where there are none
 * @param together all of them, with rack and sticks on hand
 */
public record BesideWeek(
    List<String> bids,
    CheckedPlan alone,
    List<String> withStock,
    CheckedPlan week,
    CheckedPlan together) {
  public BesideWeek {
    bids = List.copyOf(bids);
    withStock = List.copyOf(withStock);
    Objects.requireNonNull(alone);
    Objects.requireNonNull(week);
    Objects.requireNonNull(together);
  }

  /** What asking comes to. */
  public sealed interface Answer {
    /** All three plans. */
    record Compared(BesideWeek plans) implements Answer {}

    /**
     * One of the plans cannot be made, or not in the time.
     *
     * @param which of them, in words
     */
    record NotPlanned(String which, PlanResult why) implements Answer {}
  }

  /**
   * Plans the three, each as completely as an order.
   *
   * @param bids names of jobs of the order, at least one
   * @param week the jobs of the week; the bids are not counted with them
   */
  public static Answer of(
      Planner planner, ShopOrder order, Set<String> bids, Predicate<Job> week, Effort effort) {
    Predicate<Job> isBid = job -> bids.contains(job.name());
    List<MaterialOrder> needed = order.materialOrders(isBid);
    Set<String> withStock = new HashSet<>();
    List<ItemOrder> items = order.itemOrders(isBid).stream().map(ItemOrder::withoutStock).toList();
    PlanResult alone = alone(planner, order, needed, items, withStock, effort);
    if (alone instanceof PlanResult.Impossible impossible) {
      impossible.shortages().stream().map(Shortage::material).forEach(withStock::add);
      alone = alone(planner, order, needed, items, withStock, effort);
    }
    if (!(alone instanceof PlanResult.Planned plannedAlone)) {
      return new Answer.NotPlanned("by itself", alone);
    }
    PlanResult before = plan(planner, order, week.and(isBid.negate()), effort);
    if (!(before instanceof PlanResult.Planned plannedBefore)) {
      return new Answer.NotPlanned("the week without it", before);
    }
    PlanResult with = plan(planner, order, week.or(isBid), effort);
    if (!(with instanceof PlanResult.Planned plannedWith)) {
      return new Answer.NotPlanned("together with the week", with);
    }
    return new Answer.Compared(
        new BesideWeek(
            bids.stream().sorted().toList(),
            plannedAlone.plan(),
            withStock.stream().sorted().toList(),
            plannedBefore.plan(),
            plannedWith.plan()));
  }

  private static PlanResult alone(
      Planner planner,
      ShopOrder order,
      List<MaterialOrder> needed,
      List<ItemOrder> items,
      Set<String> withStock,
      Effort effort) {
    List<MaterialOrder> orders = new ArrayList<>();
    for (MaterialOrder each : needed) {
      orders.add(
          withStock.contains(each.material().id())
              ? each
              : each.withSupplies(
                  each.supplies().stream().filter(Supply.Offer.class::isInstance).toList()));
    }
    return planner.plan(order.shop(), orders, items, Map.of(), effort);
  }

  private static PlanResult plan(
      Planner planner, ShopOrder order, Predicate<Job> jobs, Effort effort) {
    return planner.plan(
        order.shop(), order.materialOrders(jobs), order.itemOrders(jobs), Map.of(), effort);
  }
}
