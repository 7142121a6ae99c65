package lapwright.demand;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapwright.layout.ExpansionGaps;
import lapwright.layout.StretchSplits;
import lapwright.measure.Length;
import lapwright.shop.MaterialOrder;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;

/** What can be said of the joints of a run before anything is planned. */
public final class RunJoints {
  private RunJoints() {}

  /**
   * The lengths that full sticks give, without those that only some sticks have, as long as there
   * are others; the longest first.
   */
  public static List<Length> fullSticks(MaterialOrder order) {
    List<Supply> all =
        order.supplies().stream()
            .filter(supply -> supply.atMost() > 0 && StickDemand.sawTakes(order.saw(), supply))
            .toList();
    List<Supply> unlimited =
        all.stream().filter(supply -> supply.atMost() == Integer.MAX_VALUE).toList();
    return (unlimited.isEmpty() ? all : unlimited)
        .stream()
            .map(supply -> UsableStick.of(order.material(), order.saw(), supply).usable())
            .distinct()
            .sorted(Collections.reverseOrder())
            .map(Length::ofUnits)
            .toList();
  }

  /**
   * Where a man joins a run who lets each piece reach as far as the longest stick allows, from the
   * start on: places of the covered length, ascending. Asked for runs whose joints have given
   * places; the places of expansion gaps are among them.
   *
   * @throws lapwright.layout.LayoutException when no split keeps the rules
   */
  public static List<Length> farthestPlaces(MaterialOrder order, RunNeed need) {
    List<Length> places = new ArrayList<>(ExpansionGaps.of(need.run()));
    for (StretchSplits splits : StretchesOfRuns.of(order).of(need)) {
      splits.farthest().forEach(place -> places.add(Length.ofUnits(place)));
    }
    return places.stream().distinct().sorted().toList();
  }

  /**
   * The most joints that an unbroken stretch of a run may have.
   *
   * @throws lapwright.layout.LayoutException when no split keeps the rules
   */
  public static int mostJoints(MaterialOrder order, RunNeed need) {
    return StretchesOfRuns.of(order).of(need).stream()
        .mapToInt(splits -> splits.mostPieces() - 1)
        .max()
        .orElse(0);
  }

  /**
   * The most pieces that a line of a run may have, over all its stretches.
   *
   * @throws lapwright.layout.LayoutException when no split keeps the rules
   */
  public static int mostPieces(MaterialOrder order, RunNeed need) {
    return StretchesOfRuns.of(order).of(need).stream().mapToInt(StretchSplits::mostPieces).sum();
  }

  /**
   * What a length is easy to read by, the coarsest first: on a tape in inches, or in millimetres.
   */
  public static List<Long> tapeMarks(MaterialOrder order) {
    boolean inInches =
        order.runs().stream()
            .allMatch(
                need ->
                    need.run().rules().pieces().step().units() % Length.UNITS_PER_SIXTY_FOURTH
                        == 0);
    return inInches
        ? List.of(
            Length.UNITS_PER_INCH,
            Length.UNITS_PER_INCH / 2,
            Length.UNITS_PER_INCH / 4,
            Length.UNITS_PER_INCH / 8)
        : List.of(10 * Length.UNITS_PER_MM, 5 * Length.UNITS_PER_MM);
  }
}
