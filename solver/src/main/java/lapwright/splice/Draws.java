package lapwright.splice;

/** Numbers that look drawn and are always the same. Not thread-safe. */
final class Draws {
  private static final long FACTOR = 6364136223846793005L;
  private static final long INCREMENT = 1442695040888963407L;

  private long state = INCREMENT;

  /** A number from 0 up to {@code bound}, which it is not. */
  int below(int bound) {
    state = state * FACTOR + INCREMENT;
    return (int) ((state >>> 33) % bound);
  }

  /** True so many times in a hundred. */
  boolean inHundred(int times) {
    return below(100) < times;
  }

  void shuffle(int[] numbers) {
    for (int i = numbers.length - 1; i > 0; i--) {
      int other = below(i + 1);
      int kept = numbers[i];
      numbers[i] = numbers[other];
      numbers[other] = kept;
    }
  }
}
