package lapwright.splice;

/**
 * The greatest weight of pieces in each of several capacities, from above.
 *
 * <p>Exact as long as the greatest capacity is at most {@value #MOST_CELLS} times the common
 * divisor of the sizes; beyond that sizes are rounded down to a grid, which can only raise the
 * answer. Time O(sum of log limits x cells).
 */
final class Knapsack {
  private static final int MOST_CELLS = 4_000_000;

  private Knapsack() {}

  /**
   * @param sizes positive
   * @param weights not negative
   * @param limits how many of each
   * @param capacities any
   */
  static long[] greatest(long[] sizes, long[] weights, long[] limits, long[] capacities) {
    long most = 0;
    for (long capacity : capacities) {
      most = Math.max(most, capacity);
    }
    long unit = 0;
    for (int i = 0; i < sizes.length; i++) {
      if (weights[i] > 0 && sizes[i] <= most) {
        unit = gcd(unit, sizes[i]);
      }
    }
    if (unit == 0) {
      return new long[capacities.length];
    }
    if (most / unit > MOST_CELLS) {
      unit = most / MOST_CELLS + 1;
    }
    int cells = Math.toIntExact(most / unit);
    long[] best = new long[cells + 1];
    for (int i = 0; i < sizes.length; i++) {
      int size = Math.toIntExact(Math.min(Integer.MAX_VALUE, Math.max(1, sizes[i] / unit)));
      if (weights[i] == 0 || size > cells) {
        continue;
      }
      int fit = cells / size;
      if (limits[i] >= fit) {
        for (int p = size; p <= cells; p++) {
          best[p] = Math.max(best[p], best[p - size] + weights[i]);
        }
        continue;
      }
      long left = limits[i];
      for (long copies = 1; left > 0; copies *= 2) {
        long taken = Math.min(copies, left);
        left -= taken;
        int step = Math.toIntExact(taken * size);
        long weight = Math.multiplyExact(taken, weights[i]);
        for (int p = cells; p >= step; p--) {
          best[p] = Math.max(best[p], best[p - step] + weight);
        }
      }
    }
    for (int p = 1; p <= cells; p++) {
      best[p] = Math.max(best[p], best[p - 1]);
    }
    long[] greatest = new long[capacities.length];
    for (int j = 0; j < capacities.length; j++) {
      greatest[j] = capacities[j] <= 0 ? 0 : best[(int) (capacities[j] / unit)];
    }
    return greatest;
  }

  static long gcd(long a, long b) {
    long x = a;
    long y = b;
    while (y != 0) {
      long rest = x % y;
      x = y;
      y = rest;
    }
    return x;
  }
}
