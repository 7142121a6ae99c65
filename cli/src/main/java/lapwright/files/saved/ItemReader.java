package lapwright.files.saved;

import java.util.List;
import java.util.Map;
import lapwright.measure.Price;
import lapwright.plan.ItemPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;

/** Reads one item of a saved plan. */
final class ItemReader {
  private final Map<String, List<ItemOrder.Need>> needs;

  ItemReader(Map<String, List<ItemOrder.Need>> needs) {
    this.needs = needs;
  }

  ItemPlan read(PlanFields fields) {
    String item = fields.words("item");
    List<ItemStock.Offer> offers = fields.list("supplies", ItemReader::offer);
    List<Purchase> purchases =
        fields.list(
            "buy",
            line ->
                PlanReader.guarded(
                    line, "packs", () -> new Purchase(line.words("supply"), line.count("packs"))));
    return PlanReader.guarded(
        fields,
        "item",
        () -> {
          ItemOrder order =
              new ItemOrder(
                  new ItemStock(item, offers, fields.count("onHand")),
                  Math.toIntExact(fields.number("leftOver")),
                  needs.getOrDefault(item, List.of()));
          return new ItemPlan(
              order,
              fields.count("fromOnHand"),
              purchases,
              fields.count("missing"),
              order.stock().isPriced()
                  ? fields.money("cost").tenThousandths()
                  : fields.number("costPieces"));
        });
  }

  private static ItemStock.Offer offer(PlanFields fields) {
    ItemStock.Offer offer =
        PlanReader.guarded(
            fields,
            "supply",
            () ->
                new ItemStock.Offer(
                    fields.wordsIfAny("supplier"),
                    fields.has("price")
                        ? new Price(fields.decimal("price"), fields.word("per", Words.PER))
                        : null,
                    fields.count("soldIn"),
                    fields.has("atMost") ? fields.count("atMost") : Integer.MAX_VALUE,
                    fields.wordsIfAny("code"),
                    fields.day("quoted"),
                    fields.day("goodUntil")));
    if (!offer.key().equals(fields.words("supply"))) {
      throw fields.damaged("supply", fields.words("supply"), "should be " + offer.key());
    }
    return offer;
  }
}
