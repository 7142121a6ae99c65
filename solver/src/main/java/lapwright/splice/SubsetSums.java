package lapwright.splice;

/**
 * Which sums some of several sizes can have, up to a greatest one, and which of them do: a bit for
 * each sum and size. Time O(sizes x sums / 64). Not thread-safe.
 */
final class SubsetSums {
  private final int words;
  private final long[][] before;
  private final int[] size;
  private long[] reached;
  private int count;

  /**
   * @param greatest sum that is told
   * @param most sizes
   */
  SubsetSums(int greatest, int most) {
    words = (greatest >> 6) + 1;
    before = new long[most][words];
    size = new int[most];
    reached = new long[words];
  }

  /** Forgets all sizes. */
  void clear() {
    count = 0;
    java.util.Arrays.fill(reached, 0);
    reached[0] = 1;
  }

  /** True when no further size is taken. */
  boolean isFull() {
    return count == size.length;
  }

  /** Takes one more size, which has the next number. */
  void add(int more) {
    size[count] = more;
    long[] was = reached;
    long[] is = before[count];
    before[count] = was;
    count++;
    int shift = more >> 6;
    int rest = more & 63;
    for (int to = 0; to < words; to++) {
      long moved = to < shift ? 0 : was[to - shift] << rest;
      if (rest > 0 && to > shift) {
        moved |= was[to - shift - 1] >>> (64 - rest);
      }
      is[to] = was[to] | moved;
    }
    reached = is;
  }

  /** The greatest sum from {@code least} up to {@code most}; -1 when there is none. */
  int greatest(int least, int most) {
    if (most < 0) {
      return -1;
    }
    int word = most >> 6;
    long bits = reached[word] & (-1L >>> (63 - (most & 63)));
    while (bits == 0 && word > 0 && word << 6 > least) {
      bits = reached[--word];
    }
    int found = bits == 0 ? -1 : (word << 6) + 63 - Long.numberOfLeadingZeros(bits);
    return found < least ? -1 : found;
  }

  /** Whether a size is one of those that have this sum, the sizes asked for from the last one. */
  boolean takes(int number, int sum) {
    return (before[number][sum >> 6] >>> (sum & 63) & 1) == 0;
  }

  int size(int number) {
    return size[number];
  }

  int count() {
    return count;
  }
}
