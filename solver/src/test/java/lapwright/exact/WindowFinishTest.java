package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import lapwright.colgen.PatternSource;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.junit.jupiter.api.Test;

/** Sticks of three lengths, cut up without waste, put together again. */
class WindowFinishTest {

  @Test
  void putsSticksTogetherThatWereCutUpWithoutWaste() {
    int found = 0;
    for (int seed = 1; seed <= 10; seed++) {
      StickProblem problem = cutUp(seed);
      long sum = problem.items().stream().mapToLong(i -> i.size() * i.demand()).sum();
      PackLimits limits = PackLimits.of(problem);
      try (Relaxation relaxation =
          new Relaxation(problem, PatternSource.of(problem), 100, 1L << 50)) {
        Relaxation.Bounded bounded =
            relaxation.bound(limits, (bound, most) -> false, Effort.unlimited());
        Layout layout =
            new WindowFinish(problem, limits, Effort.unlimited())
                .finish(new Layout.Builder(problem), relaxation.master(), bounded.solution(), sum);
        assertTrue(layout == null || layout.cost() <= sum);
        found += layout == null ? 0 : 1;
      }
    }
    assertTrue(found >= 7, "found only " + found + " of 10");
  }

  /** Prices follow lengths, so that cutting without waste alone costs the sum of all lengths. */
  private static StickProblem cutUp(int seed) {
    Random random = new Random(seed);
    long[] lengths = {600, 800, 1_000};
    TreeMap<Long, Integer> demands = new TreeMap<>();
    List<Stock> stocks = new ArrayList<>();
    for (long length : lengths) {
      stocks.add(new Stock(length, length, 0, false, 0, length, length, 1, 12));
      for (int stick = 0; stick < 6; stick++) {
        long first = 100 + random.nextInt((int) length / 2 - 100);
        long second = 100 + random.nextInt((int) (length - first) - 150);
        demands.merge(first, 1, Integer::sum);
        demands.merge(second, 1, Integer::sum);
        demands.merge(length - first - second, 1, Integer::sum);
      }
    }
    List<Item> items = new ArrayList<>();
    demands.descendingMap().forEach((size, demand) -> items.add(new Item(size, demand, false)));
    return new StickProblem(items, stocks, 0);
  }
}
