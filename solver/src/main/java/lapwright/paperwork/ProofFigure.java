package lapwright.paperwork;

import java.math.BigInteger;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import lapwright.measure.Money;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Proof;
import lapwright.shop.Supply;

/**
 * How good the plan of several materials and items is, all of them counted in money or all of them
 * in length. Items are always proved.
 *
 * @param proof the weakest of the materials
 * @param inMoney true when cost and bound are in 1/10,000 of the currency, false when they are in
 *     units of length
 * @param cost of the plan
 * @param bound no plan costs less, as recomputed by the check
 * @param unproved how many of the materials are not proved
 * @param eachWithinOneStick true when in each material cost and bound lie less than its cheapest
 *     stick apart
 */
public record ProofFigure(
    Proof proof, boolean inMoney, long cost, long bound, int unproved, boolean eachWithinOneStick) {
  public ProofFigure {
    Objects.requireNonNull(proof);
    if (bound > cost) {
      throw new IllegalArgumentException("bound " + bound + " above cost " + cost);
    }
  }

  /**
   * How far the cost can lie above the least, in thousandths of the cost, rounded up: 4 is 0.4 %.
   */
  public int gapThousandths() {
    BigInteger[] quotient =
        BigInteger.valueOf(cost - bound)
            .multiply(BigInteger.valueOf(1000))
            .divideAndRemainder(BigInteger.valueOf(Math.max(1, cost)));
    return quotient[0].intValueExact() + quotient[1].signum();
  }

  /** The figure of what is counted in money, or in length; empty if nothing is. */
  static Optional<ProofFigure> of(OrderPlan whole, boolean inMoney) {
    List<MaterialPlan> alike =
        whole.materials().stream().filter(plan -> plan.order().isPriced() == inMoney).toList();
    List<ItemPlan> items =
        whole.items().stream().filter(item -> inMoney && item.isPriced()).toList();
    if (alike.isEmpty() && items.isEmpty()) {
      return Optional.empty();
    }
    Proof weakest = Proof.PROVED;
    long cost = 0;
    long bound = 0;
    int unproved = 0;
    boolean within = true;
    for (MaterialPlan plan : alike) {
      weakest = plan.proof().compareTo(weakest) > 0 ? plan.proof() : weakest;
      cost = Math.addExact(cost, plan.cost());
      bound = Math.addExact(bound, plan.lowerBound());
      if (plan.proof() != Proof.PROVED) {
        unproved++;
        within &= isWithinOneStick(plan);
      }
    }
    for (ItemPlan item : items) {
      cost = Math.addExact(cost, item.cost());
      bound = Math.addExact(bound, item.cost());
    }
    return Optional.of(new ProofFigure(weakest, inMoney, cost, bound, unproved, within));
  }

  private static boolean isWithinOneStick(MaterialPlan plan) {
    long gap = plan.cost() - plan.lowerBound();
    List<Supply.Offer> offers =
        plan.order().supplies().stream()
            .filter(Supply.Offer.class::isInstance)
            .map(Supply.Offer.class::cast)
            .toList();
    return !offers.isEmpty()
        && offers.stream()
            .allMatch(
                offer -> {
                  Money pack = StockWorth.packPrice(plan.order(), offer);
                  return pack == null
                      ? gap < offer.length().units()
                      : Math.multiplyExact(gap, offer.soldIn()) < pack.tenThousandths();
                });
  }
}
