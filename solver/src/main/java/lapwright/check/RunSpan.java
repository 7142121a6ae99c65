package lapwright.check;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.Run;

/**
 * What the rules of a run say of one of its unbroken stretches, in units of length from the start
 * of the covered length.
 *
 * @param from middle of the gap before it, or 0
 * @param to middle of the gap after it, or the covered length
 * @param start where its metal starts, without what a closing piece is left long
 * @param end where it ends, likewise
 * @param places where joints may stand strictly between {@code from} and {@code to}; empty when
 *     they go anywhere
 */
record RunSpan(Run run, long from, long to, long start, long end, List<Long> places) {
  /** The stretch between two gaps, by the middles of the gaps. */
  static RunSpan between(Run run, long from, long to) {
    JointRules.Expansion expansion = run.rules().expansion();
    long gap = expansion == null ? 0 : expansion.gap().units();
    boolean first = from == 0;
    boolean last = to == run.length().units();
    return new RunSpan(
        run,
        from,
        to,
        first ? -run.addAtStart().units() : from + (gap - gap / 2),
        last ? Math.addExact(to, run.addAtEnd().units()) : to - gap / 2,
        places(run, from, to));
  }

  private static List<Long> places(Run run, long from, long to) {
    List<Long> places = new ArrayList<>();
    JointPlaces given = run.rules().places();
    if (given instanceof JointPlaces.At at) {
      for (Length position : at.positions()) {
        if (position.units() > from && position.units() < to) {
          places.add(position.units());
        }
      }
    } else if (given instanceof JointPlaces.Bearings bearings) {
      long spacing = bearings.spacing().units();
      for (long at = bearings.first().units(); at < to; at += spacing) {
        if (at > from) {
          places.add(at);
        }
      }
    }
    return places;
  }

  boolean anywhere() {
    return run.rules().places() instanceof JointPlaces.Anywhere;
  }

  JointRules rules() {
    return run.rules();
  }

  /** What a line in one piece takes, with what its closing piece is left long. */
  long total() {
    return Math.addExact(end - start, rules().closing().leaveLong().units());
  }

  long lap() {
    return rules().joint() instanceof JointRules.Joint.Lap lap ? lap.lap().units() : 0;
  }

  /** The part of a gap that one of its two pieces may give. */
  long halfGap() {
    return rules().joint() instanceof JointRules.Joint.Butt butt ? butt.gap().units() / 2 : 0;
  }

  /** What each joint adds at least to the sum of the pieces. */
  long join() {
    return rules().joint() instanceof JointRules.Joint.Lap ? lap() : -2 * halfGap();
  }

  /** What the shortest {@code pieces} pieces that cover it add up to. */
  long leastSum(int pieces) {
    return Math.addExact(total(), Math.multiplyExact(pieces - 1L, join()));
  }

  long shortest(boolean atEnd) {
    Length shortest = atEnd ? rules().pieces().leastAtEnd() : rules().pieces().shortest();
    return Math.max(1, shortest.units());
  }

  /** The greatest permitted length of a piece where no stick gives more than {@code usable}. */
  long longest(long usable) {
    Length longest = rules().pieces().longest();
    return longest == null ? usable : Math.min(usable, longest.units());
  }
}
