package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Supply;

/**
 * Recomputes the lower bound of one material from its certificate: walks the tree of decisions,
 * works out each leaf, takes the least bound, raises it to the next cost that can be reached, and
 * compares that with what the plan states.
 */
final class BoundCheck {
  private final MaterialPlan plan;
  private final Faults faults;
  private final List<Stock> stocks = new ArrayList<>();
  private final ReachableCosts reachable = new ReachableCosts();
  private final LeafCheck leafCheck;

  /**
   * A supply that the machine takes, as the bound sees it.
   *
   * @param mostPacks {@link Integer#MAX_VALUE} without a limit
   */
  record Stock(String key, Stick stick, long packCost, int packSize, int mostPacks) {}

  /** What the decisions above a certificate leave of each stock's packs. */
  private record Branch(Certificate certificate, PackRange packs) {}

  BoundCheck(MaterialPlan plan, Faults faults) {
    this.plan = plan;
    this.faults = faults;
    MaterialOrder order = plan.order();
    Costs costs = new Costs(order);
    for (Supply supply : order.supplies()) {
      if (Stick.fitsMachine(supply, order.saw())) {
        int most = supply instanceof Supply.Offer offer ? offer.atMostPacks() : supply.atMost();
        long cost = costs.ofPack(supply);
        Stick stick = Stick.of(supply, order.material(), order.saw());
        stocks.add(new Stock(supply.key(), stick, cost, Costs.packSize(supply), most));
        reachable.add(cost, most);
      }
    }
    SortedMap<Length, Long> quantities = new TreeMap<>(Comparator.reverseOrder());
    for (Need need : order.needs()) {
      quantities.merge(
          need.length(), Math.multiplyExact((long) need.qty(), need.copies()), Math::addExact);
    }
    this.leafCheck = new LeafCheck(order.saw(), stocks, quantities);
  }

  /** Notes the faults; gives the bound when there is one. */
  Optional<MaterialBound> run() {
    int leaves = 0;
    int empty = 0;
    LeafCheck.Leaf weakest = null;
    Deque<Branch> open = new ArrayDeque<>();
    open.push(
        new Branch(
            plan.certificate(), PackRange.upTo(stocks.stream().map(Stock::mostPacks).toList())));
    while (!open.isEmpty()) {
      Branch branch = open.pop();
      if (branch.certificate() instanceof Certificate.PackSplit split) {
        if (!isSupply(split.supply())) {
          faults.ofMaterial(Rule.CERTIFICATE, "decisions about its supplies", split.supply());
          return Optional.empty();
        }
        int stock = indexOf(split.supply());
        PackRange packs = branch.packs();
        boolean known = stock >= 0;
        open.push(
            new Branch(split.more(), known ? packs.withMoreThan(stock, split.packs()) : packs));
        open.push(
            new Branch(split.fewer(), known ? packs.withAtMost(stock, split.packs()) : packs));
        continue;
      }
      Certificate.Weights weights = (Certificate.Weights) branch.certificate();
      String fault = leafCheck.faultOf(weights);
      if (!fault.isEmpty()) {
        faults.ofMaterial(
            Rule.CERTIFICATE, "weights from 0 for lengths that jobs need, within 62 bits", fault);
        return Optional.empty();
      }
      leaves++;
      if (branch.packs().isEmpty()) {
        empty++;
        continue;
      }
      LeafCheck.Leaf leaf = leafCheck.workOut(weights, branch.packs());
      if (leafCheck.isSupplyShort(leaf)) {
        empty++;
      } else if (weakest == null || leaf.bound().compareTo(weakest.bound()) < 0) {
        weakest = leaf;
      }
    }
    if (weakest == null) {
      faults.ofMaterial(Rule.BOUND, "a leaf of the certificate that holds the plan", "none");
      return Optional.empty();
    }
    return compare(weakest, leaves, empty);
  }

  private Optional<MaterialBound> compare(LeafCheck.Leaf weakest, int leaves, int empty) {
    BigInteger certified = weakest.bound();
    String because =
        weakest.overweight() < 0
            ? ""
            : ", the weights of "
                + stocks.get(weakest.overweight()).key()
                + " exceed its price and it has no limit";
    if (certified.compareTo(BigInteger.valueOf(plan.cost())) > 0) {
      faults.ofMaterial(
          Rule.BOUND, "a cost of at least " + certified + " by the certificate", plan.cost());
      return Optional.empty();
    }
    long bound = reachable.atLeast(certified.longValueExact(), plan.cost());
    if (bound > plan.cost()) {
      faults.ofMaterial(
          Rule.BOUND, "a cost that packs can add up to, from " + certified + " up", plan.cost());
      return Optional.empty();
    }
    if (plan.lowerBound() > bound) {
      faults.ofMaterial(
          Rule.BOUND, "at most " + bound + " by the certificate" + because, plan.lowerBound());
    } else if (plan.lowerBound() < 0) {
      faults.ofMaterial(Rule.BOUND, "at least 0", plan.lowerBound());
    }
    if (plan.proof() == Proof.PROVED
        && (plan.lowerBound() != plan.cost() || bound != plan.cost())) {
      faults.ofMaterial(
          Rule.PROOF,
          "a bound of " + plan.cost() + ", which is the cost" + because,
          "a stated bound of " + plan.lowerBound() + ", " + bound + " by the certificate");
    }
    return Optional.of(
        new MaterialBound(
            plan.material(),
            certified.longValueExact(),
            bound,
            leaves,
            empty,
            leafCheck.describe(weakest)));
  }

  private boolean isSupply(String key) {
    return plan.order().supplies().stream().anyMatch(supply -> supply.key().equals(key));
  }

  /** Index of a supply among the stocks; -1 when the machine does not take it. */
  private int indexOf(String key) {
    for (int i = 0; i < stocks.size(); i++) {
      if (stocks.get(i).key().equals(key)) {
        return i;
      }
    }
    return -1;
  }
}
