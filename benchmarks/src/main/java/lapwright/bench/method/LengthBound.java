package lapwright.bench.method;

import java.math.BigInteger;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/** The bound that anyone can reckon: all that is to be cut, at the cheapest price per length. */
final class LengthBound {
  private LengthBound() {}

  /** No solution costs less. Exact. */
  static long of(StickProblem problem) {
    BigInteger toCut = BigInteger.ZERO;
    for (Item item : problem.items()) {
      toCut =
          toCut.add(BigInteger.valueOf(item.size()).multiply(BigInteger.valueOf(item.demand())));
    }
    BigInteger least = null;
    for (Stock stock : problem.stocks()) {
      if (stock.capacity() > 0 && stock.mostPacks() > 0) {
        BigInteger capacity =
            BigInteger.valueOf(stock.capacity()).multiply(BigInteger.valueOf(stock.packSize()));
        BigInteger[] cost =
            toCut.multiply(BigInteger.valueOf(stock.packCost())).divideAndRemainder(capacity);
        BigInteger bound = cost[1].signum() > 0 ? cost[0].add(BigInteger.ONE) : cost[0];
        least = least == null ? bound : least.min(bound);
      }
    }
    return least == null ? 0 : least.longValueExact();
  }
}
