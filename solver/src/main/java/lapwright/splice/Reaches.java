package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How light so many pieces can be that together reach so far: pieces from one listed length up to
 * the next weigh the same and reach one unit less than the next at most. For each number of pieces
 * a list of (reach, weight), the dominated ones dropped, and coarsened from below where it grows
 * too long: the farthest reach of some neighbours with the least weight of them.
 *
 * <p>Shared by choices whose pieces have the same limits. Time O(states x classes log) for each
 * number of pieces. Not thread-safe.
 */
final class Reaches {
  private static final int MOST_SUMS = 200_000;

  private final long least;
  private final long longest;
  private StepWeights taken = StepWeights.bySize(1, 0);
  private long[] kindReach = new long[0];
  private long[] kindWeight = new long[0];
  private final List<States> states = new ArrayList<>();

  Reaches(Key key) {
    this.least = key.least();
    this.longest = key.longest();
  }

  /** The limits of pieces that choices must have in common. */
  record Key(long least, long longest) {}

  /** Ascending reach and weight; the kind of the last piece and the state before it. */
  private static final class States {
    private final long[] reach;
    private final long[] weight;
    private final int[] kind;
    private final int[] before;

    private States(int size) {
      reach = new long[size];
      weight = new long[size];
      kind = new int[size];
      before = new int[size];
    }
  }

  private void take(StepWeights weights) {
    if (weights == taken && !states.isEmpty()) {
      return;
    }
    taken = weights;
    states.clear();
    states.add(new States(1));
    int first = Math.max(-1, weights.classOf(least));
    int kinds = 0;
    long[] reach = new long[weights.classes() + 1];
    long[] weight = new long[weights.classes() + 1];
    for (int c = first; c < weights.classes(); c++) {
      if (c >= 0 && weights.length(c) > longest) {
        break;
      }
      long end = c + 1 < weights.classes() ? weights.length(c + 1) - 1 : longest;
      reach[kinds] = Math.min(end, longest);
      weight[kinds] = c < 0 ? 0 : weights.weight(c);
      kinds++;
    }
    kindReach = Arrays.copyOf(reach, kinds);
    kindWeight = Arrays.copyOf(weight, kinds);
  }

  /** The states of {@code pieces} pieces. */
  private States of(int pieces) {
    while (states.size() <= pieces) {
      states.add(next(states.get(states.size() - 1)));
    }
    return states.get(pieces);
  }

  private States next(States from) {
    int kinds = kindReach.length;
    int n = from.reach.length;
    long[][] sums = new long[n * kinds][];
    for (int s = 0; s < n; s++) {
      for (int k = 0; k < kinds; k++) {
        sums[s * kinds + k] =
            new long[] {
              from.reach[s] + kindReach[k],
              Math.addExact(from.weight[s], kindWeight[k]),
              (long) s * kinds + k
            };
      }
    }
    // By weight, the farthest first: a sum is kept when it reaches farther than all lighter ones.
    Arrays.sort(
        sums,
        (a, b) ->
            a[1] != b[1]
                ? Long.compare(a[1], b[1])
                : a[0] != b[0] ? Long.compare(b[0], a[0]) : Long.compare(a[2], b[2]));
    int kept = 0;
    long farthest = -1;
    for (long[] sum : sums) {
      if (sum[0] > farthest) {
        farthest = sum[0];
        sums[kept++] = sum;
      }
    }
    int room = Math.max(64, MOST_SUMS / Math.max(1, kinds));
    int together = (kept + room - 1) / room;
    int m = (kept + together - 1) / Math.max(1, together);
    States next = new States(m);
    for (int i = 0; i < m; i++) {
      long[] last = sums[Math.min(kept, (i + 1) * together) - 1];
      next.reach[i] = last[0];
      next.weight[i] = sums[i * together][1];
      next.kind[i] = (int) (last[2] % kinds);
      next.before[i] = (int) (last[2] / kinds);
    }
    return next;
  }

  /** The lightest state that reaches far enough; -1 when none does. */
  private static int lightest(States states, long needed) {
    int at = Arrays.binarySearch(states.reach, needed);
    int index = at >= 0 ? at : -at - 1;
    return index < states.reach.length ? index : -1;
  }

  /**
   * The least weight by class, that of sizes left out, of so many pieces that reach so far; {@link
   * Long#MAX_VALUE} when none do.
   */
  long least(StepWeights weights, int pieces, long needed) {
    take(weights);
    States of = of(pieces);
    int at = lightest(of, needed);
    return at < 0 ? Long.MAX_VALUE : of.weight[at];
  }

  /** How far the pieces of a lightest such choice may reach, each. */
  long[] reaches(StepWeights weights, int pieces, long needed) {
    take(weights);
    int at = lightest(of(pieces), needed);
    long[] reaches = new long[pieces];
    for (int k = pieces; k > 0; k--) {
      States of = states.get(k);
      reaches[k - 1] = kindReach[of.kind[at]];
      at = of.before[at];
    }
    return reaches;
  }
}
