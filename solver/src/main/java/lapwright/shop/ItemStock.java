package lapwright.shop;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import lapwright.measure.Money;
import lapwright.measure.Price;
import org.jspecify.annotations.Nullable;

/**
 * A counted good, such as a screw or a closure, with all that it can be had from.
 *
 * @param item the name that jobs and price sheets use
 * @param offers in the order of the files; all of them priced or none
 * @param onHand pieces that lie in the shop
 */
public record ItemStock(String item, List<Offer> offers, int onHand) {
  public ItemStock {
    Objects.requireNonNull(item);
    offers = List.copyOf(offers);
    if (onHand < 0) {
      throw new IllegalArgumentException("item " + item + ": " + onHand + " on hand");
    }
    Set<String> keys = new HashSet<>();
    for (Offer offer : offers) {
      if (!keys.add(offer.key())) {
        throw new IllegalArgumentException("item " + item + ": two offers are " + offer.key());
      }
      if ((offer.price() == null) != (offers.get(0).price() == null)) {
        throw new IllegalArgumentException("item " + item + ": some prices are missing");
      }
    }
  }

  /** An item that nobody sells and of which nothing is there. */
  public static ItemStock unknown(String item) {
    return new ItemStock(item, List.of(), 0);
  }

  /** True when offers have prices, so that cost is money. */
  public boolean isPriced() {
    return !offers.isEmpty() && offers.get(0).price() != null;
  }

  /** The same with the offers of these suppliers only. */
  public ItemStock onlyFrom(Collection<String> suppliers) {
    return new ItemStock(
        item,
        offers.stream().filter(offer -> suppliers.contains(offer.supplier())).toList(),
        onHand);
  }

  /**
   * What one supplier asks.
   *
   * @param supplier whom from
   * @param price by the piece or by the pack; null when the item has no prices
   * @param soldIn pieces a pack, 1 when sold singly
   * @param atMostPieces the most pieces in an order; {@link Integer#MAX_VALUE} without a limit
   * @param code the supplier's own code; empty when not given
   * @param quoted the day of the price; null when not given
   * @param goodUntil the last day on which the price holds; null when not given
   */
  public record Offer(
      String supplier,
      @Nullable Price price,
      int soldIn,
      int atMostPieces,
      String code,
      @Nullable LocalDate quoted,
      @Nullable LocalDate goodUntil) {
    public Offer {
      Objects.requireNonNull(supplier);
      Objects.requireNonNull(code);
      if (soldIn < 1 || atMostPieces < 0) {
        throw new IllegalArgumentException(
            "sold in packs of " + soldIn + ", at most " + atMostPieces);
      }
      if (price != null && price.per() != Price.Per.EACH && price.per() != Price.Per.PACK) {
        throw new IllegalArgumentException("an item sold by the " + price.per().word());
      }
    }

    /** Unique within the item; stable as long as the price sheets are. */
    public String key() {
      return "buy:" + supplier + ":" + soldIn;
    }

    /** Whole packs that can be had; {@link Integer#MAX_VALUE} without a limit. */
    public int atMostPacks() {
      return atMostPieces == Integer.MAX_VALUE ? atMostPieces : atMostPieces / soldIn;
    }

    /** The price of a pack, or of a piece where it is sold singly; null without a price. */
    public @Nullable Money packPrice() {
      return price == null ? null : price.ofPieces(soldIn);
    }

    /** The same with another limit. */
    public Offer atMost(int pieces) {
      return new Offer(supplier, price, soldIn, pieces, code, quoted, goodUntil);
    }
  }
}
