package lapwright.splice;

import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Prices of classes of lengths and of size, in floating point: what a program over classes says a
 * piece is worth. Immutable.
 */
final class ClassPrices {
  private static final double FINEST = 1e15;
  private static final double GREATEST_SUM = 1e17;

  private final long[] starts;
  private final double[] byClass;
  private final double perSize;

  /**
   * @param starts where classes begin, ascending
   * @param byClass price of a piece of each class, not negative
   * @param perSize price of each unit of size besides, not negative
   */
  ClassPrices(long[] starts, double[] byClass, double perSize) {
    this.starts = starts;
    this.byClass = byClass;
    this.perSize = perSize;
  }

  double of(int classNumber) {
    return byClass[classNumber];
  }

  double perSize() {
    return perSize;
  }

  /** Prices between these and others of the same classes, so much of the way. */
  ClassPrices towards(ClassPrices other, double part) {
    double[] between = new double[byClass.length];
    for (int c = 0; c < between.length; c++) {
      between[c] = byClass[c] + part * (other.byClass[c] - byClass[c]);
    }
    return new ClassPrices(starts, between, perSize + part * (other.perSize - perSize));
  }

  /** The same price for every length, told by other classes that begin wherever these do. */
  ClassPrices on(long[] finer) {
    double[] prices = new double[finer.length];
    int c = -1;
    for (int f = 0; f < finer.length; f++) {
      while (c + 1 < starts.length && starts[c + 1] <= finer[f]) {
        c++;
      }
      prices[f] = c < 0 ? 0 : byClass[c];
    }
    return new ClassPrices(finer, prices, perSize);
  }

  /**
   * As weights in integers, in sum far from what a long can hold.
   *
   * @param sum of all that is priced, about
   * @param unit what a price of 1 is in costs
   * @param costUnit the scale is a multiple of it
   */
  StepWeights weights(double sum, double unit, long costUnit) {
    double perPrice = Math.min(FINEST, GREATEST_SUM / Math.max(1, sum));
    long scale = Math.max(1, (long) (perPrice / unit / costUnit)) * costUnit;
    perPrice = unit * scale;
    SortedMap<Long, Long> weights = new TreeMap<>();
    for (int c = 0; c < starts.length; c++) {
      weights.put(starts[c], (long) Math.floor(byClass[c] * perPrice + 1e-3));
    }
    return StepWeights.of(scale, weights, (long) Math.floor(perSize * perPrice));
  }
}
