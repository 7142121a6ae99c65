package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import lapwright.check.BoundCheck.Stock;
import lapwright.check.BoundScope.Unit;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import org.jspecify.annotations.Nullable;

/**
 * Recomputes the lower bound of a material with runs, or with lots that must not mix. As {@link
 * BoundCheck}, with a weight for every length there is, the least weight of a permitted split for
 * every line, and decisions about lots: under them, only lots that some job may still use have
 * sticks, and lots that are bounded by themselves add up.
 */
final class RunBoundCheck {
  private static final BigInteger GREATEST_SUM = BigInteger.ONE.shiftLeft(Long.SIZE - 2);

  private final MaterialPlan plan;
  private final MaterialOrder order;
  private final Faults faults;
  private final ScopeWeights weights;
  private int leaves;
  private int empty;
  private @Nullable LeafBound weakest;
  private boolean atFault;

  RunBoundCheck(MaterialPlan plan, Faults faults) {
    this.plan = plan;
    this.order = plan.order();
    this.faults = faults;
    this.weights = new ScopeWeights(plan, this::fault);
  }

  /** False where weights of needed lengths alone prove the bound, as they do without runs. */
  static boolean isFor(MaterialPlan plan) {
    return !plan.order().runs().isEmpty() || !isPlain(plan.certificate());
  }

  private static boolean isPlain(Certificate certificate) {
    return certificate instanceof Certificate.PackSplit split
        ? isPlain(split.fewer()) && isPlain(split.more())
        : certificate instanceof Certificate.Weights || certificate instanceof Certificate.NoPlan;
  }

  /** Notes the faults; gives the bound when there is one. */
  Optional<MaterialBound> run() {
    Long certified = bound(plan.certificate(), everything());
    if (atFault) {
      return Optional.empty();
    }
    LeafBound leaf = weakest;
    if (certified == null || leaf == null) {
      faults.ofMaterial(Rule.BOUND, "a leaf of the certificate that holds the plan", "none");
      return Optional.empty();
    }
    if (certified > plan.cost()) {
      faults.ofMaterial(
          Rule.BOUND, "a cost of at least " + certified + " by the certificate", plan.cost());
      return Optional.empty();
    }
    if (plan.lowerBound() > certified || plan.lowerBound() < 0) {
      faults.ofMaterial(
          Rule.BOUND, "0 up to " + certified + " by the certificate", plan.lowerBound());
    }
    if (plan.proof() == Proof.PROVED && plan.lowerBound() != plan.cost()) {
      faults.ofMaterial(
          Rule.PROOF, "a bound of " + plan.cost() + ", which is the cost", plan.lowerBound());
    }
    return Optional.of(
        new MaterialBound(plan.material(), certified, certified, leaves, empty, leaf, List.of()));
  }

  private BoundScope everything() {
    OneLotPer per = order.material().oneLotPer();
    Set<String> lots = new TreeSet<>();
    for (int j = 0; j < weights.stocks().size(); j++) {
      lots.add(weights.lotOf(j));
    }
    Map<Unit, Set<String>> lotsOf = new LinkedHashMap<>();
    if (per == OneLotPer.JOB) {
      order.needs().forEach(need -> lotsOf.put(new Unit(need.job(), ""), lots));
    }
    if (per != OneLotPer.NONE) {
      order
          .runs()
          .forEach(
              need ->
                  lotsOf.put(
                      new Unit(need.job(), per == OneLotPer.JOB ? "" : need.run().mark()), lots));
    }
    List<Integer> all = new ArrayList<>();
    for (int j = 0; j < weights.stocks().size(); j++) {
      all.add(j);
    }
    BoundScope everything =
        new BoundScope(lotsOf, order.needs(), order.runs(), all, SharedPieces.UNDECIDED);
    if (per == OneLotPer.NONE) {
      return everything;
    }
    Map<Unit, Set<String>> longEnough = new LinkedHashMap<>();
    lotsOf.forEach(
        (unit, some) -> {
          Set<String> left = new TreeSet<>(some);
          left.removeIf(
              lot ->
                  weights.isTooShort(weights.alone(unit, everything, weights.stocksOf(all, lot))));
          longEnough.put(unit, left);
        });
    return narrowed(everything, longEnough);
  }

