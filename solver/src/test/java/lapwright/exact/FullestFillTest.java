package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Filling a stick around its longest item, against all ways of filling it. */
class FullestFillTest {
  /** Lengths of so many units are rounded, those below it are not. */
  private static final long FINE = 3_000_000_000L;

  @Property(tries = 400, seed = "11")
  void isTheFullestOnAnExactGrid(@ForAll long seed) {
    Case of = new Case(seed, 1_000);
    assertTrue(of.filled() == of.fullest(), of.filled() + " of " + of.fullest());
  }

  @Property(tries = 400, seed = "11")
  void losesLittleToTheFullestOnARoundedGrid(@ForAll long seed) {
    Case of = new Case(seed, FINE);
    // Each of at most eight pieces, and what is left of the stick, is rounded once.
    assertTrue(of.filled() <= of.fullest());
    assertTrue(of.filled() >= of.fullest() - 10 * (FINE / 8_192 + 1), () -> "" + of.filled());
  }

  /** A stick, a few items, and what is left of them. */
  private static final class Case {
    final StickProblem problem;
    final int[] left;
    final int[] counts;

    Case(long seed, long capacity) {
      Random random = new Random(seed);
      List<Item> items = new ArrayList<>();
      long size = capacity * 9 / 10;
      for (int i = 0; i < 5; i++) {
        size -= 1 + random.nextLong(capacity / 8);
        items.add(new Item(size, 1 + random.nextInt(3), false));
      }
      Stock stock = new Stock(capacity, capacity, 0, false, 0, 1, 1, 1, Integer.MAX_VALUE);
      problem = new StickProblem(items, List.of(stock), 0);
      left = new int[items.size()];
      for (int i = 0; i < left.length; i++) {
        left[i] = random.nextInt(items.get(i).demand() + 1);
      }
      counts = new int[left.length];
      new FullestFill(problem).fill(0, left, counts);
      assertTrue(Layout.isProper(problem, Pattern.ofCounts(0, counts)));
      for (int i = 0; i < left.length; i++) {
        assertTrue(counts[i] <= left[i]);
      }
    }

    long filled() {
      long filled = 0;
      for (int i = 0; i < counts.length; i++) {
        filled += counts[i] * problem.items().get(i).size();
      }
      return filled;
    }

    /** The greatest length that can be filled with the longest item that is left. */
    long fullest() {
      for (int i = 0; i < left.length; i++) {
        if (left[i] > 0) {
          long size = problem.items().get(i).size();
          left[i]--;
          long fullest = size + fullest(i, problem.stocks().get(0).capacity() - size);
          left[i]++;
          return fullest;
        }
      }
      return 0;
    }

    private long fullest(int from, long room) {
      if (from == left.length) {
        return 0;
      }
      long best = 0;
      long size = problem.items().get(from).size();
      for (int count = 0; count <= left[from] && count * size <= room; count++) {
        best = Math.max(best, count * size + fullest(from + 1, room - count * size));
      }
      return best;
    }
  }
}
