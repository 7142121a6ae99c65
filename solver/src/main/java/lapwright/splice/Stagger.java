package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.LongPredicate;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Arc;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceProblem.Splits.Graph;
import lapwright.problem.SpliceSolution.Split;
import org.jspecify.annotations.Nullable;

/**
 * Splits for lines whose neighbours must keep their joints apart: two that take turns, the cheapest
 * such pair at given prices. The bound does without the rule.
 */
final class Stagger {
  private static final int MOST_PATHS = 400;
  private static final int MOST_SHIFTS = 64;

  private final SpliceProblem problem;
  private final Group group;
  private final long longest;

  Stagger(SpliceProblem problem, Group group) {
    this.problem = problem;
    this.group = group;
    this.longest = problem.longestUsable();
  }

  /** Two splits, in order along the line; the first serves the odd lines. */
  record Pair(List<Long> odd, List<Long> even) {
    /** The splits of so many lines; one where both are alike. */
    List<Split> splits(int lines) {
      return lines == 1 || odd.equals(even)
          ? List.of(new Split(odd, lines))
          : List.of(new Split(odd, (lines + 1) / 2), new Split(even, lines / 2));
    }
  }

  private record Laid(List<Long> lengths, List<Long> joints, double price) {}

  /**
   * The cheapest pair.
   *
   * @param known splits that are worth trying, in any order of their pieces
   * @return null when no two of the splits that were tried keep their joints apart
   */
  @Nullable Pair cheapest(List<List<Long>> known, LengthPrices prices) {
    List<Laid> laid =
        group.splits() instanceof Graph graph
            ? paths(graph, prices)
            : orders((Anywhere) group.splits(), known, prices);
    laid.removeIf(each -> !isWithin(each.joints()));
    List<Laid> firsts = laid.stream().filter(each -> isApart(each.joints())).toList();
    Pair best = null;
    double least = Double.POSITIVE_INFINITY;
    int odd = (group.lines() + 1) / 2;
    for (Laid one : firsts) {
      for (Laid other : laid) {
        double price = odd * one.price() + (group.lines() - odd) * other.price();
        if (price < least && (group.lines() == 1 || areApart(one, other))) {
          least = price;
          best = new Pair(one.lengths(), other.lengths());
        }
      }
    }
    return best;
  }

  private boolean isWithin(List<Long> joints) {
    return joints.stream().allMatch(at -> at >= group.beside().from() && at <= group.beside().to());
  }

  /** True when the line that is settled stands far enough from these joints. */
  private boolean isApart(List<Long> joints) {
    List<List<Long>> settled = group.beside().settled();
    return settled.isEmpty() || areApart(joints, settled.get(0));
  }

  private boolean areApart(Laid one, Laid other) {
    return areApart(one.joints(), other.joints());
  }

  private boolean areApart(List<Long> one, List<Long> other) {
    for (long a : one) {
      for (long b : other) {
        if (Math.abs(a - b) < group.apart()) {
          return false;
        }
      }
    }
    return true;
  }

  private static double price(List<Long> lengths, LengthPrices prices) {
    double sum = 0;
    for (long length : lengths) {
      sum += prices.of(length);
    }
    return sum;
  }

  private List<Laid> paths(Graph graph, LengthPrices prices) {
    List<Laid> found = new ArrayList<>();
    for (List<Long> settled : group.beside().settled()) {
      List<Laid> like = new ArrayList<>();
      follow(graph, settled::contains, 0, new ArrayList<>(), new ArrayList<>(), prices, like);
      found.addAll(like);
    }
    List<Laid> any = new ArrayList<>();
    follow(graph, place -> true, 0, new ArrayList<>(), new ArrayList<>(), prices, any);
    found.addAll(any);
    return found;
  }

  private static void follow(
      Graph graph,
      LongPredicate mayJoinAt,
      int node,
      List<Long> lengths,
      List<Long> joints,
      LengthPrices prices,
      List<Laid> found) {
    if (found.size() >= MOST_PATHS) {
      return;
    }
    int last = graph.positions().size() - 1;
    if (node == last) {
      found.add(new Laid(List.copyOf(lengths), List.copyOf(joints), price(lengths, prices)));
      return;
    }
    for (Arc arc : graph.arcs()) {
      if (arc.from() == node
          && (arc.to() == last || mayJoinAt.test(graph.positions().get(arc.to())))) {
        lengths.add(arc.length());
        if (arc.to() < last) {
          joints.add(graph.positions().get(arc.to()));
        }
        follow(graph, mayJoinAt, arc.to(), lengths, joints, prices, found);
        lengths.remove(lengths.size() - 1);
        if (arc.to() < last) {
          joints.remove(joints.size() - 1);
        }
      }
    }
  }

