package lapwright.exact;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * A solution that is changed pattern by pattern. How neat a change would leave it is told from the
 * change alone, whatever the number of patterns; a change is made where that is neater, or costs
 * less. Changes must leave every piece cut as often as before.
 */
final class NeatLayout {
  private final Reduction reduction;
  private final StickProblem problem;
  private final Map<Pattern, Integer> times = new LinkedHashMap<>();
  private final long[] sticks;
  private final TreeMap<Long, Integer> offcuts = new TreeMap<>(Collections.reverseOrder());
  private List<Layout.Use> uses;
  private long cost;
  private Neatness neatness;

  NeatLayout(Reduction reduction, Layout layout) {
    this.reduction = reduction;
    problem = reduction.reduced();
    sticks = new long[problem.stocks().size()];
    uses = layout.uses();
    uses.forEach(use -> add(use.pattern(), use.times()));
    cost = layout.cost();
    neatness = Neatness.of(reduction, layout);
  }

  /** So many sticks more, or fewer, of a pattern. */
  record Change(Pattern pattern, int more) {}

  List<Layout.Use> uses() {
    return uses;
  }

  Neatness neatness() {
    return neatness;
  }

  Layout layout() {
    Layout.Builder builder = new Layout.Builder(problem);
    times.forEach(builder::add);
    return Objects.requireNonNull(builder.buildIfComplete());
  }

  /** Makes the changes if that is neater at no more cost, or costs less. */
  boolean accept(List<Change> changes) {
    Map<Pattern, Integer> net = new LinkedHashMap<>();
    changes.forEach(change -> net.merge(change.pattern(), change.more(), Integer::sum));
    long drawn = neatness.drawn();
    int patterns = times.size();
    long[] sticksThen = sticks.clone();
    Map<Long, Integer> offcutsMore = new TreeMap<>(Collections.reverseOrder());
    for (Map.Entry<Pattern, Integer> each : net.entrySet()) {
      Pattern pattern = each.getKey();
      int before = times.getOrDefault(pattern, 0);
      int after = before + each.getValue();
      if (after > before && !Layout.isProper(problem, pattern)) {
        return false;
      }
      patterns += (after > 0 ? 1 : 0) - (before > 0 ? 1 : 0);
      sticksThen[pattern.stock()] += each.getValue();
      drawn += reduction.lengthOf(pattern.stock()) * each.getValue();
      long offcut = reduction.keptOffcut(pattern);
      if (offcut > 0) {
        offcutsMore.merge(offcut, each.getValue(), Integer::sum);
      }
    }
    long costThen = 0;
    long cash = 0;
    for (int j = 0; j < sticksThen.length; j++) {
      Stock stock = problem.stocks().get(j);
      long packs = Numbers.ceilDiv(sticksThen[j], stock.packSize());
      if (packs > stock.mostPacks()) {
        return false;
      }
      costThen = Math.addExact(costThen, Math.multiplyExact(stock.packCost(), packs));
      cash += reduction.cashOf(j, (int) packs);
    }
    Neatness then = new Neatness(cash, patterns, drawn, longest(offcutsMore));
    if (costThen > cost || (costThen == cost && then.compareTo(neatness) >= 0)) {
      return false;
    }
    changes.forEach(change -> add(change.pattern(), change.more()));
    uses = new ArrayList<>();
    times.forEach((pattern, often) -> uses.add(new Layout.Use(pattern, often)));
    cost = costThen;
    neatness = then;
    return true;
  }

  private void add(Pattern pattern, int more) {
    sticks[pattern.stock()] += more;
    if (times.merge(pattern, more, Integer::sum) == 0) {
      times.remove(pattern);
    }
    long offcut = reduction.keptOffcut(pattern);
    if (offcut > 0 && offcuts.merge(offcut, more, Integer::sum) == 0) {
      offcuts.remove(offcut);
    }
  }

  /** The longest offcuts with so many more of some. */
  private List<Long> longest(Map<Long, Integer> more) {
    List<Long> longest = new ArrayList<>();
    more.forEach(
        (offcut, often) -> {
          if (often > 0 && !offcuts.containsKey(offcut)) {
            addTo(longest, offcut, often);
          }
        });
    int enough = longest.size() + Neatness.OFFCUTS_COMPARED;
    for (Map.Entry<Long, Integer> each : offcuts.entrySet()) {
      if (longest.size() >= enough) {
        break;
      }
      addTo(longest, each.getKey(), each.getValue() + more.getOrDefault(each.getKey(), 0));
    }
    longest.sort(Collections.reverseOrder());
    return List.copyOf(longest.subList(0, Math.min(Neatness.OFFCUTS_COMPARED, longest.size())));
  }

  private static void addTo(List<Long> longest, long offcut, int often) {
    for (int k = 0; k < Math.min(Neatness.OFFCUTS_COMPARED, often); k++) {
      longest.add(offcut);
    }
  }
}
