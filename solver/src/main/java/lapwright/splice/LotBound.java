package lapwright.splice;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapwright.exact.PackLimits;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * The lower bound that weights of several lots prove, exactly: as {@link JointBound}, but that a
 * stick carries the weights of its lot, a unit adds the least that it weighs in a lot that is left
 * to it, and a free piece the least that it weighs in a lot that gives it.
 */
final class LotBound {
  private static final BigInteger LARGE = BigInteger.valueOf(1_000_000);

  private final LotParts parts;

  /** A bound and the weights that prove it, one a lot, of one scale. */
  record Proven(long bound, List<StepWeights> weights) {}

  LotBound(LotParts parts) {
    this.parts = parts;
  }

  /**
   * The bound.
   *
   * @param given weights of each lot, of one scale
   * @param limits packs of each lot
   * @param open which lots are left to each unit
   * @param free how many free pieces come from each lot
   */
  Proven of(List<StepWeights> given, List<PackLimits> limits, boolean[][] open, FreeLimits free) {
    BigInteger costUnit = BigInteger.valueOf(parts.costUnit());
    BigInteger scale = BigInteger.valueOf(given.get(0).scale());
    List<long[]> greatest = new ArrayList<>();
    boolean unbounded = false;
    for (int l = 0; l < parts.lots(); l++) {
      long[] most = greatest(l, given.get(l), open);
      greatest.add(most);
      for (int j = 0; j < most.length; j++) {
        Stock stock = parts.lot(l).stocks().get(j);
        BigInteger carried = times(most[j], stock.packSize());
        if (!limits.get(l).isLimited(j) && stock.packCost() > 0) {
          BigInteger cost = BigInteger.valueOf(stock.packCost());
          scale = scale.max(carried.add(cost).subtract(BigInteger.ONE).divide(cost));
        } else if (!limits.get(l).isLimited(j)) {
          unbounded |= carried.signum() > 0;
        }
      }
    }
    if (scale.divide(costUnit).compareTo(LARGE) > 0) {
      scale = scale.add(costUnit).subtract(BigInteger.ONE).divide(costUnit).multiply(costUnit);
    }
    if (scale.bitLength() > 62) {
      return new Proven(0, given);
    }
    long common = scale.longValueExact();
    List<StepWeights> weights = given.stream().map(lot -> lot.atScale(common)).toList();
    BigInteger demanded = demanded(weights, open, free);
    if (demanded == null) {
      return new Proven(JointBound.IMPOSSIBLE, weights);
    }
    BigInteger sum = demanded;
    BigInteger carriedInAll = BigInteger.ZERO;
    boolean finite = true;
    for (int l = 0; l < parts.lots(); l++) {
      PackLimits packs = limits.get(l);
      for (int j = 0; j < greatest.get(l).length; j++) {
        Stock stock = parts.lot(l).stocks().get(j);
        BigInteger carries = times(greatest.get(l)[j], stock.packSize());
        BigInteger slack = scale.multiply(BigInteger.valueOf(stock.packCost())).subtract(carries);
        boolean wantsMost = slack.signum() < 0;
        if (packs.isLimited(j) || !wantsMost) {
          int taken = wantsMost ? packs.most(j) : packs.least(j);
          sum = sum.add(slack.multiply(BigInteger.valueOf(taken)));
        }
        if (packs.isLimited(j)) {
          carriedInAll = carriedInAll.add(carries.multiply(BigInteger.valueOf(packs.most(j))));
        } else if (carries.signum() > 0) {
          finite = false;
        }
      }
    }
    if (finite && demanded.compareTo(carriedInAll) > 0) {
      return new Proven(JointBound.IMPOSSIBLE, weights);
    }
    if (unbounded || sum.signum() <= 0) {
      return new Proven(0, weights);
    }
    return new Proven(
        sum.add(scale).subtract(BigInteger.ONE).divide(scale).longValueExact(), weights);
  }

  /** What must be carried; null when something cannot come from any lot that is left to it. */
  private @Nullable BigInteger demanded(
      List<StepWeights> weights, boolean[][] open, FreeLimits free) {
    BigInteger demanded = BigInteger.ZERO;
    if (free.isEmpty()) {
      return null;
    }
    for (int i = 0; i < parts.free().size(); i++) {
      demanded = demanded.add(demanded(i, weights, free));
    }
    for (int u = 0; u < parts.units(); u++) {
      BigInteger least = null;
      for (int l = 0; l < parts.lots(); l++) {
        Optional<LotParts.Part> part = parts.part(u, l);
        BigInteger here =
            open[u][l] && part.isPresent() ? demanded(part.get(), weights.get(l)) : null;
        least = least == null || here == null ? (here == null ? least : here) : least.min(here);
      }
      if (least == null) {
        return null;
      }
      demanded = demanded.add(least);
    }
    return demanded;
  }

  /** What a free item weighs at least: what lots must give, and the rest where it weighs least. */
  private BigInteger demanded(int i, List<StepWeights> weights, FreeLimits free) {
    Item item = parts.free().get(i);
    record Open(long weight, int pieces) {}
    List<Open> open = new ArrayList<>();
    BigInteger demanded = BigInteger.ZERO;
    int left = item.demand();
    for (int l = 0; l < parts.lots(); l++) {
      long weight = weights.get(l).of(item.size() - parts.cut(), parts.cut());
      demanded = demanded.add(times(weight, free.least(i, l)));
      left -= free.least(i, l);
      open.add(new Open(weight, free.most(i, l) - free.least(i, l)));
    }
    open.sort(Comparator.comparingLong(Open::weight));
    for (Open each : open) {
      int taken = Math.min(left, each.pieces());
      demanded = demanded.add(times(each.weight(), taken));
      left -= taken;
    }
    return demanded;
  }

  private static @Nullable BigInteger demanded(LotParts.Part part, StepWeights weights) {
    SpliceProblem problem = part.problem();
    BigInteger demanded = BigInteger.ZERO;
    for (Item item : problem.plain()) {
      long weight = weights.of(item.size() - problem.cut(), problem.cut());
      demanded = demanded.add(times(weight, item.demand()));
    }
    for (int g = 0; g < part.choices().size(); g++) {
      long least = part.choices().get(g).leastWeight(weights, problem.cut());
      if (least == Long.MAX_VALUE) {
        return null;
      }
      demanded = demanded.add(times(least, problem.groups().get(g).lines()));
    }
    return demanded;
  }

  private long[] greatest(int lot, StepWeights weights, boolean[][] open) {
    int m = weights.classes();
    long[] limits = new long[m];
    boolean anyLines = false;
    List<Item> items = new ArrayList<>(parts.free());
    for (int u = 0; u < parts.units(); u++) {
      Optional<LotParts.Part> part = open[u][lot] ? parts.part(u, lot) : Optional.empty();
      if (part.isPresent()) {
        anyLines |= !part.get().choices().isEmpty();
        items.addAll(part.get().problem().plain());
      }
    }
    if (anyLines) {
      Arrays.fill(limits, Integer.MAX_VALUE);
    } else {
      for (Item item : items) {
        int at = weights.classOf(item.size() - parts.cut());
        if (at >= 0) {
          limits[at] += item.demand();
        }
      }
    }
    long[] capacities = parts.lot(lot).stocks().stream().mapToLong(Stock::capacity).toArray();
    return JointBound.greatest(weights, limits, capacities, parts.cut());
  }

  private static BigInteger times(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
