package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.check.BoundCheck.Stock;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.Refutation;
import lapwright.shop.Saw;

/**
 * Works out one leaf of a certificate. With scale D, weights W_i, quantities d_i, and for each
 * stock j its pack cost P_j, pack size k_j, packs y_j, and N_j the greatest weight of what one
 * stick gives,
 *
 * <p>cost &gt;= ceil((sum_i d_i W_i + min sum_j (D P_j - k_j N_j) y_j) / D),
 *
 * <p>the minimum over all packs that can be had under the decisions above the leaf. (Charge D P_j a
 * pack, pay W_i a piece: no stick is paid more than N_j.) When sum_i d_i W_i exceeds the greatest
 * sum_j k_j N_j y_j over the same packs, they cannot carry the pieces, and the leaf holds no plan.
 */
final class LeafCheck {
  private static final BigInteger GREATEST_SUM = BigInteger.ONE.shiftLeft(Long.SIZE - 2);
  private static final int MOST_REMEMBERED = 64;

  private final Saw saw;
  private final List<Stock> stocks;
  private final SortedMap<Length, Long> quantities;
  private final Set<Length> notGripped;
  private final List<BigInteger> packCosts = new ArrayList<>();
  private final Set<Stick> kinds = new LinkedHashSet<>();

  /** Greatest weight by kind of stick, by weights: leaves often share their weights. */
  private final Map<SortedMap<Length, Long>, Map<Stick, Long>> remembered = new HashMap<>();

  /**
   * @param quantities by the length that certificates know pieces by, see {@link PieceSize#named}
   * @param notGripped the lengths at which the vise cannot hold every piece at the last cut
   */
  LeafCheck(
      Saw saw, List<Stock> stocks, SortedMap<Length, Long> quantities, Set<Length> notGripped) {
    this.saw = saw;
    this.notGripped = Set.copyOf(notGripped);
    this.stocks = List.copyOf(stocks);
    this.quantities = quantities;
    for (Stock stock : stocks) {
      kinds.add(stock.stick());
      packCosts.add(BigInteger.valueOf(stock.packCost()));
    }
  }

  /**
   * A leaf, worked out.
   *
   * @param heaviest N by stock
   * @param gains D P - k N by stock
   * @param chosen the packs with the least sum of gains
   * @param trivial cost of the cheapest packs that the decisions ask for
   * @param supplyShort true when no packs can carry the pieces
   */
  record Leaf(
      Certificate.Weights weights,
      PackGroups.Range packs,
      List<Long> heaviest,
      List<BigInteger> gains,
      PackGroups.Choice chosen,
      BigInteger weightSum,
      BigInteger trivial,
      boolean supplyShort) {
    BigInteger total() {
      return weightSum.add(chosen.sum());
    }

    BigInteger bound() {
      if (!chosen.isFinite()) {
        return trivial;
      }
      BigInteger[] parts = total().divideAndRemainder(BigInteger.valueOf(weights.scale()));
      return parts[0].add(BigInteger.valueOf(Math.max(0, parts[1].signum()))).max(trivial);
    }
  }

  /**
   * What whole packs cost at least that carry the leaf's weights, at most {@code ceiling}; 0 when
   * that takes too long to say.
   */
  long leastWholePacks(Leaf leaf, long ceiling) {
    List<Long> costs = stocks.stream().map(Stock::packCost).toList();
    List<BigInteger> carries = new ArrayList<>();
    for (int i = 0; i < stocks.size(); i++) {
      carries.add(product(stocks.get(i).packSize(), leaf.heaviest().get(i)));
    }
    return LeastPacks.cost(leaf.packs().kinds(costs, carries), leaf.weightSum(), ceiling).orElse(0);
  }

  /** What is wrong with the weights, in words; empty when nothing is. */
  String faultOf(Certificate.Weights weights) {
    for (Map.Entry<Length, Long> entry : weights.weights().entrySet()) {
      if (entry.getValue() < 0) {
        return "a weight of " + entry.getValue() + " at " + Faults.mm(entry.getKey().units());
      }
      if (!quantities.containsKey(entry.getKey())) {
        return "a weight at " + Faults.mm(entry.getKey().units()) + ", which no job needs";
      }
    }
    BigInteger sum = weightSum(weights);
    return sum.compareTo(GREATEST_SUM) > 0 ? "weights that sum to " + sum : "";
  }

  Leaf workOut(Certificate.Weights weights, PackGroups.Range packs) {
    if (remembered.size() > MOST_REMEMBERED) {
      remembered.clear();
    }
    Map<Stick, Long> byKind = remembered.computeIfAbsent(weights.weights(), this::heaviestByKind);
    List<Long> heaviest = new ArrayList<>();
    List<BigInteger> gains = new ArrayList<>();
    List<BigInteger> carried = new ArrayList<>();
    for (Stock stock : stocks) {
      long most = Objects.requireNonNull(byKind.get(stock.stick()));
      heaviest.add(most);
      BigInteger aPack = product(stock.packSize(), most);
      gains.add(product(weights.scale(), stock.packCost()).subtract(aPack));
      carried.add(aPack.negate());
    }
    BigInteger weightSum = weightSum(weights);
    PackGroups.Choice mostCarried = packs.cheapest(carried);
    boolean supplyShort =
        mostCarried.isFinite() && weightSum.compareTo(mostCarried.sum().negate()) > 0;
    return new Leaf(
        weights,
        packs,
        heaviest,
        gains,
        packs.cheapest(gains),
        weightSum,
        packs.cheapest(packCosts).sum(),
        supplyShort);
  }