  /** The least cost of the scope by the certificate; null when it holds no plan. */
  private @Nullable Long bound(Certificate certificate, BoundScope scope) {
    if (certificate instanceof Certificate.LotSplit split) {
      return bound(split, scope);
    }
    if (certificate instanceof Certificate.PieceSplit split) {
      return bound(split, scope);
    }
    if (certificate instanceof Certificate.ByLot byLot) {
      return bound(byLot, scope);
    }
    ReachableCosts reachable = new ReachableCosts();
    for (int j : scope.stocks()) {
      Stock stock = weights.stocks().get(j);
      if (stock.stick().usableAndCut() > 0) {
        reachable.add(stock.packCost(), stock.mostPacks());
      }
    }
    Long least = inScope(certificate, scope);
    return least == null ? null : Long.valueOf(reachable.atLeast(least, plan.cost()));
  }

  private @Nullable Long bound(Certificate.LotSplit split, BoundScope scope) {
    Unit unit = new Unit(split.job(), split.mark());
    Set<String> open = scope.lotsOf().get(unit);
    if (open == null) {
      fault("decisions about jobs whose lots must not mix", split.job() + " " + split.mark());
      return null;
    }
    Set<String> within = new TreeSet<>(open);
    within.retainAll(split.lots());
    Set<String> outside = new TreeSet<>(open);
    outside.removeAll(split.lots());
    Long one = within.isEmpty() ? null : bound(split.within(), narrowed(scope, unit, within));
    Long other = outside.isEmpty() ? null : bound(split.outside(), narrowed(scope, unit, outside));
    return one == null ? other : other == null ? one : Long.valueOf(Math.min(one, other));
  }

  private @Nullable Long bound(Certificate.PieceSplit split, BoundScope scope) {
    Set<String> lots = new TreeSet<>(split.lots());
    Optional<SharedPieces> fewer = scope.shared().with(split.length(), lots, 0, split.pieces());
    Optional<SharedPieces> more =
        scope.shared().with(split.length(), lots, split.pieces() + 1L, Long.MAX_VALUE);
    if (scope.lotsOf().isEmpty() || weights.free(scope).isEmpty()) {
      fault("decisions about pieces that may come from any lot", Faults.mm(split.length().units()));
      return null;
    }
    if (fewer.isEmpty() || more.isEmpty()) {
      fault("decisions about the same lots or about others", "two that share only some");
      return null;
    }
    Long one = bound(split.fewer(), sharing(scope, fewer.get()));
    Long other = bound(split.more(), sharing(scope, more.get()));
    return one == null ? other : other == null ? one : Long.valueOf(Math.min(one, other));
  }

  private static BoundScope sharing(BoundScope scope, SharedPieces shared) {
    return new BoundScope(scope.lotsOf(), scope.needs(), scope.runs(), scope.stocks(), shared);
  }

  private BoundScope narrowed(BoundScope scope, Unit unit, Set<String> lots) {
    Map<Unit, Set<String>> lotsOf = new LinkedHashMap<>(scope.lotsOf());
    lotsOf.put(unit, lots);
    return narrowed(scope, lotsOf);
  }

  private BoundScope narrowed(BoundScope scope, Map<Unit, Set<String>> lotsOf) {
    Set<String> used = new TreeSet<>();
    lotsOf.values().forEach(used::addAll);
    boolean plainIsFree = order.material().oneLotPer() == OneLotPer.RUN && !scope.needs().isEmpty();
    List<Integer> left =
        scope.stocks().stream()
            .filter(j -> plainIsFree || used.contains(weights.lotOf(j)))
            .toList();
    return new BoundScope(lotsOf, scope.needs(), scope.runs(), left, scope.shared());
  }

