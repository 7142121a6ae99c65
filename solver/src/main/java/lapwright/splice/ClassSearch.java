package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceSolution.Split;
import org.jspecify.annotations.Nullable;

/**
 * Bounds and solutions by classes of lengths: few classes first, then every length that matters,
 * then, where splits may use any length, more classes where the program's own splits show that they
 * are too coarse; and a tree over packs.
 */
final class ClassSearch {
  private static final int FEW = 120;
  private static final int MANY = 1_500;
  private static final int REFINEMENTS = 4;
  private static final int LARGE = 600;
  private static final int LEAVES_OF_SMALL = 400;
  private static final double[] CLOSE = {0.8, 0.6, 0.95};
  private static final double[] NO_DIVES = {};

  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final long costUnit;
  private final ReachableCosts reachable;
  private final PackLimits all;
  private final long step;
  private final Finds finds;
  private final List<List<List<Long>>> splits = new ArrayList<>();
  private @Nullable ClassPrices prices;

  /** Where solutions and bounds go. */
  interface Finds {
    /** Cuts the pieces of these splits, and keeps the solution if it is better. */
    void offer(List<List<Split>> splits);

    /** Keeps the bound if it is better. */
    void offer(PackTree.Proven proven);

    /** True when the best bound reaches the best cost. */
    boolean isClosed();

    /** How the sticks of the best solution are cut; empty without one. */
    List<ClassMaster.Cutting> cuttings();

    /** The best cost in the problem's unit; {@link Long#MAX_VALUE} without a solution. */
    long cost();

    /** Cuts some of the sticks of the best solution anew, in other pieces of lines. */
    void recut(Effort effort);

    /** False where only the bound is wanted. */
    boolean wantsSplits();
  }

  /**
   * @param costUnit see {@link Merged}
   * @param step of the pieces with joints anywhere; 0 when there are none
   */
  ClassSearch(
      SpliceProblem problem,
      List<Choice> choices,
      long costUnit,
      ReachableCosts reachable,
      PackLimits all,
      long step,
      Finds finds) {
    this.problem = problem;
    this.choices = choices;
    this.costUnit = costUnit;
    this.reachable = reachable;
    this.all = all;
    this.step = step;
    this.finds = finds;
    for (Choice choice : choices) {
      splits.add(new ArrayList<>(choice.plainOnes()));
    }
  }

  /**
   * Searches.
   *
   * @param first a split for each group
   */
  void run(List<List<Long>> first, Effort effort) {
    SortedSet<Long> starts = begin(first);
    int coarse = starts.size();
    if (stage(starts, false, effort) || effort.spent()) {
      return;
    }
    starts.addAll(ClassStarts.of(problem, choices, MANY, step));
    boolean anywhere = choices.stream().anyMatch(Choice::hasAnyLength);
    if (starts.size() == coarse && !anywhere) {
      // The classes hold one length each already.
      stage(starts, true, effort);
      return;
    }
    int refinements = anywhere ? REFINEMENTS : 1;
    for (int r = 0; r < refinements && !finds.isClosed() && !effort.spent(); r++) {
      int before = starts.size();
      stage(starts, r == refinements - 1, effort);
      if (starts.size() == before && r < refinements - 1) {
        stage(starts, true, effort);
        return;
      }
    }
  }

  /** Searches over few classes only. */
  void runOverFew(List<List<Long>> first, Effort effort) {
    stage(begin(first), false, effort);
  }

  private SortedSet<Long> begin(List<List<Long>> first) {
    for (int g = 0; g < first.size(); g++) {
      splits.get(g).add(first.get(g));
    }
    return ClassStarts.of(problem, choices, FEW, step);
  }

  /** Solves over some classes; adds to them where they are too coarse. True when all is closed. */
  private boolean stage(SortedSet<Long> starts, boolean withTree, Effort effort) {
    long[] ascending = starts.stream().mapToLong(Long::longValue).toArray();
    boolean first = prices == null;
    try (ClassMaster master = new ClassMaster(problem, choices, costUnit, ascending)) {
      for (int g = 0; g < splits.size(); g++) {
        for (List<Long> split : splits.get(g)) {
          master.add(g, split);
        }
      }
      finds.cuttings().forEach(master::add);
      if (prices != null) {
        master.begin(prices);
      }
      PackTree tree = new PackTree(problem, choices, master, reachable, costUnit);
      finds.offer(tree.grow(all, finds.cost(), 1, effort));
      prices = master.bestPrices();
      if (finds.isClosed()) {
        return true;
      }
      refine(starts, master);
      for (double close : finds.wantsSplits() ? CLOSE : NO_DIVES) {
        List<List<Split>> dived = new Dive(problem, master).run(close, Map.of(), effort);
        if (dived != null) {
          finds.offer(dived);
          finds.offer(FragmentFill.finished(problem, choices, dived, master.sticks()));
        }
        if (finds.isClosed() || effort.spent()) {
          break;
        }
      }
      if (first && !finds.isClosed()) {
        long rest = effort.remainingNanos() / 3 * 2;
        finds.recut(effort.alsoStoppedBy(() -> effort.remainingNanos() < rest));
      }
      if (withTree && !finds.isClosed()) {
        int leaves = Math.max(10, LEAVES_OF_SMALL * 100 / (ascending.length + 100));
        finds.offer(tree.grow(all, finds.cost(), leaves, effort));
      }
      for (SplitProgram.SplitColumn split : master.splits()) {
        List<List<Long>> known = splits.get(split.group());
        if (master.value(split) > 0 && !known.contains(split.lengths())) {
          known.add(split.lengths());
        }
      }
    }
    return finds.isClosed();
  }

  /** A class begins at each length that the program's splits use. */
  private void refine(SortedSet<Long> starts, ClassMaster master) {
    if (starts.size() > LARGE) {
      return;
    }
    for (SplitProgram.SplitColumn split : master.splits()) {
      if (choices.get(split.group()).hasAnyLength() && master.value(split) > 1e-6) {
        starts.addAll(split.lengths());
      }
    }
  }
}
