package lapwright.demand;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;

/**
 * Adds up where the material goes, exact to the unit. A piece with angled ends is finished along
 * its centre line; the wedges beside its ends are scrap, and all that its cuts take is kerf.
 */
final class StickAccount {
  private final MaterialOrder order;
  private final Map<String, Supply> supplies = new HashMap<>();

  StickAccount(MaterialOrder order) {
    this.order = order;
    order.supplies().forEach(supply -> supplies.put(supply.key(), supply));
  }

  Account of(List<Pattern> patterns, List<Purchase> purchases) {
    Account account = Account.NOTHING;
    Map<String, Integer> cut = new HashMap<>();
    for (Pattern pattern : patterns) {
      account = account.plus(ofPattern(pattern));
      cut.merge(pattern.supply(), pattern.times(), Math::addExact);
    }
    for (Purchase purchase : purchases) {
      account = account.plus(ofPurchase(purchase, cut.getOrDefault(purchase.supply(), 0)));
    }
    return account;
  }

  private Account ofPattern(Pattern pattern) {
    UsableStick stick = UsableStick.of(order.material(), order.saw(), supply(pattern.supply()));
    long pieces = 0;
    Length wedges = Length.ZERO;
    for (Cut cut : pattern.cuts()) {
      pieces = Math.addExact(pieces, cut.length().times(cut.qty()).units());
      wedges = wedges.plus(cut.rules().wedges().times(cut.qty()));
    }
    long offcut = pattern.offcut().units();
    long kerf = stick.counted() - stick.endTrim() - pieces - offcut;
    boolean kept = isKept(order, pattern.offcut());
    return new Account(
        Length.ofUnits(stick.counted()).times(pattern.times()),
        Length.ofUnits(pieces).minus(wedges).times(pattern.times()),
        Length.ZERO,
        Length.ofUnits(kerf).times(pattern.times()),
        Length.ofUnits(stick.endTrim()).times(pattern.times()),
        kept ? pattern.offcut().times(pattern.times()) : Length.ZERO,
        (kept ? wedges : wedges.plus(pattern.offcut())).times(pattern.times()),
        Length.ZERO,
        Length.ZERO);
  }

  private Account ofPurchase(Purchase purchase, int cut) {
    Supply.Offer offer = (Supply.Offer) supply(purchase.supply());
    int bought = Math.multiplyExact(purchase.packs(), offer.soldIn());
    Length counted = UsableStick.countedLength(order.material(), offer);
    return new Account(
        Length.ZERO,
        Length.ZERO,
        Length.ZERO,
        Length.ZERO,
        Length.ZERO,
        Length.ZERO,
        Length.ZERO,
        counted.times(bought - cut),
        offer.length().minus(counted).times(bought));
  }

  static boolean isKept(MaterialOrder order, Length offcut) {
    return !offcut.isZero() && !offcut.isShorterThan(order.material().keepOffcutsFrom());
  }

  private Supply supply(String key) {
    return Objects.requireNonNull(supplies.get(key), key);
  }
}
