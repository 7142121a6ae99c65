package lapwright.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import lapwright.colgen.ColumnGeneration;
import lapwright.colgen.Master;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/**
 * Diving with column generation on the residual: fix the whole parts of the relaxation's patterns
 * and all that are nearly whole, at least one, and of many sticks so many more, price patterns for
 * what is left, and so on down. When a dive ends above what is aimed at, the next one forbids a
 * choice of the first, earliest choices first (limited discrepancy: W. Harvey and M. Ginsberg,
 * IJCAI 1995; diving with column generation: R. Sadykov and others, INFORMS J. Computing 31, 2019).
 *
 * <p>What is left has a linear program of its own, which shrinks from step to step. Weights tell
 * what patterns may lose together at a cost (as in fixing by reduced costs): a dive that aims at it
 * uses no pattern that loses more than is left, and ends when nothing is left to lose. When few
 * pieces are left, other searches complete the solution.
 */
final class Dive {
  private static final double NEARLY_WHOLE = 0.8;
  private static final double HALF_WHOLE = 0.5;

  /** Of so many sticks that are left, at least one is fixed at a time. */
  private static final int STICKS_A_CHOICE = 12;

  /** So few are left that a search may complete a solution. */
  private static final long PIECES_TO_FINISH = 40;

  /** So few are left that a dive within the window of what may be wasted is short. */
  private static final long PIECES_IN_WINDOW = 150;

  /** Part of what may be lost that a relaxation is to keep for the steps after it. */
  private static final double KEPT = 0.8;

  /** For a dive that may lose as much as it likes. */
  private static final long NO_LIMIT = Long.MAX_VALUE;

  private static final int COLUMNS_A_ROW = 3;
  private static final int FEW_COLUMNS = 200;

  private final StickProblem problem;
  private final Relaxation relaxation;
  private final List<GreedyFill> completions;
  private final @Nullable ExactFinish finish;
  private final @Nullable WindowFinish window;
  private final Effort effort;

  /**
   * @param finish what completes solutions of which little is left, and tells what may be lost;
   *     null for dives that lose what they like
   * @param window likewise, within the window of what may be wasted; null without
   */
  Dive(
      StickProblem problem,
      Relaxation relaxation,
      List<GreedyFill> completions,
      @Nullable ExactFinish finish,
      @Nullable WindowFinish window,
      Effort effort) {
    this.problem = problem;
    this.relaxation = relaxation;
    this.completions = completions;
    this.finish = finish;
    this.window = window;
    this.effort = effort;
  }

  /** Where solutions go: says what cost is still worth reaching, and takes what is found. */
  interface Finds {
    /** True when a solution of this cost would be of use. */
    boolean wants(double cost);

    /** The least cost that can be hoped for. */
    long aim();

    /** The greatest cost that would be better than what is known. */
    long goal();

    void take(Layout layout);
  }

  /**
   * Dives until nothing better is wanted, at most so many times. Of those after the first, every
   * other one may lose no more than the least cost that can be hoped for allows, the others no more
   * than a better solution may.
   *
   * @param from the relaxation's last solution
   * @param dives 1 for a single dive without discrepancies
   */
  void run(Master.Solution from, int dives, Finds finds) {
    List<Pattern> firstChoices = new ArrayList<>();
    once(from, Set.of(), firstChoices, NO_LIMIT, finds);
    Master.@Nullable Solution tight = null;
    for (int k = 0; k + 1 < dives && k < firstChoices.size(); k++) {
      if (!finds.wants(0) || effort.spent()) {
        return;
      }
      Set<Pattern> forbidden = Set.of(firstChoices.get(k));
      if (k % 2 == 1 || finish == null) {
        long most = finish == null ? NO_LIMIT : finds.goal();
        once(from, forbidden, new ArrayList<>(), most, finds);
      } else {
        tight = tight == null ? tight(from, finds) : tight;
        once(tight, forbidden, new ArrayList<>(), finds.aim(), finds);
      }
    }
  }

  /** The relaxation's solution that loses little of what the aim allows, if there is one. */
  private Master.Solution tight(Master.Solution from, Finds finds) {
    long budget = budget(new Layout.Builder(problem), finds.aim());
    if (budget < 0 || budget == NO_LIMIT) {
      return from;
    }
    Master.@Nullable Solution tight =
        solved(relaxation.master(), relaxation.demands(), Set.of(), budget, finds.aim(), finds);
    return tight == null ? from : tight;
  }

  /** What may still be lost at that cost. */
  private long budget(Layout.Builder builder, long most) {
    return most == NO_LIMIT || finish == null ? NO_LIMIT : finish.budget(builder, most);
  }

  /**
   * One dive.
   *
   * @param most it is given up when it will cost more
   */
  private void once(
      Master.Solution from, Set<Pattern> forbidden, List<Pattern> choices, long most, Finds finds) {
    int[] left = relaxation.demands();
    Layout.Builder builder = new Layout.Builder(problem);
    Master master = relaxation.master();
    Master.@Nullable Solution solution = from;
    boolean triedWindow = false;
    try {
      for (int step = 0; solution != null && !effort.spent(); step++) {
        if (!fixSome(master, solution, left, builder, forbidden, choices)) {
          break;
        }
        long pieces = pieces(left);
        if (pieces == 0 || step % 4 == 0) {
          complete(builder, finds);
        }
        if (finish != null && pieces > 0 && pieces <= PIECES_TO_FINISH && finds.wants(0)) {
          take(finish.finish(builder, finds.goal()), finds);
        }
        long budget = budget(builder, most);
        if (pieces == 0 || budget < 0 || !finds.wants(0)) {
          break;
        }
        Master rest = theRest(master, solution, left, builder.sticks(), forbidden, budget);
        close(master);
        master = rest;
        solution = solved(master, left, forbidden, budget, most, finds);
        if (window != null && solution != null && pieces <= PIECES_IN_WINDOW && !triedWindow) {
          triedWindow = true;
          take(window.finish(builder, master, solution, finds.aim()), finds);
        }
      }
    } finally {
      close(master);
    }
    complete(builder, finds);
  }

