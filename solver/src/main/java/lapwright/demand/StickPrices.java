package lapwright.demand;

import java.math.BigInteger;
import java.util.Optional;
import java.util.function.Predicate;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;

/**
 * What sticks cost: in 1/10,000 of the currency where the material has prices, else in units of
 * length, a stick's stock length standing for its price. Where nothing is bought, each stick and
 * each offcut costs its length as it is counted.
 */
public final class StickPrices {
  private final MaterialOrder order;
  private final boolean priced;

  public StickPrices(MaterialOrder order) {
    this.order = order;
    this.priced = order.isPriced();
  }

  /** Cost of one pack of an offer, of one stick on hand, or of an offcut. */
  public long ofPack(Supply supply) {
    if (order.fromStockOnly()) {
      return UsableStick.countedLength(order.material(), supply).units();
    }
    if (supply instanceof Supply.Offer offer) {
      return packOf(offer);
    }
    if (supply instanceof Supply.OnHand onHand && order.onHandValued()) {
      return worth(onHand.length());
    }
    return 0;
  }

  /**
   * What a stick of this length costs today: singly at the cheapest offer of just this length, else
   * at the material's cheapest price per length. Rounded once, half up, after the price of a pack.
   * Unpriced materials: its length.
   */
  public long worth(Length length) {
    if (!priced) {
      return length.units();
    }
    return cheapestPerLength(offer -> offer.length().equals(length))
        .map(offer -> share(offer, length))
        .orElseGet(() -> atCheapestRate(length));
  }

  /** The same at the material's cheapest price per length, whatever its own length sells at. */
  public long atCheapestRate(Length length) {
    if (!priced) {
      return length.units();
    }
    return cheapestPerLength(offer -> true).map(offer -> share(offer, length)).orElse(0L);
  }

  private long share(Supply.Offer offer, Length length) {
    return Money.rounded(
            BigInteger.valueOf(packOf(offer)).multiply(BigInteger.valueOf(length.units())),
            packLength(offer))
        .tenThousandths();
  }

  private Optional<Supply.Offer> cheapestPerLength(Predicate<Supply.Offer> wanted) {
    return order.supplies().stream()
        .filter(Supply.Offer.class::isInstance)
        .map(Supply.Offer.class::cast)
        .filter(wanted)
        .min(
            (a, b) ->
                BigInteger.valueOf(packOf(a))
                    .multiply(packLength(b))
                    .compareTo(BigInteger.valueOf(packOf(b)).multiply(packLength(a))));
  }

  private static BigInteger packLength(Supply.Offer offer) {
    return BigInteger.valueOf(offer.length().units()).multiply(BigInteger.valueOf(offer.soldIn()));
  }

  private long packOf(Supply.Offer offer) {
    return offer.price() == null
        ? Math.multiplyExact(offer.length().units(), offer.soldIn())
        : offer
            .price()
            .ofSticks(offer.length(), offer.soldIn(), order.material().weight())
            .tenThousandths();
  }
}
