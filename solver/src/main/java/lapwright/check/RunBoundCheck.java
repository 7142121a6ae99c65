package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.check.BoundCheck.Stock;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Recomputes the lower bound of a material with runs, or with lots that must not mix. As {@link
 * BoundCheck}, with a weight for every length there is, the least weight of a permitted split for
 * every line, and decisions about lots: under them, only lots that some job may still use have
 * sticks, and lots that are bounded by themselves add up.
 *
 * <p>The class is long because every step of the recomputation stands in one place to be read.
 */
final class RunBoundCheck {
  private static final BigInteger GREATEST_SUM = BigInteger.ONE.shiftLeft(Long.SIZE - 2);

  private final MaterialPlan plan;
  private final MaterialOrder order;
  private final Faults faults;
  private final List<Supply> supplies = new ArrayList<>();
  private final List<Stock> stocks = new ArrayList<>();
  private long unlimited;
  private long longest;
  private final List<Long> usableOfAll = new ArrayList<>();
  private int leaves;
  private int empty;
  private @Nullable LeafBound weakest;
  private boolean atFault;

  /** What must come from one lot. */
  private record Unit(String job, String mark) {}

  /**
   * A part of the problem.
   *
   * @param lotsOf lots that each unit may still use
   * @param stocks indices of the stocks that some of it may be cut from
   * @param shared what is decided about plain pieces that belong to no unit
   */
  private record Scope(
      Map<Unit, Set<String>> lotsOf,
      List<Need> needs,
      List<RunNeed> runs,
      List<Integer> stocks,
      SharedPieces shared) {
    /** What is cut from some stocks without further decisions about lots. */
    private Scope(List<Need> needs, List<RunNeed> runs, List<Integer> stocks) {
      this(Map.of(), needs, runs, stocks, SharedPieces.UNDECIDED);
    }
  }

  RunBoundCheck(MaterialPlan plan, Faults faults) {
    this.plan = plan;
    this.order = plan.order();
    this.faults = faults;
    Costs costs = new Costs(order);
    for (Supply supply : order.supplies()) {
      Stick stick = Stick.of(supply, order.material(), order.saw());
      if (!Stick.fitsMachine(supply, order.saw()) || supply.atMost() == 0) {
        continue;
      }
      int most = supply instanceof Supply.Offer offer ? offer.atMostPacks() : supply.atMost();
      if (most > 0) {
        supplies.add(supply);
        stocks.add(
            new Stock(
                supply.key(),
                stick,
                costs.ofPack(supply),
                Costs.packSize(supply),
                most == Integer.MAX_VALUE ? PackGroups.UNLIMITED : most));
      }
      usableOfAll.add(stick.usable());
      longest = Math.max(longest, stick.usable());
      if (most == Integer.MAX_VALUE) {
        unlimited = Math.max(unlimited, stick.usable());
      }
    }
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

  private Scope everything() {
    OneLotPer per = order.material().oneLotPer();
    Set<String> lots = new TreeSet<>();
    supplies.forEach(supply -> lots.add(supply.lotKey()));
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
    for (int j = 0; j < stocks.size(); j++) {
      all.add(j);
    }
    Scope everything = new Scope(lotsOf, order.needs(), order.runs(), all, SharedPieces.UNDECIDED);
    if (per == OneLotPer.NONE) {
      return everything;
    }
    Map<Unit, Set<String>> longEnough = new LinkedHashMap<>();
    lotsOf.forEach(
        (unit, some) -> {
          Set<String> left = new TreeSet<>(some);
          left.removeIf(lot -> isTooShort(alone(unit, everything, stocksOf(all, lot))));
          longEnough.put(unit, left);
        });
    return narrowed(everything, longEnough);
  }

  private List<Integer> stocksOf(List<Integer> indices, String lot) {
    return indices.stream().filter(j -> supplies.get(j).lotKey().equals(lot)).toList();
  }

  /** The least cost of the scope by the certificate; null when it holds no plan. */
  private @Nullable Long bound(Certificate certificate, Scope scope) {
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
      Stock stock = stocks.get(j);
      if (stock.stick().usableAndCut() > 0) {
        reachable.add(stock.packCost(), stock.mostPacks());
      }
    }
    Long least = inScope(certificate, scope);
    return least == null ? null : Long.valueOf(reachable.atLeast(least, plan.cost()));
  }

