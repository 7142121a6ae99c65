package lapwright.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Where;

/**
 * All permitted splits of a stretch whose joints have given places, as the paths from node 0 to the
 * last node of a graph without cycles. A node is a place, reached with so many pieces.
 *
 * @param positions where each node stands
 * @param legs pieces, from a lower to a higher node
 */
public record JointGraph(List<Long> positions, List<Leg> legs) {
  public JointGraph {
    positions = List.copyOf(positions);
    legs = List.copyOf(legs);
  }

  /**
   * A piece from one node to another.
   *
   * @param start where it starts when it gives nothing to a gap
   * @param end where it ends likewise
   * @param length what is planned for it: all that the gaps allow is taken off, but no more than
   *     the shortest piece allows
   */
  public record Leg(int from, int to, long start, long end, long length) {}

  /**
   * The graph of a stretch.
   *
   * @param mostPieces at least 1
   * @param wholes what whole sticks give; asked only where all pieces but the closing one are whole
   */
  static JointGraph of(
      Stretch stretch,
      Seam seam,
      PieceLimits limits,
      ClosingPiece closing,
      int mostPieces,
      List<Long> wholes) {
    Builder builder = new Builder(stretch, seam, limits, closing, mostPieces, wholes);
    boolean sameEitherWay = closing.leaveLong().isZero() && !closing.othersWhole();
    if (closing.where() != Where.START || sameEitherWay) {
      builder.addPaths(Where.END);
    }
    if (closing.where() != Where.END && !sameEitherWay) {
      builder.addPaths(Where.START);
    }
    return builder.build();
  }

  /** The fewest pieces of any split; 0 when there is none. */
  static int fewest(
      Stretch stretch, Seam seam, PieceLimits limits, ClosingPiece closing, List<Long> wholes) {
    JointGraph graph = of(stretch, seam, limits, closing, stretch.places().size() + 1, wholes);
    int[] pieces = new int[graph.positions().size()];
    Arrays.fill(pieces, Integer.MAX_VALUE);
    pieces[0] = 0;
    for (Leg leg : graph.legs()) {
      if (pieces[leg.from()] != Integer.MAX_VALUE) {
        pieces[leg.to()] = Math.min(pieces[leg.to()], pieces[leg.from()] + 1);
      }
    }
    int fewest = pieces[pieces.length - 1];
    return fewest == Integer.MAX_VALUE ? 0 : fewest;
  }

  /** The legs of the first path whose pieces have these planned lengths, in order. */
  public List<Leg> path(List<Long> lengths) {
    List<Leg> path = new ArrayList<>();
    if (!follow(0, lengths, path)) {
      throw new IllegalArgumentException("no split has the pieces " + lengths);
    }
    return path;
  }

  private boolean follow(int node, List<Long> lengths, List<Leg> path) {
    if (path.size() == lengths.size()) {
      return node == positions.size() - 1;
    }
    for (Leg leg : legs) {
      if (leg.from() == node && leg.length() == lengths.get(path.size())) {
        path.add(leg);
        if (follow(leg.to(), lengths, path)) {
          return true;
        }
        path.remove(path.size() - 1);
      }
    }
    return false;
  }

  /** The way a line would fail: how long the longest piece would have to be. */
  static LayoutException noSplit(Stretch stretch, Seam seam, PieceLimits limits) {
    long widest = 0;
    long from = stretch.start();
    for (int i = 0; i <= stretch.places().size(); i++) {
      boolean last = i == stretch.places().size();
      long to = last ? stretch.end() : stretch.places().get(i);
      long start = i == 0 ? from : from - seam.after();
      widest = Math.max(widest, (last ? to : to + seam.before()) - start);
      from = to;
    }
    if (widest > limits.longest()) {
      return new LayoutException(
          "joints-at",
          "two neighbouring places where it may be joined are farther apart than any piece reaches",
          "add a place between, or offer sticks that give {}",
          Length.ofUnits(widest));
    }
    return new LayoutException(
        "shortest-piece",
        "no choice of the places where it may be joined leaves every piece long enough",
        "allow shorter pieces, or add places",
        null);
  }

