package lapwright.splice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.PriorityQueue;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.LotCertificate;
import lapwright.problem.LotProblem.Sharing;
import lapwright.problem.SpliceCertificate;
import org.jspecify.annotations.Nullable;

/**
 * A tree of decisions about lots, and about packs where all lots are decided, that raises the bound
 * of {@link LotMaster}: the leaf with the least bound is split, until its bound reaches the known
 * cost.
 */
final class LotTree {
  private static final int ROUNDS = 60;
  private static final int FEW_WAYS = 100;
  private static final double TOLERANCE = 1e-6;

  private final LotParts parts;
  private final LotMaster master;
  private final LotBound bounds;
  private final ReachableCosts reachable;
  private final Finds finds;
  private int made;

  /** Where what is found along the way goes. */
  interface Finds {
    /** The best cost in the problem's unit; {@link Long#MAX_VALUE} without a solution. */
    long cost();

    /** Told of a node once the program has converged there. */
    void converged(boolean[][] open, FreeLimits free, boolean decided);

    /**
     * What a sharing costs at least, each lot by itself; the sharing may be a better one.
     *
     * @return in the problem's unit
     */
    long apart(Sharing sharing);
  }

  /** A bound with its evidence. */
  record Proven(long bound, LotCertificate certificate) {}

  LotTree(LotParts parts, LotMaster master, ReachableCosts reachable, Finds finds) {
    this.parts = parts;
    this.master = master;
    this.bounds = new LotBound(parts);
    this.reachable = reachable;
    this.finds = finds;
  }

  private sealed interface Branch {
    record OnLot(int unit, int lot) implements Branch {}

    record OnPieces(int item, int lot, int pieces) implements Branch {}

    record OnPacks(int lot, int stock, int packs) implements Branch {}
  }

  private static final class Node {
    private final int number;
    private final List<PackLimits> limits;
    private final boolean[][] open;
    private final FreeLimits free;
    private final LotBound.Proven proven;
    private long bound;
    private @Nullable Sharing apart;
    private @Nullable Branch branch;
    private @Nullable Node one;
    private @Nullable Node other;

    private Node(
        int number,
        List<PackLimits> limits,
        boolean[][] open,
        FreeLimits free,
        LotBound.Proven proven) {
      this.number = number;
      this.limits = limits;
      this.open = open;
      this.free = free;
      this.proven = proven;
      this.bound = proven.bound();
    }
  }

  /**
   * The best bound that the tree finds.
   *
   * @param mostNodes after so many nodes the tree grows no more
   */
  Proven grow(int mostNodes, Effort effort) {
    made = 0;
    boolean[][] open = new boolean[parts.units()][parts.lots()];
    for (int u = 0; u < parts.units(); u++) {
      for (int l = 0; l < parts.lots(); l++) {
        open[u][l] = parts.part(u, l).isPresent();
      }
    }
    Node root = solved(parts.all(), open, FreeLimits.of(parts), false, effort);
    PriorityQueue<Node> waiting =
        new PriorityQueue<>(
            Comparator.<Node>comparingLong(node -> node.bound)
                .thenComparingInt(node -> -node.number));
    waiting.add(root);
    while (made < mostNodes && !effort.spent()) {
      Node weakest = waiting.peek();
      if (weakest == null || weakest.branch == null || isClosed(weakest.bound)) {
        break;
      }
      waiting.remove();
      split(weakest, weakest.branch, effort);
      waiting.add(Objects.requireNonNull(weakest.one));
      waiting.add(Objects.requireNonNull(weakest.other));
    }
    Node weakest = waiting.peek();
    return new Proven(
        weakest == null ? 0 : Math.min(raised(weakest.bound), finds.cost()), certificate(root));
  }

