package lapwright.lots;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What comes from which lot, and what that costs.
 *
 * @param shares one for each lot that gives anything
 */
record LotChoice(List<LotShare> shares, long cost) {
  LotChoice {
    shares = List.copyOf(shares);
  }

  /** The lots that units are given; no free pieces. */
  static List<LotShare> shares(List<String> lots, Map<LotUnit, String> lotOf) {
    return lots.stream()
        .map(
            lot -> {
              Set<LotUnit> units = new LinkedHashSet<>();
              lotOf.forEach(
                  (unit, given) -> {
                    if (lot.equals(given)) {
                      units.add(unit);
                    }
                  });
              return new LotShare(lot, units);
            })
        .filter(share -> !share.isEmpty())
        .toList();
  }
}
