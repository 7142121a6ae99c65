package lapwright.paperwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.measure.Money;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderPaper.ItemLine;
import lapwright.paperwork.OrderPaper.ItemsThere;
import lapwright.paperwork.OrderPaper.MissingItem;
import lapwright.plan.ItemPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/** Gathers what an order's paper says of items. */
final class ItemLines {
  private final Shop shop;
  private final @Nullable LocalDate today;
  private final Map<String, List<ItemLine>> bySupplier = new TreeMap<>();
  private final List<ItemsThere> there = new ArrayList<>();
  private final List<MissingItem> missing = new ArrayList<>();
  private final List<Attention> outOfDate = new ArrayList<>();

  /**
   * @param today the day by which prices are out of date; null when that is not asked
   */
  ItemLines(Shop shop, @Nullable LocalDate today) {
    this.shop = shop;
    this.today = today;
  }

  static ItemStock.Offer offer(ItemPlan plan, String key) {
    return plan.order().stock().offers().stream()
        .filter(offer -> offer.key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  void add(ItemPlan plan) {
    for (Purchase purchase : plan.purchases()) {
      ItemStock.Offer offer = offer(plan, purchase.supply());
      Money pack = offer.packPrice();
      int packs = purchase.packs();
      bySupplier
          .computeIfAbsent(offer.supplier(), name -> new ArrayList<>())
          .add(
              new ItemLine(
                  plan.item(),
                  offer,
                  packs,
                  pack == null ? null : pack.times(packs),
                  pack == null ? null : shop.supplier(offer.supplier()).billed(pack, packs)));
      LocalDate last = offer.goodUntil();
      if (today != null && last != null && last.isBefore(today)) {
        outOfDate.add(
            new Attention(
                "the price of "
                    + plan.item()
                    + " from "
                    + offer.supplier()
                    + " was good until "
                    + last,
                "ask for today's price before you order"));
      }
    }
    int needed = plan.order().needs().stream().mapToInt(ItemOrder.Need::total).sum();
    int leftOver = Math.max(0, Math.min(needed, plan.order().leftOver()));
    if (leftOver > 0 || plan.fromOnHand() > 0) {
      there.add(new ItemsThere(plan.item(), leftOver, plan.fromOnHand()));
    }
    if (plan.missing() > 0) {
      missing.add(
          new MissingItem(
              plan.item(),
              plan.missing(),
              !plan.order().stock().offers().isEmpty(),
              plan.order().needs().stream().map(ItemOrder.Need::job).distinct().sorted().toList()));
    }
  }

  Map<String, List<ItemLine>> bySupplier() {
    return bySupplier;
  }

  List<ItemsThere> there() {
    return there;
  }

  List<MissingItem> missing() {
    return missing;
  }

  /** What to do about items that cannot be had. */
  List<Attention> missingLines() {
    return missing.stream()
        .map(
            item ->
                new Attention(
                    item.pieces()
                        + " of "
                        + item.item()
                        + (item.jobs().isEmpty() ? "" : " for " + String.join(", ", item.jobs()))
                        + " are not on this order, "
                        + (item.sold()
                            ? "for no more can be had of those who sell it"
                            : "for no price sheet sells it"),
                    item.sold()
                        ? "get another supplier's price into prices, or raise at-most there"
                        : "put a line for it, without a length, into the price sheet of who sells"
                            + " it, or correct its name in the job"))
        .toList();
  }

  List<Attention> outOfDate() {
    return outOfDate;
  }
}
