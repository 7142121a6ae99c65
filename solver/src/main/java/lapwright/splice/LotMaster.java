package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * The linear program of {@link ClassMaster} over several lots at once: each has rows of its own for
 * its classes of lengths, its size and its stocks.
 *
 * <p>Shares tie them together: v_ul, how much of unit u comes from lot l, with sum_l v_ul = 1, adds
 * v_ul times its pieces to the rows of l, and sum_s z_s = n_r v_ul for each of its groups there;
 * w_il, how many of free piece i come from l, with sum_l w_il &gt;= d_i, adds so many to them. The
 * rows' prices are step weights by lot, which {@link LotBound} makes a bound.
 *
 * <p>Prices are scaled so that the dearest stick costs 1. Holds native memory: close it.
 */
final class LotMaster implements AutoCloseable {
  private static final double TOO_DEAR = 10;
  private static final double TOLERANCE = 1e-7;
  private static final int PATTERNS_A_CALL = 60;
  private static final int MOST_ROUNDS = 300;

  private final LotParts parts;
  private final LinearModel model = new LinearModel();
  private final double unit;
  private final double sizeUnit;
  private final List<Lot> lots = new ArrayList<>();
  private final int[][] freeColumn;
  private final int[] freeRow;
  private final int[][] unitColumn;
  private final List<SplitColumn> splits = new ArrayList<>();
  private final Set<List<Object>> knownSplits = new HashSet<>();
  private LinearResult result;

  /** A split of a unit's group in a lot. */
  record SplitColumn(int unit, int lot, int group, List<Long> lengths, int column) {}

  /** The rows and columns of a lot. */
  private static final class Lot {
    private final long[] starts;
    private final ClassTable table;
    private final int[] packColumn;
    private final int[] stockRow;
    private final int[] classRow;
    private final int sizeRow;
    private final Set<List<Integer>> knownPatterns = new HashSet<>();
    private final Map<List<Integer>, Integer> groupRow = new LinkedHashMap<>();

    private Lot(SpliceProblem problem, long[] starts, int sizeRow) {
      this.starts = starts;
      this.table = new ClassTable(problem, starts);
      this.packColumn = new int[problem.stocks().size()];
      this.stockRow = new int[problem.stocks().size()];
      this.classRow = new int[starts.length];
      this.sizeRow = sizeRow;
    }

    /** The class of a length; -1 below the first. */
    int classOf(long length) {
      int at = Arrays.binarySearch(starts, length);
      return at >= 0 ? at : -at - 2;
    }
  }

  /**
   * @param starts for each lot where its classes begin
   */
  LotMaster(LotParts parts, List<SortedSet<Long>> starts) {
    this.parts = parts;
    double dearest = 1;
    long greatest = 1;
    for (int l = 0; l < parts.lots(); l++) {
      for (Stock stock : parts.lot(l).stocks()) {
        dearest = Math.max(dearest, (double) stock.packCost() / stock.packSize());
        greatest = Math.max(greatest, stock.capacity());
      }
    }
    unit = dearest;
    sizeUnit = greatest;
    for (int l = 0; l < parts.lots(); l++) {
      lots.add(lot(parts.lot(l), starts.get(l)));
    }
    freeRow = new int[parts.free().size()];
    freeColumn = new int[freeRow.length][parts.lots()];
    for (int i = 0; i < freeRow.length; i++) {
      Item item = parts.free().get(i);
      freeRow[i] = model.addRow(item.demand(), Double.POSITIVE_INFINITY);
      addMissing(freeRow[i], TOO_DEAR);
      for (int l = 0; l < parts.lots(); l++) {
        freeColumn[i][l] = -1;
        if (parts.gives(l, i)) {
          freeColumn[i][l] = model.addColumn(0, 0, item.demand());
          model.setCoefficient(freeRow[i], freeColumn[i][l], 1);
          demand(l, freeColumn[i][l], Map.of(item.size(), 1));
        }
      }
    }
    unitColumn = new int[parts.units()][parts.lots()];
    for (int u = 0; u < unitColumn.length; u++) {
      int row = model.addRow(1, 1);
      addMissing(row, TOO_DEAR * TOO_DEAR);
      for (int l = 0; l < parts.lots(); l++) {
        unitColumn[u][l] = -1;
        Optional<LotParts.Part> part = parts.part(u, l);
        if (part.isPresent()) {
          unitColumn[u][l] = model.addColumn(0, 0, 1);
          model.setCoefficient(row, unitColumn[u][l], 1);
          addUnit(u, l, part.get());
        }
      }
    }
    result = model.solve(Long.MAX_VALUE);
  }