  private @Nullable Long bound(Certificate.ByLot byLot, BoundScope scope) {
    long sum = 0;
    for (Map.Entry<String, Certificate> entry : byLot.lots().entrySet()) {
      String lot = entry.getKey();
      Set<Unit> decided = new LinkedHashSet<>();
      scope
          .lotsOf()
          .forEach(
              (unit, lots) -> {
                if (lots.equals(Set.of(lot))) {
                  decided.add(unit);
                }
              });
      boolean perJob = order.material().oneLotPer() == OneLotPer.JOB;
      List<Need> needs =
          scope.needs().stream()
              .filter(need -> perJob && decided.contains(new Unit(need.job(), "")))
              .toList();
      Optional<List<Need>> free = freeOf(lot, scope);
      if (free.isEmpty()) {
        return null;
      }
      BoundScope alone =
          new BoundScope(
              perJob ? needs : free.get(),
              scope.runs().stream()
                  .filter(
                      need ->
                          decided.contains(new Unit(need.job(), perJob ? "" : need.run().mark())))
                  .toList(),
              weights.stocksOf(scope.stocks(), lot));
      Long least = bound(entry.getValue(), alone);
      if (least == null) {
        return null;
      }
      sum = Math.addExact(sum, least);
    }
    return sum;
  }

  /** The free pieces that a lot must give; empty where the decisions leave no way to share them. */
  private Optional<List<Need>> freeOf(String lot, BoundScope scope) {
    List<Need> needs = new ArrayList<>();
    for (Map.Entry<Length, Long> piece : weights.free(scope).entrySet()) {
      Optional<List<SharedPieces.Part>> parts =
          weights.parts(scope, piece.getKey(), piece.getValue());
      if (parts.isEmpty()) {
        return Optional.empty();
      }
      for (SharedPieces.Part part : parts.get()) {
        if (part.lots().equals(Set.of(lot)) && part.least() > 0) {
          Need like =
              scope.needs().stream()
                  .filter(need -> weights.named(need).equals(piece.getKey()))
                  .findFirst()
                  .orElseThrow();
          needs.add(
              new Need(
                  like.job(),
                  like.due(),
                  1,
                  like.mark(),
                  like.length(),
                  Math.toIntExact(part.least()),
                  like.purpose(),
                  like.rules()));
        }
      }
    }
    return Optional.of(needs);
  }

  /** The least bound of a tree of decisions about packs. */
  private @Nullable Long inScope(Certificate root, BoundScope scope) {
    Set<SortedSet<Integer>> decided = new LinkedHashSet<>();
    collect(root, scope, decided);
    List<Long> most =
        scope.stocks().stream().map(j -> weights.stocks().get(j).mostPacks()).toList();
    Optional<PackGroups> groups = PackGroups.of(List.copyOf(decided), most);
    if (groups.isEmpty()) {
      fault("decisions about the same supplies or about others", "two that share only some");
      return null;
    }
    return inTree(root, scope, groups.get().everything());
  }

  private void collect(Certificate certificate, BoundScope scope, Set<SortedSet<Integer>> decided) {
    if (certificate instanceof Certificate.PackSplit split) {
      decided.add(decidedStocks(split, scope));
      collect(split.fewer(), scope, decided);
      collect(split.more(), scope, decided);
    }
  }

  /** Places of the split's supplies among the scope's stocks. */
  private SortedSet<Integer> decidedStocks(Certificate.PackSplit split, BoundScope scope) {
    SortedSet<Integer> places = new TreeSet<>();
    for (int i = 0; i < scope.stocks().size(); i++) {
      if (split.supplies().contains(weights.stocks().get(scope.stocks().get(i)).key())) {
        places.add(i);
      }
    }
    return places;
  }

