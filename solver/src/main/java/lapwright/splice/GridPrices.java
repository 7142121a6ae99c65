package lapwright.splice;

import java.util.Arrays;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import org.jspecify.annotations.Nullable;

/**
 * Prices of the lengths on a grid of steps, and of the cheapest two of them that add up to a
 * length, at the prices taken last. Time and memory of the latter O(cells^2), so it is left out for
 * very fine grids. Not thread-safe.
 */
final class GridPrices {
  private static final int MOST_PAIRED = 8_000;

  private final long step;
  private final int least;
  private final int leastOfTwo;
  private final double[] grid;
  private @Nullable LengthPrices taken;
  private double[] two = new double[0];
  private int[] first = new int[0];

  GridPrices(Key key) {
    step = key.step();
    grid = new double[Math.toIntExact(key.longest() / step) + 1];
    least = cellFrom(key.least());
    leastOfTwo = cellFrom(key.shortest());
  }

  /** What choices must have in common to share one grid. */
  record Key(long step, long least, long shortest, long longest) {}

  static Key key(Anywhere rules, long longestUsable) {
    return new Key(
        rules.step(),
        rules.least(),
        rules.shortest(),
        Math.max(1, Math.min(rules.longest(), longestUsable)));
  }

  private int cellFrom(long length) {
    return (int) Math.min(grid.length, Math.max(1, (length + step - 1) / step));
  }

  void take(LengthPrices prices) {
    if (prices == taken) {
      return;
    }
    taken = prices;
    two = new double[0];
    Arrays.fill(grid, Double.POSITIVE_INFINITY);
    for (int i = least; i < grid.length; i++) {
      grid[i] = prices.of(i * step);
    }
  }

  int cells() {
    return grid.length;
  }

  /** Price of a piece of {@code cell} steps. */
  double one(int cell) {
    return grid[cell];
  }

  /** Sums of two pieces that have a price. */
  int pairCells() {
    return grid.length > MOST_PAIRED ? 0 : 2 * grid.length;
  }

  /** Least price of two pieces of {@code cell} steps together. */
  double two(int cell) {
    if (two.length == 0) {
      fillTwo();
    }
    return two[cell];
  }

  /** Steps of the shorter of the two. */
  int firstOfTwo(int cell) {
    return first[cell];
  }

  private void fillTwo() {
    two = new double[2 * grid.length];
    first = new int[two.length];
    Arrays.fill(two, Double.POSITIVE_INFINITY);
    for (int i = leastOfTwo; i < grid.length; i++) {
      for (int j = i; j < grid.length; j++) {
        double sum = grid[i] + grid[j];
        if (sum < two[i + j]) {
          two[i + j] = sum;
          first[i + j] = i;
        }
      }
    }
  }
}
