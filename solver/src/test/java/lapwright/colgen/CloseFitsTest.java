package lapwright.colgen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.junit.jupiter.api.Test;

/** Close fits against trying all pairs and all triples. */
class CloseFitsTest {
  private static final long CAPACITY = 1_000;

  @Test
  void aroundEveryItemAreItsBestPairAndATripleThatLeavesLeast() {
    for (int seed = 1; seed <= 20; seed++) {
      StickProblem problem = problem(seed);
      List<Pattern> patterns = CloseFits.of(problem);
      assertEquals(patterns.size(), new HashSet<>(patterns).size(), "distinct");
      for (Pattern pattern : patterns) {
        assertTrue(rest(problem, pattern) >= 0, "fits: " + pattern);
        assertTrue(pattern.mostTimes(demands(problem)) >= 1, "can be cut: " + pattern);
      }
      for (int i = 0; i < problem.items().size(); i++) {
        assertEquals(leastByTrying(problem, i, 2), leastAround(problem, patterns, i, 2));
        assertEquals(leastByTrying(problem, i, 3), leastAround(problem, patterns, i, 3));
      }
    }
  }

  /** The least that a pattern of so many pieces with the item leaves; -1 without one. */
  private static long leastAround(StickProblem problem, List<Pattern> of, int item, int pieces) {
    return of.stream()
        .filter(p -> p.pieces() == pieces && p.countOf(item) > 0)
        .mapToLong(p -> rest(problem, p))
        .min()
        .orElse(-1);
  }

  private static long leastByTrying(StickProblem problem, int item, int pieces) {
    List<Item> items = problem.items();
    long least = Long.MAX_VALUE;
    for (int a = 0; a < items.size(); a++) {
      long room = CAPACITY - items.get(item).size() - items.get(a).size();
      if (pieces == 2 && room >= 0 && (a != item || items.get(a).demand() > 1)) {
        least = Math.min(least, room);
      }
      for (int b = a + 1; b < items.size() && pieces == 3; b++) {
        long left = room - items.get(b).size();
        if (left >= 0 && a != item && b != item) {
          least = Math.min(least, left);
        }
      }
    }
    return least == Long.MAX_VALUE ? -1 : least;
  }

  private static long rest(StickProblem problem, Pattern pattern) {
    long[] sizes = problem.items().stream().mapToLong(Item::size).toArray();
    return CAPACITY - pattern.sum(sizes);
  }

  private static int[] demands(StickProblem problem) {
    return problem.items().stream().mapToInt(Item::demand).toArray();
  }

  private static StickProblem problem(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    TreeSet<Long> sizes = new TreeSet<>();
    while (sizes.size() < 30) {
      sizes.add(random.nextLong(40, 800));
    }
    List<Item> items = new ArrayList<>();
    sizes.descendingSet().forEach(s -> items.add(new Item(s, random.nextInt(1, 4), false)));
    Stock stock = new Stock(CAPACITY, CAPACITY, 0, false, 0, 1, 1, 1, Integer.MAX_VALUE);
    return new StickProblem(items, List.of(stock), 0);
  }
}
