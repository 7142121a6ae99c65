package lapwright.lots;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.measure.Length;

/**
 * What is cut from one lot, or, without units, from several together.
 *
 * @param units that come from it whole
 * @param free how many pieces it gives beside them of those that may come from any lot, by the
 *     length that plans know them by
 */
record LotShare(Set<String> lots, Set<LotUnit> units, SortedMap<Length, Integer> free) {
  LotShare {
    lots = Collections.unmodifiableSet(new TreeSet<>(lots));
    units = Collections.unmodifiableSet(new LinkedHashSet<>(units));
    free = Collections.unmodifiableSortedMap(new TreeMap<>(free));
    if (lots.isEmpty() || (lots.size() > 1 && !units.isEmpty())) {
      throw new IllegalArgumentException(units + " from " + lots);
    }
    if (free.values().stream().anyMatch(count -> count < 1)) {
      throw new IllegalArgumentException("no pieces of a length: " + free);
    }
  }

  LotShare(String lot, Set<LotUnit> units) {
    this(Set.of(lot), units, Collections.emptySortedMap());
  }

  /** The lot, where it is one. */
  String lot() {
    return lots.iterator().next();
  }

  boolean isEmpty() {
    return units.isEmpty() && free.isEmpty();
  }
}
