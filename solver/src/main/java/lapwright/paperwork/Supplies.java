package lapwright.paperwork;

import java.util.HashMap;
import java.util.Map;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;

/** The supplies of one material by their keys. */
final class Supplies {
  private final String material;
  private final Map<String, Supply> byKey = new HashMap<>();

  private Supplies(MaterialOrder order) {
    material = order.material().id();
    order.supplies().forEach(supply -> byKey.put(supply.key(), supply));
  }

  static Supplies of(MaterialOrder order) {
    return new Supplies(order);
  }

  Supply named(String key) {
    Supply supply = byKey.get(key);
    if (supply == null) {
      throw new IllegalArgumentException("material " + material + " has no supply " + key);
    }
    return supply;
  }

  Supply.Offer offer(String key) {
    if (named(key) instanceof Supply.Offer offer) {
      return offer;
    }
    throw new IllegalArgumentException("material " + material + ": " + key + " is not for sale");
  }
}
