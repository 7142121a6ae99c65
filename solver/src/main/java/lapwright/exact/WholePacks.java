package lapwright.exact;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * The bound of integer weights when packs are whole: every solution's packs carry what is demanded,
 *
 * <p>min sum_j P_j y_j subject to sum_j k_j N_j y_j &gt;= sum_i d_i W_i, L_j &lt;= y_j &lt;= Y_j, y
 * integer,
 *
 * <p>a covering knapsack with a variable a stock. Depth-first, cheapest for its weight first, most
 * packs first; what is still to be carried costs at least its fractional cover, so that fewer packs
 * of a cheaper stock only cost more and a loop ends at the first that is too dear (after S.
 * Martello and P. Toth, Knapsack Problems, 1990, section 3). Exact, in integers.
 */
public final class WholePacks {
  private static final int MOST_STEPS = 3_000_000;

  private final List<Paid> paid;
  private final int mostSteps;
  private final int[] taken;
  private int @Nullable [] best;
  private long bestCost;
  private int steps;

  private WholePacks(List<Paid> paid, long known, int mostSteps) {
    this.paid = paid;
    this.mostSteps = mostSteps;
    taken = new int[paid.size()];
    bestCost = known;
  }

  private record Paid(int stock, long cost, long carries, long most) {}

  /**
   * The least cost of whole packs that carry the weights.
   *
   * @param cost {@code known} when nothing cheaper carries them
   * @param packs of each stock; empty when nothing cheaper than {@code known} does
   */
  public record Cover(long cost, List<Integer> packs) {
    public Cover {
      packs = List.copyOf(packs);
    }
  }

  /**
   * Finds it.
   *
   * @param greatest weight that a stick of each stock carries
   * @param known costs from here on are of no interest
   * @return null when the search takes too long
   */
  static @Nullable Cover of(
      StickProblem problem,
      PackLimits limits,
      List<Long> weights,
      List<Long> greatest,
      long known) {
    BigInteger demanded = BigInteger.ZERO;
    for (int i = 0; i < weights.size(); i++) {
      demanded =
          demanded.add(
              BigInteger.valueOf(weights.get(i))
                  .multiply(BigInteger.valueOf(problem.items().get(i).demand())));
    }
    return of(problem.stocks(), limits, demanded, greatest, known, MOST_STEPS);
  }

  /**
   * The same where what must be carried is known.
   *
   * @param weight that all packs together must carry
   * @param greatest weight that a stick of each stock carries
   * @param mostSteps after so many the search gives up
   */
  public static @Nullable Cover of(
      List<Stock> stocks,
      PackLimits limits,
      BigInteger weight,
      List<Long> greatest,
      long known,
      int mostSteps) {
    BigInteger demanded = weight;
    int n = stocks.size();
    int[] packs = new int[n];
    List<Paid> paid = new ArrayList<>();
    long base = 0;
    for (int j = 0; j < n; j++) {
      Stock stock = stocks.get(j);
      long carries = Math.multiplyExact(greatest.get(j), stock.packSize());
      boolean free = stock.packCost() == 0;
      if (free && carries > 0 && !limits.isLimited(j)) {
        return new Cover(leastAllowed(stocks, limits), List.of());
      }
      packs[j] = free && carries > 0 ? limits.most(j) : limits.least(j);
      base += stock.packCost() * packs[j];
      demanded =
          demanded.subtract(BigInteger.valueOf(carries).multiply(BigInteger.valueOf(packs[j])));
      if (!free && carries > 0 && limits.most(j) > limits.least(j)) {
        long most = limits.isLimited(j) ? limits.most(j) - limits.least(j) : Integer.MAX_VALUE;
        paid.add(new Paid(j, stock.packCost(), carries, most));
      }
    }
    if (demanded.bitLength() > 62) {
      return null;
    }
    paid.sort(
        Comparator.<Paid>comparingDouble(p -> (double) p.cost() / p.carries())
            .thenComparingInt(Paid::stock));
    WholePacks search = new WholePacks(paid, known, mostSteps);
    if (!search.extend(0, base, demanded.longValueExact())) {
      return null;
    }
    if (search.best == null) {
      return new Cover(known, List.of());
    }
    for (int k = 0; k < paid.size(); k++) {
      packs[paid.get(k).stock()] += search.best[k];
    }
    List<Integer> list = new ArrayList<>();
    for (int count : packs) {
      list.add(count);
    }
    return new Cover(search.bestCost, list);
  }

  /** What the packs cost that the limits ask for. */
  private static long leastAllowed(List<Stock> stocks, PackLimits limits) {
    long cost = 0;
    for (int j = 0; j < stocks.size(); j++) {
      cost += stocks.get(j).packCost() * limits.least(j);
    }
    return cost;
  }

  /** False when it takes too long. */
  private boolean extend(int place, long cost, long need) {
    if (++steps > mostSteps) {
      return false;
    }
    if (need <= 0) {
      if (cost < bestCost) {
        bestCost = cost;
        best = taken.clone();
      }
      return true;
    }
    if (place == paid.size()) {
      return true;
    }
    Paid stock = paid.get(place);
    long most = Math.min(stock.most(), Numbers.ceilDiv(need, stock.carries()));
    for (long packs = most; packs >= 0; packs--) {
      long spent = cost + packs * stock.cost();
      long rest = need - packs * stock.carries();
      if (rest > 0 && spent + fractional(place + 1, rest, bestCost - spent) >= bestCost) {
        break;
      }
      taken[place] = (int) packs;
      boolean goesOn = extend(place + 1, spent, rest);
      taken[place] = 0;
      if (!goesOn) {
        return false;
      }
    }
    return true;
  }

  /** What carrying the need costs at least, rounded up; {@code enough} when it is more. */
  private long fractional(int from, long need, long enough) {
    long cost = 0;
    long rest = need;
    for (int k = from; k < paid.size() && cost < enough; k++) {
      Paid stock = paid.get(k);
      if (stock.most() >= Numbers.ceilDiv(rest, stock.carries())) {
        long whole = rest / stock.carries();
        long part = rest % stock.carries();
        return cost + whole * stock.cost() + partOf(stock, part);
      }
      cost += stock.most() * stock.cost();
      rest -= stock.most() * stock.carries();
    }
    return enough;
  }

  private static long partOf(Paid stock, long part) {
    if (Math.multiplyHigh(part, stock.cost()) == 0 && part * stock.cost() >= 0) {
      return Numbers.ceilDiv(part * stock.cost(), stock.carries());
    }
    BigInteger divisor = BigInteger.valueOf(stock.carries());
    return BigInteger.valueOf(part)
        .multiply(BigInteger.valueOf(stock.cost()))
        .add(divisor)
        .subtract(BigInteger.ONE)
        .divide(divisor)
        .longValueExact();
  }
}
