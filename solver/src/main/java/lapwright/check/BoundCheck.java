package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
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
  private final List<NoPlanLeaf> refuted = new ArrayList<>();

  /**
   * A supply that the machine takes, as the bound sees it.
   *
   * @param mostPacks {@link PackGroups#UNLIMITED} without a limit
   */
  record Stock(String key, Stick stick, long packCost, int packSize, long mostPacks) {}

  /** What the decisions above a certificate leave of each stock's packs. */
  private record Branch(Certificate certificate, PackGroups.Range packs) {}

  BoundCheck(MaterialPlan plan, Faults faults) {
    this.plan = plan;
    this.faults = faults;
    MaterialOrder order = plan.order();
    Costs costs = new Costs(order);
    for (Supply supply : order.supplies()) {
      if (Stick.fitsMachine(supply, order.saw())) {
        int most = supply instanceof Supply.Offer offer ? offer.atMostPacks() : supply.atMost();
        stocks.add(
            new Stock(
                supply.key(),
                Stick.of(supply, order.material(), order.saw()),
                costs.ofPack(supply),
                Costs.packSize(supply),
                most == Integer.MAX_VALUE ? PackGroups.UNLIMITED : most));
      }
    }
    SortedMap<Length, Long> quantities = new TreeMap<>(Comparator.reverseOrder());
    Set<Length> notGripped = new HashSet<>();
    for (Need need : order.needs()) {
      PieceSize size = PieceSize.shortest(need, order.saw().kerf());
      Length name = size.named(order.saw().kerf());
      quantities.merge(name, Math.multiplyExact((long) need.qty(), need.copies()), Math::addExact);
      if (size.gripped() < order.saw().hold().units()) {
        notGripped.add(name);
      }
    }
    this.leafCheck = new LeafCheck(order.saw(), stocks, quantities, notGripped);
    for (Stock stock : stocks) {
      if (leafCheck.holdsAny(stock.stick())) {
        reachable.add(stock.packCost(), stock.mostPacks());
      }
    }
  }

  /** Notes the faults; gives the bound when there is one. */
  Optional<MaterialBound> run() {
    Optional<PackGroups> groups = groups();
    if (groups.isEmpty()) {
      return Optional.empty();
    }
    int leaves = 0;
    int empty = 0;
    LeafCheck.Leaf weakest = null;
    BigInteger whole = BigInteger.ZERO;
    Deque<Branch> open = new ArrayDeque<>();
    open.push(new Branch(plan.certificate(), groups.get().everything()));
    while (!open.isEmpty()) {
      Branch branch = open.pop();
      if (branch.certificate() instanceof Certificate.PackSplit split) {
        SortedSet<Integer> decided = stocksOf(split);
        open.push(new Branch(split.more(), branch.packs().withMoreThan(decided, split.packs())));
        open.push(new Branch(split.fewer(), branch.packs().withAtMost(decided, split.packs())));
        continue;
      }
      if (branch.certificate() instanceof Certificate.NoPlan noPlan) {
        leaves++;
        empty++;
        if (!branch.packs().isEmpty()) {
          NoPlanCheck.Outcome outcome = leafCheck.follow(noPlan.refutation(), branch.packs());
          if (!outcome.holds()) {
            faults.ofMaterial(
                Rule.CERTIFICATE,
                "a proof that the sticks of its branch do not suffice",
                outcome.fault());
            return Optional.empty();
          }
          refuted.add(
              new NoPlanLeaf(
                  leafCheck.decisions(branch.packs(), groups.get()),
                  outcome.sticks(),
                  outcome.listed(),
                  outcome.steps()));
        }
        continue;
      }
      if (!(branch.certificate() instanceof Certificate.Weights weights)) {
        faults.ofMaterial(
            Rule.CERTIFICATE,
            "weights of needed lengths, proofs that sticks do not suffice and decisions about packs,"
                + " which alone are checked",
            "another kind: " + branch.certificate().getClass().getSimpleName());
        return Optional.empty();
      }
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
      if (leaf.supplyShort()) {
        empty++;
      } else {
        // Packs are whole: a leaf's weights may ask for dearer packs than its plain bound tells.
        BigInteger bound = leaf.bound();
        if (bound.compareTo(BigInteger.valueOf(plan.cost())) < 0) {
          bound = bound.max(BigInteger.valueOf(leafCheck.leastWholePacks(leaf, plan.cost())));
        }
        if (weakest == null || bound.compareTo(whole) < 0) {
          weakest = leaf;
          whole = bound;
        }
      }
    }
    if (weakest == null) {
      faults.ofMaterial(Rule.BOUND, "a leaf of the certificate that holds the plan", "none");
      return Optional.empty();
    }
    return compare(weakest, whole, groups.get(), leaves, empty);
  }

  private Optional<MaterialBound> compare(
      LeafCheck.Leaf weakest, BigInteger whole, PackGroups groups, int leaves, int empty) {
    BigInteger certified = weakest.bound();
    String because =
        weakest.chosen().isFinite()
            ? ""
            : ", the weights of "
                + stocks.get(weakest.chosen().endless()).key()
                + " exceed its price and it has no limit";
    if (certified.compareTo(BigInteger.valueOf(plan.cost())) > 0) {
      faults.ofMaterial(
          Rule.BOUND, "a cost of at least " + certified + " by the certificate", plan.cost());
      return Optional.empty();
    }
    long bound = reachable.atLeast(whole.longValueExact(), plan.cost());
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
            leafCheck.describe(weakest, groups),
            refuted));
  }

  /** The groups that the certificate decides about; empty when it is at fault. */
  private Optional<PackGroups> groups() {
    Set<String> keys =
        plan.order().supplies().stream().map(Supply::key).collect(Collectors.toSet());
    Set<SortedSet<Integer>> decided = new LinkedHashSet<>();
    Deque<Certificate> open = new ArrayDeque<>();
    open.push(plan.certificate());
    while (!open.isEmpty()) {
      if (open.pop() instanceof Certificate.PackSplit split) {
        if (!keys.containsAll(split.supplies())) {
          faults.ofMaterial(
              Rule.CERTIFICATE,
              "decisions about its supplies",
              String.join(", ", split.supplies()));
          return Optional.empty();
        }
        decided.add(stocksOf(split));
        open.push(split.more());
        open.push(split.fewer());
      }
    }
    Optional<PackGroups> groups =
        PackGroups.of(List.copyOf(decided), stocks.stream().map(Stock::mostPacks).toList());
    if (groups.isEmpty()) {
      faults.ofMaterial(
          Rule.CERTIFICATE,
          "decisions about the same supplies or about others",
          "two that share only some");
    }
    return groups;
  }

  /** The stocks of a decision; supplies that the machine does not take are none. */
  private SortedSet<Integer> stocksOf(Certificate.PackSplit split) {
    SortedSet<Integer> decided = new TreeSet<>();
    for (int i = 0; i < stocks.size(); i++) {
      if (split.supplies().contains(stocks.get(i).key())) {
        decided.add(i);
      }
    }
    return decided;
  }
}
