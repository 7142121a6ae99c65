package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Where classes of lengths begin: at the lengths of plain pieces and at those that splits may use,
 * and evenly where splits may use any; when these are many, at some of them, evenly by rank.
 */
final class ClassStarts {
  private static final int EVENLY = 40;

  private ClassStarts() {}

  /**
   * Starts, ascending.
   *
   * @param most at most about so many
   * @param step of the pieces with joints anywhere; 0 when there are none
   */
  static SortedSet<Long> of(SpliceProblem problem, List<Choice> choices, int most, long step) {
    TreeSet<Long> lengths = new TreeSet<>();
    for (Item item : problem.plain()) {
      lengths.add(item.size() - problem.cut());
    }
    choices.forEach(choice -> lengths.addAll(choice.lengths()));
    long longest = problem.longestUsable();
    if (step > 0) {
      long apart = Math.max(1, longest / EVENLY / step) * step;
      for (long length = apart; length <= longest; length += apart) {
        lengths.add(length);
      }
    }
    TreeSet<Long> starts = new TreeSet<>();
    List<Long> all = new ArrayList<>(lengths);
    int n = all.size();
    for (int i = 0; i < Math.min(n, most); i++) {
      starts.add(all.get((int) ((long) i * n / Math.min(n, most))));
    }
    for (Stock stock : problem.stocks()) {
      long usable = stock.capacity() - problem.cut();
      if (usable > 0) {
        starts.add(usable);
      }
    }
    starts.removeIf(length -> length <= 0 || length > longest);
    return starts;
  }
}
