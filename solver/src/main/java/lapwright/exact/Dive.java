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
 * <p>What is left has a linear program of its own, which shrinks from step to step.
 */
final class Dive {
  private static final double NEARLY_WHOLE = 0.8;
  private static final double HALF_WHOLE = 0.5;

  /** Of so many sticks that are left, at least one is fixed at a time. */
  private static final int STICKS_A_CHOICE = 12;

  private static final int COLUMNS_A_ROW = 3;
  private static final int FEW_COLUMNS = 200;

  private final StickProblem problem;
  private final Relaxation relaxation;
  private final List<GreedyFill> completions;
  private final Effort effort;

  Dive(StickProblem problem, Relaxation relaxation, List<GreedyFill> completions, Effort effort) {
    this.problem = problem;
    this.relaxation = relaxation;
    this.completions = completions;
    this.effort = effort;
  }

  /** Where solutions go: says what cost is still worth reaching, and takes what is found. */
  interface Finds {
    /** True when a solution of this cost would be of use. */
    boolean wants(double cost);

    /** True when a relaxation of this cost can still end as well as can be hoped. */
    boolean aimsAt(double cost);

    void take(Layout layout);
  }

  /**
   * Dives until nothing better is wanted, at most so many times.
   *
   * @param from the relaxation's last solution
   * @param dives 1 for a single dive without discrepancies
   */
  void run(Master.Solution from, int dives, Finds finds) {
    List<Pattern> firstChoices = new ArrayList<>();
    once(from, Set.of(), firstChoices, finds);
    for (int k = 0; k + 1 < dives && k < firstChoices.size(); k++) {
      if (!finds.wants(0) || effort.spent()) {
        return;
      }
      once(from, Set.of(firstChoices.get(k)), new ArrayList<>(), finds);
    }
  }

  private void once(
      Master.Solution from, Set<Pattern> forbidden, List<Pattern> choices, Finds finds) {
    int[] left = relaxation.demands();
    Layout.Builder builder = new Layout.Builder(problem);
    Master master = relaxation.master();
    Master.@Nullable Solution solution = from;
    try {
      for (int step = 0; solution != null && !effort.spent(); step++) {
        if (!fixSome(master, solution, left, builder, forbidden, choices)) {
          break;
        }
        boolean done = isDone(left);
        if (done || step % 4 == 0) {
          complete(builder, finds);
        }
        if (done || !finds.wants(0)) {
          break;
        }
        Master rest = theRest(master, solution, left, builder.sticks(), forbidden);
        close(master);
        master = rest;
        solution = solved(master, left, forbidden, finds);
      }
    } finally {
      close(master);
    }
    complete(builder, finds);
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
      Set<Pattern> forbidden) {
    Master rest = relaxation.master().forTheRest(left, sticksUsed);
    List<Column> columns = new ArrayList<>();
    for (int index = 0; index < master.patternCount(); index++) {
      Pattern pattern = master.pattern(index);
      if (pattern.mostTimes(left) > 0 && !forbidden.contains(pattern)) {
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

  /** Patterns are priced until what is aimed at is in reach again; null when it never will be. */
  private Master.@Nullable Solution solved(
      Master master, int[] left, Set<Pattern> forbidden, Finds finds) {
    ColumnGeneration.Watch watch =
        new ColumnGeneration.Watch() {
          @Override
          public double bound(ColumnGeneration.Priced priced) {
            return 0;
          }

          @Override
          public boolean isEnough(double masterCost) {
            return finds.aimsAt(masterCost);
          }

          @Override
          public boolean isAllowed(Pattern pattern) {
            return !forbidden.contains(pattern);
          }
        };
    Master.Solution solution = relaxation.generation(master).run(left, watch, 0, effort).solution();
    return solution == null || solution.uncovered() > 1e-6 || !finds.wants(solution.cost())
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

  private static boolean isDone(int[] left) {
    for (int rest : left) {
      if (rest > 0) {
        return false;
      }
    }
    return true;
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
