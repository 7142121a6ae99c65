package lapwright.exact;

import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import lapwright.colgen.Master;
import lapwright.effort.Effort;
import lapwright.problem.Refutation;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * Branch and bound on how many packs of a stock are used, best bound first. The tree is its own
 * certificate: each leaf carries the weights of its relaxation, or the refutation of its packs.
 */
final class PackTree {
  private final StickProblem problem;
  private final Relaxation relaxation;
  private final Search search;
  private final Effort effort;
  private final Node root;
  private int nodes;

  PackTree(StickProblem problem, Relaxation relaxation, Search search, Effort effort) {
    this.problem = problem;
    this.relaxation = relaxation;
    this.search = search;
    this.effort = effort;
    root = new Node(PackLimits.of(problem));
  }

  private static final class Node {
    final PackLimits limits;
    long bound;
    StickCertificate leaf = new StickCertificate.Weights(1, List.of());
    int stock = -1;
    int packs;
    @Nullable Node fewer;
    @Nullable Node more;
    int serial;
    WholePacks.@Nullable Cover cover;

    Node(PackLimits limits) {
      this.limits = limits;
    }

    /** The least bound of the leaves. */
    long treeBound() {
      return fewer == null || more == null
          ? bound
          : Math.max(bound, Math.min(fewer.treeBound(), more.treeBound()));
    }

    StickCertificate certificate() {
      if (fewer == null || more == null) {
        return leaf;
      }
      return new StickCertificate.PackSplit(
          List.of(stock), packs, fewer.certificate(), more.certificate());
    }
  }

  /** Searches until the best solution is proved, or so many nodes are done. */
  void run(int mostNodes) {
    PriorityQueue<Node> open =
        new PriorityQueue<>(
            Comparator.<Node>comparingLong(n -> n.bound).thenComparingInt(n -> -n.serial));
    Relaxation.Bounded bounded = relax(root);
    Master.Solution solution = bounded.solution();
    offerBound();
    explore(root, bounded);
    offerBound();
    if (search.isClosed() || solution == null || !branch(root, solution)) {
      return;
    }
    grow(root, open);
    while (!open.isEmpty() && nodes < mostNodes && !effort.spent()) {
      Node node = open.poll();
      if (search.isClosedBy(node.bound)) {
        continue;
      }
      Relaxation.Bounded relaxed = relax(node);
      Master.Solution there = relaxed.solution();
      if (there == null) {
        continue;
      }
      if (!search.isClosedBy(node.bound)) {
        explore(node, relaxed);
        if (!search.isClosedBy(node.bound)) {
          if (branch(node, there)) {
            grow(node, open);
          } else {
            settle(node);
          }
        }
      }
      offerBound();
      if (search.isClosed()) {
        return;
      }
    }
    offerBound();
  }

  /** Decides a node in which all packs are settled. */
  private void settle(Node node) {
    Refutation refutation = search.settle(node.limits);
    if (refutation != null) {
      node.bound = WeightBound.IMPOSSIBLE;
      node.leaf = new StickCertificate.NoSolution(refutation);
    }
  }

  /** Looks for solutions at a node: with packs as they come, then with those of its cover. */
  private void explore(Node node, Relaxation.Bounded relaxed) {
    search.dive(relaxation, relaxed, node.limits);
    if (!search.isClosedBy(node.bound)) {
      tryCover(node);
    }
    if (!search.isClosedBy(node.bound)) {
      search.recombine(node.limits, relaxation.master());
    }
  }

  /** Looks for a solution with the cheapest packs that carry the node's weights. */
  private void tryCover(Node node) {
    WholePacks.Cover cover = node.cover;
    if (cover == null || cover.packs().isEmpty() || search.isClosed() || isOnlyStock()) {
      return;
    }
    PackLimits exactly = node.limits.exactly(cover.packs());
    Relaxation.Bounded bounded = relaxation.bound(exactly, search::isEnough, effort);
    Master.Solution solution = bounded.solution();
    if (solution != null && solution.uncovered() < 1e-6) {
      search.dive(relaxation, bounded, solution, exactly, cover.cost());
    }
  }

  private boolean isOnlyStock() {
    return problem.stocks().size() == 1;
  }

  private Relaxation.Bounded relax(Node node) {
    nodes++;
    Relaxation.Bounded bounded = relaxation.bound(node.limits, search::isEnough, effort);
    if (bounded.bound() >= node.bound) {
      node.bound = bounded.bound();
      node.leaf = bounded.certificate();
    }
    node.cover = null;
    if (search.best() != null && !search.isClosedBy(node.bound)) {
      WholePacks.Cover cover =
          WholePacks.of(
              problem,
              node.limits,
              bounded.certificate().weights(),
              bounded.greatest(),
              search.best().cost());
      if (cover != null && cover.cost() > node.bound) {
        node.bound = cover.cost();
        node.leaf = bounded.certificate();
      }
      node.cover = cover;
    }
    return bounded;
  }

  private void grow(Node node, PriorityQueue<Node> open) {
    for (Node child : List.of(child(node, true), child(node, false))) {
      child.bound = node.bound;
      child.leaf = node.leaf;
      child.serial = nodes * 2 + (child == node.fewer ? 0 : 1);
      open.add(child);
    }
  }

  private static Node child(Node node, boolean fewer) {
    Node child =
        new Node(
            fewer
                ? node.limits.atMost(node.stock, node.packs)
                : node.limits.atLeast(node.stock, node.packs + 1));
    if (fewer) {
      node.fewer = child;
    } else {
      node.more = child;
    }
    return child;
  }

  /** Chooses where to split; false when all packs are settled. */
  private boolean branch(Node node, Master.Solution solution) {
    double mostFractional = 1e-5;
    int at = -1;
    for (int j = 0; j < problem.stocks().size(); j++) {
      double packs = solution.packs(j);
      double part = Math.abs(packs - Math.rint(packs));
      if (problem.stocks().get(j).packCost() > 0 && part > mostFractional) {
        mostFractional = part;
        at = j;
      }
    }
    if (at >= 0) {
      node.stock = at;
      node.packs = (int) Math.floor(solution.packs(at));
      return true;
    }
    for (int j = 0; j < problem.stocks().size(); j++) {
      if (problem.stocks().get(j).packCost() > 0 && !node.limits.isFixed(j)) {
        int packs = (int) Math.rint(solution.packs(j));
        node.stock = j;
        node.packs = packs < node.limits.most(j) ? packs : packs - 1;
        return true;
      }
    }
    return false;
  }

  private void offerBound() {
    search.offer(root.treeBound(), root.certificate());
  }
}
