package lapwright.check;

import java.util.List;
import java.util.Map;
import java.util.Set;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;

/**
 * A part of a material's order, as decisions about lots make it.
 *
 * @param lotsOf lots that each unit may still use
 * @param stocks indices of the stocks that some of it may be cut from
 * @param shared what is decided about plain pieces that belong to no unit
 */
record BoundScope(
    Map<Unit, Set<String>> lotsOf,
    List<Need> needs,
    List<RunNeed> runs,
    List<Integer> stocks,
    SharedPieces shared) {
  /**
   * What must come from one lot.
   *
   * @param mark the run's mark; empty for a job
   */
  record Unit(String job, String mark) {}

  /** What is cut from some stocks without further decisions about lots. */
  BoundScope(List<Need> needs, List<RunNeed> runs, List<Integer> stocks) {
    this(Map.of(), needs, runs, stocks, SharedPieces.UNDECIDED);
  }
}
