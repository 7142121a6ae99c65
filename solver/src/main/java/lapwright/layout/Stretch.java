package lapwright.layout;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointRules;
import lapwright.shop.Run;

/**
 * A part of a line that no expansion gap interrupts. Positions are in units of length from the
 * start of the line's covered length; what is added at the start lies before 0.
 *
 * @param start where its first piece starts
 * @param end where its last piece ends
 * @param places where joints may stand, ascending, strictly within; empty when they go anywhere
 * @param anywhere true when joints go anywhere
 */
public record Stretch(long start, long end, List<Long> places, boolean anywhere) {
  public Stretch {
    places = List.copyOf(places);
    if (end <= start) {
      throw new IllegalArgumentException("a stretch from " + start + " to " + end);
    }
  }

  public long length() {
    return end - start;
  }

  /**
   * The stretches of each line of a run, in order.
   *
   * @throws LayoutException when no permitted places leave stretches that are short enough, or a
   *     gap is as wide as a stretch
   */
  public static List<Stretch> of(Run run) {
    JointRules rules = run.rules();
    boolean anywhere = rules.places().isAnywhere();
    List<Length> places = rules.places().within(run.length());
    List<Stretch> stretches = new ArrayList<>();
    long from = 0;
    long start = -run.addAtStart().units();
    JointRules.Expansion expansion = rules.expansion();
    long gap = expansion == null ? 0 : expansion.gap().units();
    for (Length at : ExpansionGaps.of(run)) {
      long room = at.units() - from;
      if (gap >= room || gap >= run.length().units() - at.units()) {
        throw new LayoutException(
            "gap",
            "an expansion gap is wider than the stretch beside it",
            "make gap less than {}",
            Length.ofUnits(Math.min(room, run.length().units() - at.units())));
      }
      stretches.add(
          new Stretch(start, at.units() - gap / 2, within(places, from, at.units()), anywhere));
      from = at.units();
      start = at.units() + gap - gap / 2;
    }
    long covered = run.length().units();
    stretches.add(
        new Stretch(
            start, covered + run.addAtEnd().units(), within(places, from, covered), anywhere));
    return stretches;
  }

  private static List<Long> within(List<Length> places, long from, long to) {
    return places.stream().map(Length::units).filter(p -> p > from && p < to).toList();
  }
}
