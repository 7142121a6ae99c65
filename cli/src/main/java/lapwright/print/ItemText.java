package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.ItemPaper;
import lapwright.plan.ItemPlan;
import lapwright.plan.Purchase;
import lapwright.print.Table.Kind;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;

/** Where the pieces of one item go, as text. */
public final class ItemText {
  private final ItemPaper paper;
  private final MoneyStyle money;
  private final Page page;

  private ItemText(ItemPaper paper, Style style) {
    this.paper = paper;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
  }

  public static String render(ItemPaper paper, Style style) {
    return new ItemText(paper, style).write();
  }

  private String write() {
    page.strongText(
        paper.item()
            + ": "
            + Phrases.count(paper.needed(), "piece", "pieces")
            + ", counted; no ticket cuts them.");
    page.blank();
    Table table =
        new Table(page)
            .column("Job", Kind.NAME)
            .column("Copies", Kind.NUMBER)
            .column("Each", Kind.NUMBER)
            .column("Pieces", Kind.NUMBER);
    for (ItemPlan order : paper.orders()) {
      for (ItemOrder.Need need : order.order().needs()) {
        table.row(
            List.of(
                need.job(),
                MoneyStyle.grouped(need.copies()),
                MoneyStyle.grouped(need.qty()),
                MoneyStyle.grouped(need.total())));
      }
    }
    table.print(2);
    for (ItemPlan order : paper.orders()) {
      page.text(comesFrom(order), 2, 4);
    }
    page.text("One more: " + oneMore(), 2, 4);
    return page.printed();
  }

  private String comesFrom(ItemPlan order) {
    List<String> parts = new ArrayList<>();
    if (order.order().leftOver() > 0) {
      parts.add(MoneyStyle.grouped(order.order().leftOver()) + " left over of what was bought");
    }
    if (order.fromOnHand() > 0) {
      parts.add(MoneyStyle.grouped(order.fromOnHand()) + " on hand");
    }
    for (Purchase purchase : order.purchases()) {
      for (ItemStock.Offer offer : order.order().stock().offers()) {
        if (offer.key().equals(purchase.supply())) {
          parts.add(bought(offer, purchase.packs()));
        }
      }
    }
    if (order.missing() > 0) {
      parts.add(MoneyStyle.grouped(order.missing()) + " cannot be had");
    }
    return "From: "
        + (parts.isEmpty() ? "nothing" : Phrases.list(parts))
        + ". "
        + MoneyStyle.grouped(Math.max(0, order.leftOver()))
        + " will be left.";
  }

  private static String bought(ItemStock.Offer offer, int packs) {
    return (offer.soldIn() == 1
            ? MoneyStyle.grouped(packs)
            : Phrases.count(packs, "pack", "packs") + " of " + MoneyStyle.grouped(offer.soldIn()))
        + " from "
        + offer.supplier();
  }

  private String oneMore() {
    if (paper.oneMoreIsMissing()) {
      return "cannot be had.";
    }
    long costs = paper.oneMoreCosts();
    if (costs == 0) {
      return "costs nothing, it is there or in what is bought.";
    }
    return "costs "
        + (paper.last().isPriced()
            ? Phrases.unrounded(new Money(costs), money)
            : Phrases.count(costs, "piece", "pieces") + " to buy")
        + ". Proved, like the plan.";
  }
}
