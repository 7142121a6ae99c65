package lapwright.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.compare.Change.Kind;
import lapwright.plan.ItemPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;
import org.jspecify.annotations.Nullable;

/** What has changed about counted goods since orders were placed. */
final class ItemChanges {
  private final Told told;

  /** Takes down what is not as it was. */
  @FunctionalInterface
  interface Told {
    void unlessEqual(Kind kind, String item, String what, Object planned, Object now);
  }

  ItemChanges(Told told) {
    this.told = told;
  }

  void of(List<OrderPlan> placed, List<ItemOrder> now) {
    SortedMap<String, List<ItemPlan>> plansOf = new TreeMap<>();
    for (OrderPlan order : placed) {
      for (ItemPlan plan : order.items()) {
        plansOf.computeIfAbsent(plan.item(), item -> new ArrayList<>()).add(plan);
      }
    }
    Map<String, ItemOrder> ordersOf = new TreeMap<>();
    now.forEach(order -> ordersOf.put(order.item(), order));
    SortedMap<String, Boolean> items = new TreeMap<>();
    plansOf.keySet().forEach(item -> items.put(item, true));
    ordersOf.keySet().forEach(item -> items.putIfAbsent(item, false));
    items.forEach(
        (item, isPlanned) -> {
          List<ItemPlan> plans = plansOf.getOrDefault(item, List.of());
          ItemOrder order = ordersOf.get(item);
          quantities(item, plans, order == null ? List.of() : order.needs());
          if (isPlanned && order != null) {
            stock(item, plans, order.stock());
            offers(item, plans.get(plans.size() - 1).order().stock(), order.stock());
          }
        });
  }

  private void quantities(String item, List<ItemPlan> plans, List<ItemOrder.Need> now) {
    Map<String, int[]> counts = new LinkedHashMap<>();
    plans.forEach(plan -> plan.order().needs().forEach(need -> add(need, 0, counts)));
    now.forEach(need -> add(need, 1, counts));
    counts.forEach(
        (job, count) -> told.unlessEqual(Kind.PIECES, item, "for " + job, count[0], count[1]));
  }

  private static void add(ItemOrder.Need need, int which, Map<String, int[]> counts) {
    int[] count = counts.computeIfAbsent(need.job(), job -> new int[2]);
    count[which] = Math.addExact(count[which], need.total());
  }

  private void stock(String item, List<ItemPlan> plans, ItemStock now) {
    int taken = plans.stream().mapToInt(ItemPlan::fromOnHand).sum();
    if (now.onHand() < taken) {
      told.unlessEqual(
          Kind.STOCK,
          item,
          "on hand",
          taken + " taken",
          now.onHand() == 0 ? PlanChanges.NONE : Integer.toString(now.onHand()));
    }
    Map<String, Integer> packs = new LinkedHashMap<>();
    Map<String, ItemStock.Offer> planned = new LinkedHashMap<>();
    for (ItemPlan plan : plans) {
      for (Purchase purchase : plan.purchases()) {
        packs.merge(purchase.supply(), purchase.packs(), Math::addExact);
      }
      plan.order().stock().offers().forEach(offer -> planned.putIfAbsent(offer.key(), offer));
    }
    packs.forEach(
        (key, bought) -> {
          ItemStock.Offer offer = planned.get(key);
          ItemStock.Offer here = offer(now, key);
          if (offer != null && (here == null || here.atMostPacks() < bought)) {
            told.unlessEqual(
                Kind.STOCK,
                item,
                name(offer),
                Math.multiplyExact(bought, offer.soldIn()) + " bought",
                here == null ? PlanChanges.NOT_ON_OFFER : "at most " + here.atMostPieces());
          }
        });
  }

  private void offers(String item, ItemStock planned, ItemStock now) {
    for (ItemStock.Offer offer : now.offers()) {
      ItemStock.Offer before = offer(planned, offer.key());
      told.unlessEqual(
          Kind.PRICE,
          item,
          name(offer),
          before == null ? PlanChanges.NOT_ON_OFFER : PlanChanges.price(before.price()),
          PlanChanges.price(offer.price()));
    }
  }

  private static String name(ItemStock.Offer offer) {
    return (offer.soldIn() == 1 ? "singly" : "packs of " + offer.soldIn())
        + " from "
        + offer.supplier();
  }

  private static ItemStock.@Nullable Offer offer(ItemStock stock, String key) {
    return stock.offers().stream().filter(each -> each.key().equals(key)).findFirst().orElse(null);
  }
}
