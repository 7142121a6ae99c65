package lapwright.files.saved;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Purchase;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What is bought of one offer.
 *
 * @param total as the supplier bills it; null without a price
 */
record BoughtLine(Supply.Offer offer, int packs, @Nullable Money total) {
  static List<BoughtLine> of(MaterialPlan plan, Shop shop) {
    List<BoughtLine> lines = new ArrayList<>();
    for (Purchase purchase : plan.purchases()) {
      for (Supply supply : plan.order().supplies()) {
        if (supply instanceof Supply.Offer offer && offer.key().equals(purchase.supply())) {
          Price price = offer.price();
          Money sold =
              price == null
                  ? null
                  : price.ofSticks(
                      offer.length(), offer.soldIn(), plan.order().material().weight());
          lines.add(
              new BoughtLine(
                  offer,
                  purchase.packs(),
                  sold == null
                      ? null
                      : shop.supplier(offer.supplier()).billed(sold, purchase.packs())));
        }
      }
    }
    return lines;
  }
}
