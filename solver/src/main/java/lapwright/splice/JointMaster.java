package lapwright.splice;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapwright.colgen.Pattern;
import lapwright.colgen.PatternSource;
import lapwright.colgen.PatternTable;
import lapwright.effort.Effort;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * The linear program over patterns and splits together.
 *
 * <p>min sum_j P_j y_j with, for each length i in use, sum_a a_i x_a - sum_s s_i z_s &gt;= d_i; for
 * each stock, sum_a x_a &lt;= k_j y_j; for each group, sum_s z_s = n_r. Patterns x and splits z are
 * generated against each other: a length has a row once some split uses it; any other length is
 * priced by what a stick costs less the most that the rest of it can be worth.
 *
 * <p>Prices are scaled so that the dearest stick costs 1. Holds native memory: close it.
 */
final class JointMaster implements SplitProgram, AutoCloseable {
  private static final double PRICE_SCALE = 2_000_000;
  private static final double MOST_WEIGHT = 1_000_000_000;
  private static final double TOO_DEAR = 10;
  private static final double TOLERANCE = 1e-6;
  private static final int PATTERNS_A_CALL = 100;
  private static final int MOST_ROUNDS = 400;
  private static final int ROUNDS_THAT_TELL = 5;
  private static final double NEXT_TO_NOTHING = 5e-5;
  private static final long MOST_CELLS = 40_000_000;
  private static final long COARSE_CAPACITY = 30_000;

  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final long gridStep;
  private final LinearModel model = new LinearModel();
  private final double unit;
  private final int[] packColumn;
  private final int[] stockRow;
  private final int[] groupRow;
  private final Map<Long, Integer> itemOfLength = new LinkedHashMap<>();
  private final List<Long> lengths = new ArrayList<>();
  private final List<Integer> itemRow = new ArrayList<>();
  private final Map<Long, Integer> plainDemand = new LinkedHashMap<>();
  private final List<PatternColumn> patterns = new ArrayList<>();
  private final Set<Pattern> knownPatterns = new HashSet<>();
  private final List<SplitColumn> splits = new ArrayList<>();
  private final Set<SplitKey> knownSplits = new HashSet<>();
  private PatternSource source = (weights, limits, thresholds, most) -> emptyPricing();
  private int pricedItems = -1;
  private LinearResult result;

  /** A cutting pattern in the program. */
  record PatternColumn(Pattern pattern, int column) {}

  private record SplitKey(int group, List<Long> lengths) {}

  JointMaster(SpliceProblem problem, List<Choice> choices, long gridStep) {
    this.problem = problem;
    this.choices = choices;
    this.gridStep = gridStep;
    double dearest = 1;
    for (Stock stock : problem.stocks()) {
      dearest = Math.max(dearest, (double) stock.packCost() / stock.packSize());
    }
    unit = dearest;
    int n = problem.stocks().size();
    packColumn = new int[n];
    stockRow = new int[n];
    for (int j = 0; j < n; j++) {
      Stock stock = problem.stocks().get(j);
      stockRow[j] = model.addRow(Double.NEGATIVE_INFINITY, 0);
      packColumn[j] = model.addColumn(stock.packCost() / unit, 0, most(stock.mostPacks()));
      model.setCoefficient(stockRow[j], packColumn[j], -stock.packSize());
    }
    for (Item item : problem.plain()) {
      plainDemand.merge(item.size() - problem.cut(), item.demand(), Math::addExact);
    }
    plainDemand.keySet().forEach(this::item);
    groupRow = new int[choices.size()];
    for (int g = 0; g < groupRow.length; g++) {
      int lines = problem.groups().get(g).lines();
      groupRow[g] = model.addRow(lines, lines);
      addMissing(groupRow[g], TOO_DEAR * TOO_DEAR);
    }
    result = model.solve(Long.MAX_VALUE);
  }

  private static double most(int packs) {
    return packs == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : packs;
  }

  private PatternSource.Priced emptyPricing() {
    return new PatternSource.Priced(problem.stocks().stream().map(stock -> 0L).toList(), List.of());
  }

