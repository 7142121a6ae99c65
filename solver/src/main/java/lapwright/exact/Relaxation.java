package lapwright.exact;

import java.util.Collections;
import java.util.List;
import lapwright.colgen.ColumnGeneration;
import lapwright.colgen.Master;
import lapwright.colgen.PatternSource;
import lapwright.effort.Effort;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * The linear relaxation of a reduced problem, kept from node to node of the search: one master, one
 * source of patterns. Holds native memory: close it.
 */
final class Relaxation implements AutoCloseable {
  private static final double SMOOTHING = 0.7;

  /** From here on it pays to begin with close fits, where a stick holds few pieces. */
  private static final int MANY_ITEMS = 100;

  private final StickProblem problem;
  private final PatternSource source;
  private final int columnsACall;
  private final double greatestSum;
  private final Master master;
  private final ColumnGeneration generation;

  /**
   * @param greatestSum what the weights of all items together may be at most
   */
  Relaxation(StickProblem problem, PatternSource source, int columnsACall, double greatestSum) {
    this.problem = problem;
    this.source = source;
    this.columnsACall = columnsACall;
    this.greatestSum = greatestSum;
    master = new Master(problem);
    if (problem.items().size() >= MANY_ITEMS && sticksHoldFew(problem)) {
      master.keepInReserve(PatternSource.closeFits(problem));
    }
    generation = generation(master);
  }

  /** True when the longest stick holds no more than three pieces of average size. */
  private static boolean sticksHoldFew(StickProblem problem) {
    long total = 0;
    long pieces = 0;
    for (StickProblem.Item item : problem.items()) {
      total += item.size() * item.demand();
      pieces += item.demand();
    }
    long longest = problem.stocks().stream().mapToLong(s -> s.capacity()).max().orElse(0);
    return (double) longest * pieces <= 3.0 * total;
  }

  Master master() {
    return master;
  }

  ColumnGeneration generation() {
    return generation;
  }

  /** Column generation on a master for a part of the problem. */
  ColumnGeneration generation(Master part) {
    return new ColumnGeneration(problem, source, part, columnsACall, greatestSum);
  }

  void addAll(Layout layout) {
    layout.uses().forEach(use -> master.add(use.pattern()));
  }

  /**
   * The bound within some limits.
   *
   * @param solution of the last master; null when the effort was spent before there was one
   * @param greatest by stock, what no pattern weighs more than
   * @param bound verified in integers; {@link WeightBound#IMPOSSIBLE} when the limits allow nothing
   */
  record Bounded(
      Master.@Nullable Solution solution,
      long bound,
      StickCertificate.Weights certificate,
      List<Long> greatest) {}

  /** Says when no better bound is wanted. */
  interface Goal {
    /**
     * True when it is so.
     *
     * @param bound the best so far
     * @param most no bound can be better
     */
    boolean isReached(long bound, double most);
  }

  /** Solves the relaxation within limits. */
  Bounded bound(PackLimits limits, Goal goal, Effort effort) {
    for (int j = 0; j < problem.stocks().size(); j++) {
      master.limitPacks(j, limits.least(j), limits.most(j));
    }
    Best best = new Best(limits, goal);
    while (true) {
      ColumnGeneration.Ending ending = generation.run(demands(), best, SMOOTHING, effort);
      Master.Solution solution = ending.solution();
      if (solution == null
          || !ending.converged()
          || solution.uncovered() < 1e-6
          || !master.raisePenalty()) {
        return new Bounded(solution, Math.max(0, best.bound), best.certificate(), best.greatest);
      }
    }
  }

  int[] demands() {
    int[] demands = new int[problem.items().size()];
    for (int i = 0; i < demands.length; i++) {
      demands[i] = problem.items().get(i).demand();
    }
    return demands;
  }

  private final class Best implements ColumnGeneration.Watch {
    private final PackLimits limits;
    private final Goal goal;
    private long bound = -1;
    private long scale = 1;
    private long[] weights = new long[problem.items().size()];
    private List<Long> greatest = Collections.nCopies(problem.stocks().size(), 0L);

    Best(PackLimits limits, Goal goal) {
      this.limits = limits;
      this.goal = goal;
    }

    @Override
    public boolean isEnough(double masterCost) {
      return goal.isReached(bound, masterCost);
    }

    @Override
    public double bound(ColumnGeneration.Priced priced) {
      double value = take(priced, priced.scale());
      // No stick of an unlimited stock may carry more than its price: a greater scale sees to it.
      long enough = priced.scale();
      for (int j = 0; j < problem.stocks().size(); j++) {
        StickProblem.Stock stock = problem.stocks().get(j);
        if (!limits.isLimited(j) && stock.packCost() > 0) {
          long carries = Math.multiplyExact(priced.greatest().get(j), stock.packSize());
          enough = Math.max(enough, Numbers.ceilDiv(carries, stock.packCost()));
        }
      }
      return enough > priced.scale() ? Math.max(value, take(priced, enough)) : value;
    }

    private double take(ColumnGeneration.Priced priced, long atScale) {
      long value = WeightBound.of(problem, limits, atScale, priced.weights(), priced.greatest());
      if (value > bound) {
        bound = value;
        scale = atScale;
        weights = priced.weights();
        greatest = priced.greatest();
      }
      return WeightBound.unrounded(problem, limits, atScale, priced.weights(), priced.greatest());
    }

    StickCertificate.Weights certificate() {
      return LengthBound.certificate(scale, weights);
    }
  }

  @Override
  public void close() {
    master.close();
  }
}
