package lapwright.colgen;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * Patterns that are known but not in the master program, which stays small: after each solve those
 * that are worth most join it, no more than {@value #OF_AN_ITEM} around an item at a time (sifting:
 * R. Bixby and others, Operations Research 40, 1992). That is cheaper than pricing, and leaves to
 * it what no known pattern tells.
 */
final class Reserve {
  private static final int OF_AN_ITEM = 2;
  private static final double TOLERANCE = 1e-9;

  private final List<Pattern> patterns = new ArrayList<>();
  private final BitSet taken = new BitSet();

  void add(List<Pattern> more) {
    patterns.addAll(more);
  }

  /** Takes out the patterns that are worth adding at a solution. */
  List<Pattern> take(Master.Solution solution, int items) {
    List<Candidate> candidates = new ArrayList<>();
    for (int index = taken.nextClearBit(0);
        index < patterns.size();
        index = taken.nextClearBit(index + 1)) {
      double surplus = solution.surplus(patterns.get(index));
      if (surplus < -TOLERANCE) {
        candidates.add(new Candidate(index, surplus));
      }
    }
    candidates.sort(
        Comparator.comparingDouble(Candidate::surplus).thenComparingInt(Candidate::index));
    List<Pattern> best = new ArrayList<>();
    int[] around = new int[items];
    for (Candidate candidate : candidates) {
      Pattern pattern = patterns.get(candidate.index());
      boolean wanted = false;
      for (int k = 0; k < pattern.kinds(); k++) {
        wanted |= around[pattern.item(k)] < OF_AN_ITEM;
      }
      if (wanted) {
        pattern.addTo(around, 1);
        taken.set(candidate.index());
        best.add(pattern);
      }
    }
    return best;
  }

  private record Candidate(int index, double surplus) {}
}