  private static final class Builder {
    private final Stretch stretch;
    private final Seam seam;
    private final PieceLimits limits;
    private final ClosingPiece closing;
    private final int mostPieces;
    private final List<Long> wholes;
    private final List<Long> positions = new ArrayList<>();
    private final List<Leg> toNodes = new ArrayList<>();
    private final List<Leg> toSink = new ArrayList<>();

    Builder(
        Stretch stretch,
        Seam seam,
        PieceLimits limits,
        ClosingPiece closing,
        int mostPieces,
        List<Long> wholes) {
      this.stretch = stretch;
      this.seam = seam;
      this.limits = limits;
      this.closing = closing;
      this.mostPieces = mostPieces;
      this.wholes = wholes;
      positions.add(stretch.start());
    }

    void addPaths(Where closingAt) {
      List<Long> places = stretch.places();
      int n = places.size();
      int[][] node = new int[n + 1][mostPieces + 1];
      for (int[] row : node) {
        Arrays.fill(row, -1);
      }
      node[0][0] = 0;
      for (int s = 0; s <= n; s++) {
        for (int count = 0; count < mostPieces; count++) {
          if (node[s][count] < 0) {
            continue;
          }
          int from = node[s][count];
          for (int t = s + 1; t <= n && count + 1 < mostPieces; t++) {
            Leg leg = leg(s, t, closingAt);
            if (leg != null) {
              if (node[t][count + 1] < 0) {
                node[t][count + 1] = positions.size();
                positions.add(places.get(t - 1));
              }
              toNodes.add(new Leg(from, node[t][count + 1], leg.start(), leg.end(), leg.length()));
            }
          }
          Leg last = leg(s, n + 1, closingAt);
          if (last != null) {
            toSink.add(new Leg(from, -1, last.start(), last.end(), last.length()));
          }
        }
      }
    }

    /** The piece between two places, 0 the start and n + 1 the end; null when not permitted. */
    private @org.jspecify.annotations.Nullable Leg leg(int s, int t, Where closingAt) {
      List<Long> places = stretch.places();
      boolean first = s == 0;
      boolean last = t == places.size() + 1;
      long reachAfter = first ? 0 : seam.after();
      long reachBefore = last ? 0 : seam.before();
      long from = first ? stretch.start() : places.get(s - 1);
      long to = last ? stretch.end() : places.get(t - 1);
      boolean isClosing = closingAt == Where.END ? last : first;
      if (isClosing) {
        from -= closingAt == Where.START ? closing.leaveLong().units() : 0;
        to += closingAt == Where.END ? closing.leaveLong().units() : 0;
      }
      long least = to - from + reachBefore + reachAfter;
      long most = seam.exact() ? least : to - from;
      long start = from - (seam.exact() ? reachAfter : 0);
      long planned = Math.max(least, limits.shortest(first || last));
      if (closing.othersWhole() && !isClosing) {
        planned = 0;
        for (long whole : wholes) {
          boolean fits = whole >= least && whole <= most && whole >= limits.shortest(first || last);
          if (fits && (planned == 0 || whole < planned)) {
            planned = whole;
          }
        }
        if (planned == 0) {
          return null;
        }
      }
      return planned > most || planned > limits.longest()
          ? null
          : new Leg(-1, -1, start, start + most, planned);
    }

    /** Nodes in the order of their positions, so that every leg leads to a higher node. */
    JointGraph build() {
      List<Integer> order = new ArrayList<>();
      for (int node = 0; node < positions.size(); node++) {
        order.add(node);
      }
      order.sort(Comparator.comparing(positions::get));
      int sink = positions.size();
      int[] number = new int[sink];
      List<Long> sorted = new ArrayList<>();
      for (int i = 0; i < sink; i++) {
        number[order.get(i)] = i;
        sorted.add(positions.get(order.get(i)));
      }
      sorted.add(stretch.end());
      List<Leg> legs = new ArrayList<>();
      for (Leg leg : toNodes) {
        legs.add(
            new Leg(number[leg.from()], number[leg.to()], leg.start(), leg.end(), leg.length()));
      }
      for (Leg leg : toSink) {
        legs.add(new Leg(number[leg.from()], sink, leg.start(), leg.end(), leg.length()));
      }
      legs.sort(Comparator.comparingInt(Leg::from).thenComparingInt(Leg::to));
      return new JointGraph(sorted, legs);
    }
  }
}
