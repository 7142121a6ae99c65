package lapwright.exact;

import java.util.ArrayList;
import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.exact.NeatLayout.Change;
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
  private final NeatLayout layout;
  private int trials;

  private Polish(Reduction reduction, Layout layout) {
    this.problem = reduction.reduced();
    this.layout = new NeatLayout(reduction, layout);
  }

  static Layout of(Reduction reduction, Layout layout) {
    Polish polish = new Polish(reduction, layout);
    for (int step = 0; step < MOST_STEPS && polish.trials < MOST_TRIALS; step++) {
      if (!polish.joinTwo() && !polish.moveToOtherStock() && !polish.movePiece()) {
        break;
      }
    }
    return polish.layout.layout();
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
          int sticks = uses.get(a).times() + uses.get(b).times();
          if (accept(List.of(none(uses.get(a)), none(uses.get(b)), new Change(joined, sticks)))) {
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
          Change moved = new Change(use.pattern().from(stock), use.times());
          if (accept(List.of(none(use), moved))) {
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
    long[] rooms = uses.stream().mapToLong(use -> room(use.pattern())).toArray();
    for (int f = 0; f < rooms.length; f++) {
      Layout.Use from = uses.get(f);
      for (int t = 0; t < rooms.length; t++) {
        if (trials >= MOST_TRIALS) {
          return false;
        }
        Layout.Use to = uses.get(t);
        if (f == t || from.times() != to.times()) {
          continue;
        }
        for (int k = 0; k < from.pattern().kinds(); k++) {
          int item = from.pattern().item(k);
          if (problem.items().get(item).size() <= rooms[t] && accept(moved(from, to, item))) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private List<Change> moved(Layout.Use from, Layout.Use to, int item) {
    List<Change> changes = new ArrayList<>(List.of(none(from), none(to)));
    Pattern rest = from.pattern().with(item, -1);
    if (rest.kinds() > 0) {
      changes.add(new Change(rest, from.times()));
    }
    changes.add(new Change(to.pattern().with(item, 1), to.times()));
    return changes;
  }

  private static Change none(Layout.Use use) {
    return new Change(use.pattern(), -use.times());
  }

  private long room(Pattern pattern) {
    long room = problem.stocks().get(pattern.stock()).capacity();
    for (int k = 0; k < pattern.kinds(); k++) {
      room -= pattern.count(k) * problem.items().get(pattern.item(k)).size();
    }
    return room;
  }

  private boolean accept(List<Change> changes) {
    trials++;
    return layout.accept(changes);
  }
}
