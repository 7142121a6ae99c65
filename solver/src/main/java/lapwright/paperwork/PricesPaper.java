package lapwright.paperwork;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.shop.ItemStock;
import lapwright.shop.Material;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What each material costs over all suppliers, the cheapest by length first; and each item, the
 * cheapest by the piece first.
 *
 * @param shop the shop's own facts
 * @param today the day by which prices are good or out of date
 * @param materials that can be bought, in the order of the shop
 * @param items that can be bought, by name
 */
public record PricesPaper(
    Shop shop, LocalDate today, List<MaterialPrices> materials, List<ItemPrices> items) {
  public PricesPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(today);
    materials = List.copyOf(materials);
    items = List.copyOf(items);
  }

  /**
   * The offers of one item.
   *
   * @param lines by price a piece, then by supplier and pack
   */
  public record ItemPrices(String item, List<ItemPriceLine> lines) {
    public ItemPrices {
      Objects.requireNonNull(item);
      lines = List.copyOf(lines);
    }
  }

  /**
   * One offer of an item.
   *
   * @param each price of a piece, rounded once to 1/10,000; null without a price
   */
  public record ItemPriceLine(ItemStock.Offer offer, @Nullable Money each, Standing standing) {
    public ItemPriceLine {
      Objects.requireNonNull(offer);
      Objects.requireNonNull(standing);
    }
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
   * @param only ids of the materials and items that are asked for; all when empty
   */
  public static PricesPaper of(ShopOrder order, LocalDate today, List<String> only) {
    List<MaterialPrices> materials = new ArrayList<>();
    for (Material material : order.materials()) {
      Map<String, Saw> saws = order.saws();
      List<PriceLine> lines =
          order.delivered(material).stream()
              .filter(Supply.Offer.class::isInstance)
              .map(Supply.Offer.class::cast)
              .map(offer -> line(material, saws.get(material.saw()), offer, today))
              .sorted(CHEAPEST_FIRST)
              .toList();
      if (!lines.isEmpty() && (only.isEmpty() || only.contains(material.id()))) {
        materials.add(new MaterialPrices(material.id(), material.name(), lines));
      }
    }
    List<ItemPrices> items = new ArrayList<>();
    for (ItemStock item : new TreeMap<>(order.items()).values()) {
      if (!item.offers().isEmpty() && (only.isEmpty() || only.contains(item.item()))) {
        items.add(
            new ItemPrices(
                item.item(),
                item.offers().stream()
                    .sorted(CHEAPEST_PIECE_FIRST)
                    .map(offer -> line(offer, today))
                    .toList()));
      }
    }
    return new PricesPaper(order.shop(), today, materials, items);
  }

  private static final Comparator<ItemStock.Offer> CHEAPEST_PIECE_FIRST =
      Comparator.<ItemStock.Offer>comparingInt(offer -> offer.price() == null ? 1 : 0)
          .thenComparing(PricesPaper::byPriceOfPiece)
          .thenComparing(ItemStock.Offer::supplier)
          .thenComparing(ItemStock.Offer::soldIn);

  private static int byPriceOfPiece(ItemStock.Offer a, ItemStock.Offer b) {
    Money priceOfA = a.packPrice();
    Money priceOfB = b.packPrice();
    return priceOfA == null || priceOfB == null
        ? 0
        : BigInteger.valueOf(priceOfA.tenThousandths())
            .multiply(BigInteger.valueOf(b.soldIn()))
            .compareTo(
                BigInteger.valueOf(priceOfB.tenThousandths())
                    .multiply(BigInteger.valueOf(a.soldIn())));
  }

  private static ItemPriceLine line(ItemStock.Offer offer, LocalDate today) {
    Money pack = offer.packPrice();
    return new ItemPriceLine(
        offer,
        pack == null
            ? null
            : Money.rounded(
                BigInteger.valueOf(pack.tenThousandths()), BigInteger.valueOf(offer.soldIn())),
        standing(pack != null, offer.goodUntil(), today));
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
        standing(price != null, offer.goodUntil(), today),
        longest == null || !offer.length().isLongerThan(longest));
  }

  private static @Nullable Money per(@Nullable Money price, Supply.Offer offer, long units) {
    return price == null
        ? null
        : Money.rounded(
            BigInteger.valueOf(price.tenThousandths()).multiply(BigInteger.valueOf(units)),
            lengthAtOnce(offer));
  }

  private static Standing standing(boolean priced, @Nullable LocalDate last, LocalDate today) {
    if (!priced) {
      return Standing.NO_PRICE;
    }
    if (last == null) {
      return Standing.NO_LAST_DAY;
    }
    return last.isBefore(today) ? Standing.OUT_OF_DATE : Standing.GOOD;
  }
}
