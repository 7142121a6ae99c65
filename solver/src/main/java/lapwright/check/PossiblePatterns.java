package lapwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What can be cut from one stick so that no more than a given length of it is wasted: the list of
 * all that weighs enough. Weights may have any sign.
 *
 * <p>G(i, p) is the greatest weight of pieces of the first i lengths that take exactly p of the
 * stick; a walk back from each p within the window meets nothing but what it looks for. Time and
 * memory are lengths x positions, after division by the common divisor of the sizes.
 */
final class PossiblePatterns {
  /** Positions times lengths that a table may have. */
  static final long MOST_CELLS = 24_000_000;

  private static final long NONE = Long.MIN_VALUE;

  private final int[] sizes;
  private final int[] quantities;
  private final long[] weights;
  private final long[][] heaviest;

  /**
   * Made for sizes that are small enough, see {@link #isFeasible}.
   *
   * @param quantities no pattern holds more of a length
   * @param weights whose sum over all pieces fits 62 bits
   */
  PossiblePatterns(int[] sizes, int[] quantities, long[] weights, int longest) {
    this.sizes = sizes.clone();
    this.quantities = quantities.clone();
    this.weights = weights.clone();
    heaviest = new long[sizes.length + 1][longest + 1];
    Arrays.fill(heaviest[0], NONE);
    heaviest[0][0] = 0;
    for (int i = 0; i < sizes.length; i++) {
      long[] before = heaviest[i];
      long[] after = heaviest[i + 1];
      System.arraycopy(before, 0, after, 0, before.length);
      int most = Math.min(quantities[i], longest / sizes[i]);
      for (int count = 1; count <= most; count++) {
        int taken = count * sizes[i];
        long weight = count * weights[i];
        for (int p = taken; p <= longest; p++) {
          if (before[p - taken] != NONE && before[p - taken] + weight > after[p]) {
            after[p] = before[p - taken] + weight;
          }
        }
      }
    }
  }

  static boolean isFeasible(int lengths, long longest) {
    return longest < MOST_CELLS && (lengths + 1L) * (longest + 1) <= MOST_CELLS;
  }

  /**
   * All that takes {@code least} to {@code most} and weighs enough, each as pairs of a place and a
   * count; empty when there are more than {@code limit}.
   */
  Optional<List<int[]>> list(int least, int most, long leastWeight, int limit) {
    List<int[]> found = new ArrayList<>();
    int[] counts = new int[sizes.length];
    for (int p = Math.max(0, least); p <= most; p++) {
      if (!extend(sizes.length, p, leastWeight, counts, found, limit)) {
        return Optional.empty();
      }
    }
    return Optional.of(found);
  }

  private boolean extend(
      int i, int position, long missing, int[] counts, List<int[]> found, int limit) {
    if (heaviest[i][position] == NONE || heaviest[i][position] < missing) {
      return true;
    }
    if (i == 0) {
      found.add(pairs(counts));
      return found.size() <= limit;
    }
    int most = Math.min(quantities[i - 1], position / sizes[i - 1]);
    for (int count = 0; count <= most; count++) {
      counts[i - 1] = count;
      int before = position - count * sizes[i - 1];
      if (!extend(i - 1, before, missing - count * weights[i - 1], counts, found, limit)) {
        counts[i - 1] = 0;
        return false;
      }
    }
    counts[i - 1] = 0;
    return true;
  }

  private static int[] pairs(int[] counts) {
    int kinds = 0;
    for (int count : counts) {
      kinds += count > 0 ? 1 : 0;
    }
    int[] pairs = new int[2 * kinds];
    int at = 0;
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] > 0) {
        pairs[at++] = i;
        pairs[at++] = counts[i];
      }
    }
    return pairs;
  }
}