  private Lot lot(SpliceProblem problem, SortedSet<Long> starts) {
    long[] ascending = starts.stream().mapToLong(Long::longValue).toArray();
    int sizeRow = model.addRow(0, Double.POSITIVE_INFINITY);
    addMissing(sizeRow, TOO_DEAR);
    Lot lot = new Lot(problem, ascending, sizeRow);
    for (int j = 0; j < lot.stockRow.length; j++) {
      Stock stock = problem.stocks().get(j);
      lot.stockRow[j] = model.addRow(Double.NEGATIVE_INFINITY, 0);
      lot.packColumn[j] = model.addColumn(stock.packCost() / unit, 0, most(stock.mostPacks()));
      model.setCoefficient(lot.stockRow[j], lot.packColumn[j], -stock.packSize());
    }
    for (int c = 0; c < ascending.length; c++) {
      lot.classRow[c] = model.addRow(0, Double.POSITIVE_INFINITY);
      addMissing(lot.classRow[c], TOO_DEAR);
      if (c > 0) {
        int shorter = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
        model.setCoefficient(lot.classRow[c], shorter, -1);
        model.setCoefficient(lot.classRow[c - 1], shorter, 1);
      }
    }
    return lot;
  }

  private void addUnit(int unitNumber, int lotNumber, LotParts.Part part) {
    int column = unitColumn[unitNumber][lotNumber];
    Map<Long, Integer> sizes = new LinkedHashMap<>();
    part.problem().plain().forEach(item -> sizes.merge(item.size(), item.demand(), Integer::sum));
    demand(lotNumber, column, sizes);
    for (int g = 0; g < part.choices().size(); g++) {
      int row = model.addRow(0, Double.POSITIVE_INFINITY);
      lots.get(lotNumber).groupRow.put(List.of(unitNumber, g), row);
      model.setCoefficient(row, column, -part.problem().groups().get(g).lines());
    }
  }

  /** A column takes pieces of these sizes from a lot. */
  private void demand(int lotNumber, int column, Map<Long, Integer> sizes) {
    Lot lot = lots.get(lotNumber);
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    double size = 0;
    for (Map.Entry<Long, Integer> each : sizes.entrySet()) {
      int c = lot.classOf(each.getKey() - parts.cut());
      if (c >= 0) {
        counts.merge(c, each.getValue(), Integer::sum);
      }
      size += (double) each.getKey() * each.getValue();
    }
    counts.forEach((c, count) -> model.setCoefficient(lot.classRow[c], column, -count));
    model.setCoefficient(lot.sizeRow, column, -size / sizeUnit);
  }

  private static double most(int packs) {
    return packs == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : packs;
  }