  private void split(Node node, Branch branch, Effort effort) {
    if (branch instanceof Branch.OnLot on) {
      boolean[][] within = copy(node.open);
      boolean[][] outside = copy(node.open);
      for (int l = 0; l < parts.lots(); l++) {
        within[on.unit()][l] &= l == on.lot();
      }
      outside[on.unit()][on.lot()] = false;
      node.one = solved(node.limits, within, node.free, false, effort);
      node.other = solved(node.limits, outside, node.free, false, effort);
      return;
    }
    if (branch instanceof Branch.OnPieces on) {
      FreeLimits fewer = node.free.atMost(on.item(), on.lot(), on.pieces());
      FreeLimits more = node.free.atLeast(on.item(), on.lot(), on.pieces() + 1);
      node.one = solved(node.limits, node.open, fewer, false, effort);
      node.other = solved(node.limits, node.open, more, false, effort);
      return;
    }
    Branch.OnPacks on = (Branch.OnPacks) branch;
    List<PackLimits> fewer = new ArrayList<>(node.limits);
    List<PackLimits> more = new ArrayList<>(node.limits);
    fewer.set(on.lot(), fewer.get(on.lot()).atMost(on.stock(), on.packs()));
    more.set(on.lot(), more.get(on.lot()).atLeast(on.stock(), on.packs() + 1));
    node.one = solved(fewer, node.open, node.free, true, effort);
    node.other = solved(more, node.open, node.free, true, effort);
  }

  private static boolean[][] copy(boolean[][] open) {
    boolean[][] copy = new boolean[open.length][];
    for (int u = 0; u < open.length; u++) {
      copy[u] = open[u].clone();
    }
    return copy;
  }

  private long raised(long bound) {
    long known = finds.cost();
    return known == Long.MAX_VALUE || bound == JointBound.IMPOSSIBLE
        ? bound
        : reachable.atLeast(Math.min(bound, known), known);
  }

  private boolean isClosed(long bound) {
    return finds.cost() != Long.MAX_VALUE && raised(bound) >= finds.cost();
  }

  /**
   * Solves the program in a node.
   *
   * @param packsOnly true below a decision about packs, where only such decisions may follow
   */
  private Node solved(
      List<PackLimits> limits,
      boolean[][] open,
      FreeLimits free,
      boolean packsOnly,
      Effort effort) {
    List<StepWeights> bySize = new ArrayList<>();
    for (int l = 0; l < parts.lots(); l++) {
      bySize.add(StepWeights.bySize(1, 1));
    }
    LotBound.Proven best = bounds.of(bySize, limits, open, free);
    if (best.bound() == JointBound.IMPOSSIBLE) {
      return new Node(made++, limits, open, free, best);
    }
    master.limit(limits, open, free);
    boolean converged = master.converge(ROUNDS, open, effort);
    LotBound.Proven priced = bounds.of(master.weights(), limits, open, free);
    Node node = new Node(made++, limits, open, free, priced.bound() > best.bound() ? priced : best);
    if (node.bound == JointBound.IMPOSSIBLE || isClosed(node.bound)) {
      return node;
    }
    Branch branch = packsOnly ? onPacks() : onLotsOrPieces(node);
    boolean decided = !(branch instanceof Branch.OnLot);
    if (converged) {
      finds.converged(open, free, decided);
    }
    if (!packsOnly && branch == null) {
      Sharing sharing = new Sharing(lotOf(open), free.leastByLot(parts.lots()));
      long apart = finds.apart(sharing);
      if (apart > node.bound) {
        node.bound = apart;
        node.apart = sharing;
      }
    } else if (converged || branch instanceof Branch.OnLot) {
      node.branch = branch;
    }
    return node;
  }

  private List<Integer> lotOf(boolean[][] open) {
    List<Integer> lotOf = new ArrayList<>();
    for (boolean[] ofUnit : open) {
      int lot = 0;
      while (!ofUnit[lot]) {
        lot++;
      }
      lotOf.add(lot);
    }
    return lotOf;
  }

