package lapwright.bench.method;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Marks and arcs of an arc-flow model, sizes divided by their common divisor.
 *
 * @param arcs pieces first, by falling size, then waste between neighbouring marks
 * @param ends the mark at which sticks of each stock end; 0 when nothing fits
 */
record ArcFlowGraph(List<Arc> arcs, List<Long> ends) {
  static final int MOST_ARCS = 300_000;
  private static final int WASTE = -1;

  /**
   * A piece from mark to mark, or waste.
   *
   * @param item -1 for waste
   */
  record Arc(long from, long to, int item) {
    boolean isWaste() {
      return item == WASTE;
    }
  }

  /** What is told of a stick: its stock, and the counts of its items. */
  interface Sticks {
    void add(int stock, long[] counts);
  }

  long end(int stock) {
    return ends.get(stock);
  }

  /** The graph; null when it has more than {@link #MOST_ARCS} arcs. */
  static @Nullable ArcFlowGraph of(StickProblem problem) {
    long divisor = problem.items().stream().mapToLong(Item::size).reduce(0, ArcFlowGraph::gcd);
    long longest = problem.stocks().stream().mapToLong(Stock::capacity).max().orElse(0) / divisor;
    List<Arc> arcs = new ArrayList<>();
    // Mark -> copies of the item at hand that reach it with the fewest of them.
    NavigableMap<Long, Integer> reached = new TreeMap<>(Map.of(0L, 0));
    List<Integer> longestFirst =
        IntStream.range(0, problem.items().size())
            .boxed()
            .sorted(Comparator.comparing((Integer i) -> problem.items().get(i).size()).reversed())
            .toList();
    for (int index : longestFirst) {
      Item item = problem.items().get(index);
      long size = item.size() / divisor;
      reached.replaceAll((mark, copies) -> 0);
      Long mark = reached.firstKey();
      while (mark != null && mark + size <= longest) {
        int copies = reached.getOrDefault(mark, 0);
        if (copies < item.demand()) {
          arcs.add(new Arc(mark, mark + size, index));
          reached.merge(mark + size, copies + 1, Math::min);
          if (arcs.size() > MOST_ARCS) {
            return null;
          }
        }
        mark = reached.higherKey(mark);
      }
    }
    List<Long> ends = new ArrayList<>();
    for (Stock stock : problem.stocks()) {
      long end = Math.max(0, stock.capacity() / divisor);
      ends.add(end);
      reached.putIfAbsent(end, 0);
    }
    Long before = null;
    for (long mark : reached.keySet()) {
      if (before != null) {
        arcs.add(new Arc(before, mark, WASTE));
      }
      before = mark;
    }
    return new ArcFlowGraph(arcs, ends);
  }

  /**
   * Takes an integer flow apart into sticks.
   *
   * @param flow on each arc; used up
   * @param used sticks of each stock; used up
   */
  void paths(long[] flow, long[] used, int items, Sticks sticks) {
    Map<Long, List<Integer>> leaving = new TreeMap<>();
    for (int a = 0; a < flow.length; a++) {
      if (flow[a] > 0) {
        leaving.computeIfAbsent(arcs.get(a).from(), mark -> new ArrayList<>()).add(a);
      }
    }
    long all = 0;
    for (int j = 0; j < used.length; j++) {
      all += end(j) > 0 ? used[j] : 0;
    }
    for (long stick = 0; stick < all; stick++) {
      long[] counts = new long[items];
      int stock = walk(flow, used, leaving, counts);
      sticks.add(stock, counts);
    }
  }

  /** Follows one stick to its end, counts its pieces, and returns its stock. */
  private int walk(long[] flow, long[] used, Map<Long, List<Integer>> leaving, long[] counts) {
    long at = 0;
    while (true) {
      for (int j = 0; j < used.length; j++) {
        if (end(j) == at && at > 0 && used[j] > 0) {
          used[j]--;
          return j;
        }
      }
      Arc next = null;
      for (int a : leaving.getOrDefault(at, List.of())) {
        if (flow[a] > 0) {
          flow[a]--;
          next = arcs.get(a);
          break;
        }
      }
      if (next == null) {
        throw new IllegalStateException("the flow ends at mark " + at);
      }
      if (!next.isWaste()) {
        counts[next.item()]++;
      }
      at = next.to();
    }
  }

  private static long gcd(long a, long b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