  private void addMissing(int row, double price) {
    int column = model.addColumn(price, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(row, column, 1);
  }

  /** Limits the packs of each lot, the lots of each unit and the free pieces of each lot. */
  void limit(List<PackLimits> packs, boolean[][] open, FreeLimits free) {
    for (int i = 0; i < freeColumn.length; i++) {
      for (int l = 0; l < lots.size(); l++) {
        if (freeColumn[i][l] >= 0) {
          model.setColumnBounds(freeColumn[i][l], free.least(i, l), free.most(i, l));
        }
      }
    }
    for (int l = 0; l < lots.size(); l++) {
      Lot lot = lots.get(l);
      for (int j = 0; j < lot.packColumn.length; j++) {
        model.setColumnBounds(lot.packColumn[j], packs.get(l).least(j), most(packs.get(l).most(j)));
      }
    }
    for (int u = 0; u < unitColumn.length; u++) {
      for (int l = 0; l < lots.size(); l++) {
        if (unitColumn[u][l] >= 0) {
          model.setColumnBounds(unitColumn[u][l], 0, open[u][l] ? 1 : 0);
        }
      }
    }
  }

  /** Adds a split; false when it is there already. */
  boolean add(int unitNumber, int lotNumber, int group, List<Long> pieces) {
    List<Long> sorted = pieces.stream().sorted().toList();
    if (pieces.isEmpty() || !knownSplits.add(List.of(unitNumber, lotNumber, group, sorted))) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    Integer row = lots.get(lotNumber).groupRow.get(List.of(unitNumber, group));
    if (row == null) {
      throw new IllegalArgumentException("unit " + unitNumber + " is not of lot " + lotNumber);
    }
    model.setCoefficient(row, column, 1);
    Map<Long, Integer> sizes = new LinkedHashMap<>();
    sorted.forEach(length -> sizes.merge(length + parts.cut(), 1, Integer::sum));
    demand(lotNumber, column, sizes);
    splits.add(new SplitColumn(unitNumber, lotNumber, group, List.copyOf(pieces), column));
    return true;
  }

  /**
   * Generates columns until they improve nothing.
   *
   * @param rounds at most
   * @param open which lots are left to each unit
   * @return false when the engine failed, the effort was spent or rounds were too few
   */
  boolean converge(int rounds, boolean[][] open, Effort effort) {
    for (int round = 0; round < Math.min(rounds, MOST_ROUNDS); round++) {
      LinearResult next = model.solveSteadily(() -> Long.MAX_VALUE);
      if (next.outcome() != Outcome.OPTIMAL) {
        return false;
      }
      result = next;
      boolean added = false;
      for (int l = 0; l < lots.size(); l++) {
        added |= addPatterns(l);
        added |= addSplits(l, open);
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

  private ClassPrices prices(int lotNumber) {
    Lot lot = lots.get(lotNumber);
    double[] byClass = new double[lot.starts.length];
    for (int c = 0; c < byClass.length; c++) {
      byClass[c] = Math.max(0, result.dual(lot.classRow[c]));
    }
    return new ClassPrices(lot.starts, byClass, Math.max(0, result.dual(lot.sizeRow)) / sizeUnit);
  }

  private StepWeights weights(ClassPrices prices) {
    return prices.weights(result.objective(), unit, parts.costUnit());
  }

  /** The program's prices as weights, one a lot, of one scale. */
  List<StepWeights> weights() {
    List<StepWeights> weights = new ArrayList<>();
    for (int l = 0; l < lots.size(); l++) {
      weights.add(weights(prices(l)));
    }
    return weights;
  }

  private boolean addSplits(int lotNumber, boolean[][] open) {
    Lot lot = lots.get(lotNumber);
    ClassPrices now = prices(lotNumber);
    StepWeights weights = weights(now);
    boolean added = false;
    for (int u = 0; u < unitColumn.length; u++) {
      Optional<LotParts.Part> part = parts.part(u, lotNumber);
      if (!open[u][lotNumber] || part.isEmpty()) {
        continue;
      }
      for (int g = 0; g < part.get().choices().size(); g++) {
        List<Long> split = part.get().choices().get(g).lightest(weights, parts.cut());
        double price = 0;
        for (long length : split) {
          int c = lot.classOf(length);
          price += (c < 0 ? 0 : now.of(c)) + now.perSize() * (length + parts.cut());
        }
        Integer row = lot.groupRow.get(List.of(u, g));
        if (row != null && price < result.dual(row) - TOLERANCE) {
          added |= add(u, lotNumber, g, split);
        }
      }
    }
    return added;
  }

  private record Priced(int stock, int through, double gain) {}

  /** The best patterns of a lot through each class. */
  private boolean addPatterns(int lotNumber) {
    Lot lot = lots.get(lotNumber);
    ClassPrices now = prices(lotNumber);
    lot.table.take(now);
    List<Priced> priced = new ArrayList<>();
    for (int j = 0; j < lot.stockRow.length; j++) {
      double bySize = now.perSize() * capacity(lotNumber, j);
      double price = -result.dual(lot.stockRow[j]) - bySize;
      priced.add(new Priced(j, -1, lot.table.most(j) - price));
      for (int c = 0; c < lot.starts.length; c++) {
        if (lot.table.fits(j, c)) {
          priced.add(new Priced(j, c, lot.table.mostBeside(j, c) + now.of(c) - price));
        }
      }
    }
    priced.sort(Comparator.comparingDouble(one -> -one.gain()));
    int added = 0;
    for (Priced one : priced) {
      if (added >= PATTERNS_A_CALL || one.gain() <= TOLERANCE) {
        break;
      }
      if (addPattern(lotNumber, one.stock(), lot.table.pieces(one.stock(), one.through()))) {
        added++;
      }
    }
    return added > 0;
  }

  private double capacity(int lotNumber, int stock) {
    return Math.max(0, parts.lot(lotNumber).stocks().get(stock).capacity());
  }

  private boolean addPattern(int lotNumber, int stock, List<Integer> held) {
    Lot lot = lots.get(lotNumber);
    held.sort(null);
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    held.forEach(c -> counts.merge(c, 1, Integer::sum));
    held.add(stock);
    if (!lot.knownPatterns.add(held)) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    model.setCoefficient(lot.stockRow[stock], column, 1);
    model.setCoefficient(lot.sizeRow, column, capacity(lotNumber, stock) / sizeUnit);
    counts.forEach((c, count) -> model.setCoefficient(lot.classRow[c], column, count));
    return true;
  }

  List<SplitColumn> splits() {
    return splits;
  }

  double value(SplitColumn split) {
    return split.column() < result.columnCount() ? result.value(split.column()) : 0;
  }

  /** How much of a unit comes from a lot. */
  double share(int unitNumber, int lotNumber) {
    int column = unitColumn[unitNumber][lotNumber];
    return column < 0 ? 0 : result.value(column);
  }

  /** How many of a free piece come from a lot. */
  double free(int item, int lotNumber) {
    int column = freeColumn[item][lotNumber];
    return column < 0 ? 0 : result.value(column);
  }

  double packs(int lotNumber, int stock) {
    return result.value(lots.get(lotNumber).packColumn[stock]);
  }

  @Override
  public void close() {
    model.close();
  }
}
