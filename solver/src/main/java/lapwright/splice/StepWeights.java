package lapwright.splice;

import java.util.Arrays;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.problem.SpliceCertificate;

/**
 * A weight for every length: that of the longest listed length up to it, 0 below the first, and so
 * much for each unit of size besides. Immutable.
 */
final class StepWeights {
  private final long scale;
  private final long perSize;
  private final long[] lengths;
  private final long[] weights;

  private StepWeights(long scale, long perSize, long[] lengths, long[] weights) {
    this.scale = scale;
    this.perSize = perSize;
    this.lengths = lengths;
    this.weights = weights;
  }

  /** From weights by length; those that are less than a shorter length's are raised to it. */
  static StepWeights of(long scale, SortedMap<Long, Long> weightOfLength) {
    return of(scale, weightOfLength, 0);
  }

  /** The same with a weight for each unit of size besides. */
  static StepWeights of(long scale, SortedMap<Long, Long> weightOfLength, long perSize) {
    SortedMap<Long, Long> rising = new TreeMap<>();
    long highest = 0;
    for (Map.Entry<Long, Long> entry : weightOfLength.entrySet()) {
      if (entry.getValue() > highest) {
        highest = entry.getValue();
        rising.put(entry.getKey(), highest);
      }
    }
    return new StepWeights(
        scale,
        perSize,
        rising.keySet().stream().mapToLong(Long::longValue).toArray(),
        rising.values().stream().mapToLong(Long::longValue).toArray());
  }

  /** Weights that are proportional to size. */
  static StepWeights bySize(long scale, long perSize) {
    return new StepWeights(scale, perSize, new long[0], new long[0]);
  }

  /** The same weights, counted on a coarser scale. */
  StepWeights atScale(long otherScale) {
    return new StepWeights(otherScale, perSize, lengths, weights);
  }

  long scale() {
    return scale;
  }

  long perSize() {
    return perSize;
  }

  /** Number of listed lengths. */
  int classes() {
    return lengths.length;
  }

  /** A listed length, ascending. */
  long length(int index) {
    return lengths[index];
  }

  /** Its weight, ascending. */
  long weight(int index) {
    return weights[index];
  }

  /** Index of the longest listed length up to {@code length}; -1 below the first. */
  int classOf(long length) {
    int index = Arrays.binarySearch(lengths, length);
    return index >= 0 ? index : -index - 2;
  }

  /** Weight of a piece of a length and its cut. */
  long of(long length, long cut) {
    int index = classOf(length);
    long step = index < 0 ? 0 : weights[index];
    return perSize == 0
        ? step
        : Math.addExact(step, Math.multiplyExact(perSize, Math.addExact(length, cut)));
  }

  SpliceCertificate.Weights certificate() {
    SortedMap<Long, Long> byLength = new TreeMap<>();
    for (int i = 0; i < lengths.length; i++) {
      byLength.put(lengths[i], weights[i]);
    }
    return new SpliceCertificate.Weights(scale, byLength, perSize);
  }
}
