package lapwright.splice;

import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceProblem;
import org.jspecify.annotations.Nullable;

/**
 * A tree of decisions about packs that raises the bound of the linear program: the leaf with the
 * least bound is split at a fractional number of packs, until its bound reaches the known cost.
 */
final class PackTree {
  private static final int ROUNDS = 30;
  private static final double TOLERANCE = 1e-6;

  private final SpliceProblem problem;
  private final ClassMaster master;
  private final JointBound bounds;
  private final ReachableCosts reachable;
  private final List<StepWeights> bySize;
  private int made;

  PackTree(
      SpliceProblem problem,
      List<Choice> choices,
      ClassMaster master,
      ReachableCosts reachable,
      long costUnit) {
    this.problem = problem;
    this.master = master;
    this.bounds = new JointBound(problem, choices, costUnit);
    this.reachable = reachable;
    this.bySize = WeightGuesses.bySize(problem.stocks());
  }

  /** A bound with its evidence. */
  record Proven(long bound, SpliceCertificate certificate) {}

  private static final class Node {
    private final int number;
    private final PackLimits limits;
    private JointBound.Proven proven;
    private int branchStock = -1;
    private int branchPacks;
    private @Nullable Node fewer;
    private @Nullable Node more;

    private Node(int number, PackLimits limits, JointBound.Proven proven) {
      this.number = number;
      this.limits = limits;
      this.proven = proven;
    }

    private SpliceCertificate certificate() {
      return fewer == null || more == null
          ? proven.weights().certificate()
          : new SpliceCertificate.PackSplit(
              List.of(branchStock), branchPacks, fewer.certificate(), more.certificate());
    }
  }

  /**
   * The best bound that the tree finds.
   *
   * @param known cost of a solution; {@link Long#MAX_VALUE} when none is known, which makes the
   *     root the whole tree
   * @param mostLeaves after so many nodes the tree grows no more
   */
  Proven grow(PackLimits all, long known, int mostLeaves, Effort effort) {
    made = 0;
    Node root = solved(all, known, effort);
    PriorityQueue<Node> open =
        new PriorityQueue<>(
            Comparator.<Node>comparingLong(node -> node.proven.bound())
                .thenComparingInt(node -> node.number));
    open.add(root);
    while (known != Long.MAX_VALUE && made < mostLeaves && !effort.spent()) {
      Node weakest = open.peek();
      if (weakest == null || weakest.branchStock < 0 || raised(weakest, known) >= known) {
        break;
      }
      open.remove();
      int stock = weakest.branchStock;
      weakest.fewer = solved(weakest.limits.atMost(stock, weakest.branchPacks), known, effort);
      weakest.more = solved(weakest.limits.atLeast(stock, weakest.branchPacks + 1), known, effort);
      open.add(weakest.fewer);
      open.add(weakest.more);
    }
    master.limit(all);
    Node weakest = open.peek();
    long least = weakest == null ? 0 : raised(weakest, known);
    return new Proven(Math.min(least, known), root.certificate());
  }

  private boolean isEnough(double bound, long known) {
    return bound > 0 && known < Long.MAX_VALUE && raised((long) Math.ceil(bound), known) >= known;
  }

  private long raised(Node node, long known) {
    return raised(node.proven.bound(), known);
  }

  private long raised(long bound, long known) {
    return known == Long.MAX_VALUE || bound == JointBound.IMPOSSIBLE
        ? bound
        : reachable.atLeast(bound, known);
  }

  private Node solved(PackLimits limits, long known, Effort effort) {
    master.limit(limits);
    JointBound.Proven best = new JointBound.Proven(0, StepWeights.bySize(1, 0));
    for (StepWeights guess : bySize) {
      if (raised(best.bound(), known) < known) {
        best = better(best, bounds.of(guess, limits, known));
      }
    }
    boolean solved = false;
    if (raised(best.bound(), known) < known) {
      solved = master.converge(ROUNDS, bound -> isEnough(bound, known), effort);
      best = better(best, bounds.of(master.weights(), limits, known));
      if (!solved && raised(best.bound(), known) < known && !effort.spent()) {
        solved = master.converge(ROUNDS, bound -> false, effort);
        best = better(best, bounds.of(master.weights(), limits, known));
      }
    }
    Node node = new Node(made++, limits, best);
    if (solved) {
      chooseBranch(node);
    }
    return node;
  }

  private static JointBound.Proven better(JointBound.Proven a, JointBound.Proven b) {
    return b.bound() > a.bound() ? b : a;
  }

  /** The stock whose packs are farthest from whole. */
  private void chooseBranch(Node node) {
    double farthest = TOLERANCE;
    for (int j = 0; j < problem.stocks().size(); j++) {
      double packs = master.packs(j);
      double distance = Math.abs(packs - Math.rint(packs));
      if (distance > farthest) {
        farthest = distance;
        node.branchStock = j;
        node.branchPacks = (int) Math.floor(packs);
      }
    }
  }
}
