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
  private static final int REFINEMENTS = 8;
  private static final int LARGE = 250;
  private static final int MOST_TO_REFINE = 1_500;
  private static final double NEXT_TO_NOTHING = 1e-5;
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
  private List<ClassMaster.Cutting> cuttings = List.of();
  private @Nullable ClassPrices prices;
  private double value;

  /** Where solutions and bounds go. */
  interface Finds {
    /** Cuts the pieces of these splits, and keeps the solution if it is better. */
    void offer(List<List<Split>> splits);

    /** Keeps the bound if it is better. */
    void offer(PackTree.Proven proven);

    /** True when more work could gain nothing, or would be long and gain next to nothing. */
    boolean isEnough();

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
    boolean large = isLarge(problem);
    int coarse = starts.size();
    if (stage(starts, !large, false, effort) || effort.spent()) {
      return;
    }
    starts.addAll(ClassStarts.of(problem, choices, MANY, step));
    boolean anywhere = choices.stream().anyMatch(Choice::hasAnyLength);
    if (starts.size() == coarse && !anywhere) {
      // The classes hold one length each already.
      stage(starts, true, true, effort);
      return;
    }
    int refinements = anywhere ? REFINEMENTS : 1;
    for (int r = 1; r < refinements && !finds.isEnough() && !effort.spent(); r++) {
      int before = starts.size();
      double valueBefore = value;
      stage(starts, r == 1 && !large, false, effort);
      if (starts.size() == before || value < valueBefore * (1 + NEXT_TO_NOTHING)) {
        break;
      }
    }
    if (!finds.isEnough() && !effort.spent()) {
      stage(starts, true, true, effort);
    }
  }

  /** True where much work is only worth doing for much gain. */
  static boolean isLarge(SpliceProblem problem) {
    return problem.plain().size() + problem.groups().size() > LARGE;
  }

  /** Searches over few classes only. */
  void runOverFew(List<List<Long>> first, Effort effort) {
    stage(begin(first), false, false, effort);
  }

  private SortedSet<Long> begin(List<List<Long>> first) {
    for (int g = 0; g < first.size(); g++) {
      splits.get(g).add(first.get(g));
    }
    return ClassStarts.of(problem, choices, FEW, step);
  }

  /**
   * Solves over some classes; adds to them where they are too coarse. True when no more is wanted.
   */
  private boolean stage(
      SortedSet<Long> starts, boolean withDives, boolean withTree, Effort effort) {
    long[] ascending = starts.stream().mapToLong(Long::longValue).toArray();
    boolean first = prices == null;
    try (ClassMaster master = new ClassMaster(problem, choices, costUnit, ascending)) {
      for (int g = 0; g < splits.size(); g++) {
        for (List<Long> split : splits.get(g)) {
          master.add(g, split);
        }
      }
      finds.cuttings().forEach(master::add);
      cuttings.forEach(master::add);
      if (prices != null) {
        master.begin(prices);
      }
      PackTree tree = new PackTree(problem, choices, master, reachable, costUnit);
      finds.offer(tree.grow(all, finds.cost(), 1, effort));
      prices = master.bestPrices();
      cuttings = master.cuttings();
      value = master.value();
      if (finds.isEnough()) {
        return true;
      }
      refine(starts, master);
      for (double close : withDives && finds.wantsSplits() ? CLOSE : NO_DIVES) {
        List<List<Split>> dived = new Dive(problem, master).run(close, Map.of(), effort);
        if (dived != null) {
          finds.offer(dived);
          finds.offer(FragmentFill.finished(problem, choices, dived, master.sticks()));
        }
        if (finds.isEnough() || effort.spent()) {
          break;
        }
      }
      if ((first || isLarge(problem)) && withDives && !finds.isEnough()) {
        finds.recut(effort.share(3));
      }
      if (withTree && !finds.isEnough()) {
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
    return finds.isEnough();
  }

  /**
   * A class begins at each length that the program's splits use, and in the middle between it and
   * where its class begins: else the next program takes pieces that are hardly shorter.
   */
  private void refine(SortedSet<Long> starts, ClassMaster master) {
    if (starts.size() > MOST_TO_REFINE) {
      return;
    }
    for (SplitProgram.SplitColumn split : master.splits()) {
      if (choices.get(split.group()).hasAnyLength() && master.value(split) > 1e-6) {
        for (long length : split.lengths()) {
          SortedSet<Long> upTo = starts.headSet(length);
          long middle = upTo.isEmpty() ? length : (upTo.last() + length) / 2;
          starts.add(Math.max(1, middle - middle % Math.max(1, step)));
          starts.add(length);
        }
      }
    }
  }
}
