package lapwright.check;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/** A plan of one material under a test's hands: every part can be changed before it is built. */
final class PlanDraft {
  Saw saw = new Saw("cold-saw", sixtyFourths(6), sixtyFourths(32), Length.ofInches(3), null);
  String materialId = "tube";
  boolean millEndsGood = false;
  Length shortBy = Length.ZERO;
  Length keepFrom = Length.ofInches(24);
  OneLotPer oneLotPer = OneLotPer.NONE;
  boolean onHandValued = true;
  List<Supply> supplies = new ArrayList<>();
  List<Need> needs = new ArrayList<>();
  List<Purchase> purchases = new ArrayList<>();
  List<Pattern> patterns = new ArrayList<>();
  long cost;
  long cash;
  long lowerBound;
  Proof proof = Proof.OPEN;
  Certificate certificate = new Certificate.Weights(1, new TreeMap<>());
  Account account = Account.NOTHING;

  OrderPlan build() {
    return new OrderPlan(
        new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, onHandValued),
        List.of(material()));
  }

  MaterialPlan material() {
    Material material =
        new Material(
            materialId, materialId, saw.id(), millEndsGood, shortBy, keepFrom, null, oneLotPer);
    MaterialOrder order = new MaterialOrder(material, saw, onHandValued, supplies, needs);
    return new MaterialPlan(
        order, purchases, patterns, cost, cash, lowerBound, proof, certificate, account);
  }

  static Length sixtyFourths(long sixtyFourths) {
    return Length.ofUnits(sixtyFourths * Length.UNITS_PER_SIXTY_FOURTH);
  }

  static Need need(String job, String mark, Length length, int qty) {
    return new Need(job, null, 1, mark, length, qty, "");
  }

  static Supply.Offer offer(Length length, String price, int soldIn, int atMost) {
    Price each = price.isEmpty() ? null : new Price(new BigDecimal(price), Price.Per.EACH);
    return new Supply.Offer("north", length, each, soldIn, atMost, "", null, null);
  }

  static Supply.Offer offer(Length length, String price) {
    return offer(length, price, 1, Integer.MAX_VALUE);
  }

  static Supply.RackOffcut offcut(String id, Length length, Ends ends) {
    return new Supply.RackOffcut(id, length, ends, "", "");
  }

  static Cut cut(String job, String mark, Length length, int qty) {
    return new Cut(job, 1, mark, length, qty);
  }

  static Pattern pattern(
      String ticket, Supply supply, int times, Length offcut, List<String> names, Cut... cuts) {
    return new Pattern(ticket, supply.key(), times, List.of(cuts), offcut, names);
  }

  /** An account without laps, in sixty-fourths of an inch. */
  static Account account(
      long drawn,
      long finished,
      long kerf,
      long endTrim,
      long kept,
      long scrap,
      long surplus,
      long shortAllowance) {
    return new Account(
        sixtyFourths(drawn),
        sixtyFourths(finished),
        Length.ZERO,
        sixtyFourths(kerf),
        sixtyFourths(endTrim),
        sixtyFourths(kept),
        sixtyFourths(scrap),
        sixtyFourths(surplus),
        sixtyFourths(shortAllowance));
  }

  /** A leaf from length, weight, length, weight ... */
  static Certificate.Weights weights(long scale, Object... lengthsAndWeights) {
    SortedMap<Length, Long> weights = new TreeMap<>();
    for (int i = 0; i < lengthsAndWeights.length; i += 2) {
      weights.put((Length) lengthsAndWeights[i], ((Number) lengthsAndWeights[i + 1]).longValue());
    }
    return new Certificate.Weights(scale, weights);
  }
}
