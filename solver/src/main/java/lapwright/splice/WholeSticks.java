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
 * Splits into whole sticks and one closing piece, as a graph.
 *
 * <p>With joints anywhere and at most k pieces, some optimal solution uses nothing else if what is
 * left beside k - 1 pieces of the longest usable length of any stick is at least the shortest
 * permitted piece, the hold, and one unit. For take two pieces a and b of one line that do not fill
 * their sticks, cut from sticks of usable lengths U1 and U2 beside other pieces X and Y: let the
 * first stick give one piece a' = U1 and the second b' = a + b - U1 beside X and Y. It fits, since
 * a + X &lt;= U1; the same sticks serve the same lines, and one more piece is a whole stick. The
 * condition keeps b' long enough, and it says that every split has just k pieces.
 */
final class WholeSticks {
  private static final int MOST_ARCS = 3_000;

  private WholeSticks() {}

  /** True when whole sticks and one closing piece are all that an optimal solution needs. */
  static boolean suffice(SpliceProblem problem, Group group) {
    if (!(group.splits() instanceof Anywhere rules) || group.apart() > 0) {
      return false;
    }
    int k = rules.mostPieces();
    long longest = problem.longestUsable();
    long closing = rules.sumOf(k) - (k - 1) * longest;
    return rules.longest() >= longest
        && rules.shortestAtEnd() <= rules.shortest()
        && closing >= Math.max(1, Math.max(rules.shortest(), problem.hold()));
  }

  /** The graph; null when it is too large. */
  static @Nullable GraphChoice graph(SpliceProblem problem, Anywhere rules) {
    TreeSet<Long> distinct = new TreeSet<>(Collections.reverseOrder());
    for (Stock stock : problem.stocks()) {
      long usable = stock.capacity() - problem.cut();
      if (stock.mostPacks() > 0 && usable >= rules.shortest() && usable <= rules.longest()) {
        distinct.add(usable);
      }
    }
    return graph(problem, rules, List.copyOf(distinct));
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
