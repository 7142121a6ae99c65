package lapwright.allot;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * The order in which tickets are cut: first due first, then so that the stop moves least; tickets
 * that differ only in whose pieces they give follow each other.
 */
final class TicketOrder {
  private static final Comparator<Draft> LONGEST_FIRST =
      Comparator.comparing(Draft::firstStop)
          .reversed()
          .thenComparing(Draft::lastStop, Comparator.reverseOrder())
          .thenComparing(Draft::times, Comparator.reverseOrder())
          .thenComparing(Draft::supply);

  private TicketOrder() {}

  static List<Draft> sort(Collection<Draft> drafts) {
    Map<Integer, List<Draft>> byRank = new TreeMap<>();
    drafts.forEach(
        draft -> byRank.computeIfAbsent(draft.dueRank(), rank -> new ArrayList<>()).add(draft));
    List<Draft> sorted = new ArrayList<>();
    Length stop = null;
    for (List<Draft> sameDay : byRank.values()) {
      sameDay.sort(LONGEST_FIRST);
      while (!sameDay.isEmpty()) {
        Draft next = sameDay.remove(nearest(sameDay, stop));
        sorted.add(next);
        for (Iterator<Draft> others = sameDay.iterator(); others.hasNext(); ) {
          Draft other = others.next();
          if (other.isCutLike(next)) {
            sorted.add(other);
            others.remove();
          }
        }
        stop = next.lastStop();
      }
    }
    return sorted;
  }

  private static int nearest(List<Draft> drafts, @Nullable Length stop) {
    int nearest = 0;
    if (stop != null) {
      long least = Long.MAX_VALUE;
      for (int d = 0; d < drafts.size(); d++) {
        long move = Math.abs(drafts.get(d).firstStop().minus(stop).units());
        if (move < least) {
          least = move;
          nearest = d;
        }
      }
    }
    return nearest;
  }
}
