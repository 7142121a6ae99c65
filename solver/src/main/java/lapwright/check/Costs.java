package lapwright.check;

import java.math.BigInteger;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;

/**
 * What the supplies of one material cost: 1/10,000 of the currency where it has prices, else units
 * of stock length.
 */
final class Costs {
  private final MaterialOrder order;

  Costs(MaterialOrder order) {
    this.order = order;
  }

  /** Cost of what is drawn at once: a pack of an offer, one stick on hand, one offcut. */
  long ofPack(Supply supply) {
    if (order.fromStockOnly()) {
      long length = supply.length().units();
      return supply instanceof Supply.RackOffcut
          ? length
          : Math.subtractExact(length, order.material().shortBy().units());
    }
    if (supply instanceof Supply.Offer offer) {
      return priceOfPack(offer);
    }
    return supply instanceof Supply.OnHand onHand ? ofStickOnHand(onHand) : 0;
  }

  static int packSize(Supply supply) {
    return supply instanceof Supply.Offer offer ? offer.soldIn() : 1;
  }

  private long priceOfPack(Supply.Offer offer) {
    if (offer.price() == null) {
      return Math.multiplyExact(offer.length().units(), (long) offer.soldIn());
    }
    return offer
        .price()
        .ofSticks(offer.length(), offer.soldIn(), order.material().weight())
        .tenThousandths();
  }

  /**
   * What a stick of that length costs today: from the cheapest offer of the length, else at the
   * cheapest price per length of any offer.
   */
  private long ofStickOnHand(Supply.OnHand onHand) {
    if (!order.onHandValued()) {
      return 0;
    }
    if (!order.isPriced()) {
      return onHand.length().units();
    }
    BigInteger sameLength = null;
    BigInteger bestPrice = null;
    BigInteger bestLength = BigInteger.ONE;
    for (Supply supply : order.supplies()) {
      if (!(supply instanceof Supply.Offer offer)) {
        continue;
      }
      BigInteger price = BigInteger.valueOf(priceOfPack(offer));
      if (offer.length().equals(onHand.length())) {
        BigInteger each = halfUp(price, BigInteger.valueOf(offer.soldIn()));
        sameLength = sameLength == null ? each : sameLength.min(each);
      }
      BigInteger length =
          BigInteger.valueOf(offer.length().units()).multiply(BigInteger.valueOf(offer.soldIn()));
      if (bestPrice == null
          || price.multiply(bestLength).compareTo(bestPrice.multiply(length)) < 0) {
        bestPrice = price;
        bestLength = length;
      }
    }
    if (sameLength != null) {
      return sameLength.longValueExact();
    }
    if (bestPrice == null) {
      return 0;
    }
    BigInteger units = BigInteger.valueOf(onHand.length().units());
    return halfUp(bestPrice.multiply(units), bestLength).longValueExact();
  }

  private static BigInteger halfUp(BigInteger numerator, BigInteger denominator) {
    return numerator.shiftLeft(1).add(denominator).divide(denominator.shiftLeft(1));
  }
}
