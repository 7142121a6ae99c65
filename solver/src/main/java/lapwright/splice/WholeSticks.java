package lapwright.splice;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Arc;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Splits into whole sticks and one closing piece, as a graph; and where they are all that an
 * optimal solution needs.
 *
 * <p>With joints anywhere and at most k pieces, let U be the longest usable length of any stick, s
 * the shortest permitted piece, the hold, or one unit, whichever is most, and c what is left beside
 * k - 1 pieces of length U. Take two pieces a and b of one line that do not fill their sticks, cut
 * from sticks of usable lengths U1 and U2 beside other pieces X and Y. If a + b is at least U1 + s,
 * let the first stick give one piece a' = U1 and the second b' = a + b - U1 beside X and Y. It
 * fits, since a + X &lt;= U1; the same sticks serve the same lines, and one more piece is a whole
 * stick. So in some optimal solution any two pieces of a line that are not whole sticks are
 * together shorter than U + s, and m of them shorter than m / 2 (U + s). But they are at least c +
 * (m - 1) U long together. So there are fewer than m of them, m &gt; 1, where 2 c + (m - 2) U &gt;=
 * m s.
 */
final class WholeSticks {
  private static final int MOST_ARCS = 3_000;

  private WholeSticks() {}

  /**
   * The most pieces of a line, up to 2, that need not be whole sticks in some optimal solution; 3
   * when that may take more.
   */
  static int others(SpliceProblem problem, Group group) {
    if (!(group.splits() instanceof Anywhere rules)
        || group.apart() > 0
        || rules.longest() < problem.longestUsable()
        || rules.shortestAtEnd() > rules.shortest()) {
      return 3;
    }
    int k = rules.mostPieces();
    long longest = problem.longestUsable();
    long shortest = shortest(problem, rules);
    long closing = rules.sumOf(k) - (k - 1) * longest;
    return closing >= shortest
        ? 1
        : closing >= 0 && 2 * closing + longest >= 3 * shortest && longest >= rules.join() ? 2 : 3;
  }

  /** No piece that is cut anew is shorter. */
  static long shortest(SpliceProblem problem, Anywhere rules) {
    return Math.max(1, Math.max(rules.shortest(), problem.hold()));
  }

  /** The graph; null when it is too large. */
  static @Nullable GraphChoice graph(SpliceProblem problem, Anywhere rules) {
    return graph(problem, rules, lengths(problem, rules));
  }

  /** What whole sticks give, the longest first, where a line may use it. */
  static List<Long> lengths(SpliceProblem problem, Anywhere rules) {
    TreeSet<Long> distinct = new TreeSet<>(Collections.reverseOrder());
    for (Stock stock : problem.stocks()) {
      long usable = stock.capacity() - problem.cut();
      if (stock.mostPacks() > 0 && usable >= rules.shortest() && usable <= rules.longest()) {
        distinct.add(usable);
      }
    }
    return List.copyOf(distinct);
  }

  /**
   * The graph of splits that use only some of the lengths of whole sticks; null when too large.
   *
   * @param wholes the longest first
   */
  static @Nullable GraphChoice graph(SpliceProblem problem, Anywhere rules, List<Long> wholes) {
    long longest = Math.min(rules.longest(), problem.longestUsable());
    Map<Node, Integer> numbers = new LinkedHashMap<>();
    List<Edge> edges = new ArrayList<>();
    Deque<Node> open = new ArrayDeque<>();
    Node start = new Node(0, 0, 0);
    numbers.put(start, 0);
    open.add(start);
    while (!open.isEmpty()) {
      Node node = open.remove();
      int pieces = node.pieces() + 1;
      long closing = rules.sumOf(pieces) - node.sum();
      if (closing >= rules.shortestAtEnd() && closing <= longest) {
        edges.add(new Edge(node, null, closing));
      }
      for (int w = node.from(); w < wholes.size() && pieces < rules.mostPieces(); w++) {
        if (pieces == 1 && wholes.get(w) < rules.shortestAtEnd()) {
          continue; // the longest of them lies at an end
        }
        Node next = new Node(pieces, w, node.sum() + wholes.get(w));
        if (rules.sumOf(rules.mostPieces()) - next.sum() < 1) {
          continue;
        }
        if (numbers.putIfAbsent(next, numbers.size()) == null) {
          open.add(next);
        }
        edges.add(new Edge(node, next, wholes.get(w)));
        if (edges.size() > MOST_ARCS) {
          return null;
        }
      }
    }
    int sink = numbers.size();
    List<Arc> arcs = new ArrayList<>();
    for (Edge edge : edges) {
      int from = numbers.getOrDefault(edge.from(), 0);
      int to = edge.to() == null ? sink : numbers.getOrDefault(edge.to(), 0);
      arcs.add(new Arc(from, to, edge.length()));
    }
    return new GraphChoice(sink + 1, arcs);
  }

  /** Whole sticks laid so far, the index of the last one's length, and what they add up to. */
  private record Node(int pieces, int from, long sum) {}

  private record Edge(Node from, @Nullable Node to, long length) {}
}
