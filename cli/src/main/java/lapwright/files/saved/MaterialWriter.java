package lapwright.files.saved;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.measure.WeightRate;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/** Writes one material of a plan: what it rests on, what is bought and cut, the certificate. */
final class MaterialWriter {
  private final Json json;
  private final Shop shop;
  private final LengthStyle style;

  MaterialWriter(Json json, Shop shop, LengthStyle style) {
    this.json = json;
    this.shop = shop;
    this.style = style;
  }

  void write(MaterialPlan plan) {
    MaterialOrder order = plan.order();
    Material material = order.material();
    json.words("material", material.id());
    json.words("name", material.name());
    json.words("objective", objective(order));
    amount("cost", plan.cost(), order);
    amount("cash", plan.cash(), order);
    amount("lowerBound", plan.lowerBound(), order);
    json.words("proof", plan.proof().word());
    json.words("millEnds", material.millEndsGood() ? "good" : "bad");
    json.mm("shortByMm", material.shortBy());
    json.mm("keepOffcutsFromMm", material.keepOffcutsFrom());
    WeightRate weight = material.weight();
    if (weight != null) {
      json.words(
          "weight",
          weight.amount().toPlainString()
              + " "
              + weight.weight().symbol()
              + "/"
              + weight.length().symbol());
    }
    json.words("oneLotPer", material.oneLotPer().word());
    json.mm("depthMm", material.depth());
    if (material.oneWay()) {
      json.truth("oneWay", true);
    }
    json.object("saw", () -> saw(order.saw()));
    json.truth("onHandValued", order.onHandValued());
    json.list("supplies", order.supplies(), this::supply);
    json.list("buy", BoughtLine.of(plan, shop), this::bought);
    Map<String, Supply> byKey =
        order.supplies().stream().collect(Collectors.toMap(Supply::key, Function.identity()));
    json.list("patterns", plan.patterns(), pattern -> pattern(pattern, byKey));
    json.object("account", () -> account(plan.account()));
    CertificateNodes.write(json, "certificate", plan.certificate(), style);
  }

  private static String objective(MaterialOrder order) {
    if (order.fromStockOnly()) {
      return "drawn";
    }
    return order.isPriced() ? "money" : "length";
  }

  private void amount(String field, long value, MaterialOrder order) {
    if (order.isPriced()) {
      json.money(field, new Money(value));
    } else {
      json.mm(field + "Mm", Length.ofUnits(value));
    }
  }

  private void saw(Saw saw) {
    json.words("saw", saw.id());
    json.mm("kerfMm", saw.kerf());
    json.mm("endTrimMm", saw.endTrim());
    json.mm("holdMm", saw.hold());
    json.mm("longestStickMm", saw.longestStick());
    if (!saw.shortestCut().isZero()) {
      json.mm("shortestCutMm", saw.shortestCut());
    }
    if (saw.stack() > 1) {
      json.number("stack", saw.stack());
    }
  }

  /** Where sticks come from; the words of {@code source} are open, more will come. */
  private void supply(Supply supply) {
    json.words("supply", supply.key());
    source(supply);
    json.mm("lengthMm", supply.length());
    if (supply instanceof Supply.Offer offer) {
      Price price = offer.price();
      if (price != null) {
        json.number("price", price.amount());
        json.words("per", price.per().word());
      }
      json.number("soldIn", offer.soldIn());
      if (offer.atMostSticks() != Integer.MAX_VALUE) {
        json.number("atMost", offer.atMostSticks());
      }
      json.wordsIfAny("code", offer.code());
      json.day("quoted", offer.quoted());
      json.day("goodUntil", offer.goodUntil());
    } else if (supply instanceof Supply.Bought bought) {
      json.number("qty", bought.qty());
    } else if (supply instanceof Supply.OnHand onHand) {
      json.number("qty", onHand.qty());
      json.wordsIfAny("place", onHand.place());
    } else if (supply instanceof Supply.RackOffcut offcut) {
      json.words("ends", offcut.ends().word());
      json.wordsIfAny("place", offcut.place());
    }
  }

  private void source(Supply supply) {
    if (supply instanceof Supply.Offer offer) {
      json.words("source", "buy");
      json.wordsIfAny("supplier", offer.supplier());
    } else if (supply instanceof Supply.Bought bought) {
      json.words("source", "bought");
      json.wordsIfAny("supplier", bought.supplier());
    } else if (supply instanceof Supply.OnHand onHand) {
      json.words("source", "on-hand");
      json.wordsIfAny("lot", onHand.lot());
    } else if (supply instanceof Supply.RackOffcut offcut) {
      json.words("source", "rack");
      json.words("rackId", offcut.id());
      json.wordsIfAny("lot", offcut.lot());
    }
  }

  private void bought(BoughtLine line) {
    Supply.Offer offer = line.offer();
    json.words("supply", offer.key());
    json.length("length", offer.length(), style);
    json.number("qty", Math.multiplyExact(line.packs(), offer.soldIn()));
    json.number("packs", line.packs());
    json.wordsIfAny("supplier", offer.supplier());
    json.wordsIfAny("code", offer.code());
    Price price = offer.price();
    if (price != null) {
      json.number("price", price.amount());
      json.words("per", price.per().word());
    }
    json.money("total", line.total());
  }

  private void pattern(Pattern pattern, Map<String, Supply> byKey) {
    json.words("ticket", pattern.ticket());
    json.words("supply", pattern.supply());
    Supply supply = byKey.get(pattern.supply());
    if (supply != null) {
      json.length("stock", supply.length(), style);
      source(supply);
    }
    json.number("times", pattern.times());
    json.list("cuts", pattern.cuts(), this::cut);
    boolean kept = !pattern.offcutNames().isEmpty();
    List<Length> offcuts = pattern.offcut().isZero() ? List.of() : List.of(pattern.offcut());
    json.list(
        "offcuts",
        offcuts,
        length -> {
          json.length("length", length, style);
          json.truth("kept", kept);
          json.wordList("names", pattern.offcutNames());
        });
  }

  private void cut(Cut cut) {
    json.wordsIfAny("mark", cut.mark());
    json.words("job", cut.job());
    json.number("copy", cut.copy());
    json.length("length", cut.length(), style);
    json.number("qty", cut.qty());
    SavedRules.write(json, cut.rules());
    if (!cut.shorter().isZero()) {
      json.mm("shorterMm", cut.shorter());
    }
  }

  private void account(Account account) {
    json.mm("drawn", account.drawn());
    json.mm("finished", account.finished());
    json.mm("laps", account.laps());
    json.mm("kerf", account.kerf());
    json.mm("endTrim", account.endTrim());
    json.mm("offcutsKept", account.offcutsKept());
    json.mm("scrap", account.scrap());
    json.mm("surplus", account.surplus());
    json.mm("shortAllowance", account.shortAllowance());
  }
}
