package lapwright.colgen;

import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
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

  /**
   * Runs until nothing is worth adding, or until a bound is enough.
   *
   * @param limits how many of an item a pattern may hold
   * @param enough is shown every pricing's weights; true stops
   */
  public Ending run(int[] limits, Predicate<Priced> enough, Effort effort) {
    Master.Solution solution = null;
    boolean fresh = false;
    while (true) {
      Master.Solution next = master.solve(effort);
      if (next == null) {
        return new Ending(solution, false);
      }
      solution = next;
      Duals duals = dualsOf(solution);
      PatternSource.Priced priced =
          source.price(duals.weights, limits, duals.thresholds, columnsACall);
      if (enough.test(duals.prove(priced.greatest()))) {
        return new Ending(solution, false);
      }
      int added = 0;
      for (Pattern pattern : priced.patterns()) {
        added += master.add(pattern) ? 1 : 0;
      }
      if (added == 0) {
        if (priced.patterns().isEmpty() || fresh) {
          return new Ending(solution, true);
        }
        // All that is worth adding is there already: the engine's solution cannot be right.
        master.forgetBasis();
        fresh = true;
      } else {
        fresh = false;
      }
      if (effort.spent()) {
        return new Ending(solution, false);
      }
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

  private Duals dualsOf(Master.Solution solution) {
    int m = problem.items().size();
    double[] duals = new double[m];
    double steepest = 0;
    double sum = 0;
    for (int i = 0; i < m; i++) {
      duals[i] = solution.itemDual(i);
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
          (long)
              Math.ceil(
                  factor * (solution.stockDual(j) * (1 + TOLERANCE) + master.costUnit() * 1e-9));
    }
    return new Duals(scale, grain, weights, thresholds);
  }
}