  private @Nullable Long bound(Certificate.LotSplit split, Scope scope) {
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

  private @Nullable Long bound(Certificate.PieceSplit split, Scope scope) {
    Set<String> lots = new TreeSet<>(split.lots());
    Optional<SharedPieces> fewer = scope.shared().with(split.length(), lots, 0, split.pieces());
    Optional<SharedPieces> more =
        scope.shared().with(split.length(), lots, split.pieces() + 1L, Long.MAX_VALUE);
    if (scope.lotsOf().isEmpty() || free(scope).isEmpty()) {
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

  private static Scope sharing(Scope scope, SharedPieces shared) {
    return new Scope(scope.lotsOf(), scope.needs(), scope.runs(), scope.stocks(), shared);
  }

  /** Plain pieces that may come from any lot, each by itself, by length. */
  private SortedMap<Length, Long> free(Scope scope) {
    SortedMap<Length, Long> free = new TreeMap<>();
    if (order.material().oneLotPer() == OneLotPer.RUN) {
      scope.needs().forEach(need -> free.merge(named(need), (long) need.total(), Math::addExact));
    }
    return free;
  }

  /** Where the free pieces of a length come from; empty where the decisions leave no way. */
  private Optional<List<SharedPieces.Part>> parts(Scope scope, Length length, long wanted) {
    Set<String> lots = new TreeSet<>();
    scope.stocks().forEach(j -> lots.add(supplies.get(j).lotKey()));
    return scope
        .shared()
        .parts(
            length,
            wanted,
            lots,
            (lot, piece) ->
                stocksOf(scope.stocks(), lot).stream()
                    .anyMatch(j -> stocks.get(j).stick().usable() >= piece.units()));
  }

  private Scope narrowed(Scope scope, Unit unit, Set<String> lots) {
    Map<Unit, Set<String>> lotsOf = new LinkedHashMap<>(scope.lotsOf());
    lotsOf.put(unit, lots);
    return narrowed(scope, lotsOf);
  }

  private Scope narrowed(Scope scope, Map<Unit, Set<String>> lotsOf) {
    Set<String> used = new TreeSet<>();
    lotsOf.values().forEach(used::addAll);
    boolean plainIsFree = order.material().oneLotPer() == OneLotPer.RUN && !scope.needs().isEmpty();
    List<Integer> left =
        scope.stocks().stream()
            .filter(j -> plainIsFree || used.contains(supplies.get(j).lotKey()))
            .toList();
    return new Scope(lotsOf, scope.needs(), scope.runs(), left, scope.shared());
  }

  private @Nullable Long bound(Certificate.ByLot byLot, Scope scope) {
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
      Scope alone =
          new Scope(
              perJob ? needs : free.get(),
              scope.runs().stream()
                  .filter(
                      need ->
                          decided.contains(new Unit(need.job(), perJob ? "" : need.run().mark())))
                  .toList(),
              stocksOf(scope.stocks(), lot));
      Long least = bound(entry.getValue(), alone);
      if (least == null) {
        return null;
      }
      sum = Math.addExact(sum, least);
    }
    return sum;
  }

  /** The free pieces that a lot must give; empty where the decisions leave no way to share them. */
  private Optional<List<Need>> freeOf(String lot, Scope scope) {
    List<Need> needs = new ArrayList<>();
    for (Map.Entry<Length, Long> piece : free(scope).entrySet()) {
      Optional<List<SharedPieces.Part>> parts = parts(scope, piece.getKey(), piece.getValue());
      if (parts.isEmpty()) {
        return Optional.empty();
      }
      for (SharedPieces.Part part : parts.get()) {
        if (part.lots().equals(Set.of(lot)) && part.least() > 0) {
          Need like =
              scope.needs().stream()
                  .filter(need -> named(need).equals(piece.getKey()))
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
  private @Nullable Long inScope(Certificate root, Scope scope) {
    Set<SortedSet<Integer>> decided = new LinkedHashSet<>();
    collect(root, scope, decided);
    List<Long> most = scope.stocks().stream().map(j -> stocks.get(j).mostPacks()).toList();
    Optional<PackGroups> groups = PackGroups.of(List.copyOf(decided), most);
    if (groups.isEmpty()) {
      fault("decisions about the same supplies or about others", "two that share only some");
      return null;
    }
    return inTree(root, scope, groups.get().everything());
  }

  private void collect(Certificate certificate, Scope scope, Set<SortedSet<Integer>> decided) {
    if (certificate instanceof Certificate.PackSplit split) {
      decided.add(decidedStocks(split, scope));
      collect(split.fewer(), scope, decided);
      collect(split.more(), scope, decided);
    }
  }

  /** Places of the split's supplies among the scope's stocks. */
  private SortedSet<Integer> decidedStocks(Certificate.PackSplit split, Scope scope) {
    SortedSet<Integer> places = new TreeSet<>();
    for (int i = 0; i < scope.stocks().size(); i++) {
      if (split.supplies().contains(stocks.get(scope.stocks().get(i)).key())) {
        places.add(i);
      }
    }
    return places;
  }

  private @Nullable Long inTree(Certificate certificate, Scope scope, PackGroups.Range packs) {
    if (certificate instanceof Certificate.PackSplit split) {
      SortedSet<Integer> places = decidedStocks(split, scope);
      Long fewer = inTree(split.fewer(), scope, packs.withAtMost(places, split.packs()));
      Long more = inTree(split.more(), scope, packs.withMoreThan(places, split.packs()));
      return fewer == null ? more : more == null ? fewer : Long.valueOf(Math.min(fewer, more));
    }
    Optional<Weighing> weighing = Optional.empty();
    if (certificate instanceof Certificate.RunWeights weights) {
      weighing = ofAll(weights, scope);
    } else if (certificate instanceof Certificate.LotWeights weights) {
      weighing = ofLots(weights, scope);
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

  /**
   * What a leaf's weights come to.
   *
   * @param sum of all that must be cut
   * @param heaviest what a stick of each of the scope's stocks carries at most
   * @param shown the weights that are shown to a reader
   */
  private record Weighing(
      long scale, BigInteger sum, List<Long> heaviest, Certificate.RunWeights shown) {}

  private void checkThatNoneFalls(SortedMap<Length, Long> weights) {
    long before = 0;
    for (long weight : weights.values()) {
      if (weight < before) {
        fault("weights that do not fall from length to length", weight + " after " + before);
        return;
      }
      before = weight;
    }
  }

  /** The same weights wherever something is cut; empty when something cannot be cut at all. */
  private Optional<Weighing> ofAll(Certificate.RunWeights weights, Scope scope) {
    checkThatNoneFalls(weights.weights());
    BigInteger sum = atFault ? null : weightSum(weights, scope);
    if (sum == null) {
      return Optional.empty();
    }
    Map<Stick, Long> heaviestOf = new LinkedHashMap<>();
    List<Long> heaviest = new ArrayList<>();
    for (int j : scope.stocks()) {
      heaviest.add(
          heaviestOf.computeIfAbsent(
              stocks.get(j).stick(), stick -> heaviest(weights, scope, stick)));
    }
    return Optional.of(new Weighing(weights.scale(), sum, heaviest, weights));
  }

  /**
   * Weights by lot. A job or run adds the least that it weighs in a lot that is left to it, a plain
   * piece that may come from any lot the least that it weighs in one with a stick as long, as far
   * as decisions about such pieces allow.
   */
  private Optional<Weighing> ofLots(Certificate.LotWeights leaf, Scope scope) {
    if (scope.lotsOf().isEmpty()) {
      fault("weights by lot where lots must not mix", scope.runs().size() + " runs");
      return Optional.empty();
    }
    Map<String, Certificate.RunWeights> ofLot = new TreeMap<>();
    for (Certificate.LotWeights.OfLots some : leaf.lots()) {
      checkThatNoneFalls(some.weights());
      for (String lot : some.lots()) {
        if (ofLot.put(lot, new Certificate.RunWeights(leaf.scale(), some.weights(), some.perUnit()))
            != null) {
          fault("weights for each lot once", lot + " twice");
        }
      }
    }
    Map<String, List<Integer>> stocksOf = new TreeMap<>();
    for (int j : scope.stocks()) {
      stocksOf.computeIfAbsent(supplies.get(j).lotKey(), lot -> new ArrayList<>()).add(j);
    }
    Certificate.RunWeights nothing = new Certificate.RunWeights(leaf.scale(), new TreeMap<>(), 0);
    stocksOf.keySet().forEach(lot -> ofLot.putIfAbsent(lot, nothing));
    if (atFault) {
      return Optional.empty();
    }
    boolean perJob = order.material().oneLotPer() == OneLotPer.JOB;
    Map<String, Scope> servedBy = new TreeMap<>();
    stocksOf.forEach(
        (lot, indices) ->
            servedBy.put(lot, new Scope(perJob ? List.of() : scope.needs(), List.of(), indices)));
    BigInteger sum = freeWeight(scope, ofLot);
    for (Map.Entry<Unit, Set<String>> entry : scope.lotsOf().entrySet()) {
      BigInteger least = null;
      for (String lot : entry.getValue()) {
        List<Integer> indices = stocksOf.get(lot);
        if (indices == null) {
          continue;
        }
        Scope alone = alone(entry.getKey(), scope, indices);
        servedBy.computeIfPresent(lot, (key, served) -> together(served, alone));
        BigInteger here = weightSum(Objects.requireNonNull(ofLot.get(lot)), alone);
        least = least == null ? here : here == null ? least : least.min(here);
      }
      sum = sum == null || least == null ? null : sum.add(least);
    }
    if (sum == null) {
      return Optional.empty();
    }
    List<Long> heaviest = new ArrayList<>();
    Map<String, Map<Stick, Long>> heaviestOf = new TreeMap<>();
    for (int j : scope.stocks()) {
      String lot = supplies.get(j).lotKey();
      Scope served = Objects.requireNonNull(servedBy.get(lot));
      Certificate.RunWeights weights = Objects.requireNonNull(ofLot.get(lot));
      heaviest.add(
          heaviestOf
              .computeIfAbsent(lot, key -> new LinkedHashMap<>())
              .computeIfAbsent(stocks.get(j).stick(), stick -> heaviest(weights, served, stick)));
    }
    return Optional.of(new Weighing(leaf.scale(), sum, heaviest, nothing));
  }

  /** The least that the free pieces weigh; null where they cannot be shared out. */
  private @Nullable BigInteger freeWeight(Scope scope, Map<String, Certificate.RunWeights> ofLot) {
    record Open(BigInteger each, long pieces) {}
    BigInteger sum = BigInteger.ZERO;
    for (Map.Entry<Length, Long> piece : free(scope).entrySet()) {
      Optional<List<SharedPieces.Part>> parts = parts(scope, piece.getKey(), piece.getValue());
      if (parts.isEmpty()) {
        return null;
      }
      List<Open> open = new ArrayList<>();
      long left = piece.getValue();
      for (SharedPieces.Part part : parts.get()) {
        if (part.most() > 0) {
          BigInteger each = leastWeight(piece.getKey(), part.lots(), scope, ofLot);
          sum = sum.add(each.multiply(BigInteger.valueOf(part.least())));
          left -= part.least();
          open.add(new Open(each, part.most() - part.least()));
        }
      }
      open.sort(Comparator.comparing(Open::each));
      for (Open each : open) {
        long taken = Math.min(left, each.pieces());
        sum = sum.add(each.each().multiply(BigInteger.valueOf(taken)));
        left -= taken;
      }
    }
    return sum;
  }

  /** The least that a piece weighs in those of some lots that have a stick as long. */
  private BigInteger leastWeight(
      Length length, Set<String> lots, Scope scope, Map<String, Certificate.RunWeights> ofLot) {
    BigInteger least = null;
    for (String lot : lots) {
      boolean gives =
          stocksOf(scope.stocks(), lot).stream()
              .anyMatch(j -> stocks.get(j).stick().usable() >= length.units());
      Certificate.RunWeights weights = ofLot.get(lot);
      if (gives && weights != null) {
        BigInteger here =
            BigInteger.valueOf(new StepFunction(weights.weights()).at(length.units()))
                .add(product(weights.perUnit(), length.units() + order.saw().kerf().units()));
        least = least == null ? here : least.min(here);
      }
    }
    return Objects.requireNonNull(least);
  }

  /** What must come from one lot, cut from some stocks alone. */
  private Scope alone(Unit unit, Scope scope, List<Integer> indices) {
    boolean perJob = order.material().oneLotPer() == OneLotPer.JOB;
    return new Scope(
        scope.needs().stream().filter(need -> perJob && need.job().equals(unit.job())).toList(),
        scope.runs().stream()
            .filter(
                need ->
                    need.job().equals(unit.job())
                        && (perJob || need.run().mark().equals(unit.mark())))
            .toList(),
        indices);
  }

  private static Scope together(Scope one, Scope other) {
    List<Need> needs = new ArrayList<>(one.needs());
    needs.addAll(other.needs());
    List<RunNeed> runs = new ArrayList<>(one.runs());
    runs.addAll(other.runs());
    return new Scope(needs, runs, one.stocks());
  }

  /** True where all sticks of a scope together are shorter than what must be cut from them. */
  private boolean isTooShort(Scope scope) {
    BigInteger sum = weightSum(new Certificate.RunWeights(1, new TreeMap<>(), 1), scope);
    if (sum == null) {
      return true;
    }
    BigInteger length = BigInteger.ZERO;
    for (int j : scope.stocks()) {
      Stock stock = stocks.get(j);
      long capacity = Math.max(0, stock.stick().usableAndCut());
      if (stock.mostPacks() == PackGroups.UNLIMITED && capacity > 0) {
        return false;
      }
      if (capacity > 0) {
        length =
            length.add(
                product(stock.mostPacks(), stock.packSize())
                    .multiply(BigInteger.valueOf(capacity)));
      }
    }
    return sum.compareTo(length) > 0;
  }

  private @Nullable Long leaf(Weighing weights, Scope scope, PackGroups.Range packs) {
    BigInteger sum = weights.sum();
    if (sum.compareTo(GREATEST_SUM) > 0) {
      fault("weights within 62 bits", "weights that sum to " + sum);
      return null;
    }
    List<BigInteger> gains = new ArrayList<>();
    List<BigInteger> carried = new ArrayList<>();
    List<BigInteger> prices = new ArrayList<>();
    List<LeafBound.StockLine> lines = new ArrayList<>();
    for (int i = 0; i < scope.stocks().size(); i++) {
      Stock stock = stocks.get(scope.stocks().get(i));
      long heaviest = weights.heaviest().get(i);
      BigInteger pack = product(stock.packSize(), heaviest);
      BigInteger price = product(weights.scale(), stock.packCost());
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
      BigInteger[] parts = total.divideAndRemainder(BigInteger.valueOf(weights.scale()));
      bound = parts[0].add(BigInteger.valueOf(Math.max(0, parts[1].signum()))).max(trivial);
    }
    if (weakest == null || bound.compareTo(weakest.bound()) < 0) {
      weakest =
          new LeafBound(
              weights.scale(),
              List.of(),
              pieceLines(weights.shown(), scope),
              lines,
              sum,
              total,
              bound);
    }
    return bound.longValueExact();
  }

  private List<LeafBound.PieceLine> pieceLines(Certificate.RunWeights weights, Scope scope) {
    SortedMap<Length, Long> quantities = new TreeMap<>();
    weights.weights().keySet().forEach(length -> quantities.put(length, 0L));
    scope.needs().forEach(need -> quantities.merge(named(need), (long) need.total(), Long::sum));
    StepFunction step = new StepFunction(weights.weights());
    List<LeafBound.PieceLine> lines = new ArrayList<>();
    quantities.forEach(
        (length, quantity) ->
            lines.add(new LeafBound.PieceLine(length, quantity, step.at(length.units()))));
    return lines;
  }

  /** Weight of all pieces and the least of all lines; null when something cannot be cut at all. */
  private @Nullable BigInteger weightSum(Certificate.RunWeights weights, Scope scope) {
    StepFunction step = new StepFunction(weights.weights());
    long kerf = order.saw().kerf().units();
    List<Long> usable = scope.stocks().stream().map(j -> stocks.get(j).stick().usable()).toList();
    long most = usable.stream().mapToLong(Long::longValue).max().orElse(0);
    BigInteger sum = BigInteger.ZERO;
    for (Need need : scope.needs()) {
      long length = named(need).units();
      if (length > most) {
        return null;
      }
      BigInteger each =
          BigInteger.valueOf(step.at(length)).add(product(weights.perUnit(), length + kerf));
      sum = sum.add(each.multiply(BigInteger.valueOf(need.total())));
    }
    for (RunNeed need : scope.runs()) {
      for (RunSpan span : spans(need)) {
        int pieces = SpanSplits.mostPieces(span, unlimited, longest, usableOfAll);
        long least =
            new SpanSplits(span, usable, order.saw().hold().units(), pieces)
                .leastWeight(step, weights.perUnit(), kerf);
        if (least == Long.MAX_VALUE) {
          return null;
        }
        sum = sum.add(product(least, need.lines()));
      }
    }
    return sum;
  }

  /**
   * The stretches of a run. Where its gaps stand is taken from the plan, which the check of runs
   * holds to the run's rules: the bound is that of plans with gaps there.
   */
  private List<RunSpan> spans(RunNeed need) {
    List<RunSpan> spans = new ArrayList<>();
    long from = 0;
    long gap =
        need.run().rules().expansion() == null
            ? 0
            : Objects.requireNonNull(need.run().rules().expansion()).gap().units();
    for (lapwright.plan.RunLine line : plan.runs()) {
      if (line.job().equals(need.job())
          && line.mark().equals(need.run().mark())
          && line.line() == need.firstLine()) {
        long left = need.run().rules().closing().leaveLong().units();
        long end =
            line.pieces().get(line.pieces().size() - 1).end().units()
                - (line.closingAt() == lapwright.shop.JointRules.Where.END ? left : 0);
        long to = Math.min(need.run().length().units(), end + gap / 2);
        if (to > from && to < need.run().length().units()) {
          spans.add(RunSpan.between(need.run(), from, to));
          from = to;
        }
      }
    }
    spans.add(RunSpan.between(need.run(), from, need.run().length().units()));
    return spans;
  }

  private Length named(Need need) {
    return PieceSize.shortest(need, order.saw().kerf()).named(order.saw().kerf());
  }

  /** The greatest weight of what one stick gives. */
  private long heaviest(Certificate.RunWeights weights, Scope scope, Stick stick) {
    StepFunction step = new StepFunction(weights.weights());
    long kerf = order.saw().kerf().units();
    List<Heaviest.Item> items = new ArrayList<>();
    for (Length length : weights.weights().keySet()) {
      items.add(
          new Heaviest.Item(
              Math.addExact(length.units(), kerf),
              step.at(length.units()),
              quantity(weights, scope, length),
              true));
    }
    long capacity = Math.max(0, stick.usableAndCut());
    return Math.addExact(
        Heaviest.of(items, stick), Math.multiplyExact(weights.perUnit(), capacity));
  }

  /** Pieces that weigh as much as a listed length, at most; without limit where runs give them. */
  private long quantity(Certificate.RunWeights weights, Scope scope, Length listed) {
    if (!scope.runs().isEmpty()) {
      return Integer.MAX_VALUE;
    }
    long quantity = 0;
    for (Need need : scope.needs()) {
      SortedMap<Length, Long> upTo =
          weights.weights().headMap(Length.ofUnits(named(need).units() + 1));
      if (!upTo.isEmpty() && upTo.lastKey().equals(listed)) {
        quantity += need.total();
      }
    }
    return quantity;
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
