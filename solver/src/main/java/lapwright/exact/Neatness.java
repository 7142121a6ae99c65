package lapwright.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What decides between solutions of equal cost: less cash, fewer distinct patterns, less drawn,
 * longer kept offcuts with the longest first. (The number of cuts is the number of pieces, whatever
 * the patterns, but for pieces that end exactly at a good end.)
 *
 * @param drawn sum of the lengths of the sticks that are cut
 * @param offcuts those that are kept, longest first
 */
record Neatness(long cash, int patterns, long drawn, List<Long> offcuts)
    implements Comparable<Neatness> {
  static final int OFFCUTS_COMPARED = 8;

  static Neatness of(Reduction reduction, Layout layout) {
    long cash = 0;
    for (int j = 0; j < layout.packs().size(); j++) {
      cash += reduction.cashOf(j, layout.packs().get(j));
    }
    long drawn = 0;
    List<Long> offcuts = new ArrayList<>();
    for (Layout.Use use : layout.uses()) {
      drawn += reduction.lengthOf(use.pattern().stock()) * use.times();
      long offcut = reduction.keptOffcut(use.pattern());
      for (int k = 0; offcut > 0 && k < Math.min(OFFCUTS_COMPARED, use.times()); k++) {
        offcuts.add(offcut);
      }
    }
    offcuts.sort(Comparator.reverseOrder());
    return new Neatness(
        cash,
        layout.uses().size(),
        drawn,
        List.copyOf(offcuts.subList(0, Math.min(OFFCUTS_COMPARED, offcuts.size()))));
  }

  /** Smaller is neater. */
  @Override
  public int compareTo(Neatness other) {
    int order = Long.compare(cash, other.cash);
    order = order != 0 ? order : Integer.compare(patterns, other.patterns);
    order = order != 0 ? order : Long.compare(drawn, other.drawn);
    for (int k = 0; order == 0 && k < Math.max(offcuts.size(), other.offcuts.size()); k++) {
      long mine = k < offcuts.size() ? offcuts.get(k) : 0;
      long theirs = k < other.offcuts.size() ? other.offcuts.get(k) : 0;
      order = Long.compare(theirs, mine);
    }
    return order;
  }
}
