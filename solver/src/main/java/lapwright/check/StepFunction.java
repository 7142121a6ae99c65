package lapwright.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;

/** A weight for every length: that of the longest listed length that is no longer, 0 below. */
final class StepFunction {
  private static final int MOST_PAIRS = 400_000;

  private final TreeMap<Long, Long> steps = new TreeMap<>();
  private final Map<Between, List<List<Pair>>> reached = new HashMap<>();

  private record Between(long shortest, long longest) {}

  /** How far pieces of a weight reach at most. */
  record Pair(long reach, long weight) {}

  /** From weights that do not fall. */
  StepFunction(SortedMap<Length, Long> weights) {
    weights.forEach((length, weight) -> steps.put(length.units(), weight));
  }

  long at(long length) {
    Map.Entry<Long, Long> step = steps.floorEntry(length);
    return step == null ? 0 : step.getValue();
  }

  /** The greatest length of each weight between two lengths, with the weight. */
  List<Pair> ranges(long shortest, long longest) {
    List<Pair> ranges = new ArrayList<>();
    long from = shortest;
    while (from <= longest) {
      Long next = steps.higherKey(from);
      long to = next == null ? longest : Math.min(longest, next - 1);
      ranges.add(new Pair(to, at(from)));
      from = to + 1;
    }
    return ranges;
  }

  /**
   * How far so many pieces between two lengths reach together at most, by ascending weight, each
   * farther than all before. Worked out once for all lines of such pieces.
   */
  List<Pair> reached(long shortest, long longest, int pieces) {
    List<List<Pair>> byPieces =
        reached.computeIfAbsent(
            new Between(shortest, longest),
            key -> new ArrayList<>(List.of(List.of(new Pair(0, 0)))));
    while (byPieces.size() <= pieces) {
      List<Pair> kinds = ranges(shortest, longest);
      List<Pair> all = new ArrayList<>();
      for (Pair sum : byPieces.get(byPieces.size() - 1)) {
        for (Pair kind : kinds) {
          all.add(
              new Pair(
                  Math.addExact(sum.reach(), kind.reach()),
                  Math.addExact(sum.weight(), kind.weight())));
        }
      }
      byPieces.add(coarser(undominated(all), Math.max(64, MOST_PAIRS / Math.max(1, kinds.size()))));
    }
    return byPieces.get(pieces);
  }

  /** By ascending weight, each reaching farther than all before. */
  private static List<Pair> undominated(List<Pair> all) {
    all.sort(
        Comparator.comparingLong(Pair::weight)
            .thenComparing(Comparator.comparingLong(Pair::reach).reversed()));
    List<Pair> kept = new ArrayList<>();
    long farthest = -1;
    for (Pair pair : all) {
      if (pair.reach() > farthest) {
        farthest = pair.reach();
        kept.add(pair);
      }
    }
    return kept;
  }

  /** At most so many pairs: of neighbours the farthest reach with the least weight. */
  private static List<Pair> coarser(List<Pair> pairs, int most) {
    if (pairs.size() <= most) {
      return pairs;
    }
    List<Pair> coarse = new ArrayList<>();
    int together = (pairs.size() - 1) / most + 1;
    for (int i = 0; i < pairs.size(); i += together) {
      Pair farthest = pairs.get(Math.min(pairs.size(), i + together) - 1);
      coarse.add(new Pair(farthest.reach(), pairs.get(i).weight()));
    }
    return coarse;
  }
}
