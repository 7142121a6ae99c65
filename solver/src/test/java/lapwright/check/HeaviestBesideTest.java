package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** The greatest value beside named pieces is that of the best of all patterns, tried one by one. */
class HeaviestBesideTest {
  private static final int LONGEST = 24;

  @Property(tries = 2000, seed = "12")
  void isTheBestOfAllPatterns(@ForAll long seed) {
    Random random = new Random(seed);
    int m = 1 + random.nextInt(4);
    int[] sizes = new int[m];
    int[] quantities = new int[m];
    long[] weights = new long[m];
    boolean[] named = new boolean[m];
    for (int i = 0; i < m; i++) {
      sizes[i] = 2 + random.nextInt(9);
      quantities[i] = 1 + random.nextInt(4);
      weights[i] = random.nextInt(20) - 6;
      named[i] = random.nextBoolean();
    }
    int most = 4 + random.nextInt(LONGEST - 3);
    int least = Math.max(0, most - random.nextInt(8));
    HeaviestBeside beside = new HeaviestBeside(sizes, quantities, weights, named, LONGEST);
    HeaviestBeside.Found found =
        beside.greatest(least, most, pairs -> value(pairs, weights), 1_000_000);

    Long best = best(sizes, quantities, weights, named, least, most, 0, 0, new int[m]);
    assertEquals(best == null, found.isNothing());
    if (best != null) {
      assertEquals(best, found.weight());
    }
  }

  @Test
  void givesUpWhereTooManyPiecesAreNamed() {
    int[] ones = {1, 2, 3};
    boolean[] named = {true, true, true};
    HeaviestBeside beside =
        new HeaviestBeside(ones, new int[] {9, 9, 9}, new long[3], named, LONGEST);
    assertTrue(beside.greatest(0, LONGEST, pairs -> 0, 100).isTooMuch());
  }

  /** Named pieces lose 5 for every two of them. */
  private static long value(int[] pairs, long[] weights) {
    long value = 0;
    int pieces = 0;
    for (int k = 0; k < pairs.length; k += 2) {
      value += weights[pairs[k]] * pairs[k + 1];
      pieces += pairs[k + 1];
    }
    return value - 5L * (pieces / 2);
  }

  private static Long best(
      int[] sizes,
      int[] quantities,
      long[] weights,
      boolean[] named,
      int least,
      int most,
      int at,
      int taken,
      int[] counts) {
    if (at == sizes.length) {
      if (taken < least) {
        return null;
      }
      long value = 0;
      int pieces = 0;
      for (int i = 0; i < counts.length; i++) {
        value += counts[i] * weights[i];
        pieces += named[i] ? counts[i] : 0;
      }
      return value - 5L * (pieces / 2);
    }
    Long best = null;
    for (int k = 0; k <= quantities[at] && taken + k * sizes[at] <= most; k++) {
      counts[at] = k;
      Long with =
          best(
              sizes,
              quantities,
              weights,
              named,
              least,
              most,
              at + 1,
              taken + k * sizes[at],
              counts);
      best = with == null || (best != null && best >= with) ? best : with;
    }
    counts[at] = 0;
    return best;
  }
}
