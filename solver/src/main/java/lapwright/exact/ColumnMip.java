package lapwright.exact;

import java.util.ArrayList;
import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.mip.IntegerModel;
import lapwright.mip.IntegerResult;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * The integer program over given patterns: min sum P_j y_j, sum_a a_i x_a &gt;= d_i, sum_{a of j}
 * x_a &lt;= k_j y_j, all integer. What is cut too often is taken out of the patterns again.
 *
 * <p>The cost has a row of its own, from the proven bound to just below the best that is known: the
 * engine then stops at the first solution that reaches the bound, and passes over what is no
 * better.
 */
final class ColumnMip {
  private ColumnMip() {}

  /**
   * The engine's solution, if it found one that holds.
   *
   * @param least no solution costs less
   * @param most only solutions of at most this cost are wanted
   */
  static @Nullable Layout solve(
      StickProblem problem,
      PackLimits limits,
      List<Pattern> patterns,
      long least,
      long most,
      long mostNodes,
      Effort effort) {
    try (IntegerModel model = new IntegerModel()) {
      List<Item> items = problem.items();
      for (Item item : items) {
        model.addRow(item.demand(), Double.POSITIVE_INFINITY);
      }
      for (int j = 0; j < problem.stocks().size(); j++) {
        Stock stock = problem.stocks().get(j);
        model.addRow(0, Double.POSITIVE_INFINITY);
        double mostPacks = limits.isLimited(j) ? limits.most(j) : Double.POSITIVE_INFINITY;
        int column = model.addColumn((double) stock.packCost(), limits.least(j), mostPacks);
        model.setCoefficient(items.size() + j, column, stock.packSize());
      }
      model.addRow(
          (double) least, most == Long.MAX_VALUE ? Double.POSITIVE_INFINITY : (double) most);
      int cost = items.size() + problem.stocks().size();
      for (int j = 0; j < problem.stocks().size(); j++) {
        model.setCoefficient(cost, j, (double) problem.stocks().get(j).packCost());
      }
      int first = problem.stocks().size();
      for (Pattern pattern : patterns) {
        int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
        for (int k = 0; k < pattern.kinds(); k++) {
          model.setCoefficient(pattern.item(k), column, pattern.count(k));
        }
        model.setCoefficient(items.size() + pattern.stock(), column, -1);
      }
      IntegerResult result = model.solve(mostNodes, effort.remainingNanos());
      if (!result.outcome().hasSolution()) {
        return null;
      }
      List<Layout.Use> uses = new ArrayList<>();
      for (int index = 0; index < patterns.size(); index++) {
        int times = Math.toIntExact(result.values().get(first + index));
        if (times > 0) {
          uses.add(new Layout.Use(patterns.get(index), times));
        }
      }
      return trimmed(problem, uses);
    }
  }

  /** The same cuts without what is cut too often; null when that is not allowed or too little. */
  static @Nullable Layout trimmed(StickProblem problem, List<Layout.Use> uses) {
    int m = problem.items().size();
    int[] surplus = new int[m];
    for (int i = 0; i < m; i++) {
      surplus[i] = -problem.items().get(i).demand();
    }
    for (Layout.Use use : uses) {
      use.pattern().addTo(surplus, use.times());
    }
    Layout.Builder builder = new Layout.Builder(problem);
    for (Layout.Use use : uses) {
      int whole = use.times();
      while (whole > 0) {
        int[] counts = new int[m];
        use.pattern().addTo(counts, 1);
        boolean changed = false;
        for (int i = m - 1; i >= 0; i--) {
          int taken = Math.min(counts[i], Math.max(0, surplus[i]));
          if (taken > 0) {
            counts[i] -= taken;
            if (Layout.isProper(problem, Pattern.ofCounts(use.pattern().stock(), counts))) {
              surplus[i] -= taken;
              changed = true;
            } else {
              counts[i] += taken;
            }
          }
        }
        if (!changed) {
          break;
        }
        builder.add(Pattern.ofCounts(use.pattern().stock(), counts), 1);
        whole--;
      }
      builder.add(use.pattern(), whole);
    }
    return builder.buildIfComplete();
  }
}
