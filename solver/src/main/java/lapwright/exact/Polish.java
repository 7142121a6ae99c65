package lapwright.exact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * Makes a solution neater at the same cost, without proof, by steps that each make it neater: two
 * patterns become one, a pattern moves to another stock, a piece moves to another stick. Ends when
 * no step helps, or after a fixed amount of work.
 */
final class Polish {
  private static final int MOST_STEPS = 60;
  private static final int MOST_TRIALS = 40_000;

  private final StickProblem problem;
  private final Reduction reduction;
  private Layout layout;
  private Neatness neatness;
  private int trials;

  private Polish(Reduction reduction, Layout layout) {
    this.reduction = reduction;
    this.problem = reduction.reduced();
    this.layout = layout;
    neatness = Neatness.of(reduction, layout);
  }

  static Layout of(Reduction reduction, Layout layout) {
    Polish polish = new Polish(reduction, layout);
    for (int step = 0; step < MOST_STEPS && polish.trials < MOST_TRIALS; step++) {
      if (!polish.joinTwo() && !polish.moveToOtherStock() && !polish.movePiece()) {
        break;
      }
    }
    return polish.layout;
  }

  /** Two patterns of a stock whose pieces divide evenly over their sticks become one. */
  private boolean joinTwo() {
    List<Layout.Use> uses = layout.uses();
    for (int a = 0; a < uses.size(); a++) {
      for (int b = a + 1; b < uses.size(); b++) {
        if (uses.get(a).pattern().stock() != uses.get(b).pattern().stock()) {
          continue;
        }
        Pattern joined = joined(uses.get(a), uses.get(b));
        if (joined != null) {
          Map<Pattern, Integer> times = times();
          int sticks = uses.get(a).times() + uses.get(b).times();
          times.remove(uses.get(a).pattern());
          times.remove(uses.get(b).pattern());
          times.merge(joined, sticks, Integer::sum);
          if (accept(times)) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private @Nullable Pattern joined(Layout.Use a, Layout.Use b) {
    int sticks = a.times() + b.times();
    Pattern first = a.pattern();
    Pattern second = b.pattern();
    for (int k = 0; k < first.kinds(); k++) {
      int pieces = first.count(k) * a.times() + second.countOf(first.item(k)) * b.times();
      if (pieces % sticks != 0) {
        return null;
      }
    }
    int[] counts = new int[problem.items().size()];
    first.addTo(counts, a.times());
    second.addTo(counts, b.times());
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] % sticks != 0) {
        return null;
      }
      counts[i] /= sticks;
    }
    return Pattern.ofCounts(first.stock(), counts);
  }

  /** All sticks of a pattern from another stock: a shorter offcut of the rack, say. */
  private boolean moveToOtherStock() {
    for (Layout.Use use : layout.uses()) {
      for (int stock = 0; stock < problem.stocks().size(); stock++) {
        if (stock != use.pattern().stock() && trials < MOST_TRIALS) {
          Map<Pattern, Integer> times = times();
          times.remove(use.pattern());
          times.merge(use.pattern().from(stock), use.times(), Integer::sum);
          if (accept(times)) {
            return true;
          }
        }
      }
    }
    return false;
  }

  /** One piece from one stick to another that has room for it. */
  private boolean movePiece() {
    List<Layout.Use> uses = layout.uses();
    for (Layout.Use from : uses) {
      for (Layout.Use to : uses) {
        if (trials >= MOST_TRIALS) {
          return false;
        }
        if (from.equals(to) || from.times() != to.times()) {
          continue;
        }
        long room = room(to.pattern());
        for (int k = 0; k < from.pattern().kinds(); k++) {
          int item = from.pattern().item(k);
          if (problem.items().get(item).size() <= room && accept(moved(from, to, item))) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private Map<Pattern, Integer> moved(Layout.Use from, Layout.Use to, int item) {
    int[] less = new int[problem.items().size()];
    from.pattern().addTo(less, 1);
    less[item]--;
    int[] more = new int[problem.items().size()];
    to.pattern().addTo(more, 1);
    more[item]++;
    Map<Pattern, Integer> times = times();
    times.remove(from.pattern());
    times.remove(to.pattern());
    Pattern rest = Pattern.ofCounts(from.pattern().stock(), less);
    if (rest.kinds() > 0) {
      times.merge(rest, from.times(), Integer::sum);
    }
    times.merge(Pattern.ofCounts(to.pattern().stock(), more), to.times(), Integer::sum);
    return times;
  }

  private long room(Pattern pattern) {
    long room = problem.stocks().get(pattern.stock()).capacity();
    for (int k = 0; k < pattern.kinds(); k++) {
      room -= pattern.count(k) * problem.items().get(pattern.item(k)).size();
    }
    return room;
  }

  private Map<Pattern, Integer> times() {
    Map<Pattern, Integer> times = new LinkedHashMap<>();
    layout.uses().forEach(use -> times.put(use.pattern(), use.times()));
    return times;
  }

  private boolean accept(Map<Pattern, Integer> times) {
    trials++;
    List<Layout.Use> changed = new ArrayList<>();
    for (Map.Entry<Pattern, Integer> entry : times.entrySet()) {
      if (!Layout.isProper(problem, entry.getKey())) {
        return false;
      }
      changed.add(new Layout.Use(entry.getKey(), entry.getValue()));
    }
    Layout.Builder builder = new Layout.Builder(problem);
    changed.forEach(use -> builder.add(use.pattern(), use.times()));
    Layout candidate = builder.buildIfComplete();
    if (candidate == null || candidate.cost() > layout.cost()) {
      return false;
    }
    Neatness neater = Neatness.of(reduction, candidate);
    if (candidate.cost() == layout.cost() && neater.compareTo(neatness) >= 0) {
      return false;
    }
    layout = candidate;
    neatness = neater;
    return true;
  }
}
