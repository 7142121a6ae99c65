package lapwright.refute;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.mip.LinearModel;
import lapwright.mip.LinearResult;
import lapwright.mip.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * The linear program over a list of patterns, with cuts, for one node of the tree after the other:
 *
 * <p>min t subject to sum_a a_i x_a = d_i (dual W_i), sum_{a of j} x_a = n_j t (dual N_j), sum_a
 * floor(p_c a / q_c) x_a &lt;= floor(p_c d / q_c) (dual -u_c), and for a decision that does not
 * simply forbid patterns, sum_{a holds H} x_a &lt;= t_e or &gt;= t_e (dual -w_e or w_e).
 *
 * <p>t above 1 means that the node holds no solution. Each item may be cut too often or too rarely
 * at a cost. One model, whose bounds change, keeps its basis from node to node; a pattern gets a
 * column when it is first worth one. Holds native memory: close it.
 */
final class ListProgram implements AutoCloseable {
  private static final double MISS_COST = 3;
  private static final int COLUMNS_A_CALL = 150;
  private static final double TOLERANCE = 1e-9;

  private final Question question;
  private final List<Pattern> patterns;
  private final LinearModel model = new LinearModel();
  private final List<RoundingCut> cuts = new ArrayList<>();
  private final List<Integer> cutRows = new ArrayList<>();
  private final List<byte[]> cutCoefficients = new ArrayList<>();
  private final List<Decision> decisions = new ArrayList<>();
  private final List<Integer> decisionRows = new ArrayList<>();
  private final int[] columnOf;
  private final boolean[] open;
  private int rows;

  ListProgram(Question question, List<Pattern> patterns) {
    this.question = question;
    this.patterns = patterns;
    columnOf = new int[patterns.size()];
    Arrays.fill(columnOf, -1);
    open = new boolean[patterns.size()];
    Arrays.fill(open, true);
    double total = 0;
    for (int i = 0; i < question.items(); i++) {
      model.addRow(question.demand(i), question.demand(i));
      total += (double) question.size(i) * question.demand(i);
    }
    int time = model.addColumn(1, 0, Double.POSITIVE_INFINITY);
    for (int j = 0; j < question.stocks(); j++) {
      model.setCoefficient(model.addRow(0, 0), time, (double) question.sticks(j));
    }
    rows = question.items() + question.stocks();
    for (int i = 0; i < question.items(); i++) {
      double cost = MISS_COST * question.size(i) / total;
      model.setCoefficient(i, model.addColumn(cost, 0, Double.POSITIVE_INFINITY), 1);
      model.setCoefficient(i, model.addColumn(cost, 0, Double.POSITIVE_INFINITY), -1);
    }
  }

  private void addColumn(int at) {
    Pattern pattern = patterns.get(at);
    int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
    for (int k = 0; k < pattern.kinds(); k++) {
      model.setCoefficient(pattern.item(k), column, pattern.count(k));
    }
    model.setCoefficient(question.items() + pattern.stock(), column, -1);
    for (int c = 0; c < cuts.size(); c++) {
      if (cutCoefficients.get(c)[at] != 0) {
        model.setCoefficient(cutRows.get(c), column, cutCoefficients.get(c)[at]);
      }
    }
    for (int e = 0; e < decisions.size(); e++) {
      if (decisions.get(e).holds(pattern)) {
        model.setCoefficient(decisionRows.get(e), column, 1);
      }
    }
    columnOf[at] = column;
  }

  List<RoundingCut> cuts() {
    return cuts;
  }

  /** floor(p a / q) of a cut, by pattern; shared, not to be changed. */
  byte[] coefficients(int cut) {
    return cutCoefficients.get(cut);
  }

  int rows() {
    return rows;
  }

  void add(RoundingCut cut) {
    int row = model.addRow(Double.NEGATIVE_INFINITY, (double) cut.most(question));
    rows++;
    byte[] coefficients = new byte[patterns.size()];
    for (int at = 0; at < coefficients.length; at++) {
      coefficients[at] = (byte) cut.of(patterns.get(at));
      if (coefficients[at] != 0 && columnOf[at] >= 0) {
        model.setCoefficient(row, columnOf[at], coefficients[at]);
      }
    }
    cuts.add(cut);
    cutRows.add(row);
    cutCoefficients.add(coefficients);
  }

