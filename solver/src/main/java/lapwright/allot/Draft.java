package lapwright.allot;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.plan.Cut;

/**
 * A ticket before it has its name and place.
 *
 * @param cuts in the order in which they are made
 * @param dueRank rank of the earliest due day among its pieces, 0 is the first
 */
record Draft(String supply, List<Cut> cuts, int times, Length offcut, int dueRank) {
  Draft {
    cuts = List.copyOf(cuts);
  }

  /** What makes two sticks the same ticket. */
  record Likeness(String supply, List<Cut> cuts) {}

  Likeness likeness() {
    return new Likeness(supply, cuts);
  }

  Draft plus(Draft same) {
    return new Draft(
        supply, cuts, Math.addExact(times, same.times), offcut, Math.min(dueRank, same.dueRank));
  }

  Length firstStop() {
    return cuts.get(0).length();
  }

  Length lastStop() {
    return cuts.get(cuts.size() - 1).length();
  }

  /**
   * Longest first, so that a stick that turns out short costs the cheapest piece; the longest last
   * where only it is long enough to be held at the last cut.
   */
  static List<Cut> inCuttingOrder(List<Cut> longestFirst, Length offcut, Length hold) {
    if (!offcut.isShorterThan(hold)) {
      return longestFirst;
    }
    Length longest = longestFirst.get(0).length();
    List<Cut> order = new ArrayList<>();
    longestFirst.stream().filter(cut -> !cut.length().equals(longest)).forEach(order::add);
    longestFirst.stream().filter(cut -> cut.length().equals(longest)).forEach(order::add);
    return order;
  }
}
