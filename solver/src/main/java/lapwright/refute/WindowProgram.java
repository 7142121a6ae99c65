package lapwright.refute;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * The linear program over the patterns of a question's windows, by column generation:
 *
 * <p>min t subject to sum_a a_i x_a = d_i for every item (dual W_i of any sign), sum_{a of j} x_a =
 * n_j t for every stock (dual N_j): t above 1 means that the sticks do not suffice. By duality
 * sum_i d_i W_i is then more than sum_j n_j N_j, while no pattern of j weighs more than N_j: that
 * is looked for after every pricing, in integers.
 *
 * <p>Each item may be cut too often or too rarely at a cost in proportion to its size, so that
 * there always is a solution. Holds native memory: close it.
 */
final class WindowProgram implements AutoCloseable {
  private static final double TOLERANCE = 1e-7;
  private static final double MISS_COST = 3;

  private Question question;
  private final WindowTable table;
  private final LinearModel model = new LinearModel();
  private final Map<Pattern, Integer> columns = new LinkedHashMap<>();
  private final Set<Pattern> closed = new HashSet<>();
  private final int time;
  private @Nullable LinearResult last;
  private List<RoundingCut> cuts = List.of();
  private final List<Integer> cutRows = new ArrayList<>();

  WindowProgram(Question question, WindowTable table) {
    this.question = question;
    this.table = table;
    for (int i = 0; i < question.items(); i++) {
      model.addRow(question.demand(i), question.demand(i));
    }
    time = model.addColumn(1, 0, Double.POSITIVE_INFINITY);
    for (int j = 0; j < question.stocks(); j++) {
      model.setCoefficient(model.addRow(0, 0), time, (double) question.sticks(j));
    }
    for (int i = 0; i < question.items(); i++) {
      model.setCoefficient(i, model.addColumn(0, 0, Double.POSITIVE_INFINITY), 1);
      model.setCoefficient(i, model.addColumn(0, 0, Double.POSITIVE_INFINITY), -1);
    }
    setMissCosts();
  }

  private void setMissCosts() {
    double total = 0;
    for (int i = 0; i < question.items(); i++) {
      total += (double) question.size(i) * question.demand(i);
    }
    for (int i = 0; i < question.items(); i++) {
      double cost = MISS_COST * question.size(i) / Math.max(1, total);
      model.setCost(time + 2 * i + 1, cost);
      model.setCost(time + 2 * i + 2, cost);
    }
  }

  /**
   * Turns to another question about the same items and stocks: patterns that it has no room for are
   * closed, others opened again.
   */
  void ask(Question another) {
    question = another;
    table.ask(another);
    for (int i = 0; i < question.items(); i++) {
      model.setRowBounds(i, question.demand(i), question.demand(i));
    }
    for (int j = 0; j < question.stocks(); j++) {
      model.setCoefficient(question.items() + j, time, (double) question.sticks(j));
    }
    setMissCosts();
    columns.forEach(
        (pattern, column) -> {
          boolean isOpen =
              question.mostTimes(pattern) > 0
                  && question.length(pattern) >= question.leastLength(pattern.stock());
          if (isOpen ? closed.remove(pattern) : closed.add(pattern)) {
            model.setColumnBounds(column, 0, isOpen ? Double.POSITIVE_INFINITY : 0);
          }
        });
  }

  /** The patterns of the last solution, with how often each is cut. */
  Map<Pattern, Double> values() {
    Map<Pattern, Double> values = new LinkedHashMap<>();
    LinearResult result = last;
    if (result != null) {
      columns.forEach(
          (pattern, column) -> {
            double value = column < result.columnCount() ? result.value(column) : 0;
            if (value > 1e-7) {
              values.put(pattern, value);
            }
          });
    }
    return values;
  }

  /**
   * Puts cuts in force, those before among them.
   *
   * @param items of all of them
   */
  void cutBy(CutItems items) {
    table.cutBy(items);
    for (RoundingCut cut : items.cuts().subList(cuts.size(), items.cuts().size())) {
      int row = model.addRow(Double.NEGATIVE_INFINITY, (double) cut.most(question));
      columns.forEach((pattern, column) -> setCoefficient(row, cut, pattern, column));
      cutRows.add(row);
    }
    cuts = items.cuts();
  }

  private void setCoefficient(int row, RoundingCut cut, Pattern pattern, int column) {
    int coefficient = cut.of(pattern);
    if (coefficient != 0) {
      model.setCoefficient(row, column, coefficient);
    }
  }

