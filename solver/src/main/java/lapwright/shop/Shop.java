package lapwright.shop;

import java.util.List;
import java.util.Objects;

/**
 * What holds for everything in the shop.
 *
 * @param name the shop's own name
 * @param currency code of the currency; empty when nothing has a price
 * @param units how lengths are printed
 * @param onHandValued false when sticks on hand cost nothing to use
 * @param suppliers terms of the suppliers that are known, each named once
 */
public record Shop(
    String name, String currency, Units units, boolean onHandValued, List<Supplier> suppliers) {
  public Shop {
    Objects.requireNonNull(name);
    Objects.requireNonNull(currency);
    Objects.requireNonNull(units);
    suppliers = List.copyOf(suppliers);
    if (suppliers.stream().map(Supplier::id).distinct().count() != suppliers.size()) {
      throw new IllegalArgumentException("a supplier is named twice");
    }
  }

  /** A shop that knows no supplier's terms. */
  public Shop(String name, String currency, Units units, boolean onHandValued) {
    this(name, currency, units, onHandValued, List.of());
  }

  /** The supplier's terms; of an unknown one only the name. */
  public Supplier supplier(String id) {
    return suppliers.stream()
        .filter(supplier -> supplier.id().equals(id))
        .findFirst()
        .orElseGet(() -> Supplier.named(id));
  }

  /** How lengths are printed; both kinds are always read. */
  public enum Units {
    FEET_INCHES("ft-in"),
    MILLIMETRES("mm");

    private final String word;

    Units(String word) {
      this.word = word;
    }

    /** The word that files use. */
    public String word() {
      return word;
    }
  }
}
