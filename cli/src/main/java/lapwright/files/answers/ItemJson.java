package lapwright.files.answers;

import lapwright.files.saved.Json;
import lapwright.measure.Money;
import lapwright.paperwork.ItemPaper;
import lapwright.plan.ItemPlan;

/** Where the pieces of one item go. */
public final class ItemJson {
  private ItemJson() {}

  public static String text(ItemPaper paper) {
    Json json = new Json();
    return json.text(
        () -> {
          json.words("item", paper.item());
          json.wordsIfAny("currency", paper.shop().currency());
          json.list("orders", paper.orders(), order -> order(json, order));
          json.object(
              "oneMore",
              () -> {
                json.truth("canBeHad", !paper.oneMoreIsMissing());
                if (paper.last().isPriced()) {
                  json.money("costs", new Money(paper.oneMoreCosts()));
                } else {
                  json.number("costsPieces", paper.oneMoreCosts());
                }
              });
        });
  }

  private static void order(Json json, ItemPlan order) {
    json.list(
        "needs",
        order.order().needs(),
        need -> {
          json.words("job", need.job());
          json.number("copies", need.copies());
          json.number("qty", need.qty());
        });
    json.number("leftOverBefore", order.order().leftOver());
    json.number("fromOnHand", order.fromOnHand());
    json.number("bought", order.bought());
    json.number("missing", order.missing());
    json.number("leftOver", order.leftOver());
  }
}
