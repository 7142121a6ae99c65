package lapwright.exact;

import java.util.ArrayList;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * The least cost of a small problem by an independent way: every proper pattern is listed, and
 * ojAlgo's integer solver chooses among them.
 */
final class PatternOracle {
  private PatternOracle() {}

  static final long IMPOSSIBLE = -1;
  static final long NOT_SOLVED = -2;

  /** The least cost, {@link #IMPOSSIBLE}, or {@link #NOT_SOLVED} when ojAlgo gives up. */
  static long leastCost(StickProblem problem) {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    List<Expression> covers = new ArrayList<>();
    for (int i = 0; i < problem.items().size(); i++) {
      covers.add(model.newExpression("item" + i).level(problem.items().get(i).demand()));
    }
    for (int j = 0; j < problem.stocks().size(); j++) {
      Stock stock = problem.stocks().get(j);
      Variable packs = model.newVariable("packs" + j).integer().lower(0).weight(stock.packCost());
      int pieces = problem.items().stream().mapToInt(Item::demand).sum();
      packs.upper(Math.min(stock.mostPacks(), pieces));
      Expression supply = model.newExpression("stock" + j).upper(0);
      supply.set(packs, -stock.packSize());
      List<int[]> patterns = new ArrayList<>();
      list(problem, stock, 0, new int[problem.items().size()], patterns);
      for (int[] pattern : patterns) {
        Variable times = model.newVariable("cut" + model.countVariables()).integer().lower(0);
        times.upper(pieces);
        supply.set(times, 1);
        for (int i = 0; i < pattern.length; i++) {
          if (pattern[i] > 0) {
            covers.get(i).set(times, pattern[i]);
          }
        }
      }
    }
    Optimisation.Result result = model.minimise();
    if (result.getState().isOptimal()) {
      return Math.round(result.getValue());
    }
    return result.getState() == Optimisation.State.INFEASIBLE ? IMPOSSIBLE : NOT_SOLVED;
  }

  static void list(
      StickProblem problem, Stock stock, int from, int[] counts, List<int[]> patterns) {
    if (from == counts.length) {
      if (isProper(problem, stock, counts)) {
        patterns.add(counts.clone());
      }
      return;
    }
    for (int count = 0; count <= problem.items().get(from).demand(); count++) {
      counts[from] = count;
      list(problem, stock, from + 1, counts, patterns);
    }
    counts[from] = 0;
  }

  private static boolean isProper(StickProblem problem, Stock stock, int[] counts) {
    long total = 0;
    int pieces = 0;
    boolean other = false;
    for (int i = 0; i < counts.length; i++) {
      total += problem.items().get(i).size() * counts[i];
      pieces += counts[i];
      other |= counts[i] > 0 && !problem.items().get(i).small();
    }
    return pieces > 0
        && total <= stock.capacity()
        && (other
            || total <= stock.smallCapacity()
            || (stock.wholeUse() && pieces == 1 && total == stock.capacity()));
  }
}
