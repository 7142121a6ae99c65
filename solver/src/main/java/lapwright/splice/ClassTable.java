package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * What a stick can carry at given prices of classes: a knapsack over the classes on a grid of
 * sizes, rounded down, so that it is never told less than it is. In floating point: a guide for
 * column generation. Time O(classes x cells) for each set of prices.
 */
final class ClassTable {
  private static final int MOST_CELLS = 6_000;
  private static final double WORTHLESS = 1e-7;
  private static final int EMPTY = -1;
  private static final int SAME_AS_SHORTER = -2;

  private final int[] cellsOfClass;
  private final int[] cellsOfStock;
  private final double[] best;
  private final int[] last;

  /**
   * @param starts listed lengths, ascending and positive
   */
  ClassTable(SpliceProblem problem, long[] starts) {
    long greatest = 1;
    for (Stock stock : problem.stocks()) {
      greatest = Math.max(greatest, stock.capacity());
    }
    long grid = 0;
    for (long start : starts) {
      grid = Knapsack.gcd(grid, start + problem.cut());
    }
    grid = Math.max(1, grid);
    grid = greatest / grid > MOST_CELLS ? greatest / MOST_CELLS : grid;
    cellsOfClass = new int[starts.length];
    for (int c = 0; c < starts.length; c++) {
      cellsOfClass[c] = (int) Math.max(1, Math.floorDiv(starts[c] + problem.cut(), grid));
    }
    cellsOfStock = new int[problem.stocks().size()];
    int cells = 0;
    for (int j = 0; j < cellsOfStock.length; j++) {
      cellsOfStock[j] = (int) Math.max(0, Math.floorDiv(problem.stocks().get(j).capacity(), grid));
      cells = Math.max(cells, cellsOfStock[j]);
    }
    best = new double[cells + 1];
    last = new int[cells + 1];
  }

  void take(ClassPrices prices) {
    Arrays.fill(best, 0);
    Arrays.fill(last, EMPTY);
    for (int c = 0; c < cellsOfClass.length; c++) {
      double worth = prices.of(c);
      if (worth <= WORTHLESS) {
        continue;
      }
      for (int p = cellsOfClass[c]; p < best.length; p++) {
        double sum = best[p - cellsOfClass[c]] + worth;
        if (sum > best[p] + 1e-12) {
          best[p] = sum;
          last[p] = c;
        }
      }
    }
    for (int p = 1; p < best.length; p++) {
      if (best[p - 1] > best[p]) {
        best[p] = best[p - 1];
        last[p] = SAME_AS_SHORTER;
      }
    }
  }

  boolean fits(int stock, int through) {
    return cellsOfClass[through] <= cellsOfStock[stock];
  }

  /** The most that a stick of a stock carries by class. */
  double most(int stock) {
    return best[cellsOfStock[stock]];
  }

  /** The most that it carries beside a piece of a class. */
  double mostBeside(int stock, int through) {
    return best[cellsOfStock[stock] - cellsOfClass[through]];
  }

  /**
   * The classes of the pieces of which it carries most.
   *
   * @param through a class of which one is among them; -1 for any
   */
  List<Integer> pieces(int stock, int through) {
    int at = cellsOfStock[stock];
    List<Integer> held = new ArrayList<>();
    if (through >= 0) {
      held.add(through);
      at -= cellsOfClass[through];
    }
    while (at > 0 && last[at] != EMPTY) {
      if (last[at] == SAME_AS_SHORTER) {
        at--;
      } else {
        held.add(last[at]);
        at -= cellsOfClass[last[at]];
      }
    }
    return held;
  }
}
