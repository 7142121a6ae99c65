package lapwright.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
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
 * and all that are nearly whole, at least one, price patterns for what is left, and so on down.
 * When a dive ends above what is aimed at, the next one forbids a choice of the first, earliest
 * choices first (limited discrepancy: W. Harvey and M. Ginsberg, IJCAI 1995; diving with column
 * generation: R. Sadykov and others, INFORMS J. Computing 31, 2019).
 */
final class Dive {
  private static final double NEARLY_WHOLE = 0.8;

  private final StickProblem problem;
  private final Relaxation relaxation;
  private final Master master;
  private final List<GreedyFill> completions;
  private final Effort effort;

  Dive(StickProblem problem, Relaxation relaxation, List<GreedyFill> completions, Effort effort) {
    this.problem = problem;
    this.relaxation = relaxation;
    this.master = relaxation.master();
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
   * @param dives 1 for a single dive without discrepancies
   */
  void run(int dives, Finds finds) {
    List<Integer> firstChoices = new ArrayList<>();
    Set<Integer> none = Set.of();
    once(none, firstChoices, finds);
    for (int k = 0; k + 1 < dives && k < firstChoices.size(); k++) {
      if (!finds.wants(0) || effort.spent()) {
        return;
      }
      once(Set.of(firstChoices.get(k)), new ArrayList<>(), finds);
    }
  }

  private void once(Set<Integer> forbidden, List<Integer> choices, Finds finds) {
    int[] left = relaxation.demands();
    List<Integer> fixed = new ArrayList<>();
    Layout.Builder builder = new Layout.Builder(problem);
    Set<Integer> touched = new HashSet<>();
    forbid(forbidden, touched);
    int seen = 0;
    while (!effort.spent()) {
      while (fixed.size() < master.patternCount()) {
        fixed.add(0);
      }
      for (int index = 0; index < fixed.size(); index++) {
        if (master.pattern(index).mostTimes(left) == 0 && touched.add(index)) {
          master.limitPattern(index, fixed.get(index), fixed.get(index));
        }
      }
      ColumnGeneration.Ending ending = relaxation.generation().run(left, until(finds), 0, effort);
      Master.Solution solution = ending.solution();
      if (solution == null || solution.uncovered() > 1e-6 || !finds.wants(solution.cost())) {
        break;
      }
      while (fixed.size() < master.patternCount()) {
        fixed.add(0);
      }
      if (!fixSome(solution, left, fixed, builder, forbidden, choices)) {
        break;
      }
      boolean done = isDone(left);
      if (done || seen++ % 4 == 0) {
        complete(builder, finds);
      }
      if (done || !finds.wants(0)) {
        break;
      }
    }
    complete(builder, finds);
    for (int index = 0; index < master.patternCount(); index++) {
      master.limitPattern(index, 0, Double.POSITIVE_INFINITY);
    }
  }

  /** Patterns are priced until what is aimed at is in reach again. */
  private static ColumnGeneration.Watch until(Finds finds) {
    return new ColumnGeneration.Watch() {
      @Override
      public double bound(ColumnGeneration.Priced priced) {
        return 0;
      }

      @Override
      public boolean isEnough(double masterCost) {
        return finds.aimsAt(masterCost);
      }
    };
  }

  private void forbid(Set<Integer> forbidden, Set<Integer> touched) {
    for (int index : forbidden) {
      master.limitPattern(index, 0, 0);
      touched.add(index);
    }
  }

  private boolean fixSome(
      Master.Solution solution,
      int[] left,
      List<Integer> fixed,
      Layout.Builder builder,
      Set<Integer> forbidden,
      List<Integer> choices) {
    List<Candidate> candidates = new ArrayList<>();
    for (int index = 0; index < fixed.size(); index++) {
      double more = solution.times(index) - fixed.get(index);
      if (more > 1e-6 && !forbidden.contains(index)) {
        candidates.add(new Candidate(index, Math.floor(more + 1e-6), more));
      }
    }
    boolean any = false;
    for (Candidate candidate : candidates) {
      if (candidate.whole() >= 1) {
        any |= fix(candidate.index(), (int) candidate.whole(), left, fixed, builder);
      }
    }
    candidates.sort(
        Comparator.comparingDouble(Candidate::fraction)
            .reversed()
            .thenComparingInt(Candidate::index));
    for (Candidate candidate : candidates) {
      if (candidate.fraction() >= NEARLY_WHOLE || !any) {
        if (fix(candidate.index(), 1, left, fixed, builder)) {
          choices.add(candidate.index());
          any = true;
        }
      }
    }
    return any;
  }

  private record Candidate(int index, double whole, double more) {
    double fraction() {
      return more - whole;
    }
  }

  private boolean fix(
      int index, int times, int[] left, List<Integer> fixed, Layout.Builder builder) {
    Pattern pattern = master.pattern(index);
    int possible = Math.min(times, pattern.mostTimes(left));
    if (possible <= 0) {
      return false;
    }
    pattern.addTo(left, -possible);
    builder.add(pattern, possible);
    fixed.set(index, fixed.get(index) + possible);
    master.limitPattern(index, fixed.get(index), Double.POSITIVE_INFINITY);
    return true;
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
