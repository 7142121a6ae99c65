package lapwright.demand;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapwright.measure.Length;
import lapwright.plan.LengthPattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;

/** A plan that was made before, as a solver's first solution, if it still fits the order. */
final class KnownPlan {
  private final StickProblem problem;
  private final Map<String, Integer> stockOfKey;
  private final Map<Length, Integer> itemOfLength;

  KnownPlan(
      StickProblem problem, Map<String, Integer> stockOfKey, Map<Length, Integer> itemOfLength) {
    this.problem = problem;
    this.stockOfKey = stockOfKey;
    this.itemOfLength = itemOfLength;
  }

  /** Empty when the patterns do not hold just the pieces, or ask for what the stock cannot give. */
  List<PatternUse> uses(List<LengthPattern> patterns) {
    List<PatternUse> uses = new ArrayList<>();
    long[] cut = new long[problem.items().size()];
    long[] sticks = new long[problem.stocks().size()];
    for (LengthPattern pattern : patterns) {
      Integer stock = stockOfKey.get(pattern.supply());
      if (stock == null || !itemOfLength.keySet().containsAll(pattern.counts().keySet())) {
        return List.of();
      }
      List<Count> counts = new ArrayList<>();
      pattern.counts().forEach((length, count) -> counts.add(new Count(item(length), count)));
      if (!isProper(problem.stocks().get(stock), counts)) {
        return List.of();
      }
      for (Count count : counts) {
        cut[count.item()] += (long) count.count() * pattern.times();
      }
      sticks[stock] += pattern.times();
      uses.add(new PatternUse(stock, counts, pattern.times()));
    }
    return holdsTheDemand(cut) && canBeHad(sticks) ? uses : List.of();
  }

  private int item(Length length) {
    return itemOfLength.getOrDefault(length, -1);
  }

  private boolean isProper(Stock stock, List<Count> counts) {
    long sizes = 0;
    boolean held = false;
    for (Count count : counts) {
      Item item = problem.items().get(count.item());
      sizes = Math.addExact(sizes, Math.multiplyExact(item.size(), count.count()));
      held |= !item.small();
    }
    boolean whole =
        counts.size() == 1
            && counts.get(0).count() == 1
            && stock.wholeUse()
            && sizes == stock.capacity();
    return sizes <= (held || whole ? stock.capacity() : stock.smallCapacity());
  }

  private boolean holdsTheDemand(long[] cut) {
    for (int i = 0; i < cut.length; i++) {
      if (cut[i] != problem.items().get(i).demand()) {
        return false;
      }
    }
    return true;
  }

  private boolean canBeHad(long[] sticks) {
    for (int j = 0; j < sticks.length; j++) {
      Stock stock = problem.stocks().get(j);
      if (stock.isLimited() && sticks[j] > (long) stock.mostPacks() * stock.packSize()) {
        return false;
      }
    }
    return true;
  }
}
