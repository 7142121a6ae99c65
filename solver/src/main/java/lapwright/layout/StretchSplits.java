package lapwright.layout;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Run;
import org.jspecify.annotations.Nullable;

/**
 * How one stretch of a run may be split.
 *
 * @param stretch the stretch, without what its closing piece is left long
 * @param total what a line in one piece takes, with what the closing piece is left long
 * @param join what each joint adds to the sum of the planned pieces; less than 0 for gaps
 * @param mostPieces at least 1
 * @param limits of planned pieces; none longer than any stick gives
 * @param graph all splits where joints have given places; null where joints go anywhere
 */
public record StretchSplits(
    Run run,
    Stretch stretch,
    long total,
    long join,
    int mostPieces,
    PieceLimits limits,
    @Nullable JointGraph graph) {

  /**
   * The splits of a stretch.
   *
   * @param unlimited the longest piece that sticks give which can be had without limit; 0 when
   *     there are none
   * @param longest the longest piece that any stick gives
   * @param wholes what whole sticks give
   * @param offered the same of those sticks that this stretch may be cut from
   * @throws LayoutException when no split keeps the rules
   */
  public static StretchSplits of(
      Run run,
      Stretch stretch,
      long unlimited,
      long longest,
      List<Long> wholes,
      List<Long> offered) {
    JointRules rules = run.rules();
    Seam seam = Seam.of(rules.joint());
    long total = Math.addExact(stretch.length(), rules.closing().leaveLong().units());
    PieceLimits forCount = PieceLimits.of(rules.pieces(), unlimited > 0 ? unlimited : longest);
    PieceLimits limits = PieceLimits.of(rules.pieces(), longest);
    if (stretch.anywhere()) {
      refuseTooLong(rules.pieces(), limits, total, seam.join());
    }
    int most = mostPieces(run, stretch, seam, total, forCount, wholes);
    JointGraph graph =
        stretch.anywhere()
            ? null
            : JointGraph.of(stretch, seam, limits, rules.closing(), most, offered);
    return new StretchSplits(run, stretch, total, seam.join(), most, limits, graph);
  }

  /** The least length that a piece may have is no longer than what some stick gives. */
  private static void refuseTooLong(
      JointRules.Pieces rules, PieceLimits limits, long total, long join) {
    boolean asAtEnd = rules.shortestAtEnd() != null;
    boolean inTwo = Math.addExact(total, join) <= 2 * limits.longest();
    String rule =
        limits.shortestAtEnd() > limits.longest()
            ? asAtEnd ? "shortest-at-end" : "shortest-piece"
            : limits.shortest() > limits.longest() && !inTwo ? "shortest-piece" : "";
    if (!rule.isEmpty()) {
      throw new LayoutException(
          rule,
          rules.longest() != null && rules.longest().units() == limits.longest()
              ? "longest-piece permits no piece that long"
              : "no stick gives a piece that long",
          "allow pieces of {}",
          Length.ofUnits(limits.longest()));
    }
  }

  private static int mostPieces(
      Run run, Stretch stretch, Seam seam, long total, PieceLimits limits, List<Long> wholes) {
    JointRules rules = run.rules();
    int fewest;
    if (stretch.anywhere()) {
      fewest = PieceCount.anywhere(total, seam.join(), limits);
    } else {
      fewest = JointGraph.fewest(stretch, seam, limits, rules.closing(), wholes);
      if (fewest == 0) {
        throw JointGraph.noSplit(stretch, seam, limits);
      }
    }
    if (rules.count() instanceof JointCount.AtMost atMost) {
      if (atMost.joints() < fewest - 1) {
        throw new LayoutException(
            "most-joints",
            "it takes at least " + (fewest - 1) + (fewest == 2 ? " joint" : " joints"),
            "make most-joints " + (fewest - 1),
            null);
      }
      return atMost.joints() + 1;
    }
    return fewest + ((JointCount.BeyondFewest) rules.count()).extra();
  }

  /**
   * Where the pieces of a line lie.
   *
   * @param start where the piece starts when it gives nothing to a gap
   * @param end where it ends likewise
   * @param length what is planned for it
   * @param first nothing comes before it
   * @param last nothing comes after it
   */
  public record Place(long start, long end, long length, boolean first, boolean last) {
    /** How much longer than planned it may be. */
    public long mayGrow() {
      return end - start - length;
    }
  }

  /**
   * A line as it lies.
   *
   * @param closingAt at which end its closing piece lies
   * @param places in order
   */
  public record Laid(Where closingAt, List<Place> places) {
    public Laid {
      places = List.copyOf(places);
    }
  }

  /**
   * Lays pieces of planned lengths along the stretch.
   *
   * @param planned in order where joints have given places, else in any
   * @param closing index of the one that may be cut where all others are whole sticks; else -1
   * @param line lines of the same split are told apart by it, so that neighbours may differ
   */
  public Laid lay(List<Long> planned, int closing, int line) {
    if (graph != null) {
      return layAtPlaces(graph.path(planned), closing, line);
    }
    boolean asGiven = !run.rules().stagger().isZero();
    Where where = asGiven ? closingAt(planned, closing, line) : closingAt(line);
    List<Long> order = asGiven ? planned : inOrder(planned, closing, where);
    List<Place> places = new ArrayList<>();
    long start =
        stretch.start() - (where == Where.START ? run.rules().closing().leaveLong().units() : 0);
    Seam seam = Seam.of(run.rules().joint());
    for (int i = 0; i < order.size(); i++) {
      boolean first = i == 0;
      boolean last = i == order.size() - 1;
      long given = seam.exact() ? 0 : (first ? 0 : -seam.after()) + (last ? 0 : -seam.before());
      long end = start + order.get(i) + given;
      places.add(new Place(start, end, order.get(i), first, last));
      start = end - (seam.exact() ? seam.join() : 0);
    }
    return new Laid(where, places);
  }

  private Laid layAtPlaces(List<JointGraph.Leg> path, int closing, int line) {
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < path.size(); i++) {
      JointGraph.Leg leg = path.get(i);
      places.add(new Place(leg.start(), leg.end(), leg.length(), i == 0, i == path.size() - 1));
    }
    ClosingPiece rule = run.rules().closing();
    if (rule.where() == Where.EITHER && !rule.leaveLong().isZero()) {
      boolean beforeStart = path.get(0).start() < stretch.start();
      return new Laid(beforeStart ? Where.START : Where.END, places);
    }
    List<Long> lengths = path.stream().map(JointGraph.Leg::length).toList();
    return new Laid(closingAt(lengths, closing, line), places);
  }

  /**
   * How far along a line the piece before a joint reaches, when it gives nothing to a gap.
   *
   * @param joint where its middle stands, from the start of the covered length
   */
  public long reachOf(long joint) {
    if (graph != null) {
      return joint;
    }
    boolean before = run.rules().closing().where() == Where.START;
    long start = stretch.start() - (before ? run.rules().closing().leaveLong().units() : 0);
    return joint - start + Seam.of(run.rules().joint()).before();
  }

  /**
   * How much sooner a line begins whose closing piece lies at its start, where it may be either.
   */
  public long earlier() {
    ClosingPiece closing = run.rules().closing();
    return graph == null && closing.where() == Where.EITHER ? closing.leaveLong().units() : 0;
  }

  /**
   * The joints of the split in which each piece reaches as far as it may, with as few pieces as
   * there can be; empty where joints go anywhere.
   */
  public List<Long> farthest() {
    if (graph == null) {
      return List.of();
    }
    int sink = graph.positions().size() - 1;
    int[] fewest = new int[sink + 1];
    java.util.Arrays.fill(fewest, Integer.MAX_VALUE);
    fewest[sink] = 0;
    List<JointGraph.Leg> legs = graph.legs();
    for (int l = legs.size() - 1; l >= 0; l--) {
      JointGraph.Leg leg = legs.get(l);
      if (fewest[leg.to()] != Integer.MAX_VALUE) {
        fewest[leg.from()] = Math.min(fewest[leg.from()], fewest[leg.to()] + 1);
      }
    }
    List<Long> joints = new ArrayList<>();
    int node = 0;
    while (node != sink) {
      int next = -1;
      for (JointGraph.Leg leg : legs) {
        if (leg.from() == node && fewest[leg.to()] == fewest[node] - 1) {
          next = next < 0 || leg.to() > next ? leg.to() : next;
        }
      }
      node = next;
      if (node != sink) {
        joints.add(graph.positions().get(node));
      }
    }
    return joints;
  }

  /** At which end a line's closing piece lies; where either will do, every other line's differs. */
  private Where closingAt(int line) {
    Where where = run.rules().closing().where();
    return where != Where.EITHER ? where : line % 2 == 0 ? Where.START : Where.END;
  }

  /**
   * The same where the pieces are in order, so that the one that may be cut tells. Where any may be
   * cut it is the last: the lines of a staggered run begin alike.
   */
  private Where closingAt(List<Long> order, int closing, int line) {
    if (run.rules().closing().where() != Where.EITHER) {
      return closingAt(line);
    }
    if (closing < 0 || order.size() == 1) {
      return run.rules().stagger().isZero() ? closingAt(line) : Where.END;
    }
    return closing == 0 ? Where.START : Where.END;
  }

  /**
   * Longest first and the closing piece, else the shortest that may, last; the other way at the
   * start.
   */
  private List<Long> inOrder(List<Long> planned, int closing, Where where) {
    List<Long> order = new ArrayList<>(planned);
    int n = order.size();
    if (closing >= 0) {
      long last = order.remove(closing);
      order.sort(Collections.reverseOrder());
      order.add(last);
    } else {
      order.sort(Collections.reverseOrder());
      // Only the ends may be shorter than the shortest within; at most two pieces are.
      if (n > 2 && order.get(n - 2) < limits.shortest()) {
        order.add(0, order.remove(n - 2));
      }
      // Only within may pieces be shorter than the shortest at an end; at least two are not.
      int atEnd = n - 1;
      while (atEnd > 1 && order.get(atEnd) < limits.shortestAtEnd()) {
        atEnd--;
      }
      order.add(order.remove(atEnd));
    }
    if (where == Where.START) {
      Collections.reverse(order);
    }
    return order;
  }
}