  private @Nullable Long inTree(Certificate certificate, BoundScope scope, PackGroups.Range packs) {
    if (certificate instanceof Certificate.PackSplit split) {
      SortedSet<Integer> places = decidedStocks(split, scope);
      Long fewer = inTree(split.fewer(), scope, packs.withAtMost(places, split.packs()));
      Long more = inTree(split.more(), scope, packs.withMoreThan(places, split.packs()));
      return fewer == null ? more : more == null ? fewer : Long.valueOf(Math.min(fewer, more));
    }
    Optional<ScopeWeights.Weighing> weighing = Optional.empty();
    if (certificate instanceof Certificate.RunWeights leaf) {
      weighing = weights.ofAll(leaf, scope);
    } else if (certificate instanceof Certificate.LotWeights leaf) {
      weighing = weights.ofLots(leaf, scope);
    } else {
      fault("weights for every length", certificate.getClass().getSimpleName());
    }
    if (atFault) {
      return null;
    }
    leaves++;
    Long least = packs.isEmpty() || weighing.isEmpty() ? null : leaf(weighing.get(), scope, packs);
    if (least == null) {
      empty++;
    }
    return least;
  }

  private @Nullable Long leaf(
      ScopeWeights.Weighing weighing, BoundScope scope, PackGroups.Range packs) {
    BigInteger sum = weighing.sum();
    if (sum.compareTo(GREATEST_SUM) > 0) {
      fault("weights within 62 bits", "weights that sum to " + sum);
      return null;
    }
    List<BigInteger> gains = new ArrayList<>();
    List<BigInteger> carried = new ArrayList<>();
    List<BigInteger> prices = new ArrayList<>();
    List<LeafBound.StockLine> lines = new ArrayList<>();
    for (int i = 0; i < scope.stocks().size(); i++) {
      Stock stock = weights.stocks().get(scope.stocks().get(i));
      long heaviest = weighing.heaviest().get(i);
      BigInteger pack = product(stock.packSize(), heaviest);
      BigInteger price = product(weighing.scale(), stock.packCost());
      gains.add(price.subtract(pack));
      carried.add(pack.negate());
      prices.add(BigInteger.valueOf(stock.packCost()));
      lines.add(
          new LeafBound.StockLine(
              List.of(stock.key()),
              Length.ofUnits(stock.stick().usable()),
              stock.packCost(),
              stock.packSize(),
              heaviest,
              0,
              BigInteger.ZERO));
    }
    PackGroups.Choice most = packs.cheapest(carried);
    if (most.isFinite() && sum.compareTo(most.sum().negate()) > 0) {
      return null;
    }
    PackGroups.Choice chosen = packs.cheapest(gains);
    BigInteger trivial = packs.cheapest(prices).sum();
    BigInteger bound = trivial;
    BigInteger total = sum;
    if (chosen.isFinite()) {
      total = sum.add(chosen.sum());
      BigInteger[] parts = total.divideAndRemainder(BigInteger.valueOf(weighing.scale()));
      bound = parts[0].add(BigInteger.valueOf(Math.max(0, parts[1].signum()))).max(trivial);
    }
    if (weakest == null || bound.compareTo(weakest.bound()) < 0) {
      weakest =
          new LeafBound(
              weighing.scale(),
              List.of(),
              weights.pieceLines(weighing.shown(), scope),
              lines,
              sum,
              total,
              bound);
    }
    long least = bound.longValueExact();
    boolean isEnough = plan.lowerBound() > 0 && least >= plan.lowerBound();
    if (isEnough || least >= plan.cost()) {
      return least;
    }
    // Packs are whole: the weights may ask for dearer packs than the plain bound tells.
    List<Long> costs = new ArrayList<>();
    scope.stocks().forEach(j -> costs.add(weights.stocks().get(j).packCost()));
    List<BigInteger> carries = carried.stream().map(BigInteger::negate).toList();
    return Math.max(
        least, LeastPacks.cost(packs.kinds(costs, carries), sum, plan.cost()).orElse(0));
  }

  private void fault(String expected, String found) {
    if (!atFault) {
      faults.ofMaterial(Rule.CERTIFICATE, expected, found);
    }
    atFault = true;
  }

  private static BigInteger product(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