  /**
   * A unit that may come from several lots; else free pieces of which the program takes parts from
   * a lot; else packs, where there are too many ways left to share the free pieces. Null where all
   * is decided but packs.
   */
  private @Nullable Branch onLotsOrPieces(Node node) {
    Branch best = null;
    double farthest = -1;
    for (int u = 0; u < parts.units(); u++) {
      int left = 0;
      int greatest = -1;
      for (int l = 0; l < parts.lots(); l++) {
        if (node.open[u][l]) {
          left++;
          greatest = greatest < 0 || master.share(u, l) > master.share(u, greatest) ? l : greatest;
        }
      }
      if (left > 1 && 1 - master.share(u, greatest) > farthest) {
        farthest = 1 - master.share(u, greatest);
        best = new Branch.OnLot(u, greatest);
      }
    }
    if (best != null) {
      return best;
    }
    farthest = TOLERANCE;
    Branch whole = null;
    for (int i = 0; i < parts.free().size(); i++) {
      for (int l = 0; l < parts.lots(); l++) {
        if (node.free.isDecided(i, l)) {
          continue;
        }
        double pieces = master.free(i, l);
        double distance = Math.abs(pieces - Math.rint(pieces));
        if (distance > farthest) {
          farthest = distance;
          best = new Branch.OnPieces(i, l, (int) Math.floor(pieces));
        }
        int rounded = (int) Math.rint(pieces);
        whole =
            whole != null
                ? whole
                : new Branch.OnPieces(i, l, rounded < node.free.most(i, l) ? rounded : rounded - 1);
      }
    }
    if (best != null) {
      return best;
    }
    Branch packs = node.free.ways(FEW_WAYS) < FEW_WAYS ? null : onPacks();
    return packs == null ? whole : packs;
  }

  /** The stock whose packs are farthest from whole. */
  private @Nullable Branch onPacks() {
    Branch best = null;
    double farthest = TOLERANCE;
    for (int l = 0; l < parts.lots(); l++) {
      for (int j = 0; j < parts.lot(l).stocks().size(); j++) {
        double packs = master.packs(l, j);
        double distance = Math.abs(packs - Math.rint(packs));
        if (distance > farthest) {
          farthest = distance;
          best = new Branch.OnPacks(l, j, (int) Math.floor(packs));
        }
      }
    }
    return best;
  }

  private LotCertificate certificate(Node node) {
    Node one = node.one;
    Node other = node.other;
    if (one == null || other == null) {
      return node.apart != null
          ? new LotCertificate.ByLot(node.apart)
          : weights(node.proven.weights());
    }
    if (node.branch instanceof Branch.OnPieces on) {
      return new LotCertificate.PieceSplit(
          on.item(), on.lot(), on.pieces(), certificate(one), certificate(other));
    }
    if (node.branch instanceof Branch.OnLot on) {
      return new LotCertificate.LotSplit(on.unit(), on.lot(), certificate(one), certificate(other));
    }
    Branch.OnPacks on = (Branch.OnPacks) Objects.requireNonNull(node.branch);
    SpliceCertificate empty = StepWeights.bySize(1, 0).certificate();
    SpliceCertificate.PackSplit raw =
        (SpliceCertificate.PackSplit)
            parts
                .merged(on.lot())
                .expand(
                    new SpliceCertificate.PackSplit(List.of(on.stock()), on.packs(), empty, empty));
    return new LotCertificate.PackSplit(
        on.lot(), raw.stocks(), on.packs(), certificate(one), certificate(other));
  }

  /** Weights in the problem's own costs, which the scale need not divide alike in every lot. */
  private LotCertificate weights(List<StepWeights> weights) {
    List<SpliceCertificate.Weights> lots = new ArrayList<>();
    for (int l = 0; l < parts.lots(); l++) {
      lots.add((SpliceCertificate.Weights) parts.merged(l).expand(weights.get(l).certificate()));
    }
    return new LotCertificate.Weights(lots);
  }
}
