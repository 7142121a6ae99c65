package lapwright.colgen;

import java.util.Arrays;
import java.util.List;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * Solves the linear relaxation over all proper patterns: master and pricing in turn, until no
 * pattern is worth adding.
 *
 * <p>Every pricing call gives integer weights W = floor(D pi) and the exact greatest weight N_j of
 * a pattern of each stock, hence a valid bound (P. Gilmore and R. Gomory, Operations Research 9,
 * 1961; the bound: A. Farley, Operations Research 38, 1990). Duals are smoothed toward those of the
 * best bound (P. Wentges, Int. Transactions in OR 4, 1997).
 */
public final class ColumnGeneration {
  /** D is chosen so that no pattern can weigh more. */
  private static final double GREATEST_WEIGHT = (1 << 30) - 2;

  private static final double TOLERANCE = 1e-7;

  private final StickProblem problem;
  private final PatternSource source;
  private final Master master;
  private final int columnsACall;
  private final double greatestSum;
  private final double longest;

  /**
   * @param columnsACall about how many patterns are added at a time
   * @param greatestSum what sum_i d_i W_i may be at most
   */
  public ColumnGeneration(
      StickProblem problem,
      PatternSource source,
      Master master,
      int columnsACall,
      double greatestSum) {
    this.problem = problem;
    this.source = source;
    this.master = master;
    this.columnsACall = columnsACall;
    this.greatestSum = greatestSum;
    longest = problem.stocks().stream().mapToLong(s -> s.capacity()).max().orElse(1);
  }

  /** Integer weights and what they prove. */
  public static final class Priced {
    private final long scale;
    private final long[] weights;
    private final List<Long> greatest;

    private Priced(long scale, long[] weights, List<Long> greatest) {
      this.scale = scale;
      this.weights = weights;
      this.greatest = greatest;
    }

    /** D. */
    public long scale() {
      return scale;
    }

    /** W by item; not to be changed. */
    public long[] weights() {
      return weights;
    }

    /** N by stock. */
    public List<Long> greatest() {
      return greatest;
    }
  }

  /**
   * How column generation ended.
   *
   * @param solution of the last master; null when the effort was spent before the first
   * @param converged true when no pattern was worth adding any more
   */
  public record Ending(Master.@Nullable Solution solution, boolean converged) {}

  /** Watches the run: says what bounds are worth, and when enough is known. */
  public interface Watch {
    /** The bound that weights prove, in cost; at least 0. */
    double bound(Priced priced);

    /** True when nothing more is to be learned at this cost of the master. */
    boolean isEnough(double masterCost);

    /** True when the pattern may be added. */
    default boolean isAllowed(Pattern pattern) {
      return true;
    }
  }

  /**
   * Runs until nothing is worth adding, or until enough is known.
   *
   * @param limits how many of an item a pattern may hold
   * @param smoothing part of the duals of the best bound in those that are priced, 0 to 1
   */
  public Ending run(int[] limits, Watch watch, double smoothing, Effort effort) {
    Center center = smoothing > 0 ? lengthCenter(limits, watch) : null;
    Master.Solution solution = master.solve(effort);
    if (solution == null) {
      return new Ending(null, false);
    }
    boolean fresh = false;
    int misses = 0;
    while (!watch.isEnough(solution.cost())) {
      double part = center == null ? 0 : Math.max(0, 1 - (misses + 1) * (1 - smoothing));
      Point out = new Point(solution);
      Point at = center == null || part < 0.01 ? out : center.point.mixedWith(out, part);
      Duals duals = whole(at);
      PatternSource.Priced priced =
          source.price(duals.weights, limits, duals.thresholds, columnsACall);
      double bound = watch.bound(duals.prove(priced.greatest()));
      if (watch.isEnough(solution.cost())) {
        break;
      }
      if (center != null && bound > center.bound) {
        center = new Center(at, bound);
      }
      int added = 0;
      for (Pattern pattern : priced.patterns()) {
        if ((at == out || out.isWorthAdding(pattern))
            && watch.isAllowed(pattern)
            && master.add(pattern)) {
          added++;
        }
      }
      if (effort.spent()) {
        break;
      }
      if (added == 0 && at != out) {
        misses++;
        continue;
      }
      if (added == 0) {
        if (priced.patterns().stream().noneMatch(watch::isAllowed) || fresh) {
          return new Ending(solution, true);
        }
        // All that is worth adding is there already: the engine's solution cannot be right.
        master.forgetBasis();
      }
      fresh = added == 0;
      misses = 0;
      Master.Solution next = master.solve(effort);
      if (next == null) {
        break;
      }
      solution = next;
    }
    return new Ending(solution, false);
  }

