package lapwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.check.SpanSplits.Pair;
import lapwright.measure.Length;

/** A weight for every length: that of the longest listed length that is no longer, 0 below. */
final class StepFunction {
  private final TreeMap<Long, Long> steps = new TreeMap<>();

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
}
