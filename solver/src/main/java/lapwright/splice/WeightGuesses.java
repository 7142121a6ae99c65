package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.problem.StickProblem.Stock;

/**
 * Integer weights that may prove a good bound: the dual prices of the lengths in use; the prices of
 * all lengths that splits may use; and size alone, at each stock's price. None can be wrong, only
 * weak.
 */
final class WeightGuesses {
  private static final double FINE = 2_000_000;
  private static final int MOST_STEPS = 400;

  private WeightGuesses() {}

  /** From the master's last solution. */
  static List<StepWeights> of(JointMaster master, List<Choice> choices, long longest, long step) {
    long scale = Math.max(1, (long) Math.ceil(FINE / master.unit()));
    double perPrice = master.unit() * scale;
    SortedMap<Long, Long> dual = new TreeMap<>();
    for (int i = 0; i < master.lengths().size(); i++) {
      dual.put(master.lengths().get(i), (long) Math.floor(master.worth(i) * perPrice + 1e-3));
    }
    LengthPrices prices = master.prices();
    SortedMap<Long, Long> extended = new TreeMap<>(dual);
    boolean anywhere = false;
    for (Choice choice : choices) {
      anywhere |= choice instanceof AnywhereChoice;
      for (long length : choice.lengths()) {
        double price = prices.of(length);
        if (price < Double.POSITIVE_INFINITY && !dual.containsKey(length)) {
          extended.put(length, (long) Math.floor(price * perPrice + 1e-3));
        }
      }
    }
    List<StepWeights> guesses = new ArrayList<>();
    guesses.add(StepWeights.of(scale, dual));
    if (extended.size() > dual.size()) {
      guesses.add(StepWeights.of(scale, extended));
    }
    if (anywhere) {
      guesses.add(StepWeights.of(scale, steps(extended, prices, perPrice, longest, step)));
    }
    return guesses;
  }

  /** The lengths on the grid at which the price rises most. */
  private static SortedMap<Long, Long> steps(
      SortedMap<Long, Long> listed, LengthPrices prices, double perPrice, long longest, long step) {
    List<long[]> rises = new ArrayList<>();
    double before = 0;
    for (long length = step; length <= longest; length += step) {
      double price = prices.of(length);
      if (price < Double.POSITIVE_INFINITY && price > before + 1e-6) {
        rises.add(
            new long[] {
              length,
              (long) Math.floor(price * perPrice + 1e-3),
              (long) ((price - before) * perPrice)
            });
        before = price;
      }
    }
    rises.sort((a, b) -> a[2] != b[2] ? Long.compare(b[2], a[2]) : Long.compare(a[0], b[0]));
    SortedMap<Long, Long> all = new TreeMap<>(listed);
    for (long[] rise : rises.subList(0, Math.min(MOST_STEPS, rises.size()))) {
      all.putIfAbsent(rise[0], rise[1]);
    }
    return all;
  }

  /** Weights by size alone, at the price for each unit of capacity of each stock. */
  static List<StepWeights> bySize(List<Stock> stocks) {
    List<StepWeights> guesses = new ArrayList<>();
    for (Stock stock : stocks) {
      if (stock.capacity() > 0) {
        long scale = Math.multiplyExact(stock.capacity(), (long) stock.packSize());
        long price = Math.max(1, stock.packCost());
        long divisor = Knapsack.gcd(scale, price);
        guesses.add(StepWeights.bySize(scale / divisor, price / divisor));
      }
    }
    return guesses;
  }
}
