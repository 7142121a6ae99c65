package lapwright.paperwork;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.shop.Material;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What each material costs over all suppliers, the cheapest by length first.
 *
 * @param shop the shop's own facts
 * @param today the day by which prices are good or out of date
 * @param materials that can be bought, in the order of the shop
 */
public record PricesPaper(Shop shop, LocalDate today, List<MaterialPrices> materials) {
  public PricesPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(today);
    materials = List.copyOf(materials);
  }

  /**
   * The offers of one material.
   *
   * @param material id
   * @param name what people call it
   * @param lines by price per length, then by length, supplier and pack; without prices by length
   */
  public record MaterialPrices(String material, String name, List<PriceLine> lines) {
    public MaterialPrices {
      Objects.requireNonNull(material);
      Objects.requireNonNull(name);
      lines = List.copyOf(lines);
    }
  }

  /** Whether a price still holds. */
  public enum Standing {
    GOOD("good"),
    OUT_OF_DATE("out of date"),
    /** Nobody wrote until when it holds. */
    NO_LAST_DAY("no last day given"),
    /** The offer has no price at all. */
    NO_PRICE("no price");

    private final String word;

    Standing(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /**
   * One offer.
   *
   * @param soldAtOnce price of a stick, or of a pack where packs are sold; null without a price
   * @param perFoot the same for each foot, rounded once to 1/10,000; null without a price
   * @param perMetre the same for each metre
   * @param sawTakesIt false when the stick is longer than the saw's longest
   */
  public record PriceLine(
      Supply.Offer offer,
      @Nullable Money soldAtOnce,
      @Nullable Money perFoot,
      @Nullable Money perMetre,
      Standing standing,
      boolean sawTakesIt) {
    public PriceLine {
      Objects.requireNonNull(offer);
      Objects.requireNonNull(standing);
    }
  }

  /**
   * The prices of a shop.
   *
   * @param only ids of the materials that are asked for; all when empty
   */
  public static PricesPaper of(ShopOrder order, LocalDate today, List<String> only) {
    List<MaterialPrices> materials = new ArrayList<>();
    for (Material material : order.materials()) {
      Map<String, Saw> saws = order.saws();
      List<PriceLine> lines =
          order.supplies().getOrDefault(material.id(), List.of()).stream()
              .filter(Supply.Offer.class::isInstance)
              .map(Supply.Offer.class::cast)
              .map(offer -> line(material, saws.get(material.saw()), offer, today))
              .sorted(CHEAPEST_FIRST)
              .toList();
      if (!lines.isEmpty() && (only.isEmpty() || only.contains(material.id()))) {
        materials.add(new MaterialPrices(material.id(), material.name(), lines));
      }
    }
    return new PricesPaper(order.shop(), today, materials);
  }

  private static final Comparator<PriceLine> CHEAPEST_FIRST =
      Comparator.<PriceLine>comparingInt(line -> line.soldAtOnce() == null ? 1 : 0)
          .thenComparing(PricesPaper::byPricePerLength)
          .thenComparing(line -> line.offer().length())
          .thenComparing(line -> line.offer().supplier())
          .thenComparing(line -> line.offer().soldIn());

  /** Exact: prices are compared crosswise, not by what is printed. */
  private static int byPricePerLength(PriceLine a, PriceLine b) {
    Money priceOfA = a.soldAtOnce();
    Money priceOfB = b.soldAtOnce();
    if (priceOfA == null || priceOfB == null) {
      return 0;
    }
    return BigInteger.valueOf(priceOfA.tenThousandths())
        .multiply(lengthAtOnce(b.offer()))
        .compareTo(BigInteger.valueOf(priceOfB.tenThousandths()).multiply(lengthAtOnce(a.offer())));
  }

  private static BigInteger lengthAtOnce(Supply.Offer offer) {
    return BigInteger.valueOf(offer.length().units()).multiply(BigInteger.valueOf(offer.soldIn()));
  }

  private static PriceLine line(
      Material material, @Nullable Saw saw, Supply.Offer offer, LocalDate today) {
    Money price =
        offer.price() == null
            ? null
            : offer.price().ofSticks(offer.length(), offer.soldIn(), material.weight());
    Length longest = saw == null ? null : saw.longestStick();
    return new PriceLine(
        offer,
        price,
        per(price, offer, Length.UNITS_PER_FOOT),
        per(price, offer, 1000 * Length.UNITS_PER_MM),
        standing(offer, today),
        longest == null || !offer.length().isLongerThan(longest));
  }

  private static @Nullable Money per(@Nullable Money price, Supply.Offer offer, long units) {
    return price == null
        ? null
        : Money.rounded(
            BigInteger.valueOf(price.tenThousandths()).multiply(BigInteger.valueOf(units)),
            lengthAtOnce(offer));
  }

  private static Standing standing(Supply.Offer offer, LocalDate today) {
    LocalDate last = offer.goodUntil();
    if (offer.price() == null) {
      return Standing.NO_PRICE;
    }
    if (last == null) {
      return Standing.NO_LAST_DAY;
    }
    return last.isBefore(today) ? Standing.OUT_OF_DATE : Standing.GOOD;
  }
}
