package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import lapwright.problem.StickProblem.Stock;

/**
 * Integer weights that may prove a good bound: the dual prices of the lengths in use; the prices of
 * all lengths that splits may use; and size alone, at each stock's price. None can be wrong, only
 * weak.
 */
final class WeightGuesses {
  private WeightGuesses() {}

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
