package lapwright.refute;

import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.colgen.Pattern;
import lapwright.problem.Refutation;

/**
 * A cut by rounding: sum over sticks of floor(p a / q) is at most floor(p d / q).
 *
 * <p>With q = 2 and p = 1 for three items of demand one: patterns with two or more of them are cut
 * once at most (M. Jepsen and others, Operations Research 56, 2008: subset-row cuts).
 *
 * <p>Immutable; equal by value.
 */
final class RoundingCut {
  private final int[] items;
  private final int[] multipliers;
  private final int divisor;

  private RoundingCut(int[] items, int[] multipliers, int divisor) {
    this.items = items;
    this.multipliers = multipliers;
    this.divisor = divisor;
  }

  /** Once each of some items, ascending, halved. */
  static RoundingCut halves(int... items) {
    int[] ones = new int[items.length];
    Arrays.fill(ones, 1);
    return new RoundingCut(items.clone(), ones, 2);
  }

  /** floor(p a / q). */
  int of(Pattern pattern) {
    int sum = 0;
    for (int k = 0; k < items.length; k++) {
      sum += multipliers[k] * pattern.countOf(items[k]);
    }
    return Math.floorDiv(sum, divisor);
  }

  /** floor(p a / q) of a pattern that holds so many of these items, and no others of the cut. */
  int of(int[] heldItems, int[] counts) {
    int sum = 0;
    for (int k = 0; k < items.length; k++) {
      int at = Arrays.binarySearch(heldItems, items[k]);
      sum += at < 0 ? 0 : multipliers[k] * counts[at];
    }
    return Math.floorDiv(sum, divisor);
  }

  /** Those with a multiplier, ascending. */
  List<Integer> items() {
    return Arrays.stream(items).boxed().toList();
  }

  /** floor(p d / q). */
  long most(Question question) {
    long sum = 0;
    for (int k = 0; k < items.length; k++) {
      sum += (long) multipliers[k] * question.demand(items[k]);
    }
    return Math.floorDiv(sum, divisor);
  }

  Refutation.CutTimes times(long times, Question question) {
    SortedMap<Long, Long> bySize = new TreeMap<>();
    for (int k = 0; k < items.length; k++) {
      bySize.put((long) question.size(items[k]), (long) multipliers[k]);
    }
    return new Refutation.CutTimes(times, divisor, 0, bySize);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RoundingCut that
        && divisor == that.divisor
        && Arrays.equals(items, that.items)
        && Arrays.equals(multipliers, that.multipliers);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * Arrays.hashCode(items) + Arrays.hashCode(multipliers)) + divisor;
  }
}
