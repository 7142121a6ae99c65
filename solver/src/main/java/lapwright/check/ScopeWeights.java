package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import lapwright.check.BoundCheck.Stock;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.MaterialPlan;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What weights of every length come to in a part of an order: the sum of all that must be cut, at
 * least, and the most that each stick carries. The same weights everywhere, or each lot its own.
 *
 * <p>The class is long because every step of that recomputation stands in one place to be read.
 */
final class ScopeWeights {
  private final MaterialPlan plan;
  private final MaterialOrder order;
  private final BiConsumer<String, String> fault;
  private final List<Supply> supplies = new ArrayList<>();
  private final List<Stock> stocks = new ArrayList<>();
  private long unlimited;
  private long longest;
  private final List<Long> usableOfAll = new ArrayList<>();

  ScopeWeights(MaterialPlan plan, BiConsumer<String, String> fault) {
    this.plan = plan;
    this.order = plan.order();
    this.fault = fault;
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

  List<Stock> stocks() {
    return stocks;
  }

  /** The lot that a stock is of. */
  String lotOf(int stock) {
    return supplies.get(stock).lotKey();
  }

  /** Those of some stocks that are of a lot. */
  List<Integer> stocksOf(List<Integer> indices, String lot) {
    return indices.stream().filter(j -> supplies.get(j).lotKey().equals(lot)).toList();
  }

  /** Plain pieces that may come from any lot, each by itself, by length. */
  SortedMap<Length, Long> free(BoundScope scope) {
    SortedMap<Length, Long> free = new TreeMap<>();
    if (order.material().oneLotPer() == OneLotPer.RUN) {
      scope.needs().forEach(need -> free.merge(named(need), (long) need.total(), Math::addExact));
    }
    return free;
  }

  /** Where the free pieces of a length come from; empty where the decisions leave no way. */
  Optional<List<SharedPieces.Part>> parts(BoundScope scope, Length length, long wanted) {
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

  /**
   * What a leaf's weights come to.
   *
   * @param sum of all that must be cut
   * @param heaviest what a stick of each of the scope's stocks carries at most
   * @param shown the weights that are shown to a reader
   */
  record Weighing(long scale, BigInteger sum, List<Long> heaviest, Certificate.RunWeights shown) {}

  /** True, and told, where some length weighs less than a shorter one. */
  private boolean falls(SortedMap<Length, Long> weights) {
    long before = 0;
    for (long weight : weights.values()) {
      if (weight < before) {
        fault.accept("weights that do not fall from length to length", weight + " after " + before);
        return true;
      }
      before = weight;
    }
    return false;
  }

  /** The same weights wherever something is cut; empty when something cannot be cut at all. */
  Optional<Weighing> ofAll(Certificate.RunWeights weights, BoundScope scope) {
    BigInteger sum = falls(weights.weights()) ? null : weightSum(weights, scope);
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
  Optional<Weighing> ofLots(Certificate.LotWeights leaf, BoundScope scope) {
    if (scope.lotsOf().isEmpty()) {
      fault.accept("weights by lot where lots must not mix", scope.runs().size() + " runs");
      return Optional.empty();
    }
    boolean atFault = false;
    Map<String, Certificate.RunWeights> ofLot = new TreeMap<>();
    for (Certificate.LotWeights.OfLots some : leaf.lots()) {
      atFault |= falls(some.weights());
      for (String lot : some.lots()) {
        if (ofLot.put(lot, new Certificate.RunWeights(leaf.scale(), some.weights(), some.perUnit()))
            != null) {
          fault.accept("weights for each lot once", lot + " twice");
          atFault = true;
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
    Map<String, BoundScope> servedBy = new TreeMap<>();
    stocksOf.forEach(
        (lot, indices) ->
            servedBy.put(
                lot, new BoundScope(perJob ? List.of() : scope.needs(), List.of(), indices)));
    BigInteger sum = freeWeight(scope, ofLot);
    for (Map.Entry<BoundScope.Unit, Set<String>> entry : scope.lotsOf().entrySet()) {
      BigInteger least = null;
      for (String lot : entry.getValue()) {
        List<Integer> indices = stocksOf.get(lot);
        if (indices == null) {
          continue;
        }
        BoundScope alone = alone(entry.getKey(), scope, indices);
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
      BoundScope served = Objects.requireNonNull(servedBy.get(lot));
      Certificate.RunWeights weights = Objects.requireNonNull(ofLot.get(lot));
      heaviest.add(
          heaviestOf
              .computeIfAbsent(lot, key -> new LinkedHashMap<>())
              .computeIfAbsent(stocks.get(j).stick(), stick -> heaviest(weights, served, stick)));
    }
    return Optional.of(new Weighing(leaf.scale(), sum, heaviest, nothing));
  }

  /** The least that the free pieces weigh; null where they cannot be shared out. */
  private @Nullable BigInteger freeWeight(
      BoundScope scope, Map<String, Certificate.RunWeights> ofLot) {
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
      Length length,
      Set<String> lots,
      BoundScope scope,
      Map<String, Certificate.RunWeights> ofLot) {
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
  BoundScope alone(BoundScope.Unit unit, BoundScope scope, List<Integer> indices) {
    boolean perJob = order.material().oneLotPer() == OneLotPer.JOB;
    return new BoundScope(
        scope.needs().stream().filter(need -> perJob && need.job().equals(unit.job())).toList(),
        scope.runs().stream()
            .filter(
                need ->
                    need.job().equals(unit.job())
                        && (perJob || need.run().mark().equals(unit.mark())))
            .toList(),
        indices);
  }

  private static BoundScope together(BoundScope one, BoundScope other) {
    List<Need> needs = new ArrayList<>(one.needs());
    needs.addAll(other.needs());
    List<RunNeed> runs = new ArrayList<>(one.runs());
    runs.addAll(other.runs());
    return new BoundScope(needs, runs, one.stocks());
  }

  /** True where all sticks of a scope together are shorter than what must be cut from them. */
  boolean isTooShort(BoundScope scope) {
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

  List<LeafBound.PieceLine> pieceLines(Certificate.RunWeights weights, BoundScope scope) {
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
  private @Nullable BigInteger weightSum(Certificate.RunWeights weights, BoundScope scope) {
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

  Length named(Need need) {
    return PieceSize.shortest(need, order.saw().kerf()).named(order.saw().kerf());
  }

  /** The greatest weight of what one stick gives. */
  private long heaviest(Certificate.RunWeights weights, BoundScope scope, Stick stick) {
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
  private long quantity(Certificate.RunWeights weights, BoundScope scope, Length listed) {
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

  private static BigInteger product(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