  private static void take(@Nullable Layout layout, Finds finds) {
    if (layout != null) {
      finds.take(layout);
    }
  }

  private void close(Master master) {
    if (master != relaxation.master()) {
      master.close();
    }
  }

  /** A master for what is left, with the patterns that were in use or nearly so. */
  private Master theRest(
      Master master,
      Master.Solution solution,
      int[] left,
      long[] sticksUsed,
      Set<Pattern> forbidden,
      long budget) {
    Master rest = relaxation.master().forTheRest(left, sticksUsed);
    List<Column> columns = new ArrayList<>();
    for (int index = 0; index < master.patternCount(); index++) {
      Pattern pattern = master.pattern(index);
      if (pattern.mostTimes(left) > 0
          && !forbidden.contains(pattern)
          && isWithin(budget, pattern)) {
        double surplus = solution.times(index) > 0 ? 0 : Math.max(0, solution.surplus(pattern));
        columns.add(new Column(pattern, surplus));
      }
    }
    columns.sort(Comparator.comparingDouble(Column::surplus));
    int most = FEW_COLUMNS;
    for (int i = 0; i < left.length; i++) {
      most += left[i] > 0 ? COLUMNS_A_ROW : 0;
    }
    columns.stream().limit(most).forEach(column -> rest.add(column.pattern()));
    return rest;
  }

  private record Column(Pattern pattern, double surplus) {}

  private boolean isWithin(long budget, Pattern pattern) {
    return budget == NO_LIMIT || finish == null || finish.lost(pattern) <= budget;
  }

  /**
   * Patterns that lose no more than is left are priced until what is aimed at is in reach again;
   * null when it never will be.
   */
  private Master.@Nullable Solution solved(
      Master master, int[] left, Set<Pattern> forbidden, long budget, long most, Finds finds) {
    double kept = budget == NO_LIMIT || finish == null ? 0 : KEPT * finish.cost(budget);
    ColumnGeneration.Watch watch =
        new ColumnGeneration.Watch() {
          @Override
          public double bound(ColumnGeneration.Priced priced) {
            return 0;
          }

          @Override
          public boolean isEnough(double masterCost) {
            return masterCost <= (most == NO_LIMIT ? finds.aim() : most - kept) + 1e-6;
          }

          @Override
          public boolean isAllowed(Pattern pattern) {
            return !forbidden.contains(pattern) && isWithin(budget, pattern);
          }
        };
    Master.Solution solution = relaxation.generation(master).run(left, watch, 0, effort).solution();
    return solution == null
            || solution.uncovered() > 1e-6
            || solution.cost() > most + 1e-6
            || !finds.wants(solution.cost())
        ? null
        : solution;
  }

  private boolean fixSome(
      Master master,
      Master.Solution solution,
      int[] left,
      Layout.Builder builder,
      Set<Pattern> forbidden,
      List<Pattern> choices) {
    List<Candidate> candidates = new ArrayList<>();
    double sticks = 0;
    for (int index = 0; index < master.patternCount(); index++) {
      double times = solution.times(index);
      if (times > 1e-6 && !forbidden.contains(master.pattern(index))) {
        candidates.add(new Candidate(index, Math.floor(times + 1e-6), times));
        sticks += times;
      }
    }
    int fixed = 0;
    for (Candidate candidate : candidates) {
      if (candidate.whole() >= 1) {
        fixed += fix(master.pattern(candidate.index()), (int) candidate.whole(), left, builder);
      }
    }
    candidates.sort(
        Comparator.comparingDouble(Candidate::fraction)
            .reversed()
            .thenComparingInt(Candidate::index));
    for (Candidate candidate : candidates) {
      boolean many = candidate.fraction() >= HALF_WHOLE && fixed < (long) sticks / STICKS_A_CHOICE;
      if (candidate.fraction() >= NEARLY_WHOLE || fixed == 0 || many) {
        Pattern pattern = master.pattern(candidate.index());
        if (fix(pattern, 1, left, builder) > 0) {
          choices.add(pattern);
          fixed++;
        }
      }
    }
    return fixed > 0;
  }

  private record Candidate(int index, double whole, double times) {
    double fraction() {
      return times - whole;
    }
  }

  /** Cuts a pattern as often as that, or as often as is possible; returns how often. */
  private static int fix(Pattern pattern, int times, int[] left, Layout.Builder builder) {
    int possible = Math.min(times, pattern.mostTimes(left));
    if (possible > 0) {
      pattern.addTo(left, -possible);
      builder.add(pattern, possible);
    }
    return possible;
  }

  private static long pieces(int[] left) {
    long pieces = 0;
    for (int rest : left) {
      pieces += rest;
    }
    return pieces;
  }

  private void complete(Layout.Builder builder, Finds finds) {
    for (GreedyFill completion : completions) {
      @Nullable Layout layout = completion.complete(builder);
      if (layout != null && finds.wants((double) layout.cost())) {
        finds.take(layout);
      }
    }
  }
}
