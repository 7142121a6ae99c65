package lapwright.colgen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
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
 * pi_i &gt;= 0), k_j y_j - sum_{a of j} x_a &gt;= u_j for every stock (dual mu_j &gt;= 0), L_j
 * &lt;= y_j &lt;= Y_j, x, z &gt;= 0, where u_j sticks are used already. A pattern of stock j is
 * worth adding when pi a &gt; mu_j. The artificial columns z stay in always, so that the program
 * never lacks a solution, whatever is fixed.
 *
 * <p>Where patterns are many for the rows, those that are farthest from use are parked: the engine
 * passes over them until they are added once more, and the program is made anew without them when
 * they are most of it.
 *
 * <p>Costs are divided by the dearest stick's price, so that duals are about 1 at most. Holds
 * native memory: close it. Not thread-safe.
 */
public final class Master implements AutoCloseable {
  private static final double FIRST_PENALTY = 3;
  private static final int ACTIVE_A_ROW = 3;
  private static final int COLUMNS_A_ROW = 8;
  private static final int FEW_COLUMNS = 600;

  /** So many patterns of the reserve are worth a solve before others are priced. */
  private static final int FEW_DRAWN = 50;

  private final StickProblem problem;
  private final double costUnit;
  private final double[] demands;
  private final long[] sticksUsed;
  private final int[] leastPacks;
  private final int[] mostPacks;
  private final int[] itemRows;
  private final int[] stockRows;
  private final int[] packColumns;
  private final int[] artificialColumns;
  private final List<Pattern> patterns = new ArrayList<>();
  private final Map<Pattern, Integer> indexOf = new HashMap<>();
  private final BitSet parked = new BitSet();
  private final Reserve reserve = new Reserve();
  private int[] columnOf = new int[64];
  private LinearModel model = new LinearModel();
  private int rows;
  private double penalty = FIRST_PENALTY;

  /** The whole problem. */
  public Master(StickProblem problem) {
    this(
        problem,
        problem.items().stream().mapToInt(StickProblem.Item::demand).toArray(),
        new long[problem.stocks().size()]);
  }

  /**
   * What is left of a problem.
   *
   * @param left still to be cut of each item
   * @param sticksUsed sticks of each stock that are used already
   */
  private Master(StickProblem problem, int[] left, long[] sticksUsed) {
    this.problem = problem;
    this.sticksUsed = sticksUsed.clone();
    costUnit = dearestStick(problem);
    demands = Arrays.stream(left).asDoubleStream().toArray();
    itemRows = new int[left.length];
    artificialColumns = new int[left.length];
    int n = problem.stocks().size();
    stockRows = new int[n];
    packColumns = new int[n];
    leastPacks = new int[n];
    mostPacks = problem.stocks().stream().mapToInt(Stock::mostPacks).toArray();
    layOut();
  }

  /** The same packs and penalty, for what is left; without any pattern yet. */
  public Master forTheRest(int[] left, long[] used) {
    Master rest = new Master(problem, left, used);
    for (int j = 0; j < leastPacks.length; j++) {
      rest.limitPacks(j, leastPacks[j], mostPacks[j]);
    }
    boolean asDear = true;
    while (asDear && rest.penalty < penalty) {
      asDear = rest.raisePenalty();
    }
    return rest;
  }

  private static double dearestStick(StickProblem problem) {
    double dearest = 0;
    for (Stock stock : problem.stocks()) {
      dearest = Math.max(dearest, (double) stock.packCost() / stock.packSize());
    }
    return dearest > 0 ? dearest : 1;
  }

  /** Rows, artificial columns and packs; rows of items of which nothing is left are left out. */
  private void layOut() {
    rows = 0;
    for (int i = 0; i < itemRows.length; i++) {
      itemRows[i] = -1;
      artificialColumns[i] = -1;
      if (demands[i] > 0) {
        itemRows[i] = model.addRow(demands[i], Double.POSITIVE_INFINITY);
        artificialColumns[i] = model.addColumn(penalty, 0, Double.POSITIVE_INFINITY);
        model.setCoefficient(itemRows[i], artificialColumns[i], 1);
        rows++;
      }
    }
    for (int j = 0; j < stockRows.length; j++) {
      Stock stock = problem.stocks().get(j);
      stockRows[j] = model.addRow((double) sticksUsed[j], Double.POSITIVE_INFINITY);
      packColumns[j] =
          model.addColumn(stock.packCost() / costUnit, leastPacks[j], bound(mostPacks[j]));
      model.setCoefficient(stockRows[j], packColumns[j], stock.packSize());
      rows++;
    }
  }

  private static double bound(int packs) {
    return packs == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : packs;
  }

  /** Adds a pattern of items that are left; false when it is there already. */
  public boolean add(Pattern pattern) {
    Integer known = indexOf.putIfAbsent(pattern, patterns.size());
    if (known != null) {
      return unpark(known);
    }
    if (columnOf.length == patterns.size()) {
      columnOf = Arrays.copyOf(columnOf, 2 * columnOf.length);
    }
    columnOf[patterns.size()] = newColumn(pattern);
    patterns.add(pattern);
    return true;
  }

