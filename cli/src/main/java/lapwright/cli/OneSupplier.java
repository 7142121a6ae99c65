package lapwright.cli;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import lapwright.files.OrderInput;
import lapwright.files.source.Nearest;
import lapwright.shop.ItemStock;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** Leaves out the offers of all suppliers but some. */
final class OneSupplier {
  private OneSupplier() {}

  /**
   * What is to be planned, with what those suppliers offer.
   *
   * @param names all suppliers when empty
   * @return null when a name is unknown, which is told
   */
  static @Nullable Wanted only(List<String> names, OrderInput input, Desk desk) {
    Wanted orders = Wanted.of(input);
    if (names.isEmpty()) {
      return orders;
    }
    Set<String> known = known(input);
    for (String name : names) {
      if (!known.contains(name)) {
        desk.tell(
            "lapwright: --only-supplier "
                + name
                + ": no such supplier. "
                + Nearest.advice(name, known, "There are: " + String.join(", ", known) + "."));
        return null;
      }
    }
    return orders.onlyFrom(names);
  }

  private static Set<String> known(OrderInput input) {
    Set<String> known = new TreeSet<>();
    input.order().shop().suppliers().stream().map(Supplier::id).forEach(known::add);
    for (List<Supply> supplies : input.order().supplies().values()) {
      for (Supply supply : supplies) {
        if (supply instanceof Supply.Offer offer && !offer.supplier().isEmpty()) {
          known.add(offer.supplier());
        }
      }
    }
    for (ItemStock item : input.order().items().values()) {
      item.offers().forEach(offer -> known.add(offer.supplier()));
    }
    return known;
  }
}
