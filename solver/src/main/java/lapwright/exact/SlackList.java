package lapwright.exact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.colgen.ColumnGeneration;
import lapwright.colgen.Master;
import lapwright.colgen.Pattern;
import lapwright.colgen.PatternSource;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * Every pattern that a solution from K sticks of one length can use at all.
 *
 * <p>With N the greatest weight of a pattern, K sticks have K N - sum_i d_i W_i to lose, and B = K
 * C - sum_i d_i s_i of length to waste: so each pattern weighs at least N less the one, and
 * measures at least C less the other. Weights between the optimal duals, and not at a corner of
 * them, leave few: the relaxation is solved for several demands, each a little off, and the duals
 * averaged (the cut-off by reduced cost is the waste optimisation of da Silva and Schouery, INFORMS
 * J. Computing 2025).
 */
final class SlackList {
  private static final int CENTERINGS = 8;
  private static final double SHIFT = 0.01;
  private static final int MOST_PATTERNS = 150_000;

  private final StickProblem problem;
  private final PatternSource source;
  private final Relaxation relaxation;
  private final Effort effort;

  SlackList(StickProblem problem, PatternSource source, Relaxation relaxation, Effort effort) {
    this.problem = problem;
    this.source = source;
    this.relaxation = relaxation;
    this.effort = effort;
  }

  /** The patterns that {@code sticks} sticks of the only stock can use; null when too many. */
  @Nullable List<Pattern> of(long sticks) {
    int[] demands = relaxation.demands();
    long total = 0;
    for (int i = 0; i < demands.length; i++) {
      total += demands[i] * problem.items().get(i).size();
    }
    long capacity = problem.stocks().get(0).capacity();
    long leastLength = capacity - (sticks * capacity - total);
    long[] weights = centered();
    long greatest = source.price(weights, demands, new long[] {-1}, 0).greatest().get(0);
    long carried = 0;
    for (int i = 0; i < demands.length; i++) {
      carried += demands[i] * weights[i];
    }
    long slack = sticks * greatest - carried;
    if (slack < 0) {
      return new ArrayList<>();
    }
    return source.list(
        weights,
        demands,
        0,
        Math.max(0, greatest - slack),
        Math.max(0, leastLength),
        MOST_PATTERNS);
  }

  /** Duals of the relaxation at several demands around the true ones, averaged and made whole. */
  private long[] centered() {
    Master master = relaxation.master();
    int m = problem.items().size();
    double[] sum = new double[m];
    long random = 12_345;
    for (int round = 0; round < CENTERINGS && !effort.spent(); round++) {
      for (int i = 0; i < m; i++) {
        random = random * 16_807 % 2_147_483_647L;
        double shift = SHIFT * (2.0 * random / 2_147_483_647L - 1);
        master.setDemand(i, problem.items().get(i).demand() * (1 + shift));
      }
      ColumnGeneration.Ending ending =
          relaxation.generation().run(relaxation.demands(), toTheEnd(), 0, effort);
      Master.Solution solution = ending.solution();
      if (solution != null) {
        for (int i = 0; i < m; i++) {
          sum[i] += solution.itemDual(i);
        }
      }
    }
    for (int i = 0; i < m; i++) {
      master.setDemand(i, problem.items().get(i).demand());
    }
    double heaviest = 0;
    for (int i = 0; i < m; i++) {
      heaviest = Math.max(heaviest, sum[i] / problem.items().get(i).size());
    }
    double scale = (1 << 29) / Math.max(1e-9, heaviest * problem.stocks().get(0).capacity());
    return Arrays.stream(sum).mapToLong(dual -> (long) (dual * scale)).toArray();
  }

  private static ColumnGeneration.Watch toTheEnd() {
    return new ColumnGeneration.Watch() {
      @Override
      public double bound(ColumnGeneration.Priced priced) {
        return 0;
      }

      @Override
      public boolean isEnough(double masterCost) {
        return false;
      }
    };
  }
}
