package lapwright.demand;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.LengthPattern;
import lapwright.plan.Purchase;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;

/** Adds up where the material goes, exact to the unit. */
final class StickAccount {
  private final MaterialOrder order;
  private final Map<String, Supply> supplies = new HashMap<>();

  StickAccount(MaterialOrder order) {
    this.order = order;
    order.supplies().forEach(supply -> supplies.put(supply.key(), supply));
  }

  Account of(List<LengthPattern> patterns, List<Purchase> purchases) {
    Account account = Account.NOTHING;
    Map<String, Integer> cut = new HashMap<>();
    for (LengthPattern pattern : patterns) {
      account = account.plus(ofPattern(pattern));
      cut.merge(pattern.supply(), pattern.times(), Math::addExact);
    }
    for (Purchase purchase : purchases) {
      account = account.plus(ofPurchase(purchase, cut.getOrDefault(purchase.supply(), 0)));
    }
    return account;
  }

  private Account ofPattern(LengthPattern pattern) {
    UsableStick stick = UsableStick.of(order.material(), order.saw(), supply(pattern.supply()));
    long finished = 0;
    for (Map.Entry<Length, Integer> count : pattern.counts().entrySet()) {
      finished = Math.addExact(finished, count.getKey().times(count.getValue()).units());
    }
    long offcut = pattern.offcut().units();
    long kerf = stick.counted() - stick.endTrim() - finished - offcut;
    boolean kept = isKept(order, pattern.offcut());
    return new Account(
        Length.ofUnits(stick.counted()).times(pattern.times()),
        Length.ofUnits(finished).times(pattern.times()),
        Length.ZERO,
        Length.ofUnits(kerf).times(pattern.times()),
        Length.ofUnits(stick.endTrim()).times(pattern.times()),
        kept ? pattern.offcut().times(pattern.times()) : Length.ZERO,
        kept ? Length.ZERO : pattern.offcut().times(pattern.times()),
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
