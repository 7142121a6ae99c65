package lapwright.exact;

import java.math.BigInteger;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * The lower bound that integer weights prove, exactly.
 *
 * <p>With N_j at least the greatest weight of a pattern of stock j, every solution with packs y has
 * sum_i d_i W_i &lt;= sum_j k_j N_j y_j, so that
 *
 * <p>D cost = sum_j D P_j y_j &gt;= sum_i d_i W_i + sum_j (D P_j - k_j N_j) y_j.
 *
 * <p>This is the Lagrange bound of the covering rows (A. Geoffrion, Math. Programming Study 2,
 * 1974), least over the packs that are allowed.
 */
final class WeightBound {
  /** No solution exists at all within the limits. */
  static final long IMPOSSIBLE = Long.MAX_VALUE;

  private WeightBound() {}

  /**
   * The bound.
   *
   * @param scale D, positive
   * @param weights W by item, not negative
   * @param greatest N by stock
   * @return at least 0; {@link #IMPOSSIBLE} when the limits allow no solution
   */
  static long of(
      StickProblem problem, PackLimits limits, long scale, long[] weights, List<Long> greatest) {
    BigInteger sum = sum(problem, limits, scale, weights, greatest);
    if (sum == null) {
      return IMPOSSIBLE;
    }
    BigInteger divisor = BigInteger.valueOf(scale);
    return sum.add(divisor).subtract(BigInteger.ONE).divide(divisor).longValueExact();
  }

  /** The bound before it is rounded up: for comparing weights, not for proofs. */
  static double unrounded(
      StickProblem problem, PackLimits limits, long scale, long[] weights, List<Long> greatest) {
    BigInteger sum = sum(problem, limits, scale, weights, greatest);
    return sum == null ? Double.MAX_VALUE : sum.doubleValue() / scale;
  }

  /** D times the bound, at least 0; null when the limits allow no solution. */
  private static @Nullable BigInteger sum(
      StickProblem problem, PackLimits limits, long scale, long[] weights, List<Long> greatest) {
    BigInteger demanded = BigInteger.ZERO;
    for (int i = 0; i < weights.length; i++) {
      demanded = demanded.add(product(weights[i], problem.items().get(i).demand()));
    }
    BigInteger sum = demanded;
    BigInteger carried = BigInteger.ZERO;
    boolean finite = true;
    boolean unbounded = false;
    for (int j = 0; j < greatest.size(); j++) {
      Stock stock = problem.stocks().get(j);
      BigInteger carries = product(greatest.get(j), stock.packSize());
      BigInteger slack = product(scale, stock.packCost()).subtract(carries);
      boolean wantsMost = slack.signum() < 0;
      if (wantsMost && !limits.isLimited(j)) {
        unbounded = true;
      } else {
        int packs = wantsMost ? limits.most(j) : limits.least(j);
        sum = sum.add(slack.multiply(BigInteger.valueOf(packs)));
      }
      if (limits.isLimited(j)) {
        carried = carried.add(carries.multiply(BigInteger.valueOf(limits.most(j))));
      } else if (carries.signum() > 0) {
        finite = false;
      }
    }
    if (finite && demanded.compareTo(carried) > 0) {
      return null;
    }
    return unbounded || sum.signum() <= 0 ? BigInteger.ZERO : sum;
  }

  private static BigInteger product(long a, long b) {
    long high = Math.multiplyHigh(a, b);
    long low = a * b;
    if ((high == 0 && low >= 0) || (high == -1 && low < 0)) {
      return BigInteger.valueOf(low);
    }
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
