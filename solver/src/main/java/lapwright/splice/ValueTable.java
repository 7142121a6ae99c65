package lapwright.splice;

import java.util.Arrays;
import java.util.List;
import lapwright.problem.StickProblem.Stock;

/**
 * The price of a piece of any length at given prices of sticks and of listed lengths: what a stick
 * costs less the most that its rest can be worth, least over the stocks. In floating point, on a
 * grid of sizes: a guide for column generation, nothing is proved by it.
 */
final class ValueTable implements LengthPrices {
  private static final int MOST_CELLS = 100_000;

  private final long unit;
  private final long cut;
  private final double[] price;

  ValueTable(
      List<Stock> stocks, double[] stickPrices, long cut, long[] sizes, double[] worth, long step) {
    this.cut = cut;
    long greatest = 0;
    for (Stock stock : stocks) {
      greatest = Math.max(greatest, stock.capacity());
    }
    long divisor = step;
    for (long size : sizes) {
      divisor = Knapsack.gcd(divisor, size);
    }
    divisor = Knapsack.gcd(divisor, cut);
    for (Stock stock : stocks) {
      divisor = Knapsack.gcd(divisor, Math.max(0, stock.capacity()));
    }
    unit =
        Math.max(1, greatest / Math.max(1, divisor) > MOST_CELLS ? greatest / MOST_CELLS : divisor);
    int cells = Math.toIntExact(greatest / unit);
    double[] best = new double[cells + 1];
    for (int i = 0; i < sizes.length; i++) {
      int size = Math.max(1, Math.toIntExact(sizes[i] / unit));
      if (worth[i] > 1e-9) {
        for (int p = size; p <= cells; p++) {
          best[p] = Math.max(best[p], best[p - size] + worth[i]);
        }
      }
    }
    price = new double[cells + 1];
    Arrays.fill(price, Double.POSITIVE_INFINITY);
    for (int j = 0; j < stickPrices.length; j++) {
      int capacity = Math.toIntExact(Math.max(0, stocks.get(j).capacity()) / unit);
      for (int s = 0; s <= capacity; s++) {
        price[s] = Math.min(price[s], stickPrices[j] - best[capacity - s]);
      }
    }
    for (int s = cells - 1; s >= 0; s--) {
      price[s] = Math.min(price[s], price[s + 1]);
    }
  }

  @Override
  public double of(long length) {
    long cell = (length + cut) / unit;
    if (cell >= price.length) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.max(0, price[(int) cell]);
  }
}
