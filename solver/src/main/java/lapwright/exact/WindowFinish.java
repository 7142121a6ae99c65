package lapwright.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapwright.colgen.Master;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Completes a solution within the window of what may be wasted: settles how many sticks of each
 * stock are still used, near to the relaxation of what is left and at no more than a given cost,
 * and dives over the patterns that so many sticks allow. Where prices follow lengths, nearly
 * nothing may be wasted then, which a dive over all patterns does not see.
 *
 * <p>For stocks that are sold singly.
 */
final class WindowFinish {
  private static final int CHOICES = 2;
  private static final int DIVES = 2;

  private final StickProblem problem;
  private final PackLimits limits;
  private final Effort effort;
  private long[] most = new long[0];
  private double[] wanted = new double[0];
  private long[] taken = new long[0];
  private List<Choice> choices = new ArrayList<>();

  WindowFinish(StickProblem problem, PackLimits limits, Effort effort) {
    this.problem = problem;
    this.limits = limits;
    this.effort = effort;
  }

  /** True when the problem is of the kind that it is for. */
  static boolean suits(StickProblem problem) {
    return problem.stocks().size() > 1
        && problem.stocks().stream().allMatch(stock -> stock.packSize() == 1)
        && problem.items().stream().noneMatch(Item::small);
  }

  private record Choice(List<Long> sticks, double distance) {}

  /**
   * A complete solution at no more than the goal; null when none is found.
   *
   * @param master of what is left of {@code begun}, and its last solution
   */
  @Nullable Layout finish(
      Layout.Builder begun, Master master, Master.Solution solution, long goal) {
    int[] left = begun.left();
    long[] used = begun.sticks();
    int n = used.length;
    wanted = new double[n];
    most = new long[n];
    taken = new long[n];
    choices = new ArrayList<>();
    long rest = goal;
    for (int j = 0; j < n; j++) {
      most[j] = limits.most(j) - used[j];
      rest -= used[j] * problem.stocks().get(j).packCost();
    }
    for (int index = 0; index < master.patternCount(); index++) {
      wanted[master.pattern(index).stock()] += solution.times(index);
    }
    List<Item> items = new ArrayList<>();
    List<Integer> kinds = new ArrayList<>();
    long length = 0;
    for (int i = 0; i < left.length; i++) {
      if (left[i] > 0) {
        Item item = problem.items().get(i);
        items.add(new Item(item.size(), left[i], false));
        kinds.add(i);
        length += item.size() * left[i];
      }
    }
    choose(0, rest, length, 0);
    choices.sort(Comparator.comparingDouble(Choice::distance));
    StickProblem what = new StickProblem(items, problem.stocks(), 0);
    for (int c = 0; c < choices.size() && c < CHOICES && !effort.spent(); c++) {
      Layout found = new Sufficiency(what, effort).byDiving(choices.get(c).sticks(), DIVES);
      if (found != null) {
        return together(begun, found, kinds);
      }
    }
    return null;
  }

  private @Nullable Layout together(Layout.Builder begun, Layout found, List<Integer> kinds) {
    Layout.Builder builder = new Layout.Builder(problem, begun);
    for (Layout.Use use : found.uses()) {
      int[] counts = new int[problem.items().size()];
      for (int k = 0; k < use.pattern().kinds(); k++) {
        counts[kinds.get(use.pattern().item(k))] = use.pattern().count(k);
      }
      builder.add(Pattern.ofCounts(use.pattern().stock(), counts), use.times());
    }
    return builder.buildIfComplete();
  }

  /** Sticks near to what is wanted, of enough length, at no more than what is left to spend. */
  private void choose(int stock, long money, long length, double distance) {
    if (money < 0) {
      return;
    }
    if (stock == taken.length) {
      if (length <= 0) {
        List<Long> sticks = new ArrayList<>();
        for (long count : taken) {
          sticks.add(count);
        }
        choices.add(new Choice(sticks, distance));
      }
      return;
    }
    Stock of = problem.stocks().get(stock);
    long from = Math.max(0, (long) Math.floor(wanted[stock]) - 1);
    long to = Math.min(most[stock], (long) Math.ceil(wanted[stock]) + 1);
    for (long count = from; count <= to; count++) {
      taken[stock] = count;
      choose(
          stock + 1,
          money - count * of.packCost(),
          length - count * of.capacity(),
          distance + Math.abs(count - wanted[stock]));
    }
    taken[stock] = 0;
  }
}
