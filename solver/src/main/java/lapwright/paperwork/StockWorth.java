package lapwright.paperwork;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** What stock of one material is worth at today's prices. */
final class StockWorth {
  private record Asked(Length stick, int sticks, Money price) {}

  private final List<Asked> asked = new ArrayList<>();

  private StockWorth(MaterialOrder order) {
    Saw saw = order.saw();
    for (Supply supply : order.supplies()) {
      if (supply instanceof Supply.Offer offer
          && (saw.longestStick() == null || !offer.length().isLongerThan(saw.longestStick()))) {
        Money price = packPrice(order, offer);
        if (price != null) {
          asked.add(new Asked(offer.length(), offer.soldIn(), price));
        }
      }
    }
  }

  static StockWorth of(MaterialOrder order) {
    return new StockWorth(order);
  }

  /** The price of a pack; null when the material has no prices. */
  static @Nullable Money packPrice(MaterialOrder order, Supply.Offer offer) {
    return offer.price() == null
        ? null
        : offer.price().ofSticks(offer.length(), offer.soldIn(), order.material().weight());
  }

  /**
   * What a whole stick costs today: of the same length, or by the cheapest price per length; null
   * when nothing has a price.
   */
  @Nullable Money ofStick(Length stick) {
    Money cheapest = null;
    for (Asked each : asked) {
      if (each.stick().equals(stick)) {
        Money one =
            Money.rounded(
                BigInteger.valueOf(each.price().tenThousandths()),
                BigInteger.valueOf(each.sticks()));
        cheapest = cheapest == null || one.compareTo(cheapest) < 0 ? one : cheapest;
      }
    }
    return cheapest == null ? byLength(stick) : cheapest;
  }

  /** What a length is worth at the cheapest price per length; null when nothing has a price. */
  @Nullable Money byLength(Length length) {
    Money cheapest = null;
    for (Asked each : asked) {
      Money worth =
          Money.rounded(
              BigInteger.valueOf(each.price().tenThousandths())
                  .multiply(BigInteger.valueOf(length.units())),
              BigInteger.valueOf(each.stick().units()).multiply(BigInteger.valueOf(each.sticks())));
      cheapest = cheapest == null || worth.compareTo(cheapest) < 0 ? worth : cheapest;
    }
    return cheapest;
  }
}
