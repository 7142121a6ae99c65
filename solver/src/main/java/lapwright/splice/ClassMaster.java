package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * A linear program that bounds the joint one from below with few rows: lengths are taken together
 * in classes, from one listed length up to the next, and a pattern holds pieces as long as the
 * least of their class.
 *
 * <p>min sum_j P_j y_j with, for each class c, sum_a a_c x_a - sum_s s_c z_s &gt;= d_c (prices w_c,
 * which do not fall from class to class); for all sizes together, sum_j U_j x_j - sum_s size_s z_s
 * &gt;= size of the plain pieces (price p); for each stock, sum_a x_a &lt;= k_j y_j; for each
 * group, sum_s z_s = n_r. Its prices are step weights, w_c by class and p by size, and the bound
 * that they prove is what the program says, but for rounding.
 *
 * <p>Patterns are priced by a knapsack over the classes on a grid of sizes, rounded down. Prices
 * are scaled so that the dearest stick costs 1. Holds native memory: close it.
 */
final class ClassMaster implements SplitProgram, AutoCloseable {
  private static final double TOO_DEAR = 10;
  private static final double TOLERANCE = 1e-7;
  private static final double FINEST = 1e15;
  private static final double GREATEST_SUM = 1e17;
  private static final int MOST_CELLS = 6_000;
  private static final int PATTERNS_A_CALL = 60;
  private static final int MOST_ROUNDS = 300;

  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final long costUnit;
  private final long[] starts;
  private final LinearModel model = new LinearModel();
  private final double unit;
  private final double sizeUnit;
  private final int[] packColumn;
  private final int[] stockRow;
  private final int[] classRow;
  private final int sizeRow;
  private final int[] groupRow;
  private final int[] cellsOfClass;
  private final int[] cellsOfStock;
  private final Set<List<Integer>> knownPatterns = new HashSet<>();
  private final List<SplitColumn> splits = new ArrayList<>();
  private final Set<List<Integer>> knownSplits = new HashSet<>();
  private LinearResult result;
  private int solved;

  /**
   * @param costUnit scales of weights are multiples of it
   * @param starts listed lengths, ascending and positive
   */
  ClassMaster(SpliceProblem problem, List<Choice> choices, long costUnit, long[] starts) {
    this.problem = problem;
    this.costUnit = costUnit;
    this.choices = choices;
    this.starts = starts;
    double dearest = 1;
    long greatest = 1;
    for (Stock stock : problem.stocks()) {
      dearest = Math.max(dearest, (double) stock.packCost() / stock.packSize());
      greatest = Math.max(greatest, stock.capacity());
    }
    unit = dearest;
    sizeUnit = greatest;
    int n = problem.stocks().size();
    packColumn = new int[n];
    stockRow = new int[n];
    for (int j = 0; j < n; j++) {
      Stock stock = problem.stocks().get(j);
      stockRow[j] = model.addRow(Double.NEGATIVE_INFINITY, 0);
      packColumn[j] = model.addColumn(stock.packCost() / unit, 0, most(stock.mostPacks()));
      model.setCoefficient(stockRow[j], packColumn[j], -stock.packSize());
    }
    double[] demand = new double[starts.length];
    double size = 0;
    for (Item item : problem.plain()) {
      int c = classOf(item.size() - problem.cut());
      if (c >= 0) {
        demand[c] += item.demand();
      }
      size += (double) item.size() * item.demand();
    }
    classRow = new int[starts.length];
    for (int c = 0; c < starts.length; c++) {
      classRow[c] = model.addRow(demand[c], Double.POSITIVE_INFINITY);
      addMissing(classRow[c], TOO_DEAR);
      if (c > 0) {
        int shorter = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
        model.setCoefficient(classRow[c], shorter, -1);
        model.setCoefficient(classRow[c - 1], shorter, 1);
      }
    }
    sizeRow = model.addRow(size / sizeUnit, Double.POSITIVE_INFINITY);
    addMissing(sizeRow, TOO_DEAR);
    groupRow = new int[choices.size()];
    for (int g = 0; g < groupRow.length; g++) {
      int lines = problem.groups().get(g).lines();
      groupRow[g] = model.addRow(lines, lines);
      addMissing(groupRow[g], TOO_DEAR * TOO_DEAR);
    }
    long grid = grid(greatest);
    cellsOfClass = new int[starts.length];
    for (int c = 0; c < starts.length; c++) {
      cellsOfClass[c] = (int) Math.max(1, Math.floorDiv(starts[c] + problem.cut(), grid));
    }
    cellsOfStock = new int[n];
    for (int j = 0; j < n; j++) {
      cellsOfStock[j] = (int) Math.max(0, Math.floorDiv(problem.stocks().get(j).capacity(), grid));
    }
    result = model.solve(Long.MAX_VALUE);
  }

