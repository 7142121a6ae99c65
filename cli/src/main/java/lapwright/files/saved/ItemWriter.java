package lapwright.files.saved;

import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.plan.ItemPlan;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.ItemStock;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/** Writes one item of a plan: what it rests on, and what is bought. */
final class ItemWriter {
  private final Json json;
  private final Shop shop;

  ItemWriter(Json json, Shop shop) {
    this.json = json;
    this.shop = shop;
  }

  void write(ItemPlan plan) {
    json.words("item", plan.item());
    if (plan.isPriced()) {
      json.money("cost", new Money(plan.cost()));
      json.money("lowerBound", new Money(plan.cost()));
    } else {
      json.number("costPieces", plan.cost());
    }
    json.words("proof", Proof.PROVED.word());
    json.number("wanted", plan.order().wanted());
    json.number("leftOver", plan.order().leftOver());
    json.number("onHand", plan.order().stock().onHand());
    json.number("fromOnHand", plan.fromOnHand());
    json.number("missing", plan.missing());
    json.list("supplies", plan.order().stock().offers(), this::offer);
    json.list("buy", plan.purchases(), purchase -> bought(plan, purchase));
  }

  private void offer(ItemStock.Offer offer) {
    json.words("supply", offer.key());
    terms(offer);
    if (offer.atMostPieces() != Integer.MAX_VALUE) {
      json.number("atMost", offer.atMostPieces());
    }
    json.day("quoted", offer.quoted());
    json.day("goodUntil", offer.goodUntil());
  }

  private void terms(ItemStock.Offer offer) {
    json.wordsIfAny("supplier", offer.supplier());
    json.wordsIfAny("code", offer.code());
    Price price = offer.price();
    if (price != null) {
      json.number("price", price.amount());
      json.words("per", price.per().word());
    }
    json.number("soldIn", offer.soldIn());
  }

  private void bought(ItemPlan plan, Purchase purchase) {
    json.words("supply", purchase.supply());
    for (ItemStock.Offer offer : plan.order().stock().offers()) {
      if (offer.key().equals(purchase.supply())) {
        json.number("qty", Math.multiplyExact(purchase.packs(), offer.soldIn()));
        json.number("packs", purchase.packs());
        terms(offer);
        json.money("total", total(offer, purchase, shop));
      }
    }
  }

  /** As the supplier bills all that is bought of an item; nothing without a price. */
  static Money total(ItemPlan plan, Shop shop) {
    Money sum = Money.ZERO;
    for (Purchase purchase : plan.purchases()) {
      for (ItemStock.Offer offer : plan.order().stock().offers()) {
        Money total = offer.key().equals(purchase.supply()) ? total(offer, purchase, shop) : null;
        sum = total == null ? sum : sum.plus(total);
      }
    }
    return sum;
  }

  private static @Nullable Money total(ItemStock.Offer offer, Purchase purchase, Shop shop) {
    Money pack = offer.packPrice();
    return pack == null ? null : shop.supplier(offer.supplier()).billed(pack, purchase.packs());
  }
}
