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
 * @param counts pieces from each stick by the length that plans know them by ({@link
 *     lapwright.shop.Need#planned}), the longest first
 * @param times how many sticks, at least 1
 * @param offcut what is left of each stick after the last cut
 * @param room how much longer its pieces may be cut in all, where they may be short
 */
public record LengthPattern(
    String supply, SortedMap<Length, Integer> counts, int times, Length offcut, Length room) {
  public LengthPattern {
    Objects.requireNonNull(supply);
    Objects.requireNonNull(offcut);
    Objects.requireNonNull(room);
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

  /** A pattern of pieces that have no room to be longer. */
  public LengthPattern(String supply, SortedMap<Length, Integer> counts, int times, Length offcut) {
    this(supply, counts, times, offcut, Length.ZERO);
  }

  /**
   * The same without the labels.
   *
   * @param kerf of the saw that cuts it
   */
  public static LengthPattern of(Pattern pattern, Length kerf) {
    SortedMap<Length, Integer> counts = new TreeMap<>();
    for (Cut cut : pattern.cuts()) {
      counts.merge(cut.planned(kerf), cut.qty(), Math::addExact);
    }
    return new LengthPattern(pattern.supply(), counts, pattern.times(), pattern.offcut());
  }
}