  private long grid(long greatest) {
    long grid = 0;
    for (long start : starts) {
      grid = Knapsack.gcd(grid, start + problem.cut());
    }
    grid = Math.max(1, grid);
    return greatest / grid > MOST_CELLS ? greatest / MOST_CELLS : grid;
  }

  private static double most(int packs) {
    return packs == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : packs;
  }

  private void addMissing(int row, double price) {
    int column = model.addColumn(price, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(row, column, 1);
  }

  /** The class of a length; -1 below the first. */
  private int classOf(long length) {
    int at = Arrays.binarySearch(starts, length);
    return at >= 0 ? at : -at - 2;
  }

  /** Adds a split; false when one of the same classes is there already. */
  boolean add(int group, List<Long> pieces) {
    if (pieces.isEmpty()) {
      return false;
    }
    List<Integer> key = new ArrayList<>();
    double size = 0;
    for (long length : pieces) {
      key.add(classOf(length));
      size += length + problem.cut();
    }
    key.sort(null);
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    key.forEach(c -> counts.merge(c, 1, Integer::sum));
    // Splits of the same classes may differ in size where laps are not the same at every place.
    key.add(group);
    key.add(Math.toIntExact((long) size & 0x3fffffff));
    if (!knownSplits.add(key)) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(groupRow[group], column, 1);
    model.setCoefficient(sizeRow, column, -size / sizeUnit);
    counts.forEach(
        (c, count) -> {
          if (c >= 0) {
            model.setCoefficient(classRow[c], column, -count);
          }
        });
    splits.add(new SplitColumn(group, pieces, column));
    return true;
  }

  void limit(PackLimits limits) {
    for (int j = 0; j < packColumn.length; j++) {
      model.setColumnBounds(packColumn[j], limits.least(j), most(limits.most(j)));
    }
  }

  @Override
  public void fix(SplitColumn split, int lines) {
    model.setColumnBounds(split.column(), lines, Double.POSITIVE_INFINITY);
  }

  @Override
  public boolean converge(int rounds, Effort effort) {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      if (!solve()) {
        return false;
      }
      boolean added = addPatterns();
      if (round < rounds) {
        added |= addSplits();
      }
      if (!added) {
        return true;
      }
      if (effort.spent()) {
        return false;
      }
    }
    return false;
  }

  private boolean solve() {
    LinearResult next = model.solveSteadily(() -> Long.MAX_VALUE);
    if (next.outcome() != Outcome.OPTIMAL) {
      return false;
    }
    result = next;
    solved = model.columnCount();
    return true;
  }

