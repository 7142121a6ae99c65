package lapwright.splice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import lapwright.effort.Effort;
import lapwright.exact.ReachableCosts;
import lapwright.problem.LotCertificate;
import lapwright.problem.LotProblem;
import lapwright.problem.LotProblem.Sharing;

/**
 * What comes from which lot: sharings for others to cut, and a bound.
 *
 * <p>Few classes of lengths first, then every length that matters, and more where the program's own
 * splits show that they are too coarse; then a tree over lots and packs. Deterministic as long as
 * the effort is not spent. Not thread-safe.
 */
public final class LotSearch {
  private static final int FEW = 120;
  private static final int MANY = 1_000;
  private static final int REFINEMENTS = 3;
  private static final int LARGE = 600;
  private static final int NODES_OF_SMALL = 300;
  private static final int MOST_PROPOSED = 24;

  private static final double TOLERANCE = 1e-6;

  private final LotParts parts;
  private final Finds finds;
  private final Effort effort;
  private final ReachableCosts reachable;
  private final Set<LotMaster.SplitColumn> known = new LinkedHashSet<>();
  private final Set<Sharing> proposed = new LinkedHashSet<>();

  /** Where sharings go. */
  public interface Finds {
    /** The best cost so far; {@link Long#MAX_VALUE} without a solution. */
    long cost();

    /** A sharing that may cost less. */
    void offer(Sharing sharing);

    /**
     * What a sharing costs at least, each lot by itself; {@link SpliceQuestions.Bound#IMPOSSIBLE}
     * where one cannot be cut.
     */
    long apart(Sharing sharing);
  }

  /**
   * What no solution costs less than.
   *
   * @param least {@link SpliceQuestions.Bound#IMPOSSIBLE} where there is no solution
   */
  public record Bound(long least, LotCertificate certificate) {}

  private LotSearch(LotProblem problem, Finds finds, Effort effort) {
    this.parts = new LotParts(problem);
    this.finds = finds;
    this.effort = effort;
    this.reachable = parts.reachable();
  }

  /** Searches. */
  public static Bound run(LotProblem problem, Finds finds, Effort effort) {
    return new LotSearch(problem, finds, effort).run();
  }

  private Bound run() {
    List<SortedSet<Long>> starts = new ArrayList<>();
    for (int l = 0; l < parts.lots(); l++) {
      starts.add(parts.starts(l, FEW));
    }
    Bound best = stage(starts, 1);
    for (int r = 0; r < REFINEMENTS && !isClosed(best) && !effort.spent(); r++) {
      if (r == 0) {
        for (int l = 0; l < parts.lots(); l++) {
          starts.get(l).addAll(parts.starts(l, MANY));
        }
      }
      int before = count(starts);
      Bound next = stage(starts, r == REFINEMENTS - 1 ? nodes(starts) : 1);
      best = next.least() > best.least() ? next : best;
      if (count(starts) == before && r < REFINEMENTS - 1) {
        next = isClosed(best) ? best : stage(starts, nodes(starts));
        return next.least() > best.least() ? next : best;
      }
    }
    return best;
  }

  private static int count(List<SortedSet<Long>> starts) {
    return starts.stream().mapToInt(Set::size).sum();
  }

  private static int nodes(List<SortedSet<Long>> starts) {
    return Math.max(10, NODES_OF_SMALL * 100 / (count(starts) + 100));
  }

  private boolean isClosed(Bound found) {
    return found.least() >= finds.cost();
  }

