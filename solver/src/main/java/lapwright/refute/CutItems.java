package lapwright.refute;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The items that occur in some cuts by rounding, and every combination of them that fits a stick.
 * What a cut takes from a pattern depends on its combination alone, so that pricing under cuts is
 * pricing the other items beside each combination.
 *
 * <p>Immutable.
 */
final class CutItems {
  private final List<RoundingCut> cuts;
  private final int[] items;
  private final int[] sizes;

  /** By combination: counts of the items, and what each cut rounds to. */
  private final List<int[]> counts = new ArrayList<>();

  private final List<int[]> rounded = new ArrayList<>();
  private final List<Integer> lengths = new ArrayList<>();

  private CutItems(Question question, List<RoundingCut> cuts) {
    this.cuts = List.copyOf(cuts);
    TreeSet<Integer> all = new TreeSet<>();
    cuts.forEach(cut -> all.addAll(cut.items()));
    items = all.stream().mapToInt(i -> i).toArray();
    sizes = Arrays.stream(items).map(question::size).toArray();
  }

  /** No cuts at all. */
  static CutItems none(Question question) {
    CutItems none = new CutItems(question, List.of());
    none.extend(question, 0, 0, new int[0], 1);
    return none;
  }

  /** For these cuts; null when there are more combinations than so many. */
  static @Nullable CutItems of(Question question, List<RoundingCut> cuts, int most) {
    CutItems made = new CutItems(question, cuts);
    return made.extend(question, 0, 0, new int[made.items.length], most) ? made : null;
  }

  private boolean extend(Question question, int at, int length, int[] count, int most) {
    if (at == items.length) {
      counts.add(count.clone());
      lengths.add(length);
      int[] floors = new int[cuts.size()];
      for (int c = 0; c < floors.length; c++) {
        floors[c] = cuts.get(c).of(items, count);
      }
      rounded.add(floors);
      return counts.size() <= most;
    }
    boolean goesOn = true;
    for (int k = 0;
        goesOn && k <= question.demand(items[at]) && length + k * sizes[at] <= question.longest();
        k++) {
      count[at] = k;
      goesOn = extend(question, at + 1, length + k * sizes[at], count, most);
    }
    count[at] = 0;
    return goesOn;
  }

  List<RoundingCut> cuts() {
    return cuts;
  }

  /** Ascending; shared, not to be changed. */
  int[] items() {
    return items;
  }

  boolean holds(int item) {
    return Arrays.binarySearch(items, item) >= 0;
  }

  /** Number of combinations, the empty one included. */
  int count() {
    return counts.size();
  }

  /** What a combination measures. */
  int length(int combination) {
    return lengths.get(combination);
  }

  int countOf(int combination, int item) {
    return counts.get(combination)[Arrays.binarySearch(items, item)];
  }

  /** Weights of a combination less what the cuts take. */
  long value(int combination, int[] weights, long[] cutDuals) {
    long value = 0;
    int[] count = counts.get(combination);
    for (int k = 0; k < items.length; k++) {
      value += (long) count[k] * weights[items[k]];
    }
    int[] floors = rounded.get(combination);
    for (int c = 0; c < floors.length; c++) {
      value -= floors[c] * cutDuals[c];
    }
    return value;
  }

  /** Adds the items of a combination to counts. */
  void addTo(int[] countOfItem, int combination) {
    int[] count = counts.get(combination);
    for (int k = 0; k < items.length; k++) {
      countOfItem[items[k]] += count[k];
    }
  }
}