  /** The best patterns through each class. */
  private boolean addPatterns() {
    int m = starts.length;
    int cells = 0;
    for (int stick : cellsOfStock) {
      cells = Math.max(cells, stick);
    }
    double[] best = new double[cells + 1];
    int[] last = new int[cells + 1];
    Arrays.fill(last, -1);
    for (int c = 0; c < m; c++) {
      double worth = result.dual(classRow[c]);
      if (worth <= TOLERANCE) {
        continue;
      }
      for (int p = cellsOfClass[c]; p <= cells; p++) {
        double sum = best[p - cellsOfClass[c]] + worth;
        if (sum > best[p] + 1e-12) {
          best[p] = sum;
          last[p] = c;
        }
      }
    }
    for (int p = 1; p <= cells; p++) {
      if (best[p - 1] > best[p]) {
        best[p] = best[p - 1];
        last[p] = -2;
      }
    }
    double bySize = result.dual(sizeRow);
    List<Priced> priced = new ArrayList<>();
    for (int j = 0; j < stockRow.length; j++) {
      double price =
          -result.dual(stockRow[j]) - bySize * problem.stocks().get(j).capacity() / sizeUnit;
      int room = cellsOfStock[j];
      priced.add(new Priced(j, -1, best[room] - price));
      for (int c = 0; c < m; c++) {
        if (cellsOfClass[c] <= room) {
          double worth = Math.max(0, result.dual(classRow[c]));
          priced.add(new Priced(j, c, best[room - cellsOfClass[c]] + worth - price));
        }
      }
    }
    priced.sort(Comparator.comparingDouble(one -> -one.gain()));
    int added = 0;
    for (Priced one : priced) {
      if (one.gain() <= TOLERANCE || added >= PATTERNS_A_CALL) {
        break;
      }
      if (add(one, last)) {
        added++;
      }
    }
    return added > 0;
  }

  /** A pattern of a stock: the best through a class, or the best of all. */
  private record Priced(int stock, int through, double gain) {}

  private boolean add(Priced one, int[] last) {
    int at = cellsOfStock[one.stock()];
    List<Integer> held = new ArrayList<>();
    if (one.through() >= 0) {
      held.add(one.through());
      at -= cellsOfClass[one.through()];
    }
    while (at > 0 && last[at] != -1) {
      if (last[at] == -2) {
        at--;
      } else {
        held.add(last[at]);
        at -= cellsOfClass[last[at]];
      }
    }
    held.sort(null);
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    held.forEach(c -> counts.merge(c, 1, Integer::sum));
    held.add(one.stock());
    if (!knownPatterns.add(held)) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(stockRow[one.stock()], column, 1);
    model.setCoefficient(sizeRow, column, problem.stocks().get(one.stock()).capacity() / sizeUnit);
    counts.forEach((c, count) -> model.setCoefficient(classRow[c], column, count));
    return true;
  }

  private boolean addSplits() {
    StepWeights weights = weights();
    boolean added = false;
    for (int g = 0; g < choices.size(); g++) {
      List<Long> split = choices.get(g).lightest(weights, problem.cut());
      double price = 0;
      for (long length : split) {
        price += weights.of(length, problem.cut());
      }
      double sigma = result.dual(groupRow[g]) * weights.scale() * unit;
      if (!split.isEmpty() && price < sigma - TOLERANCE * weights.scale() * unit) {
        added |= add(g, split);
      }
    }
    return added;
  }

  /** The prices of the last solution as weights, in sum far from what a long can hold. */
  StepWeights weights() {
    double sum = Math.max(1, result.objective());
    double perPrice = Math.min(FINEST, GREATEST_SUM / sum);
    long scale = Math.max(1, (long) (perPrice / unit / costUnit)) * costUnit;
    perPrice = unit * scale;
    SortedMap<Long, Long> byClass = new TreeMap<>();
    for (int c = 0; c < starts.length; c++) {
      double worth = Math.max(0, result.dual(classRow[c]));
      byClass.put(starts[c], (long) Math.floor(worth * perPrice + 1e-3));
    }
    double perSize = Math.max(0, result.dual(sizeRow)) * perPrice / sizeUnit;
    return StepWeights.of(scale, byClass, (long) Math.floor(perSize));
  }

  @Override
  public List<SplitColumn> splits() {
    return splits;
  }

  @Override
  public double value(SplitColumn split) {
    return split.column() < solved ? result.value(split.column()) : 0;
  }

  double packs(int stock) {
    return result.value(packColumn[stock]);
  }

  /** Sticks of each stock in the last solution. */
  double[] sticks() {
    double[] sticks = new double[packColumn.length];
    for (int j = 0; j < sticks.length; j++) {
      sticks[j] = packs(j) * problem.stocks().get(j).packSize();
    }
    return sticks;
  }

  @Override
  public void close() {
    model.close();
  }
}
