package lapwright.check;

import java.math.BigInteger;
import java.util.Map;
import java.util.TreeMap;

/**
 * The costs that some purchase can come to: sums of P_j y_j over the supplies, 0 &lt;= y_j &lt;=
 * most_j. A lower bound may be raised to the next of them.
 *
 * <p>Found by marking multiples of the prices' common divisor, as long as there are at most {@value
 * #MOST_MARKS} up to the cost that is asked about; beyond, only the divisor itself is used.
 */
final class ReachableCosts {
  private static final long MOST_MARKS = 10_000_000;

  /** Greatest number of packs by price; {@link PackGroups#UNLIMITED} without a limit. */
  private final Map<Long, Long> mostPacks = new TreeMap<>();

  private long divisor;

  /** Adds packs at {@code cost} each, of which {@code most} can be had. */
  void add(long cost, long most) {
    if (cost > 0 && most > 0) {
      long unlimited = PackGroups.UNLIMITED;
      mostPacks.merge(cost, most, (a, b) -> a == unlimited || b == unlimited ? unlimited : a + b);
      divisor = BigInteger.valueOf(divisor).gcd(BigInteger.valueOf(cost)).longValueExact();
    }
  }

  /**
   * The least cost from {@code bound} that can be reached; {@code ceiling + 1} when that is above
   * {@code ceiling}.
   */
  long atLeast(long bound, long ceiling) {
    if (bound <= 0) {
      return 0;
    }
    if (divisor == 0 || bound > ceiling) {
      return Math.addExact(ceiling, 1);
    }
    long first = (bound - 1) / divisor + 1;
    long last = ceiling / divisor;
    if (first <= last && last <= MOST_MARKS) {
      first = firstMarked(first, Math.toIntExact(last));
    }
    return first > last ? Math.addExact(ceiling, 1) : first * divisor;
  }

  private long firstMarked(long from, int last) {
    long[] marks = new long[last / Long.SIZE + 1];
    marks[0] = 1;
    for (Map.Entry<Long, Long> entry : mostPacks.entrySet()) {
      long step = entry.getKey() / divisor;
      long left = Math.min(entry.getValue(), last / step);
      for (long group = 1; left > 0; left -= group, group *= 2) {
        group = Math.min(group, left);
        markShifted(marks, Math.toIntExact(group * step));
      }
    }
    for (long position = from; position <= last; position++) {
      if ((marks[(int) (position / Long.SIZE)] >>> (position % Long.SIZE) & 1) != 0) {
        return position;
      }
    }
    return last + 1L;
  }

  /** Also marks what lies {@code shift} above a mark. */
  private static void markShifted(long[] marks, int shift) {
    int words = shift / Long.SIZE;
    int bits = shift % Long.SIZE;
    for (int i = marks.length - 1; i >= words; i--) {
      long shifted = marks[i - words] << bits;
      if (bits > 0 && i > words) {
        shifted |= marks[i - words - 1] >>> (Long.SIZE - bits);
      }
      marks[i] |= shifted;
    }
  }
}
