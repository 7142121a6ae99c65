package lapwright.demand;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.LengthPattern;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Saw;
import lapwright.shop.Supply;

/**
 * One material's order as a problem in integers, and the way back.
 *
 * <p>Items are the distinct lengths over all jobs as {@link Need#planned} gives them, longest
 * first; where needs of one such length differ in what the vise can grip, the least counts. Stocks
 * are the supplies that the saw takes, in the order of the supplies. A supply longer than the saw's
 * longest stick is none. Immutable.
 */
public final class StickDemand {
  private final MaterialOrder order;
  private final boolean atFullLengths;
  private final List<Supply> supplies;
  private final List<UsableStick> sticks;
  private final List<Length> lengths;
  private final Map<String, Integer> stockOfKey = new HashMap<>();
  private final Map<Length, Integer> itemOfLength = new HashMap<>();
  private final StickProblem problem;

  private StickDemand(MaterialOrder order, boolean atFullLengths) {
    this.order = order;
    this.atFullLengths = atFullLengths;
    this.supplies =
        order.supplies().stream().filter(supply -> sawTakes(order.saw(), supply)).toList();
    this.sticks =
        supplies.stream()
            .map(supply -> UsableStick.of(order.material(), order.saw(), supply))
            .toList();
    SortedMap<Length, Integer> demand = new TreeMap<>(Collections.reverseOrder());
    Set<Length> small = new HashSet<>();
    for (Need need : order.needs()) {
      Length planned = planned(need);
      demand.merge(planned, need.total(), Math::addExact);
      if (need.held().isShorterThan(order.saw().hold())) {
        small.add(planned);
      }
    }
    this.lengths = List.copyOf(demand.keySet());
    long kerf = order.saw().kerf().units();
    List<StickProblem.Item> items = new ArrayList<>();
    demand.forEach(
        (length, qty) -> {
          itemOfLength.put(length, items.size());
          items.add(
              new StickProblem.Item(
                  Math.addExact(length.units(), kerf), qty, small.contains(length)));
        });
    StickPrices prices = new StickPrices(order);
    List<StickProblem.Stock> stocks = new ArrayList<>();
    for (int j = 0; j < supplies.size(); j++) {
      stockOfKey.put(supplies.get(j).key(), j);
      stocks.add(stock(supplies.get(j), sticks.get(j), prices));
    }
    this.problem = new StickProblem(items, stocks, order.material().keepOffcutsFrom().units());
  }

  /**
   * The demand for pieces, each as short as it may be.
   *
   * @throws IllegalArgumentException if the order has runs, which are no pieces yet
   */
  public static StickDemand of(MaterialOrder order) {
    if (!order.runs().isEmpty()) {
      throw new IllegalArgumentException(
          "material " + order.material().id() + ": its runs are not split into pieces");
    }
    return new StickDemand(order, false);
  }

  /** The demand when no piece is cut shorter than its job asks for. */
  public static StickDemand atFullLengths(MaterialOrder order) {
    StickDemand shortest = of(order);
    return shortest.mayBeShort() ? new StickDemand(order, true) : shortest;
  }

  /** True when some piece may be shorter than its job asks for. */
  public boolean mayBeShort() {
    return order.needs().stream().anyMatch(need -> !need.rules().mayBeShort().isZero());
  }

  /** The length that the problem and its patterns know a piece by. */
  public Length planned(Need need) {
    Length kerf = order.saw().kerf();
    return atFullLengths ? need.plannedFull(kerf) : need.planned(kerf);
  }

  static boolean sawTakes(Saw saw, Supply supply) {
    return saw.longestStick() == null || !supply.length().isLongerThan(saw.longestStick());
  }

  static StickProblem.Stock stock(Supply supply, UsableStick stick, StickPrices prices) {
    long cost = prices.ofPack(supply);
    boolean bought = supply instanceof Supply.Offer;
    int packSize = supply instanceof Supply.Offer offer ? offer.soldIn() : 1;
    int mostPacks = supply instanceof Supply.Offer offer ? offer.atMostPacks() : supply.atMost();
    return new StickProblem.Stock(
        stick.counted(),
        stick.capacity(),
        stick.smallCapacity(),
        stick.wholeUse(),
        stick.tail(),
        cost,
        bought ? cost : 0,
        packSize,
        mostPacks);
  }

  public MaterialOrder order() {
    return order;
  }

  public StickProblem problem() {
    return problem;
  }

  /** The supplies that the saw takes, in the order of the problem's stocks. */
  public List<Supply> supplies() {
    return supplies;
  }

  public Length length(int item) {
    return lengths.get(item);
  }

  /** Index of the item that a need asks for. */
  public int item(Need need) {
    return Objects.requireNonNull(itemOfLength.get(planned(need)));
  }

  /** The needs that no supply gives, in the order of the needs. */
  public List<Need> needsThatFitNothing() {
    return order.needs().stream()
        .filter(
            need ->
                problem.stocks().stream()
                    .noneMatch(
                        stock ->
                            stock.mostPacks() > 0
                                && gives(problem, stock, problem.items().get(item(need)))))
        .toList();
  }

