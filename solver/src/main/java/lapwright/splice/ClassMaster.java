package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoublePredicate;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

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
 * <p>Columns may be generated at prices between the program's own and those that proved the best
 * bound so far (P. Wentges, 1997), which may come from a program with fewer classes; such prices
 * prove a bound at any time, so that one need not wait for the last column.
 *
 * <p>Prices are scaled so that the dearest stick costs 1. Holds native memory: close it.
 */
final class ClassMaster implements SplitProgram, AutoCloseable {
  private static final double TOO_DEAR = 10;
  private static final double TOLERANCE = 1e-7;
  private static final double PART_OF_THE_WAY = 0.4;
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
  private final ClassTable table;
  private final List<PatternColumn> patterns = new ArrayList<>();
  private final Set<List<Integer>> knownPatterns = new HashSet<>();
  private final List<SplitColumn> splits = new ArrayList<>();
  private final Set<List<Integer>> knownSplits = new HashSet<>();
  private final double[] classDemand;
  private final double plainSize;
  private PackLimits limits;
  private double bestBound = Double.NEGATIVE_INFINITY;
  private @Nullable ClassPrices bestPrices;
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
    classDemand = demand;
    plainSize = size;
    limits = PackLimits.of(new StickProblem(List.of(), problem.stocks(), 0));
    sizeRow = model.addRow(size / sizeUnit, Double.POSITIVE_INFINITY);
    addMissing(sizeRow, TOO_DEAR);
    groupRow = new int[choices.size()];
    for (int g = 0; g < groupRow.length; g++) {
      int lines = problem.groups().get(g).lines();
      groupRow[g] = model.addRow(lines, lines);
      addMissing(groupRow[g], TOO_DEAR * TOO_DEAR);
    }
    table = new ClassTable(problem, starts);
    result = model.solve(Long.MAX_VALUE);
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
    this.limits = limits;
    bestBound = Double.NEGATIVE_INFINITY;
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
    return generate(rounds, false, bound -> false, effort);
  }

  /**
   * Generates columns until they improve nothing, at prices held close to those of the best bound
   * so far, or until that bound is enough.
   *
   * @param rounds how often new splits are sought at most
   * @param enough is told the best bound in the problem's costs, about
   * @return false when the engine failed, the effort was spent or the bound enough
   */
  boolean converge(int rounds, DoublePredicate enough, Effort effort) {
    return generate(rounds, true, enough, effort);
  }

  private boolean generate(int rounds, boolean held, DoublePredicate enough, Effort effort) {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      if (!solve()) {
        return false;
      }
      ClassPrices now = pricesNow();
      ClassPrices best = held ? bestPrices : null;
      boolean added =
          best != null && addColumns(best.towards(now, PART_OF_THE_WAY), now, round < rounds, held);
      if (!added && effort.spent()) {
        return false;
      }
      if (!added) {
        added = addColumns(now, now, round < rounds, held);
      }
      if (!added) {
        bestPrices = held ? now : bestPrices;
        return true;
      }
      if (effort.spent() || (held && enough.test(bestBound * unit))) {
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

  private ClassPrices pricesNow() {
    double[] byClass = new double[starts.length];
    for (int c = 0; c < byClass.length; c++) {
      byClass[c] = Math.max(0, result.dual(classRow[c]));
    }
    return new ClassPrices(starts, byClass, Math.max(0, result.dual(sizeRow)) / sizeUnit);
  }

  /**
   * Adds columns that are best at some prices and improve the program at its own.
   *
   * @param withSplits whether splits are sought, too; without them no bound is known
   * @param keeping whether the prices are kept where they prove the best bound
   */
  private boolean addColumns(
      ClassPrices tried, ClassPrices now, boolean withSplits, boolean keeping) {
    double[] greatest = new double[stockRow.length];
    boolean added = addPatterns(tried, now, greatest);
    if (withSplits) {
      StepWeights weights = tried.weights(result.objective(), unit, costUnit);
      double perWeight = 1 / (unit * weights.scale());
      double demanded = 0;
      for (int c = 0; c < starts.length; c++) {
        demanded += classDemand[c] * tried.of(c);
      }
      demanded += tried.perSize() * plainSize;
      for (int g = 0; g < choices.size(); g++) {
        List<Long> split = choices.get(g).lightest(weights, problem.cut());
        double light = 0;
        double price = 0;
        for (long length : split) {
          light += weights.of(length, problem.cut()) * perWeight;
          int c = classOf(length);
          price += (c < 0 ? 0 : now.of(c)) + now.perSize() * (length + problem.cut());
        }
        demanded += light * problem.groups().get(g).lines();
        if (!split.isEmpty() && price < result.dual(groupRow[g]) - TOLERANCE) {
          added |= add(g, split);
        }
      }
      double bound = bound(demanded, greatest);
      if (keeping && bound > bestBound) {
        bestBound = bound;
        bestPrices = tried;
      }
    }
    return added;
  }

  /** The Lagrange bound: about, since it is told in floating point. */
  private double bound(double demanded, double[] greatest) {
    double over = 1;
    for (int j = 0; j < greatest.length; j++) {
      Stock stock = problem.stocks().get(j);
      if (!limits.isLimited(j)) {
        if (stock.packCost() <= 0) {
          return 0;
        }
        over = Math.max(over, greatest[j] * stock.packSize() * unit / stock.packCost());
      }
    }
    double bound = demanded / over;
    for (int j = 0; j < greatest.length; j++) {
      Stock stock = problem.stocks().get(j);
      double slack = stock.packCost() / unit - greatest[j] * stock.packSize() / over;
      if (slack > 0) {
        bound += slack * limits.least(j);
      } else if (limits.isLimited(j)) {
        bound += slack * limits.most(j);
      }
    }
    return bound;
  }

  /** The best patterns through each class; tells the most that each stock's sticks carry. */
  private boolean addPatterns(ClassPrices tried, ClassPrices now, double[] greatest) {
    table.take(tried);
    List<Priced> priced = new ArrayList<>();
    for (int j = 0; j < stockRow.length; j++) {
      double bySize = tried.perSize() * Math.max(0, problem.stocks().get(j).capacity());
      greatest[j] = table.most(j) + bySize;
      double price = -result.dual(stockRow[j]) - bySize;
      priced.add(new Priced(j, -1, table.most(j) - price));
      for (int c = 0; c < starts.length; c++) {
        if (table.fits(j, c)) {
          priced.add(new Priced(j, c, table.mostBeside(j, c) + tried.of(c) - price));
        }
      }
    }
    priced.sort(Comparator.comparingDouble(one -> -one.gain()));
    int added = 0;
    for (Priced one : priced) {
      if (added >= PATTERNS_A_CALL || (tried == now && one.gain() <= TOLERANCE)) {
        break;
      }
      if (add(one, now)) {
        added++;
      }
    }
    return added > 0;
  }

  /** A pattern of a stock: the best through a class, or the best of all. */
  private record Priced(int stock, int through, double gain) {}

  private boolean add(Priced one, ClassPrices now) {
    List<Integer> held = table.pieces(one.stock(), one.through());
    double gain =
        result.dual(stockRow[one.stock()])
            + now.perSize() * Math.max(0, problem.stocks().get(one.stock()).capacity());
    for (int c : held) {
      gain += now.of(c);
    }
    return gain > TOLERANCE && addPattern(one.stock(), held);
  }

  /** Adds a pattern that is known. */
  void add(Cutting pattern) {
    List<Integer> held = new ArrayList<>();
    for (long length : pattern.lengths()) {
      int c = classOf(length);
      if (c >= 0) {
        held.add(c);
      }
    }
    addPattern(pattern.stock(), held);
  }

  /** A stick of a stock and the lengths of its pieces. */
  record Cutting(int stock, List<Long> lengths) {}

  private boolean addPattern(int stock, List<Integer> held) {
    held.sort(null);
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    held.forEach(c -> counts.merge(c, 1, Integer::sum));
    held.add(stock);
    if (!knownPatterns.add(held)) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    patterns.add(new PatternColumn(held, column));
    model.setCoefficient(stockRow[stock], column, 1);
    double size = Math.max(0, problem.stocks().get(stock).capacity()) / sizeUnit;
    model.setCoefficient(sizeRow, column, size);
    counts.forEach((c, count) -> model.setCoefficient(classRow[c], column, count));
    return true;
  }

  /** A pattern in the program: its classes and, at last, its stock. */
  private record PatternColumn(List<Integer> held, int column) {}

  /** The patterns of the last solution, their pieces as long as the least of their classes. */
  List<Cutting> cuttings() {
    List<Cutting> used = new ArrayList<>();
    for (PatternColumn pattern : patterns) {
      if (pattern.column() < solved && result.value(pattern.column()) > 0) {
        int pieces = pattern.held().size() - 1;
        used.add(
            new Cutting(
                pattern.held().get(pieces),
                pattern.held().subList(0, pieces).stream().map(c -> starts[c]).toList()));
      }
    }
    return used;
  }

  /** The prices that prove the best bound, as weights. */
  StepWeights weights() {
    ClassPrices prices = bestPrices == null ? pricesNow() : bestPrices;
    return prices.weights(result.objective(), unit, costUnit);
  }

  /** Prices to begin from, of classes that begin where some of these do. */
  void begin(ClassPrices prices) {
    bestPrices = prices.on(starts);
  }

  /** The prices that prove the best bound; null before any was sought. */
  @Nullable ClassPrices bestPrices() {
    return bestPrices;
  }

  @Override
  public List<SplitColumn> splits() {
    return splits;
  }

  @Override
  public double value(SplitColumn split) {
    return split.column() < solved ? result.value(split.column()) : 0;
  }

  /** What the last solution costs, the dearest stick 1. */
  double value() {
    return result.objective();
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