  private record Center(Point point, double bound) {}

  /** Every item at the least price per length: where the search for duals starts from. */
  private Center lengthCenter(int[] limits, Watch watch) {
    double least = Double.POSITIVE_INFINITY;
    for (StickProblem.Stock stock : problem.stocks()) {
      if (stock.packCost() > 0 && stock.capacity() > 0) {
        least = Math.min(least, (double) stock.packCost() / stock.packSize() / stock.capacity());
      }
    }
    Point point = new Point(least == Double.POSITIVE_INFINITY ? 0 : least);
    Duals duals = whole(point);
    PatternSource.Priced priced =
        source.price(duals.weights, limits, duals.thresholds, columnsACall);
    priced.patterns().forEach(master::add);
    return new Center(point, watch.bound(duals.prove(priced.greatest())));
  }

  /** Dual values: pi an item and mu a stock. */
  private final class Point {
    final double[] items = new double[problem.items().size()];
    final double[] stocks = new double[problem.stocks().size()];

    Point(Master.Solution solution) {
      for (int i = 0; i < items.length; i++) {
        items[i] = solution.itemDual(i);
      }
      for (int j = 0; j < stocks.length; j++) {
        stocks[j] = solution.stockDual(j);
      }
    }

    Point(double pricePerLength) {
      for (int i = 0; i < items.length; i++) {
        items[i] = pricePerLength * problem.items().get(i).size();
      }
      for (int j = 0; j < stocks.length; j++) {
        // Just below what a full stick weighs, so that full sticks are columns to start with.
        stocks[j] = pricePerLength * problem.stocks().get(j).capacity() * (1 - 1e-3);
      }
    }

    private Point() {}

    Point mixedWith(Point other, double part) {
      Point mixed = new Point();
      for (int i = 0; i < items.length; i++) {
        mixed.items[i] = part * items[i] + (1 - part) * other.items[i];
      }
      for (int j = 0; j < stocks.length; j++) {
        mixed.stocks[j] = part * stocks[j] + (1 - part) * other.stocks[j];
      }
      return mixed;
    }

    boolean isWorthAdding(Pattern pattern) {
      double weight = 0;
      for (int k = 0; k < pattern.kinds(); k++) {
        weight += items[pattern.item(k)] * pattern.count(k);
      }
      double price = stocks[pattern.stock()];
      return weight > price * (1 + TOLERANCE) + master.costUnit() * 1e-9;
    }
  }

  /** Duals as whole numbers: pi = grain W / scale, where one of grain and scale is 1. */
  private static final class Duals {
    final long scale;
    final long grain;
    final long[] weights;
    final long[] thresholds;

    Duals(long scale, long grain, long[] weights, long[] thresholds) {
      this.scale = scale;
      this.grain = grain;
      this.weights = weights;
      this.thresholds = thresholds;
    }

    Priced prove(List<Long> greatest) {
      if (grain == 1) {
        return new Priced(scale, weights, greatest);
      }
      return new Priced(
          1,
          Arrays.stream(weights).map(w -> Math.multiplyExact(w, grain)).toArray(),
          greatest.stream().map(n -> Math.multiplyExact(n, grain)).toList());
    }
  }

  private Duals whole(Point point) {
    int m = problem.items().size();
    double[] duals = point.items;
    double steepest = 0;
    double sum = 0;
    for (int i = 0; i < m; i++) {
      steepest = Math.max(steepest, duals[i] / problem.items().get(i).size());
      sum += duals[i] * problem.items().get(i).demand();
    }
    double heaviest = Math.max(steepest * longest, Arrays.stream(duals).max().orElse(0));
    double most = Math.min(GREATEST_WEIGHT / heaviest, greatestSum / sum);
    long scale = heaviest > 0 && most > 1 ? (long) most : 1;
    long grain = heaviest > 0 && most < 1 ? (long) Math.ceil(1 / most) : 1;
    double factor = (double) scale / grain;
    long[] weights = new long[m];
    for (int i = 0; i < m; i++) {
      weights[i] = (long) Math.floor(duals[i] * factor);
    }
    long[] thresholds = new long[problem.stocks().size()];
    for (int j = 0; j < thresholds.length; j++) {
      thresholds[j] =
          (long) Math.ceil(factor * (point.stocks[j] * (1 + TOLERANCE) + master.costUnit() * 1e-9));
    }
    return new Duals(scale, grain, weights, thresholds);
  }
}
