package lapwright.demand;

import java.util.ArrayList;
import java.util.List;
import lapwright.layout.Stretch;
import lapwright.layout.StretchSplits;
import lapwright.shop.MaterialOrder;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;

/**
 * How the unbroken stretches of runs may be split, from what an order offers. What sticks give that
 * the order as a whole offers decides how few joints a run may have, also in a part of it.
 */
final class StretchesOfRuns {
  private long unlimited;
  private long longest;
  private final List<Long> wholes = new ArrayList<>();
  private final List<Long> offered;

  /**
   * @param all supplies that the saw takes
   * @param offered those of them that the part is cut from
   */
  StretchesOfRuns(MaterialOrder order, List<Supply> all, List<Supply> offered) {
    for (Supply supply : all) {
      if (supply.atMost() > 0) {
        long usable = usable(order, supply);
        longest = Math.max(longest, usable);
        wholes.add(usable);
        if (supply.atMost() == Integer.MAX_VALUE) {
          unlimited = Math.max(unlimited, usable);
        }
      }
    }
    this.offered =
        offered.stream()
            .filter(supply -> supply.atMost() > 0)
            .map(supply -> usable(order, supply))
            .toList();
  }

  /** From all that an order offers. */
  static StretchesOfRuns of(MaterialOrder order) {
    List<Supply> all =
        order.supplies().stream()
            .filter(supply -> StickDemand.sawTakes(order.saw(), supply))
            .toList();
    return new StretchesOfRuns(order, all, all);
  }

  private static long usable(MaterialOrder order, Supply supply) {
    return UsableStick.of(order.material(), order.saw(), supply).usable();
  }

  /**
   * The splits of each stretch of a line.
   *
   * @throws lapwright.layout.LayoutException when no split keeps the rules
   */
  List<StretchSplits> of(RunNeed need) {
    return Stretch.of(need.run()).stream()
        .map(stretch -> StretchSplits.of(need.run(), stretch, unlimited, longest, wholes, offered))
        .toList();
  }
}
