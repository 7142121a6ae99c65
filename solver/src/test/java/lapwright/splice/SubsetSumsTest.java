package lapwright.splice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SubsetSumsTest {
  private static final int GREATEST = 200;
  private static final int SIZES = 8;

  /** Against all subsets, one by one. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5})
  void tellsWhatSubsetsAddUpTo(int seed) {
    Random random = new Random(seed);
    SubsetSums sums = new SubsetSums(GREATEST, SIZES);
    for (int again = 0; again < 20; again++) {
      sums.clear();
      for (int i = 0; i < SIZES; i++) {
        sums.add(1 + random.nextInt(90));
      }
      boolean[] reached = new boolean[GREATEST + 1];
      for (int subset = 0; subset < 1 << SIZES; subset++) {
        int sum = 0;
        for (int i = 0; i < SIZES; i++) {
          sum += (subset >> i & 1) * sums.size(i);
        }
        if (sum <= GREATEST) {
          reached[sum] = true;
        }
      }
      for (int most = 0; most <= GREATEST; most++) {
        int least = random.nextInt(most + 1);
        int expected = most;
        while (expected >= least && !reached[expected]) {
          expected--;
        }
        assertEquals(expected < least ? -1 : expected, sums.greatest(least, most));
        if (reached[most]) {
          assertEquals(0, withoutWhatItTakes(sums, most));
        }
      }
    }
  }

  private static int withoutWhatItTakes(SubsetSums sums, int sum) {
    int left = sum;
    for (int i = sums.count() - 1; i >= 0 && left > 0; i--) {
      if (sums.takes(i, left)) {
        left -= sums.size(i);
      }
    }
    return left;
  }
}
