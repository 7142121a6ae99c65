package lapwright.exact;

import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.problem.Refutation;
import lapwright.problem.StickProblem;
import lapwright.refute.Question;
import lapwright.refute.Refuter;
import org.jspecify.annotations.Nullable;

/**
 * Whether so many sticks suffice, where the weights of the relaxation do not tell: by weights
 * within the window of what may be wasted; else by a tree over all patterns that a solution could
 * use, with an engine's choice among them between a short and a long search; by diving where they
 * are too many.
 */
final class Sufficiency {
  private static final int FEW_PROGRAMS = 200;
  private static final int MANY_PROGRAMS = 2_500;
  private static final int MOST_FOR_ENGINE = 3_000;
  private static final long MOST_NODES = 200;
  private static final int CUT_ROUNDS = 8;
  private static final int FEW_DIVES = 20;
  private static final int MANY_DIVES = 40;

  private final StickProblem problem;
  private final Effort effort;

  Sufficiency(StickProblem problem, Effort effort) {
    this.problem = problem;
    this.effort = effort;
  }

  /**
   * What was found out.
   *
   * @param layout a solution
   * @param refutation shows that there is none
   * @param refused an engine says that there is none
   */
  record Verdict(@Nullable Layout layout, @Nullable Refutation refutation, boolean refused) {
    static final Verdict UNKNOWN = new Verdict(null, null, false);
  }

  /**
   * Asks.
   *
   * @param sticks by stock
   */
  Verdict of(List<Long> sticks) {
    Question question = Question.of(problem, sticks);
    if (!Refuter.isFeasible(question)) {
      return Verdict.UNKNOWN;
    }
    try (Refuter refuter = new Refuter(question, effort)) {
      Refutation byWeights = refuter.byWeights();
      if (byWeights != null) {
        return new Verdict(null, byWeights, false);
      }
      // Listing the patterns also finds those that dives begin from.
      List<Pattern> possible = refuter.possible();
      Refutation byCuts = possible == null ? refuter.byCuts(CUT_ROUNDS) : null;
      if (byCuts != null) {
        return new Verdict(null, byCuts, false);
      }
      int dives = possible == null ? MANY_DIVES : FEW_DIVES;
      Layout byDiving = layout(question, refuter.byDiving(dives));
      if (byDiving != null || possible == null) {
        return new Verdict(byDiving, null, false);
      }
      Refuter.TreeAnswer tree = refuter.byTree(possible, FEW_PROGRAMS);
      boolean refused = false;
      if (tree.isOpen() && possible.size() <= MOST_FOR_ENGINE) {
        Refuter.Choice choice = refuter.byEngine(possible, MOST_NODES);
        if (choice.patterns() != null) {
          return new Verdict(layout(question, choice.patterns()), null, false);
        }
        refused = choice.refused();
      }
      if (tree.isOpen()) {
        tree = refuter.byTree(possible, MANY_PROGRAMS);
      }
      return new Verdict(layout(question, tree.solution()), tree.refutation(), refused);
    }
  }

  /**
   * What a relaxation over patterns that fill their sticks came to.
   *
   * @param patterns of its solution; empty where it was refuted, or not made
   */
  record Filling(@Nullable Refutation refutation, List<Pattern> patterns) {
    static final Filling UNKNOWN = new Filling(null, List.of());
  }

  /**
   * Relaxes and tries to refute where there are far too many patterns to be listed.
   *
   * @param sticks by stock, with next to nothing to waste
   */
  Filling filling(List<Long> sticks) {
    Question question = Question.of(problem, sticks);
    if (!Refuter.isFeasible(question)) {
      return Filling.UNKNOWN;
    }
    try (Refuter refuter = new Refuter(question, effort)) {
      if (!refuter.isBeyondListing()) {
        return Filling.UNKNOWN;
      }
      Refutation byWeights = refuter.byWeights();
      if (byWeights != null) {
        return new Filling(byWeights, List.of());
      }
      List<Pattern> patterns =
          refuter.inUse().stream().map(pattern -> inProblem(question, pattern, demands())).toList();
      return new Filling(refuter.byCuts(CUT_ROUNDS), patterns);
    }
  }

  private int[] demands() {
    return problem.items().stream().mapToInt(StickProblem.Item::demand).toArray();
  }

  /** The pattern as one of the problem, of items that are left. */
  private Pattern inProblem(Question question, Pattern pattern, int[] left) {
    int[] counts = new int[left.length];
    for (int k = 0; k < pattern.kinds(); k++) {
      int wanted = pattern.count(k);
      for (int i = 0; i < left.length && wanted > 0; i++) {
        if (problem.items().get(i).size() == question.size(pattern.item(k))) {
          int taken = Math.min(wanted, left[i]);
          counts[i] += taken;
          left[i] -= taken;
          wanted -= taken;
        }
      }
    }
    return Pattern.ofCounts(question.stockOfProblem(pattern.stock()), counts);
  }

  /** A solution by diving alone; null when none is found. */
  @Nullable Layout byDiving(List<Long> sticks, int dives) {
    Question question = Question.of(problem, sticks);
    if (!Refuter.isFeasible(question)) {
      return null;
    }
    try (Refuter refuter = new Refuter(question, effort)) {
      return refuter.byWeights() != null ? null : layout(question, refuter.byDiving(dives));
    }
  }

  /** A solution of the question as one of the problem; null when small items make it none. */
  private @Nullable Layout layout(Question question, @Nullable List<Pattern> patterns) {
    if (patterns == null) {
      return null;
    }
    int[] left = demands();
    Layout.Builder builder = new Layout.Builder(problem);
    for (Pattern pattern : patterns) {
      builder.add(inProblem(question, pattern, left), 1);
    }
    return builder.buildIfComplete();
  }
}
