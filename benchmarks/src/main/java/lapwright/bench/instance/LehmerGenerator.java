package lapwright.bench.instance;

/**
 * The multiplicative generator x &lt;- 16807 x mod (2^31 - 1) of D. H. Lehmer with the multiplier
 * of Lewis, Goodman and Miller (IBM Systems J. 8, 1969), as Gau and Waescher use it.
 */
final class LehmerGenerator {
  private static final long MULTIPLIER = 16_807;
  private static final long MODULUS = (1L << 31) - 1;

  private long state;

  /**
   * @param seed from 1 to 2^31 - 2
   */
  LehmerGenerator(long seed) {
    if (seed < 1 || seed >= MODULUS) {
      throw new IllegalArgumentException("seed " + seed + " is not between 1 and 2^31 - 2");
    }
    state = seed;
  }

  /** Uniform, above 0 and below 1. */
  double next() {
    state = MULTIPLIER * state % MODULUS;
    return (double) state / MODULUS;
  }
}
