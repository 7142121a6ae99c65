package lapwright.lots;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;

/**
 * The plain pieces that may come from any lot, each by itself, by the length that plans know them
 * by. Immutable.
 */
final class FreePieces {
  private final MaterialOrder order;
  private final List<Need> needs;
  private final SortedMap<Length, Integer> counts = new TreeMap<>(Collections.reverseOrder());
  private final SortedMap<Length, Need> hardestToHold = new TreeMap<>();

  FreePieces(MaterialOrder order, List<Need> needs) {
    this.order = order;
    this.needs = List.copyOf(needs);
    for (Need need : needs) {
      Length planned = planned(need);
      counts.merge(planned, need.total(), Math::addExact);
      hardestToHold.merge(planned, need, (a, b) -> b.held().compareTo(a.held()) < 0 ? b : a);
    }
  }

  private Length planned(Need need) {
    return need.planned(order.saw().kerf());
  }

  /** How many there are of each length, the longest first. */
  SortedMap<Length, Integer> counts() {
    return Collections.unmodifiableSortedMap(counts);
  }

  /**
   * So many pieces of each length, as one job's, each as hard to hold as the hardest of its length:
   * what can be cut for these can be cut for any.
   */
  List<Need> asNeeds(SortedMap<Length, Integer> taken) {
    List<Need> made = new ArrayList<>();
    taken.forEach(
        (length, count) -> {
          Need like = Objects.requireNonNull(hardestToHold.get(length));
          made.add(
              new Need(
                  like.job(), like.due(), 1, like.mark(), like.length(), count, "", like.rules()));
        });
    return made;
  }

  /** The pieces dealt out to shares that together take all of them: for each share its needs. */
  List<List<Need>> dealt(List<LotShare> shares) {
    List<SortedMap<Length, Integer>> left = new ArrayList<>();
    List<List<Need>> dealt = new ArrayList<>();
    for (LotShare share : shares) {
      left.add(new TreeMap<>(share.free()));
      dealt.add(new ArrayList<>());
    }
    for (Need need : needs) {
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        int wanted = need.qty();
        for (int s = 0; s < shares.size() && wanted > 0; s++) {
          int taken = Math.min(wanted, left.get(s).getOrDefault(planned(need), 0));
          if (taken > 0) {
            left.get(s).merge(planned(need), -taken, Integer::sum);
            dealt.get(s).add(ofCopy(need, copy, taken));
            wanted -= taken;
          }
        }
        if (wanted > 0) {
          throw new IllegalArgumentException(wanted + " pieces of " + need + " from no lot");
        }
      }
    }
    return dealt;
  }

  private static Need ofCopy(Need need, int copy, int qty) {
    return new Need(
        need.job(),
        need.due(),
        1,
        need.mark(),
        need.length(),
        qty,
        need.purpose(),
        need.rules(),
        copy);
  }
}