  /** Index of a length's row, made when there is none. */
  private int item(long length) {
    Integer known = itemOfLength.get(length);
    if (known != null) {
      return known;
    }
    int item = lengths.size();
    itemOfLength.put(length, item);
    lengths.add(length);
    int row = model.addRow(plainDemand.getOrDefault(length, 0), Double.POSITIVE_INFINITY);
    itemRow.add(row);
    addMissing(row, TOO_DEAR);
    return item;
  }

  private void addMissing(int row, double price) {
    int column = model.addColumn(price, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(row, column, 1);
  }

  /**
   * Adds a split; false when it is there already. Where joints must be kept apart, the order of the
   * pieces matters.
   */
  boolean add(int group, List<Long> pieces) {
    boolean ordered = problem.groups().get(group).apart() > 0;
    List<Long> sorted = ordered ? List.copyOf(pieces) : pieces.stream().sorted().toList();
    if (pieces.isEmpty() || !knownSplits.add(new SplitKey(group, sorted))) {
      return false;
    }
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    for (long length : pieces) {
      counts.merge(item(length), 1, Integer::sum);
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(groupRow[group], column, 1);
    counts.forEach((item, count) -> model.setCoefficient(itemRow.get(item), column, -count));
    splits.add(new SplitColumn(group, List.copyOf(pieces), column));
    return true;
  }

  private boolean add(Pattern pattern) {
    if (!knownPatterns.add(pattern)) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(stockRow[pattern.stock()], column, 1);
    for (int k = 0; k < pattern.kinds(); k++) {
      model.setCoefficient(itemRow.get(pattern.item(k)), column, pattern.count(k));
    }
    patterns.add(new PatternColumn(pattern, column));
    return true;
  }

  /**
   * Makes splits a little dearer than they are, each by its own part of {@code most} of the dearest
   * stick, so that other solutions come up; 0 ends that.
   */
  void disturb(double most, int variant) {
    long state = 0x9E3779B97F4A7C15L * (variant + 1L);
    for (SplitColumn split : splits) {
      state = state * 6364136223846793005L + 1442695040888963407L;
      model.setCost(split.column(), most * ((state >>> 40) / (double) (1 << 24)));
    }
  }

  @Override
  public void fix(SplitColumn split, int lines) {
    model.setColumnBounds(split.column(), lines, Double.POSITIVE_INFINITY);
  }

  @Override
  public boolean converge(int rounds, Effort effort) {
    double earlier = Double.POSITIVE_INFINITY;
    for (int round = 0; ; round++) {
      if (!convergePatterns(effort)) {
        return false;
      }
      if (round >= rounds) {
        return round == 0;
      }
      if (round % ROUNDS_THAT_TELL == 0) {
        if (earlier - result.objective() < NEXT_TO_NOTHING * result.objective()) {
          return false;
        }
        earlier = result.objective();
      }
      if (!addSplits()) {
        return true;
      }
    }
  }

  private boolean convergePatterns(Effort effort) {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      if (!solve()) {
        return false;
      }
      if (!addPatterns()) {
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
    return true;
  }

  private boolean addPatterns() {
    if (pricedItems != lengths.size()) {
      pricedItems = lengths.size();
      source = new PatternTable(tableProblem());
    }
    int m = lengths.size();
    long[] weights = new long[m];
    int[] limits = new int[m];
    double scale = priceScale();
    for (int i = 0; i < m; i++) {
      weights[i] = Math.max(0, Math.round(result.dual(itemRow.get(i)) * scale));
      limits[i] = mostPieces(i);
    }
    long[] thresholds = new long[stockRow.length];
    for (int j = 0; j < thresholds.length; j++) {
      thresholds[j] = Math.round(stickPrice(j) * scale) + 2;
    }
    boolean added = false;
    for (Pattern pattern : source.price(weights, limits, thresholds, PATTERNS_A_CALL).patterns()) {
      added |= add(pattern);
    }
    return added;
  }

  /** The usual scale, but for prices so great that the table could not add up a stick of them. */
  private double priceScale() {
    long longest = problem.stocks().stream().mapToLong(Stock::capacity).max().orElse(0);
    double greatest = 0;
    for (int i = 0; i < lengths.size(); i++) {
      long pieces = longest / (lengths.get(i) + problem.cut()) + 1;
      greatest = Math.max(greatest, result.dual(itemRow.get(i)) * pieces);
    }
    return Math.min(PRICE_SCALE, MOST_WEIGHT / Math.max(1, greatest));
  }

  private int mostPieces(int item) {
    int plain = plainDemand.getOrDefault(lengths.get(item), 0);
    return problem.groups().isEmpty() ? plain : Integer.MAX_VALUE / 4;
  }

  /** Sizes and capacities on a grid that the table can hold; sizes are rounded up where need be. */
  private StickProblem tableProblem() {
    long greatest = 1;
    for (Stock stock : problem.stocks()) {
      greatest = Math.max(greatest, stock.capacity());
    }
    long grid = 0;
    for (long length : lengths) {
      grid = Knapsack.gcd(grid, length + problem.cut());
    }
    grid = Math.max(1, grid);
    if (greatest / grid * lengths.size() * 4 > MOST_CELLS) {
      grid = Math.max(grid, greatest / COARSE_CAPACITY + 1);
    }
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < lengths.size(); i++) {
      long length = lengths.get(i);
      items.add(
          new Item(
              (length + problem.cut() + grid - 1) / grid,
              Math.max(1, mostPieces(i)),
              length < problem.hold()));
    }
    List<Stock> stocks = new ArrayList<>();
    for (Stock stock : problem.stocks()) {
      stocks.add(
          new Stock(
              0,
              Math.floorDiv(stock.capacity(), grid),
              Math.floorDiv(Math.max(0, stock.smallCapacity()), grid),
              stock.wholeUse(),
              0,
              stock.packCost(),
              0,
              stock.packSize(),
              stock.mostPacks()));
    }
    return new StickProblem(items, stocks, 0);
  }

  private boolean addSplits() {
    LengthPrices prices = prices();
    boolean added = false;
    for (int g = 0; g < choices.size(); g++) {
      List<Long> split = choices.get(g).cheapest(prices);
      double price = 0;
      for (long length : split) {
        price += prices.of(length);
      }
      if (!split.isEmpty() && price < result.dual(groupRow[g]) - TOLERANCE) {
        added |= add(g, split);
      }
    }
    return added;
  }

  /** Prices of all lengths at the last solution. */
  LengthPrices prices() {
    int m = lengths.size();
    long[] sizes = new long[m];
    double[] worth = new double[m];
    for (int i = 0; i < m; i++) {
      sizes[i] = lengths.get(i) + problem.cut();
      worth[i] = Math.max(0, result.dual(itemRow.get(i)));
    }
    double[] sticks = new double[stockRow.length];
    for (int j = 0; j < sticks.length; j++) {
      sticks[j] = stickPrice(j);
    }
    return new ValueTable(problem.stocks(), sticks, problem.cut(), sizes, worth, gridStep);
  }

  private double stickPrice(int stock) {
    return Math.max(0, -result.dual(stockRow[stock]));
  }

  /** What a unit of the program's prices is in the problem's. */
  double unit() {
    return unit;
  }

  List<Long> lengths() {
    return lengths;
  }

  /** How many plain pieces there are of a length in use. */
  int plainDemand(int item) {
    return plainDemand.getOrDefault(lengths.get(item), 0);
  }

  @Override
  public List<SplitColumn> splits() {
    return splits;
  }

  @Override
  public double value(SplitColumn split) {
    return result.value(split.column());
  }

  /** The split of a group with just these pieces, which is in the program. */
  SplitColumn split(int group, List<Long> pieces) {
    return splits.stream()
        .filter(split -> split.group() == group && split.lengths().equals(pieces))
        .findFirst()
        .orElseThrow();
  }

  List<PatternColumn> patterns() {
    return patterns;
  }

  @Override
  public void close() {
    model.close();
  }
}