  private int newColumn(Pattern pattern) {
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    for (int k = 0; k < pattern.kinds(); k++) {
      model.setCoefficient(itemRows[pattern.item(k)], column, pattern.count(k));
    }
    model.setCoefficient(stockRows[pattern.stock()], column, -1);
    return column;
  }

  private boolean unpark(int index) {
    if (!parked.get(index)) {
      return false;
    }
    parked.clear(index);
    if (columnOf[index] < 0) {
      columnOf[index] = newColumn(patterns.get(index));
    } else {
      model.setColumnBounds(columnOf[index], 0, Double.POSITIVE_INFINITY);
    }
    return true;
  }

  private void park(Solution solution) {
    if (patterns.size() - parked.cardinality() <= ACTIVE_A_ROW * rows + FEW_COLUMNS) {
      return;
    }
    double[] surplus = new double[patterns.size()];
    double[] unused = new double[patterns.size()];
    int count = 0;
    for (int index = 0; index < surplus.length; index++) {
      if (!parked.get(index) && solution.times(index) == 0) {
        surplus[index] = solution.surplus(patterns.get(index));
        unused[count++] = surplus[index];
      }
    }
    if (count > rows) {
      Arrays.sort(unused, 0, count);
      double most = Math.max(unused[rows], 1e-6);
      for (int index = 0; index < surplus.length; index++) {
        if (surplus[index] > most) {
          parked.set(index);
          model.setColumnBounds(columnOf[index], 0, 0);
        }
      }
    }
    if (model.columnCount() > COLUMNS_A_ROW * rows + 2 * FEW_COLUMNS) {
      makeAnew();
    }
  }

  private void makeAnew() {
    model.close();
    model = new LinearModel();
    layOut();
    for (int index = 0; index < patterns.size(); index++) {
      columnOf[index] = parked.get(index) ? -1 : newColumn(patterns.get(index));
    }
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

  /** Bounds on packs; {@link Integer#MAX_VALUE} without a limit. */
  public void limitPacks(int stock, int least, int most) {
    leastPacks[stock] = least;
    mostPacks[stock] = most;
    model.setColumnBounds(packColumns[stock], least, bound(most));
  }

  /** Another demand of an item; the method that changes it restores it. */
  public void setDemand(int item, double demand) {
    demands[item] = demand;
    model.setRowBounds(itemRows[item], demand, Double.POSITIVE_INFINITY);
  }

  /** Makes what is not covered dearer; false when it is as dear as it can be. */
  public boolean raisePenalty() {
    if (penalty > 1e5) {
      return false;
    }
    penalty *= 30;
    for (int column : artificialColumns) {
      if (column >= 0) {
        model.setCost(column, penalty);
      }
    }
    return true;
  }

  /** What one unit of the duals is in cost. */
  public double costUnit() {
    return costUnit;
  }

  /**
   * Solves, with as many patterns of the reserve as it takes.
   *
   * @return null when the effort is spent or the engine fails twice
   */
  public @Nullable Solution solve(Effort effort) {
    while (true) {
      Solution solution = solveOnce(effort);
      if (solution == null) {
        return null;
      }
      List<Pattern> drawn = reserve.take(solution, demands.length);
      drawn.forEach(this::add);
      if (drawn.size() < FEW_DRAWN) {
        return solution;
      }
    }
  }

  private @Nullable Solution solveOnce(Effort effort) {
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
    Solution solution = new Solution(result);
    park(solution);
    return solution;
  }

  /** Patterns to draw from at each solve; not added before they are worth it. */
  public void keepInReserve(List<Pattern> known) {
    reserve.add(known);
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
    private final double[] times;

    private Solution(LinearResult result) {
      this.result = result;
      times = new double[patterns.size()];
      for (int index = 0; index < times.length; index++) {
        times[index] = parked.get(index) ? 0 : result.value(columnOf[index]);
      }
    }

    /** Objective in the problem's cost. */
    public double cost() {
      return result.objective() * costUnit;
    }

    /** pi_i, in the problem's cost; 0 where nothing is left. */
    public double itemDual(int item) {
      return itemRows[item] < 0 ? 0 : Math.max(0, result.dual(itemRows[item])) * costUnit;
    }

    /** mu_j, the value of a stick of the stock, in the problem's cost. */
    public double stockDual(int stock) {
      return Math.max(0, result.dual(stockRows[stock])) * costUnit;
    }

    /** How often a pattern is cut; 0 for one that was added after this solution. */
    public double times(int index) {
      return index < times.length ? times[index] : 0;
    }

    /** By how much the pattern misses being worth its stick, in cost units. */
    public double surplus(Pattern pattern) {
      double surplus = result.dual(stockRows[pattern.stock()]);
      for (int k = 0; k < pattern.kinds(); k++) {
        surplus -= result.dual(itemRows[pattern.item(k)]) * pattern.count(k);
      }
      return surplus;
    }

    public double packs(int stock) {
      return result.value(packColumns[stock]);
    }

    /** Demand that nothing covers. */
    public double uncovered() {
      double sum = 0;
      for (int column : artificialColumns) {
        sum += column < 0 ? 0 : result.value(column);
      }
      return sum;
    }
  }
}