  /** Opens these patterns and no others, and puts these decisions in force. */
  void enter(boolean[] active, List<Decision> decided) {
    for (int at = 0; at < open.length; at++) {
      if (active[at] != open[at]) {
        open[at] = active[at];
        if (columnOf[at] >= 0) {
          model.setColumnBounds(columnOf[at], 0, active[at] ? Double.POSITIVE_INFINITY : 0);
        }
      }
    }
    for (Decision decision : decided) {
      if (!decision.isAllInForbidding(question) && !decisions.contains(decision)) {
        int row = model.addRow(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        rows++;
        for (int at = 0; at < columnOf.length; at++) {
          if (columnOf[at] >= 0 && decision.holds(patterns.get(at))) {
            model.setCoefficient(row, columnOf[at], 1);
          }
        }
        decisions.add(decision);
        decisionRows.add(row);
      }
    }
    for (int e = 0; e < decisions.size(); e++) {
      Decision decision = decisions.get(e);
      boolean inForce = decided.contains(decision);
      model.setRowBounds(
          decisionRows.get(e),
          inForce && !decision.atMost() ? (double) decision.times() : Double.NEGATIVE_INFINITY,
          inForce && decision.atMost() ? (double) decision.times() : Double.POSITIVE_INFINITY);
    }
  }

  /** A solution: t, x and the duals. */
  final class Solved {
    private final LinearResult result;
    private final double[] values;

    private Solved(LinearResult result) {
      this.result = result;
      values = new double[patterns.size()];
      for (int at = 0; at < values.length; at++) {
        values[at] = columnOf[at] < 0 ? 0 : Math.max(0, result.value(columnOf[at]));
      }
    }

    double time() {
      return result.objective();
    }

    /** By pattern; shared, not to be changed. */
    double[] values() {
      return values;
    }

    double itemDual(int item) {
      return result.dual(item);
    }

    /** u_c, not negative. */
    double cutDual(int cut) {
      return cut < cutRows.size() ? Math.max(0, -result.dual(cutRows.get(cut))) : 0;
    }

    /** w_e, not negative; 0 for a decision without a row. */
    double decisionDual(Decision decision) {
      int at = decisions.indexOf(decision);
      if (at < 0) {
        return 0;
      }
      double dual = result.dual(decisionRows.get(at));
      return Math.max(0, decision.atMost() ? -dual : dual);
    }
  }

  /** Solves over all open patterns; null when the engine cannot. */
  @Nullable Solved solve(Effort effort) {
    while (true) {
      LinearResult result = model.solveSteadily(effort::remainingNanos);
      if (result.outcome() != Outcome.OPTIMAL) {
        return null;
      }
      if (!price(result)) {
        return new Solved(result);
      }
    }
  }

  /** Adds columns for the open patterns that are worth most; false when none is. */
  private boolean price(LinearResult result) {
    double[] duals = new double[question.items()];
    for (int i = 0; i < duals.length; i++) {
      duals[i] = result.dual(i);
    }
    double[] worth = new double[patterns.size()];
    int[] used = new int[cuts.size()];
    int inUse = 0;
    for (int c = 0; c < used.length; c++) {
      if (result.dual(cutRows.get(c)) != 0) {
        used[inUse++] = c;
      }
    }
    int wanted = 0;
    for (int at = 0; at < worth.length; at++) {
      if (columnOf[at] >= 0 || !open[at]) {
        continue;
      }
      Pattern pattern = patterns.get(at);
      double value = -result.dual(question.items() + pattern.stock());
      for (int k = 0; k < pattern.kinds(); k++) {
        value += duals[pattern.item(k)] * pattern.count(k);
      }
      for (int c = 0; c < inUse; c++) {
        byte coefficient = cutCoefficients.get(used[c])[at];
        if (coefficient != 0) {
          value += coefficient * result.dual(cutRows.get(used[c]));
        }
      }
      for (int e = 0; e < decisions.size(); e++) {
        double dual = result.dual(decisionRows.get(e));
        if (dual != 0 && decisions.get(e).holds(pattern)) {
          value += dual;
        }
      }
      if (value > TOLERANCE) {
        worth[at] = value;
        wanted++;
      }
    }
    if (wanted == 0) {
      return false;
    }
    double limit = 0;
    if (wanted > COLUMNS_A_CALL) {
      double[] sorted = worth.clone();
      Arrays.sort(sorted);
      limit = sorted[sorted.length - COLUMNS_A_CALL];
    }
    int added = 0;
    for (int at = 0; at < worth.length && added < COLUMNS_A_CALL; at++) {
      if (worth[at] > 0 && worth[at] >= limit) {
        addColumn(at);
        added++;
      }
    }
    return true;
  }

  @Override
  public void close() {
    model.close();
  }
}
