package lapwright.shop;

import java.util.Objects;

/**
 * What holds for everything in the shop.
 *
 * @param name the shop's own name
 * @param currency code of the currency; empty when nothing has a price
 * @param units how lengths are printed
 * @param onHandValued false when sticks on hand cost nothing to use
 */
public record Shop(String name, String currency, Units units, boolean onHandValued) {
  public Shop {
    Objects.requireNonNull(name);
    Objects.requireNonNull(currency);
    Objects.requireNonNull(units);
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
