package lapwright.allot;

import java.util.ArrayList;
import java.util.Comparator;
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

  /**
   * Cuts as many of the pieces that may be short as long as their job asks for as there is room
   * for: those first that lack least.
   *
   * @param room how much longer the pieces of a stick may be in all
   */
  static Draft withRoom(
      String supply, List<Cut> cuts, int times, Length offcut, Length room, int dueRank) {
    List<Cut> leastFirst = new ArrayList<>(cuts);
    leastFirst.sort(Comparator.comparing(Cut::shorter));
    List<Cut> longestFirst = new ArrayList<>();
    long left = room.units();
    for (Cut cut : leastFirst) {
      long lacks = cut.shorter().units();
      int full = lacks == 0 ? cut.qty() : (int) Math.min(cut.qty(), left / lacks);
      left -= full * lacks;
      if (full > 0) {
        longestFirst.add(cut.full(full));
      }
      if (full < cut.qty()) {
        longestFirst.add(cut.withQty(cut.qty() - full));
      }
    }
    longestFirst.sort(Comparator.comparing(Cut::length).reversed());
    Length taken = room.minus(Length.ofUnits(left));
    Length rest = offcut.isLongerThan(taken) ? offcut.minus(taken) : Length.ZERO;
    return new Draft(supply, longestFirst, times, rest, dueRank);
  }

  /** The same in cutting order. */
  Draft inCuttingOrder(Length hold) {
    return new Draft(supply, inCuttingOrder(cuts, offcut, hold), times, offcut, dueRank);
  }

  /** True when a stick of either is taken, cut and left the same way, whosever the pieces are. */
  boolean isCutLike(Draft other) {
    if (!supply.equals(other.supply)
        || times != other.times
        || !offcut.equals(other.offcut)
        || cuts.size() != other.cuts.size()) {
      return false;
    }
    for (int c = 0; c < cuts.size(); c++) {
      Cut mine = cuts.get(c);
      Cut its = other.cuts.get(c);
      if (mine.qty() != its.qty()
          || !mine.length().equals(its.length())
          || !mine.rules().equals(its.rules())) {
        return false;
      }
    }
    return true;
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
  private static List<Cut> inCuttingOrder(List<Cut> longestFirst, Length offcut, Length hold) {
    if (!offcut.isShorterThan(hold)) {
      return longestFirst;
    }
    Length longest = longestFirst.stream().map(Cut::held).max(Length::compareTo).orElseThrow();
    List<Cut> order = new ArrayList<>();
    longestFirst.stream().filter(cut -> !cut.held().equals(longest)).forEach(order::add);
    longestFirst.stream().filter(cut -> cut.held().equals(longest)).forEach(order::add);
    return order;
  }
}
