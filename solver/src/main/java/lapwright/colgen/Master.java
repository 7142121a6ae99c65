package lapwright.colgen;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapwright.effort.Effort;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * The master linear program over the patterns known so far.
 *
 * <p>min sum_j P_j y_j + M sum_i z_i subject to sum_a a_i x_a + z_i &gt;= d_i for every item (dual
 * pi_i &gt;= 0), k_j y_j - sum_{a of j} x_a &gt;= 0 for every stock (dual mu_j &gt;= 0), L_j &lt;=
 * y_j &lt;= Y_j, x, z &gt;= 0. A pattern of stock j is worth adding when pi a &gt; mu_j. The
 * artificial columns z stay in always, so that the program never lacks a solution, whatever is
 * fixed.
 *
 * <p>Costs are divided by the dearest stick's price, so that duals are about 1 at most. Holds
 * native memory: close it. Not thread-safe.
 */
public final class Master implements AutoCloseable {
  private static final double FIRST_PENALTY = 3;

  private final double costUnit;
  private final LinearModel model = new LinearModel();
  private final int[] itemRows;
  private final int[] stockRows;
  private final int[] packColumns;
  private final int[] artificialColumns;
  private final List<Pattern> patterns = new ArrayList<>();
  private final List<Integer> patternColumns = new ArrayList<>();
  private final Map<Pattern, Integer> indexOf = new HashMap<>();
  private double penalty = FIRST_PENALTY;

  public Master(StickProblem problem) {
    costUnit = dearestStick(problem);
    int m = problem.items().size();
    int n = problem.stocks().size();
    itemRows = new int[m];
    artificialColumns = new int[m];
    for (int i = 0; i < m; i++) {
      itemRows[i] = model.addRow(problem.items().get(i).demand(), Double.POSITIVE_INFINITY);
      artificialColumns[i] = model.addColumn(penalty, 0, Double.POSITIVE_INFINITY);
      model.setCoefficient(itemRows[i], artificialColumns[i], 1);
    }
    stockRows = new int[n];
    packColumns = new int[n];
    for (int j = 0; j < n; j++) {
      Stock stock = problem.stocks().get(j);
      stockRows[j] = model.addRow(0, Double.POSITIVE_INFINITY);
      packColumns[j] =
          model.addColumn(
              stock.packCost() / costUnit,
              0,
              stock.isLimited() ? stock.mostPacks() : Double.POSITIVE_INFINITY);
      model.setCoefficient(stockRows[j], packColumns[j], stock.packSize());
    }
  }

  private static double dearestStick(StickProblem problem) {
    double dearest = 0;
    for (Stock stock : problem.stocks()) {
      dearest = Math.max(dearest, (double) stock.packCost() / stock.packSize());
    }
    return dearest > 0 ? dearest : 1;
  }

  /** Adds a pattern; false when it is there already. */
  public boolean add(Pattern pattern) {
    if (indexOf.putIfAbsent(pattern, patterns.size()) != null) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    for (int k = 0; k < pattern.kinds(); k++) {
      model.setCoefficient(itemRows[pattern.item(k)], column, pattern.count(k));
    }
    model.setCoefficient(stockRows[pattern.stock()], column, -1);
    patterns.add(pattern);
    patternColumns.add(column);
    return true;
  }

  /** The patterns, in the order in which they came. */
  public List<Pattern> patterns() {
    return List.copyOf(patterns);
  }

  public int patternCount() {
    return patterns.size();
  }

  public Pattern pattern(int index) {
    return patterns.get(index);
  }

  /** Bounds on how often a pattern is cut. */
  public void limitPattern(int index, double least, double most) {
    model.setColumnBounds(patternColumns.get(index), least, most);
  }

  /** Bounds on packs; {@link Integer#MAX_VALUE} without a limit. */
  public void limitPacks(int stock, int least, int most) {
    model.setColumnBounds(
        packColumns[stock], least, most == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : most);
  }

  /** Another demand of an item; the method that changes it restores it. */
  public void setDemand(int item, double demand) {
    model.setRowBounds(itemRows[item], demand, Double.POSITIVE_INFINITY);
  }

  /** Makes what is not covered dearer; false when it is as dear as it can be. */
  public boolean raisePenalty() {
    if (penalty > 1e5) {
      return false;
    }
    penalty *= 30;
    for (int column : artificialColumns) {
      model.setCost(column, penalty);
    }
    return true;
  }

  /** What one unit of the duals is in cost. */
  public double costUnit() {
    return costUnit;
  }

  /** Solves; null when the effort is spent or the engine fails twice. */
  public @Nullable Solution solve(Effort effort) {
    LinearResult result = model.solve(effort.remainingNanos());
    if (result.outcome() != Outcome.OPTIMAL) {
      if (effort.spent()) {
        return null;
      }
      model.forgetBasis();
      result = model.solve(effort.remainingNanos());
      if (result.outcome() != Outcome.OPTIMAL) {
        return null;
      }
    }
    return new Solution(result);
  }

  /** Forgets the basis: the engine sometimes stops on a solution that is none. */
  public void forgetBasis() {
    model.forgetBasis();
  }

  @Override
  public void close() {
    model.close();
  }

  /** A solution of the master, in cost units of {@link #costUnit}. */
  public final class Solution {
    private final LinearResult result;

    private Solution(LinearResult result) {
      this.result = result;
    }

    /** Objective in the problem's cost. */
    public double cost() {
      return result.objective() * costUnit;
    }

    /** pi_i, in the problem's cost. */
    public double itemDual(int item) {
      return Math.max(0, result.dual(itemRows[item])) * costUnit;
    }

    /** mu_j, the value of a stick of the stock, in the problem's cost. */
    public double stockDual(int stock) {
      return Math.max(0, result.dual(stockRows[stock])) * costUnit;
    }

    /** How often a pattern is cut; 0 for one that was added after this solution. */
    public double times(int index) {
      int column = patternColumns.get(index);
      return column < result.columnCount() ? result.value(column) : 0;
    }

    public double packs(int stock) {
      return result.value(packColumns[stock]);
    }

    /** Demand that nothing covers. */
    public double uncovered() {
      double sum = 0;
      for (int column : artificialColumns) {
        sum += result.value(column);
      }
      return sum;
    }
  }
}