  /** Takes all cuts off again. */
  void uncut() {
    for (int row : cutRows) {
      model.setRowBounds(row, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
    cutRows.clear();
    cuts = List.of();
    table.cutBy(CutItems.none(question));
  }

  /**
   * Integer weights, and multipliers of the cuts in force: either they refute the question, or they
   * are the best that there are.
   */
  record Ending(List<Long> weights, List<Long> cutTimes, boolean refutes) {}

  /** Prices until the weights refute, or nothing is worth adding; null when effort is spent. */
  @Nullable Ending run(Effort effort) {
    while (!effort.spent()) {
      LinearResult result = model.solveSteadily(effort::remainingNanos);
      if (result.outcome() != Outcome.OPTIMAL) {
        return null;
      }
      double[] duals = new double[question.items()];
      double heaviest = 1e-12;
      for (int i = 0; i < duals.length; i++) {
        duals[i] = result.dual(i);
        heaviest = Math.max(heaviest, Math.abs(duals[i]) / question.size(i));
      }
      double steepest = 0;
      double[] cutDuals = new double[cuts.size()];
      for (int c = 0; c < cutDuals.length; c++) {
        cutDuals[c] = Math.max(0, -result.dual(cutRows.get(c)));
        steepest += cutDuals[c];
      }
      double scale =
          Math.min(scale(heaviest), WindowTable.GREATEST_WEIGHT / Math.max(1e-12, steepest));
      List<Long> weights = whole(duals, scale);
      List<Long> cutTimes = whole(cutDuals, scale);
      if (reserve(weights, cutTimes) < 0) {
        last = null;
        return new Ending(weights, cutTimes, true);
      }
      int added = 0;
      for (int j = 0; j < question.stocks(); j++) {
        // The row says n_j t - sum x = 0, so that its dual is N_j.
        double price = result.dual(question.items() + j);
        double limit = scale * (price + TOLERANCE / question.allSticks());
        for (Pattern pattern : table.throughEveryItem(j, (long) Math.ceil(limit))) {
          added += add(pattern) ? 1 : 0;
        }
      }
      if (added == 0) {
        last = result;
        return new Ending(weights, cutTimes, false);
      }
    }
    return null;
  }

  private double scale(double heaviest) {
    return WindowTable.GREATEST_WEIGHT / (heaviest * question.longest());
  }

  private static List<Long> whole(double[] duals, double scale) {
    List<Long> weights = new ArrayList<>();
    for (double dual : duals) {
      weights.add(Math.round(dual * scale));
    }
    return weights;
  }

  /** sum n_j N_j - sum d_i W_i without cuts; the table is left filled with the weights. */
  long reserve(List<Long> weights) {
    return reserve(weights, List.of());
  }

  private long reserve(List<Long> weights, List<Long> cutTimes) {
    table.fill(
        weights.stream().mapToLong(w -> w).toArray(),
        cutTimes.stream().mapToLong(u -> u).toArray());
    BigInteger reserve = BigInteger.ZERO;
    for (int c = 0; c < cutTimes.size(); c++) {
      reserve =
          reserve.add(
              BigInteger.valueOf(cutTimes.get(c))
                  .multiply(BigInteger.valueOf(cuts.get(c).most(question))));
    }
    for (int j = 0; j < question.stocks(); j++) {
      Long greatest = table.greatest(j);
      if (greatest == null) {
        return -1;
      }
      reserve =
          reserve.add(
              BigInteger.valueOf(greatest).multiply(BigInteger.valueOf(question.sticks(j))));
    }
    for (int i = 0; i < question.items(); i++) {
      reserve =
          reserve.subtract(
              BigInteger.valueOf(weights.get(i)).multiply(BigInteger.valueOf(question.demand(i))));
    }
    return reserve.longValueExact();
  }

  /** Asks for demands that are each a little off, until another question is asked. */
  void shiftDemands(long seed, double shift) {
    long random = seed;
    for (int i = 0; i < question.items(); i++) {
      random = random * 16_807 % 2_147_483_647L;
      double demand = question.demand(i) * (1 + shift * (2.0 * random / 2_147_483_647L - 1));
      model.setRowBounds(i, demand, demand);
    }
  }

  /**
   * Weights between the optimal ones, and not at a corner of them: averaged over demands that are
   * each a little off. They leave few patterns.
   */
  @Nullable List<Long> centered(int rounds, double shift, Effort effort) {
    double[] sum = new double[question.items()];
    for (int round = 0; round < rounds; round++) {
      shiftDemands(12_345 + round, shift);
      if (run(effort) == null) {
        return null;
      }
      LinearResult result = last;
      if (result == null) {
        return null;
      }
      for (int i = 0; i < sum.length; i++) {
        sum[i] += result.dual(i);
      }
    }
    double heaviest = 1e-12;
    for (int i = 0; i < sum.length; i++) {
      model.setRowBounds(i, question.demand(i), question.demand(i));
      heaviest = Math.max(heaviest, Math.abs(sum[i]) / question.size(i));
    }
    return whole(sum, scale(heaviest));
  }

  private boolean add(Pattern pattern) {
    if (columns.containsKey(pattern)) {
      return false;
    }
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    columns.put(pattern, column);
    for (int k = 0; k < pattern.kinds(); k++) {
      model.setCoefficient(pattern.item(k), column, pattern.count(k));
    }
    model.setCoefficient(question.items() + pattern.stock(), column, -1);
    for (int c = 0; c < cuts.size(); c++) {
      setCoefficient(cutRows.get(c), cuts.get(c), pattern, column);
    }
    return true;
  }

  @Override
  public void close() {
    model.close();
  }
}