  /** Known splits laid either way round, and splits that begin with a piece cut to stagger them. */
  private List<Laid> orders(Anywhere rules, List<List<Long>> known, LengthPrices prices) {
    List<Laid> found = new ArrayList<>();
    for (List<Long> settled : group.beside().settled()) {
      add(found, rules, like(settled, rules, 0), prices);
      add(found, rules, like(settled, rules, group.beside().earlier()), prices);
    }
    for (List<Long> split : known) {
      List<Long> forward = new ArrayList<>(split);
      forward.sort(Collections.reverseOrder());
      add(found, rules, forward, prices);
      List<Long> backward = new ArrayList<>(forward);
      Collections.reverse(backward);
      add(found, rules, backward, prices);
      int n = forward.size();
      int shifts = n > 1 && !rules.othersWhole() ? MOST_SHIFTS : 0;
      long inner = 0;
      for (int i = 1; i < n - 1; i++) {
        inner += forward.get(i);
      }
      for (int shift = 1; shift <= shifts; shift++) {
        long first = (shift * group.apart() + rules.step() - 1) / rules.step() * rules.step();
        List<Long> shifted = new ArrayList<>(forward);
        shifted.set(0, first);
        shifted.set(n - 1, rules.sumOf(n) - first - inner);
        add(found, rules, shifted, prices);
      }
    }
    if (!rules.othersWhole()) {
      int fewest = 1;
      while (fewest < rules.mostPieces()
          && fewest * Math.min(longest, rules.longest()) < rules.sumOf(fewest)) {
        fewest++;
      }
      addEven(found, rules, fewest, prices);
      if (rules.mostPieces() > fewest) {
        addEven(found, rules, rules.mostPieces(), prices);
      }
    }
    return found;
  }

  /** The lengths of a line with these joints, which begins so much before the others. */
  private static List<Long> like(List<Long> joints, Anywhere rules, long earlier) {
    List<Long> lengths = new ArrayList<>();
    long from = -earlier;
    for (long at : joints) {
      if (at > 0 && at < rules.total() - earlier) {
        lengths.add(at - from);
        from = at - rules.join();
      }
    }
    lengths.add(rules.total() - earlier - from);
    return lengths;
  }

  /**
   * Splits of equal pieces but for the first, which staggers them, and what is left for the last.
   */
  private void addEven(List<Laid> found, Anywhere rules, int pieces, LengthPrices prices) {
    long sum = rules.sumOf(pieces);
    for (int shift = 0; pieces > 1 && shift <= MOST_SHIFTS; shift++) {
      long wanted = shift == 0 ? sum / pieces : shift * group.apart();
      long first = (wanted + rules.step() - 1) / rules.step() * rules.step();
      long each = (sum - first) / (pieces - 1) / rules.step() * rules.step();
      List<Long> lengths = new ArrayList<>(Collections.nCopies(pieces, each));
      lengths.set(0, first);
      lengths.set(pieces - 1, sum - first - (pieces - 2) * each);
      add(found, rules, lengths, prices);
    }
  }

  private void add(List<Laid> found, Anywhere rules, List<Long> lengths, LengthPrices prices) {
    int closing = rules.othersWhole() ? problem.closing(group, lengths) : lengths.size() - 1;
    if (closing < 0) {
      return;
    }
    long offStep =
        lengths.stream()
            .filter(length -> length % rules.step() != 0 && !problem.isWhole(length))
            .count();
    if (offStep > 1) {
      return;
    }
    List<Long> joints = new ArrayList<>();
    long at = closing == 0 && lengths.size() > 1 ? -group.beside().earlier() : 0;
    for (int i = 0; i < lengths.size(); i++) {
      boolean atEnd = i == 0 || i == lengths.size() - 1;
      long length = lengths.get(i);
      if (length < (atEnd ? rules.shortestAtEnd() : rules.shortest())
          || length > Math.min(longest, rules.longest())) {
        return;
      }
      at += length - (i > 0 ? rules.join() : 0);
      if (i < lengths.size() - 1) {
        joints.add(at);
      }
    }
    found.add(new Laid(List.copyOf(lengths), joints, price(lengths, prices)));
  }
}