  /** Works out a proof that the packs of a leaf do not suffice. */
  NoPlanCheck.Outcome follow(Refutation refutation, PackGroups.Range packs) {
    NoPlanCheck check = new NoPlanCheck(quantities, saw.kerf().units());
    record Look(long capacity, int packSize, boolean holdsAny) {}
    List<Look> looks =
        stocks.stream()
            .map(
                stock ->
                    new Look(
                        check.capacity(stock.stick()), stock.packSize(), holdsAny(stock.stick())))
            .toList();
    List<NoPlanCheck.Kind> kinds = new ArrayList<>();
    for (PackGroups.Range.Limit limit : packs.limits(looks)) {
      Look look = looks.get(limit.stock());
      if (look.holdsAny() && limit.packs() == PackGroups.UNLIMITED) {
        return NoPlanCheck.Outcome.fault(stocks.get(limit.stock()).key() + " has no limit there");
      }
      if (look.holdsAny()) {
        kinds.add(
            new NoPlanCheck.Kind(
                look.capacity(), Math.multiplyExact(limit.packs(), look.packSize())));
      }
    }
    return check.follow(refutation, kinds);
  }

  private Map<Stick, Long> heaviestByKind(SortedMap<Length, Long> weights) {
    List<Heaviest.Item> items = items(weights);
    Map<Stick, Long> heaviest = new HashMap<>();
    kinds.forEach(stick -> heaviest.put(stick, Heaviest.of(items, stick)));
    return heaviest;
  }

  /** True when some piece can be cut from such a stick at all. */
  boolean holdsAny(Stick stick) {
    SortedMap<Length, Long> ones = new TreeMap<>();
    quantities.keySet().forEach(length -> ones.put(length, 1L));
    return items(ones).stream().anyMatch(item -> Heaviest.of(List.of(item), stick) > 0);
  }

  private List<Heaviest.Item> items(SortedMap<Length, Long> weights) {
    List<Heaviest.Item> items = new ArrayList<>();
    quantities.forEach(
        (length, quantity) ->
            items.add(
                new Heaviest.Item(
                    Math.addExact(length.units(), saw.kerf().units()),
                    weights.getOrDefault(length, 0L),
                    quantity,
                    !notGripped.contains(length))));
    return items;
  }

  private BigInteger weightSum(Certificate.Weights weights) {
    BigInteger sum = BigInteger.ZERO;
    for (Map.Entry<Length, Long> entry : quantities.entrySet()) {
      long weight = weights.weights().getOrDefault(entry.getKey(), 0L);
      sum = sum.add(product(entry.getValue(), weight));
    }
    return sum;
  }

  /** What is supposed above a leaf. */
  List<LeafBound.Decision> decisions(PackGroups.Range packs, PackGroups groups) {
    List<LeafBound.Decision> decisions = new ArrayList<>();
    for (int group = 0; group < groups.count(); group++) {
      long least = packs.least(group);
      long most = packs.most(group);
      if (least > 0 || most != PackGroups.UNLIMITED) {
        List<String> keys =
            groups.stocksOf(group).stream().map(stock -> stocks.get(stock).key()).toList();
        decisions.add(new LeafBound.Decision(keys, least, most));
      }
    }
    return decisions;
  }

  /** The lines of a leaf, for a reader. */
  LeafBound describe(Leaf leaf, PackGroups groups) {
    List<LeafBound.PieceLine> pieces = new ArrayList<>();
    quantities.forEach(
        (length, quantity) ->
            pieces.add(
                new LeafBound.PieceLine(
                    length, quantity, leaf.weights().weights().getOrDefault(length, 0L))));
    return new LeafBound(
        leaf.weights().scale(),
        decisions(leaf.packs(), groups),
        pieces,
        stockLines(leaf),
        leaf.weightSum(),
        leaf.total(),
        leaf.bound());
  }

  private List<LeafBound.StockLine> stockLines(Leaf leaf) {
    Map<LeafBound.StockLine, List<Integer>> alike = new LinkedHashMap<>();
    for (int i = 0; i < stocks.size(); i++) {
      alike.computeIfAbsent(stockLine(leaf, List.of(i), false), line -> new ArrayList<>()).add(i);
    }
    return alike.values().stream().map(indices -> stockLine(leaf, indices, true)).toList();
  }

  /** A line for equal stocks; without keys, packs and term what tells them from others. */
  private LeafBound.StockLine stockLine(Leaf leaf, List<Integer> indices, boolean full) {
    int first = indices.get(0);
    Stock stock = stocks.get(first);
    long packs = 0;
    for (int index : indices) {
      long more = leaf.chosen().packs().get(index);
      packs =
          more == PackGroups.UNLIMITED || packs == PackGroups.UNLIMITED
              ? PackGroups.UNLIMITED
              : Math.addExact(packs, more);
    }
    return new LeafBound.StockLine(
        full ? indices.stream().map(index -> stocks.get(index).key()).toList() : List.of(),
        Length.ofUnits(stock.stick().usable()),
        stock.packCost(),
        stock.packSize(),
        leaf.heaviest().get(first),
        full ? packs : 0,
        full ? leaf.gains().get(first).multiply(BigInteger.valueOf(packs)) : BigInteger.ZERO);
  }

  private static BigInteger product(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
