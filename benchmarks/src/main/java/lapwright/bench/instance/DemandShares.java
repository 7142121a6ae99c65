package lapwright.bench.instance;

import java.util.SplittableRandom;

/** Shares a number of pieces out among types. */
final class DemandShares {
  private DemandShares() {}

  /** At least one a type, the rest by uniform random weights; adds up to {@code pieces}. */
  static int[] of(int types, long pieces, SplittableRandom random) {
    if (types < 1 || pieces < types) {
      throw new IllegalArgumentException(pieces + " pieces cannot be of " + types + " types");
    }
    long[] weights = new long[types];
    long sum = 0;
    for (int i = 0; i < types; i++) {
      weights[i] = random.nextLong(1, 1001);
      sum += weights[i];
    }
    int[] demands = new int[types];
    long toShare = pieces - types;
    long given = 0;
    for (int i = 0; i < types; i++) {
      long share = toShare * weights[i] / sum;
      demands[i] = Math.toIntExact(1 + share);
      given += share;
    }
    for (long rest = toShare - given, i = 0; rest > 0; rest--, i++) {
      demands[(int) (i % types)]++;
    }
    return demands;
  }
}
