package lapwright.files.answers;

import lapwright.files.saved.Json;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.PricesPaper;
import lapwright.paperwork.PricesPaper.ItemPriceLine;
import lapwright.paperwork.PricesPaper.PriceLine;
import lapwright.shop.ItemStock;
import lapwright.shop.Supply;

/** What each material costs over all suppliers. */
public final class PricesJson {
  private PricesJson() {}

  public static String text(PricesPaper paper, LengthStyle units) {
    Json json = new Json();
    return json.text(
        () -> {
          json.wordsIfAny("currency", paper.shop().currency());
          json.day("date", paper.today());
          json.list(
              "materials",
              paper.materials(),
              material -> {
                json.words("material", material.material());
                json.list("offers", material.lines(), line -> offer(json, line, units));
              });
          json.list(
              "items",
              paper.items(),
              item -> {
                json.words("item", item.item());
                json.list("offers", item.lines(), line -> offer(json, line));
              });
        });
  }

  private static void offer(Json json, PriceLine line, LengthStyle units) {
    Supply.Offer offer = line.offer();
    json.wordsIfAny("supplier", offer.supplier());
    json.wordsIfAny("code", offer.code());
    json.length("length", offer.length(), units);
    json.number("soldIn", offer.soldIn());
    if (offer.atMostSticks() != Integer.MAX_VALUE) {
      json.number("atMost", offer.atMostSticks());
    }
    if (offer.price() != null) {
      json.number("price", offer.price().amount());
      json.words("per", offer.price().per().word());
    }
    json.money("soldAtOnce", line.soldAtOnce());
    json.money("perFoot", line.perFoot());
    json.money("perMetre", line.perMetre());
    json.day("quoted", offer.quoted());
    json.day("goodUntil", offer.goodUntil());
    json.words("standing", line.standing().word());
    json.truth("sawTakesIt", line.sawTakesIt());
  }

  private static void offer(Json json, ItemPriceLine line) {
    ItemStock.Offer offer = line.offer();
    json.words("supplier", offer.supplier());
    json.wordsIfAny("code", offer.code());
    json.number("soldIn", offer.soldIn());
    if (offer.atMostPieces() != Integer.MAX_VALUE) {
      json.number("atMost", offer.atMostPieces());
    }
    if (offer.price() != null) {
      json.number("price", offer.price().amount());
      json.words("per", offer.price().per().word());
    }
    json.money("soldAtOnce", offer.packPrice());
    json.money("each", line.each());
    json.day("quoted", offer.quoted());
    json.day("goodUntil", offer.goodUntil());
    json.words("standing", line.standing().word());
  }
}
