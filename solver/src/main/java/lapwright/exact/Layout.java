package lapwright.exact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * A complete solution of a reduced problem: every item is cut exactly as often as demanded, every
 * pattern is proper, no more packs are used than there are.
 *
 * @param uses distinct patterns with how often each is cut
 * @param packs packs of each stock, the fewest that hold the patterns
 */
record Layout(List<Use> uses, List<Integer> packs, long cost) {
  Layout {
    uses = List.copyOf(uses);
    packs = List.copyOf(packs);
  }

  /** A pattern and how often it is cut, at least once. */
  record Use(Pattern pattern, int times) {}

  /** True when a pattern with these items may be cut from the stock. */
  static boolean isProper(StickProblem problem, Pattern pattern) {
    Stock stock = problem.stocks().get(pattern.stock());
    long total = 0;
    boolean other = false;
    for (int k = 0; k < pattern.kinds(); k++) {
      StickProblem.Item item = problem.items().get(pattern.item(k));
      total += item.size() * pattern.count(k);
      other |= !item.small();
    }
    if (total > stock.capacity()) {
      return false;
    }
    return other
        || total <= stock.smallCapacity()
        || (stock.wholeUse() && pattern.pieces() == 1 && total == stock.capacity());
  }

  /** Collects patterns. */
  static final class Builder {
    private final StickProblem problem;
    private final Map<Pattern, Integer> times = new LinkedHashMap<>();

    Builder(StickProblem problem) {
      this.problem = problem;
    }

    Builder(StickProblem problem, Builder other) {
      this.problem = problem;
      times.putAll(other.times);
    }

    void add(Pattern pattern, int often) {
      if (often > 0 && pattern.kinds() > 0) {
        times.merge(pattern, often, Integer::sum);
      }
    }

    /** What is still to be cut: negative where too much is cut. */
    int[] left() {
      int[] left = new int[problem.items().size()];
      for (int i = 0; i < left.length; i++) {
        left[i] = problem.items().get(i).demand();
      }
      times.forEach((pattern, often) -> pattern.addTo(left, -often));
      return left;
    }

    /** Sticks of each stock in use. */
    long[] sticks() {
      long[] sticks = new long[problem.stocks().size()];
      times.forEach((pattern, often) -> sticks[pattern.stock()] += often);
      return sticks;
    }

    /** The solution; null when something is missing, too much or not allowed. */
    @Nullable Layout buildIfComplete() {
      for (int rest : left()) {
        if (rest != 0) {
          return null;
        }
      }
      long[] sticks = sticks();
      List<Integer> packs = new ArrayList<>();
      long cost = 0;
      for (int j = 0; j < sticks.length; j++) {
        Stock stock = problem.stocks().get(j);
        long needed = Numbers.ceilDiv(sticks[j], stock.packSize());
        if (needed > stock.mostPacks()) {
          return null;
        }
        packs.add((int) needed);
        cost = Math.addExact(cost, Math.multiplyExact(stock.packCost(), needed));
      }
      List<Use> uses = new ArrayList<>();
      for (Map.Entry<Pattern, Integer> entry : times.entrySet()) {
        if (!isProper(problem, entry.getKey())) {
          return null;
        }
        uses.add(new Use(entry.getKey(), entry.getValue()));
      }
      return new Layout(uses, packs, cost);
    }
  }
}