  /**
   * True when a stick gives the item: alone, or, where it is too short to be held, beside the
   * smallest one that is not.
   */
  static boolean gives(StickProblem problem, StickProblem.Stock stock, StickProblem.Item item) {
    if (!item.small()) {
      return item.size() <= stock.capacity();
    }
    return item.size() <= stock.smallCapacity()
        || (stock.wholeUse() && item.size() == stock.capacity())
        || problem.items().stream()
            .anyMatch(other -> !other.small() && item.size() <= stock.capacity() - other.size());
  }

  /** The longest finished piece that any stick gives, 0 when none gives any. */
  public Length longestUsable() {
    long longest = 0;
    for (int j = 0; j < sticks.size(); j++) {
      if (problem.stocks().get(j).mostPacks() > 0) {
        longest = Math.max(longest, sticks.get(j).usable());
      }
    }
    return Length.ofUnits(longest);
  }

  /** A solution's patterns in the shop's words, in the solution's order. */
  public List<LengthPattern> patterns(List<PatternUse> uses) {
    List<LengthPattern> patterns = new ArrayList<>();
    for (PatternUse use : uses) {
      if (use.counts().isEmpty()) {
        continue;
      }
      long sizes = 0;
      boolean held = false;
      SortedMap<Length, Integer> counts = new TreeMap<>();
      for (Count count : use.counts()) {
        StickProblem.Item item = problem.items().get(count.item());
        counts.merge(lengths.get(count.item()), count.count(), Math::addExact);
        sizes += item.size() * count.count();
        held |= !item.small();
      }
      StickProblem.Stock stock = problem.stocks().get(use.stock());
      long room = (held ? stock.capacity() : stock.smallCapacity()) - sizes;
      patterns.add(
          new LengthPattern(
              supplies.get(use.stock()).key(),
              counts,
              use.times(),
              Length.ofUnits(sticks.get(use.stock()).offcut(sizes)),
              Length.ofUnits(Math.max(0, room))));
    }
    return patterns;
  }

  /** Patterns as a solver's first solution; empty when they are no plan of this order. */
  public List<PatternUse> uses(List<LengthPattern> patterns) {
    return new KnownPlan(problem, stockOfKey, itemOfLength).uses(patterns);
  }

  /** The whole packs that the patterns take, in the order of the supplies. */
  public List<Purchase> purchases(List<LengthPattern> patterns) {
    Map<String, Integer> sticksOf = sticksBySupply(patterns);
    List<Purchase> purchases = new ArrayList<>();
    for (Supply supply : supplies) {
      int taken = sticksOf.getOrDefault(supply.key(), 0);
      if (supply instanceof Supply.Offer offer && taken > 0) {
        purchases.add(new Purchase(supply.key(), packs(taken, offer.soldIn())));
      }
    }
    return purchases;
  }

  /** What the patterns cost, in the unit of {@link StickPrices}. */
  public long cost(List<LengthPattern> patterns) {
    return sum(patterns, false);
  }

  /** The part of the cost that is spent now. */
  public long cash(List<LengthPattern> patterns) {
    return sum(patterns, true);
  }

  private long sum(List<LengthPattern> patterns, boolean cash) {
    Map<String, Integer> sticksOf = sticksBySupply(patterns);
    long sum = 0;
    for (int j = 0; j < supplies.size(); j++) {
      StickProblem.Stock stock = problem.stocks().get(j);
      int packs = packs(sticksOf.getOrDefault(supplies.get(j).key(), 0), stock.packSize());
      sum =
          Math.addExact(sum, Math.multiplyExact(packs, cash ? stock.packCash() : stock.packCost()));
    }
    return sum;
  }

  private static Map<String, Integer> sticksBySupply(List<LengthPattern> patterns) {
    Map<String, Integer> sticks = new HashMap<>();
    patterns.forEach(pattern -> sticks.merge(pattern.supply(), pattern.times(), Math::addExact));
    return sticks;
  }

  private static int packs(int sticks, int packSize) {
    return Math.floorDiv(sticks, packSize) + (sticks % packSize == 0 ? 0 : 1);
  }

  /** A certificate in the shop's words. */
  public Certificate certificate(StickCertificate certificate) {
    if (certificate instanceof StickCertificate.Weights leaf) {
      SortedMap<Length, Long> weights = new TreeMap<>();
      for (int i = 0; i < leaf.weights().size(); i++) {
        if (leaf.weights().get(i) != 0) {
          weights.put(lengths.get(i), leaf.weights().get(i));
        }
      }
      return new Certificate.Weights(leaf.scale(), weights);
    }
    if (certificate instanceof StickCertificate.PackSplit split) {
      return new Certificate.PackSplit(
          split.stocks().stream().map(stock -> supplies.get(stock).key()).toList(),
          split.packs(),
          certificate(split.fewer()),
          certificate(split.more()));
    }
    if (certificate instanceof StickCertificate.NoSolution none) {
      return new Certificate.NoPlan(
          new Refutations(order.saw().kerf()).inLengths(none.refutation()));
    }
    throw new IllegalStateException("unknown certificate " + certificate);
  }

  /** Where the material goes. */
  public Account account(List<Pattern> tickets, List<Purchase> purchases) {
    return new StickAccount(order).of(tickets, purchases);
  }
}