  /** Solves over some classes, adds to them where they are too coarse. */
  private Bound stage(List<SortedSet<Long>> starts, int nodes) {
    try (LotMaster master = new LotMaster(parts, starts)) {
      for (int u = 0; u < parts.units(); u++) {
        for (int l = 0; l < parts.lots(); l++) {
          begin(master, u, l);
        }
      }
      for (LotMaster.SplitColumn split : known) {
        master.add(split.unit(), split.lot(), split.group(), split.lengths());
      }
      LotTree tree = new LotTree(parts, master, reachable, new AlongTheTree(master));
      LotTree.Proven proven = tree.grow(nodes, effort);
      for (LotMaster.SplitColumn split : master.splits()) {
        if (master.value(split) > 1e-6) {
          known.add(split);
          SortedSet<Long> ofLot = starts.get(split.lot());
          if (ofLot.size() <= LARGE) {
            ofLot.addAll(split.lengths());
          }
        }
      }
      long least =
          proven.bound() == JointBound.IMPOSSIBLE
              ? JointBound.IMPOSSIBLE
              : Math.multiplyExact(proven.bound(), parts.costUnit());
      return new Bound(least, proven.certificate());
    }
  }

  private void begin(LotMaster master, int unit, int lot) {
    Optional<LotParts.Part> part = parts.part(unit, lot);
    if (part.isEmpty()) {
      return;
    }
    long longest = parts.lot(lot).longestUsable();
    LengthPrices bySize = length -> length <= longest ? length : Double.POSITIVE_INFINITY;
    for (int g = 0; g < part.get().choices().size(); g++) {
      Choice choice = part.get().choices().get(g);
      master.add(unit, lot, g, choice.cheapest(bySize));
      for (List<Long> split : choice.plainOnes()) {
        master.add(unit, lot, g, split);
      }
    }
  }

  /**
   * The program's shares in whole numbers: each unit to the lot that gives the most of it, free
   * pieces as they are but for fractions, which go to the lots with the greatest.
   */
  private Sharing rounded(LotMaster master, boolean[][] open, FreeLimits limits) {
    List<Integer> lotOf = new ArrayList<>();
    for (int u = 0; u < parts.units(); u++) {
      int greatest = -1;
      for (int l = 0; l < parts.lots(); l++) {
        if (open[u][l]
            && (greatest < 0 || master.share(u, l) > master.share(u, greatest) + TOLERANCE)) {
          greatest = l;
        }
      }
      lotOf.add(greatest);
    }
    List<List<Integer>> free = new ArrayList<>();
    for (int l = 0; l < parts.lots(); l++) {
      free.add(new ArrayList<>());
    }
    for (int i = 0; i < parts.free().size(); i++) {
      int left = parts.free().get(i).demand();
      List<Integer> byFraction = new ArrayList<>();
      for (int l = 0; l < parts.lots(); l++) {
        int whole =
            Math.max(
                limits.least(i, l),
                Math.min(left, (int) Math.floor(master.free(i, l) + TOLERANCE)));
        free.get(l).add(whole);
        left -= whole;
        byFraction.add(l);
      }
      int item = i;
      byFraction.sort(
          Comparator.comparingDouble(
              l -> Math.floor(master.free(item, l) + TOLERANCE) - master.free(item, l)));
      for (int l : byFraction) {
        int more = Math.min(left, limits.most(i, l) - free.get(l).get(i));
        free.get(l).set(i, free.get(l).get(i) + more);
        left -= more;
      }
    }
    return new Sharing(lotOf, free);
  }

  /** Proposes the program's shares in whole numbers where it has converged. */
  private final class AlongTheTree implements LotTree.Finds {
    private final LotMaster master;
    private boolean any;

    private AlongTheTree(LotMaster master) {
      this.master = master;
    }

    @Override
    public long cost() {
      long cost = finds.cost();
      return cost == Long.MAX_VALUE ? cost : cost / parts.costUnit();
    }

    @Override
    public void converged(boolean[][] open, FreeLimits free, boolean decided) {
      if (any && (!decided || proposed.size() >= MOST_PROPOSED)) {
        return;
      }
      any = true;
      Sharing sharing = rounded(master, open, free);
      if (proposed.add(sharing)) {
        finds.offer(sharing);
      }
    }

    @Override
    public long apart(Sharing sharing) {
      long least = finds.apart(sharing);
      return least == JointBound.IMPOSSIBLE ? least : least / parts.costUnit();
    }
  }
}
