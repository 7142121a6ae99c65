package lapwright.splice;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import lapwright.exact.PackLimits;
import lapwright.exact.WholePacks;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * The lower bound that weights prove, exactly: the Lagrange bound of the covering rows, in which
 * every group adds the least weight of a permitted split; or the least cost of whole packs that
 * carry all weights. Patterns are taken without the rule for small pieces, which can only weaken
 * the bound.
 */
final class JointBound {
  /** No solution exists at all within the limits. */
  static final long IMPOSSIBLE = Long.MAX_VALUE;

  private static final int MOST_STEPS = 100_000;
  private static final BigInteger LARGE = BigInteger.valueOf(1_000_000);

  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final BigInteger costUnit;

  /**
   * @param costUnit large scales are made multiples of it
   */
  JointBound(SpliceProblem problem, List<Choice> choices, long costUnit) {
    this.problem = problem;
    this.choices = choices;
    this.costUnit = BigInteger.valueOf(costUnit);
  }

  /** A bound and the weights that prove it, their scale as large as unlimited stocks ask for. */
  record Proven(long bound, StepWeights weights) {}

  /** The bound, whatever packs that are whole ask for besides. */
  Proven of(StepWeights given, PackLimits limits) {
    return of(given, limits, Long.MAX_VALUE);
  }

  /**
   * The bound.
   *
   * @param known cost of a solution: where less is proved, whole packs are looked at too, which may
   *     have to cost more to carry all weights; {@link Long#MAX_VALUE} when none is known
   */
  Proven of(StepWeights given, PackLimits limits, long known) {
    int n = problem.stocks().size();
    long[] greatest = greatest(given);
    BigInteger scale = BigInteger.valueOf(given.scale());
    boolean unbounded = false;
    for (int j = 0; j < n; j++) {
      Stock stock = problem.stocks().get(j);
      if (!limits.isLimited(j)) {
        BigInteger carried = times(greatest[j], stock.packSize());
        if (stock.packCost() > 0) {
          BigInteger cost = BigInteger.valueOf(stock.packCost());
          scale = scale.max(carried.add(cost).subtract(BigInteger.ONE).divide(cost));
        } else {
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
    StepWeights weights = given.atScale(scale.longValueExact());
    BigInteger demanded = demanded(weights);
    if (demanded == null) {
      return new Proven(IMPOSSIBLE, weights);
    }
    BigInteger sum = demanded;
    BigInteger carriedInAll = BigInteger.ZERO;
    boolean finite = true;
    boolean carriesAreLongs = true;
    for (int j = 0; j < n; j++) {
      Stock stock = problem.stocks().get(j);
      BigInteger carries = times(greatest[j], stock.packSize());
      carriesAreLongs &= carries.bitLength() < Long.SIZE - 1;
      BigInteger slack = scale.multiply(BigInteger.valueOf(stock.packCost())).subtract(carries);
      boolean wantsMost = slack.signum() < 0;
      if (limits.isLimited(j) || !wantsMost) {
        int packs = wantsMost ? limits.most(j) : limits.least(j);
        sum = sum.add(slack.multiply(BigInteger.valueOf(packs)));
      }
      if (limits.isLimited(j)) {
        carriedInAll = carriedInAll.add(carries.multiply(BigInteger.valueOf(limits.most(j))));
      } else if (carries.signum() > 0) {
        finite = false;
      }
    }
    if (finite && demanded.compareTo(carriedInAll) > 0) {
      return new Proven(IMPOSSIBLE, weights);
    }
    long bound =
        unbounded || sum.signum() <= 0
            ? 0
            : sum.add(scale).subtract(BigInteger.ONE).divide(scale).longValueExact();
    if (known < Long.MAX_VALUE && bound < known && carriesAreLongs) {
      WholePacks.Cover cover =
          WholePacks.of(
              problem.stocks(),
              limits,
              demanded,
              Arrays.stream(greatest).boxed().toList(),
              known,
              MOST_STEPS);
      bound = cover == null ? bound : Math.max(bound, cover.cost());
    }
    return new Proven(bound, weights);
  }

  private @org.jspecify.annotations.Nullable BigInteger demanded(StepWeights weights) {
    BigInteger demanded = BigInteger.ZERO;
    for (Item item : problem.plain()) {
      long weight = weights.of(item.size() - problem.cut(), problem.cut());
      demanded = demanded.add(times(weight, item.demand()));
    }
    for (int g = 0; g < choices.size(); g++) {
      long least = choices.get(g).leastWeight(weights, problem.cut());
      if (least == Long.MAX_VALUE) {
        return null;
      }
      demanded = demanded.add(times(least, problem.groups().get(g).lines()));
    }
    return demanded;
  }

  private long[] greatest(StepWeights weights) {
    int m = weights.classes();
    long[] limits = new long[m];
    for (int c = 0; c < m; c++) {
      limits[c] = mostPieces(weights.length(c), c + 1 < m ? weights.length(c + 1) : Long.MAX_VALUE);
    }
    long[] capacities = problem.stocks().stream().mapToLong(Stock::capacity).toArray();
    return greatest(weights, limits, capacities, problem.cut());
  }

  /**
   * The most that sticks of some capacities carry.
   *
   * @param limits pieces of each listed length that there are at most
   */
  static long[] greatest(StepWeights weights, long[] limits, long[] capacities, long cut) {
    int m = weights.classes();
    long[] sizes = new long[m];
    long[] values = new long[m];
    for (int c = 0; c < m; c++) {
      sizes[c] = weights.length(c) + cut;
      values[c] = weights.weight(c);
    }
    long[] greatest = Knapsack.greatest(sizes, values, limits, capacities);
    for (int j = 0; j < greatest.length; j++) {
      greatest[j] =
          Math.addExact(
              greatest[j], Math.multiplyExact(weights.perSize(), Math.max(0, capacities[j])));
    }
    return greatest;
  }

  /**
   * Pieces of at least {@code from} and less than {@code to} that a solution has at most: no limit
   * is known where splits may give more of them.
   */
  private long mostPieces(long from, long to) {
    if (!choices.isEmpty()) {
      return Integer.MAX_VALUE;
    }
    long most = 0;
    for (Item item : problem.plain()) {
      long length = item.size() - problem.cut();
      if (length >= from && length < to) {
        most += item.demand();
      }
    }
    return most;
  }

  private static BigInteger times(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
