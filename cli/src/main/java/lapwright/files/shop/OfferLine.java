package lapwright.files.shop;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.measure.Length;
import lapwright.measure.Price;
import org.jspecify.annotations.Nullable;

/**
 * One line of stock that can be bought, from a price sheet or from materials.yaml.
 *
 * @param bare true when only a length was given: its price may stand elsewhere
 * @param faulty true when its price was given and not understood, which has been reported
 */
record OfferLine(
    Place place,
    String supplier,
    Length length,
    @Nullable BigDecimal amount,
    Price.@Nullable Per per,
    int soldIn,
    int atMost,
    String code,
    @Nullable LocalDate quoted,
    @Nullable LocalDate goodUntil,
    boolean bare,
    boolean faulty) {
  static final Map<String, Price.Per> PER = perWords();

  private static Map<String, Price.Per> perWords() {
    Map<String, Price.Per> words = new LinkedHashMap<>();
    for (Price.Per per : Price.Per.values()) {
      words.put(per.word(), per);
    }
    return words;
  }

  static OfferLine bare(Place place, Length length) {
    return new OfferLine(
        place, "", length, null, null, 1, Integer.MAX_VALUE, "", null, null, true, false);
  }

  /**
   * A price has a {@code per}, and a {@code per} has a price; anything else is a fault.
   *
   * @return true when there is a fault
   */
  static boolean checkPrice(
      Place place,
      String pricePath,
      String perPath,
      boolean hasPrice,
      boolean hasPer,
      Findings findings) {
    if (hasPrice && !hasPer) {
      findings.fault(
          place,
          perPath,
          "",
          "a price without per: what does it buy?",
          "Write per: each, pack, ft, m, lb, kg or cwt.");
    } else if (hasPer && !hasPrice) {
      findings.fault(place, pricePath, "", "per without a price", "Give the price, or delete per.");
    }
    return hasPrice != hasPer;
  }

  /** A price that ends before it begins is a fault. */
  static void checkDays(
      Place place,
      String way,
      @Nullable LocalDate quoted,
      @Nullable LocalDate goodUntil,
      Findings findings) {
    if (quoted != null && goodUntil != null && goodUntil.isBefore(quoted)) {
      findings.fault(
          place,
          way,
          goodUntil.toString(),
          "before the day of the quotation, " + quoted,
          "Correct one of the two days.");
    }
  }
}
