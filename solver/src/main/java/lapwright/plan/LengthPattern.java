package lapwright.plan;

import java.util.Collections;
import java.util.Comparator;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;

/**
 * What is cut from one stick, before it is decided whose pieces they are.
 *
 * @param supply key of the supply that its sticks come from
 * @param counts pieces from each stick by finished length, the longest first
 * @param times how many sticks, at least 1
 * @param offcut what is left of each stick after the last cut
 */
public record LengthPattern(
    String supply, SortedMap<Length, Integer> counts, int times, Length offcut) {
  public LengthPattern {
    Objects.requireNonNull(supply);
    Objects.requireNonNull(offcut);
    SortedMap<Length, Integer> longestFirst = new TreeMap<>(Comparator.reverseOrder());
    longestFirst.putAll(counts);
    counts = Collections.unmodifiableSortedMap(longestFirst);
    if (times < 1 || counts.isEmpty()) {
      throw new IllegalArgumentException(counts + " cut " + times + " times");
    }
    for (Map.Entry<Length, Integer> count : counts.entrySet()) {
      if (count.getValue() < 1) {
        throw new IllegalArgumentException(count.getValue() + " pieces in a pattern");
      }
    }
  }

  /** The same without the labels. */
  public static LengthPattern of(Pattern pattern) {
    SortedMap<Length, Integer> counts = new TreeMap<>();
    for (Cut cut : pattern.cuts()) {
      counts.merge(cut.length(), cut.qty(), Math::addExact);
    }
    return new LengthPattern(pattern.supply(), counts, pattern.times(), pattern.offcut());
  }
}
