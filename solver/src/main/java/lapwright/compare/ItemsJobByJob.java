package lapwright.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.ItemBuying;
import lapwright.plan.ItemPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;

/** Buys an item job by job, each from what the jobs before it left. */
final class ItemsJobByJob {
  private ItemsJobByJob() {}

  /**
   * What combining saves. Where some pieces cannot be had at all, both ways lack them; then nothing
   * is compared.
   */
  static ItemSaving saving(ItemPlan together) {
    Map<String, List<ItemOrder.Need>> byJob = new LinkedHashMap<>();
    for (ItemOrder.Need need : together.order().needs()) {
      byJob.computeIfAbsent(need.job(), job -> new ArrayList<>()).add(need);
    }
    ItemStock stock = together.order().stock();
    int leftOver = together.order().leftOver();
    long cost = 0;
    for (List<ItemOrder.Need> needs : byJob.values()) {
      ItemPlan plan = ItemBuying.buy(new ItemOrder(stock, leftOver, needs));
      cost = Math.addExact(cost, plan.cost());
      leftOver = plan.leftOver();
      stock = after(List.of(plan), stock);
    }
    boolean comparable = together.missing() == 0 && leftOver >= 0;
    return new ItemSaving(
        together.item(),
        together.isPriced(),
        List.copyOf(byJob.keySet()),
        together.cost(),
        comparable ? cost : together.cost());
  }

  /** What can still be had once these plans are carried out. */
  static ItemStock after(List<ItemPlan> plans, ItemStock stock) {
    Map<String, Integer> packs = new LinkedHashMap<>();
    int onHand = stock.onHand();
    for (ItemPlan plan : plans) {
      onHand = Math.max(0, onHand - plan.fromOnHand());
      for (Purchase purchase : plan.purchases()) {
        packs.merge(purchase.supply(), purchase.packs(), Math::addExact);
      }
    }
    List<ItemStock.Offer> offers = new ArrayList<>();
    for (ItemStock.Offer offer : stock.offers()) {
      int pieces = Math.multiplyExact(packs.getOrDefault(offer.key(), 0), offer.soldIn());
      offers.add(
          offer.atMostPieces() == Integer.MAX_VALUE
              ? offer
              : offer.atMost(Math.max(0, offer.atMostPieces() - pieces)));
    }
    return new ItemStock(stock.item(), offers, onHand);
  }
}
