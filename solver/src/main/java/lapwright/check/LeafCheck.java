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
import lapwright.check.BoundCheck.Stock;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.shop.Saw;

/**
 * Works out one leaf of a certificate. With scale D, weights W_i, quantities d_i, and for each
 * stock j its pack cost P_j, pack size k_j, packs between L_j and Y_j, and N_j the greatest weight
 * of what one stick gives,
 *
 * <p>cost &gt;= ceil((sum_i d_i W_i + sum_j min((D P_j - k_j N_j) L_j, (D P_j - k_j N_j) Y_j)) /
 * D).
 *
 * <p>(Charge D P_j a pack, pay W_i a piece: no stick is paid more than N_j.) Where Y_j has no limit
 * its factor must not be negative. When sum_i d_i W_i exceeds sum_j k_j Y_j N_j, all the sticks
 * there cannot carry the pieces, and the leaf holds no plan.
 */
final class LeafCheck {
  private static final BigInteger GREATEST_SUM = BigInteger.ONE.shiftLeft(Long.SIZE - 2);
  private static final int MOST_REMEMBERED = 64;

  private final Saw saw;
  private final List<Stock> stocks;
  private final SortedMap<Length, Long> quantities;
  private final Set<Stick> kinds = new LinkedHashSet<>();

  /** Greatest weight by kind of stick, by weights: leaves often share their weights. */
  private final Map<SortedMap<Length, Long>, Map<Stick, Long>> remembered = new HashMap<>();

  LeafCheck(Saw saw, List<Stock> stocks, SortedMap<Length, Long> quantities) {
    this.saw = saw;
    this.stocks = List.copyOf(stocks);
    this.quantities = quantities;
    for (Stock stock : stocks) {
      kinds.add(stock.stick());
    }
  }

  /**
   * A leaf, worked out.
   *
   * @param heaviest by stock
   * @param terms by stock
   * @param trivial cost of the least packs alone
   * @param overweight index of an unlimited stock that carries more than it costs, or -1
   */
  record Leaf(
      Certificate.Weights weights,
      PackRange packs,
      List<Long> heaviest,
      List<BigInteger> terms,
      BigInteger weightSum,
      BigInteger trivial,
      int overweight) {
    BigInteger total() {
      BigInteger total = weightSum;
      for (BigInteger term : terms) {
        total = total.add(term);
      }
      return total;
    }

    BigInteger bound() {
      if (overweight >= 0) {
        return trivial;
      }
      BigInteger scale = BigInteger.valueOf(weights.scale());
      BigInteger[] parts = total().divideAndRemainder(scale);
      return parts[0].add(BigInteger.valueOf(Math.max(0, parts[1].signum()))).max(trivial);
    }
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

  /** True when all the sticks that can be had cannot carry the pieces. */
  boolean isSupplyShort(Leaf leaf) {
    BigInteger carried = BigInteger.ZERO;
    for (int i = 0; i < stocks.size(); i++) {
      if (leaf.heaviest().get(i) > 0) {
        if (!leaf.packs().isLimited(i)) {
          return false;
        }
        carried =
            carried.add(
                product(stocks.get(i).packSize(), leaf.packs().most(i), leaf.heaviest().get(i)));
      }
    }
    return leaf.weightSum().compareTo(carried) > 0;
  }

  Leaf workOut(Certificate.Weights weights, PackRange packs) {
    if (remembered.size() > MOST_REMEMBERED) {
      remembered.clear();
    }
    Map<Stick, Long> byKind = remembered.computeIfAbsent(weights.weights(), this::heaviestByKind);
    List<Long> heaviest = new ArrayList<>();
    List<BigInteger> terms = new ArrayList<>();
    BigInteger trivial = BigInteger.ZERO;
    int overweight = -1;
    for (int i = 0; i < stocks.size(); i++) {
      Stock stock = stocks.get(i);
      long carried = Objects.requireNonNull(byKind.get(stock.stick()));
      BigInteger gain =
          product(weights.scale(), stock.packCost(), 1)
              .subtract(product(stock.packSize(), carried, 1));
      if (gain.signum() < 0 && !packs.isLimited(i)) {
        overweight = i;
      }
      int counted = gain.signum() < 0 ? packs.most(i) : packs.least(i);
      heaviest.add(carried);
      terms.add(gain.multiply(BigInteger.valueOf(counted)));
      trivial = trivial.add(product(stock.packCost(), packs.least(i), 1));
    }
    return new Leaf(weights, packs, heaviest, terms, weightSum(weights), trivial, overweight);
  }

  private Map<Stick, Long> heaviestByKind(SortedMap<Length, Long> weights) {
    List<Heaviest.Item> items = new ArrayList<>();
    quantities.forEach(
        (length, quantity) ->
            items.add(
                new Heaviest.Item(
                    Math.addExact(length.units(), saw.kerf().units()),
                    weights.getOrDefault(length, 0L),
                    quantity,
                    !length.isShorterThan(saw.hold()))));
    Map<Stick, Long> heaviest = new HashMap<>();
    kinds.forEach(stick -> heaviest.put(stick, Heaviest.of(items, stick)));
    return heaviest;
  }

  private BigInteger weightSum(Certificate.Weights weights) {
    BigInteger sum = BigInteger.ZERO;
    for (Map.Entry<Length, Long> entry : quantities.entrySet()) {
      long weight = weights.weights().getOrDefault(entry.getKey(), 0L);
      sum = sum.add(product(entry.getValue(), weight, 1));
    }
    return sum;
  }

  /** The lines of a leaf, for a reader. */
  LeafBound describe(Leaf leaf) {
    List<LeafBound.PieceLine> pieces = new ArrayList<>();
    quantities.forEach(
        (length, quantity) ->
            pieces.add(
                new LeafBound.PieceLine(
                    length, quantity, leaf.weights().weights().getOrDefault(length, 0L))));
    Map<LeafBound.StockLine, List<Integer>> alike = new LinkedHashMap<>();
    for (int i = 0; i < stocks.size(); i++) {
      alike
          .computeIfAbsent(line(leaf, i, List.of(), leaf.terms().get(i)), k -> new ArrayList<>())
          .add(i);
    }
    List<LeafBound.StockLine> stock = new ArrayList<>();
    alike.forEach(
        (line, indices) ->
            stock.add(
                line(
                    leaf,
                    indices.get(0),
                    indices.stream().map(i -> stocks.get(i).key()).toList(),
                    line.term().multiply(BigInteger.valueOf(indices.size())))));
    return new LeafBound(
        leaf.weights().scale(), pieces, stock, leaf.weightSum(), leaf.total(), leaf.bound());
  }

  private LeafBound.StockLine line(Leaf leaf, int index, List<String> keys, BigInteger term) {
    Stock stock = stocks.get(index);
    return new LeafBound.StockLine(
        keys,
        Length.ofUnits(stock.stick().usable()),
        stock.packCost(),
        stock.packSize(),
        leaf.packs().least(index),
        leaf.packs().most(index),
        leaf.heaviest().get(index),
        term);
  }

  private static BigInteger product(long a, long b, long c) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b)).multiply(BigInteger.valueOf(c));
  }
}
