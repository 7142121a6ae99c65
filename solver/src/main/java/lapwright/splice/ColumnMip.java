package lapwright.splice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapwright.effort.Effort;
import lapwright.mip.IntegerModel;
import lapwright.mip.IntegerResult;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * The integer program over the patterns and splits that column generation made: the best that they
 * can do together, found by a general-purpose solver. It chooses the splits; the cutting is solved
 * anew.
 */
final class ColumnMip {
  private static final int MOST_COLUMNS = 6_000;
  private static final long NODES = 3_000;

  private ColumnMip() {}

  /** Splits by group; null when the program is too large or nothing was found. */
  static @Nullable List<List<Split>> splits(
      SpliceProblem problem, JointMaster master, Effort effort) {
    int size = master.patterns().size() + master.splits().size();
    if (size > MOST_COLUMNS) {
      return null;
    }
    try (IntegerModel model = new IntegerModel()) {
      int n = problem.stocks().size();
      int[] stockRow = new int[n];
      for (int j = 0; j < n; j++) {
        Stock stock = problem.stocks().get(j);
        stockRow[j] = model.addRow(Double.NEGATIVE_INFINITY, 0);
        double most = stock.isLimited() ? stock.mostPacks() : Double.POSITIVE_INFINITY;
        int column = model.addColumn(stock.packCost() / master.unit(), 0, most);
        model.setCoefficient(stockRow[j], column, -stock.packSize());
      }
      int[] itemRow = new int[master.lengths().size()];
      Map<Long, Integer> itemOfLength = new HashMap<>();
      for (int i = 0; i < itemRow.length; i++) {
        itemRow[i] = model.addRow(master.plainDemand(i), Double.POSITIVE_INFINITY);
        itemOfLength.put(master.lengths().get(i), i);
      }
      int[] groupRow = new int[problem.groups().size()];
      for (int g = 0; g < groupRow.length; g++) {
        int lines = problem.groups().get(g).lines();
        groupRow[g] = model.addRow(lines, lines);
      }
      for (JointMaster.PatternColumn each : master.patterns()) {
        int column = model.addColumn(0, 0, Double.POSITIVE_INFINITY);
        model.setCoefficient(stockRow[each.pattern().stock()], column, 1);
        for (int k = 0; k < each.pattern().kinds(); k++) {
          model.setCoefficient(itemRow[each.pattern().item(k)], column, each.pattern().count(k));
        }
      }
      int[] splitColumn = new int[master.splits().size()];
      for (int s = 0; s < splitColumn.length; s++) {
        SplitProgram.SplitColumn split = master.splits().get(s);
        splitColumn[s] = model.addColumn(0, 0, problem.groups().get(split.group()).lines());
        model.setCoefficient(groupRow[split.group()], splitColumn[s], 1);
        Map<Integer, Integer> counts = new java.util.LinkedHashMap<>();
        for (long length : split.lengths()) {
          counts.merge(itemOfLength.getOrDefault(length, 0), 1, Integer::sum);
        }
        for (Map.Entry<Integer, Integer> count : counts.entrySet()) {
          model.setCoefficient(itemRow[count.getKey()], splitColumn[s], -count.getValue());
        }
      }
      long left = effort.remainingNanos();
      IntegerResult result = model.solve(NODES, left == Long.MAX_VALUE ? left : left / 3);
      return result.outcome().hasSolution() ? chosen(problem, master, splitColumn, result) : null;
    }
  }

  private static List<List<Split>> chosen(
      SpliceProblem problem, JointMaster master, int[] splitColumn, IntegerResult result) {
    List<List<Split>> splits = new ArrayList<>();
    problem.groups().forEach(group -> splits.add(new ArrayList<>()));
    for (int s = 0; s < splitColumn.length; s++) {
      int lines = Math.toIntExact(result.values().get(splitColumn[s]));
      if (lines > 0) {
        SplitProgram.SplitColumn split = master.splits().get(s);
        splits.get(split.group()).add(new Split(split.lengths(), lines));
      }
    }
    return splits;
  }
}
