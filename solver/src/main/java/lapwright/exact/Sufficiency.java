package lapwright.exact;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
  private static final int FEW_PROGRAMS = 300;
  private static final int MANY_PROGRAMS = 2_500;
  private static final int MOST_FOR_ENGINE = 5_000;
  private static final long MOST_NODES = 500;
  private static final int FEW_DIVES = 6;
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
   * @param known patterns to begin with
   */
  Verdict of(List<Long> sticks, List<Pattern> known) {
    Question question = Question.of(problem, sticks);
    if (!Refuter.isFeasible(question)) {
      return Verdict.UNKNOWN;
    }
    try (Refuter refuter = new Refuter(question, asAsked(question, known), effort)) {
      Refutation byWeights = refuter.byWeights();
      if (byWeights != null) {
        return new Verdict(null, byWeights, false);
      }
      Layout byDiving = layout(question, refuter.byDiving(FEW_DIVES));
      if (byDiving != null) {
        return new Verdict(byDiving, null, false);
      }
      List<Pattern> possible = refuter.possible();
      if (possible == null) {
        return new Verdict(layout(question, refuter.byDiving(MANY_DIVES)), null, false);
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

  /** The patterns in the terms of the question, those of stocks that play a part. */
  private List<Pattern> asAsked(Question question, List<Pattern> known) {
    Map<Long, Integer> itemOfSize = new HashMap<>();
    for (int i = 0; i < question.items(); i++) {
      itemOfSize.put((long) question.size(i), i);
    }
    Map<Integer, Integer> stockOfProblem = new HashMap<>();
    for (int j = 0; j < question.stocks(); j++) {
      stockOfProblem.put(question.stockOfProblem(j), j);
    }
    List<Pattern> asked = new ArrayList<>();
    for (Pattern pattern : known) {
      Integer stock = stockOfProblem.get(pattern.stock());
      if (stock == null) {
        continue;
      }
      int[] counts = new int[question.items()];
      for (int k = 0; k < pattern.kinds(); k++) {
        Integer item = itemOfSize.get(problem.items().get(pattern.item(k)).size());
        if (item != null) {
          counts[item] += pattern.count(k);
        }
      }
      asked.add(Pattern.ofCounts(stock, counts));
    }
    return asked;
  }

  /** A solution of the question as one of the problem; null when small items make it none. */
  private @Nullable Layout layout(Question question, @Nullable List<Pattern> patterns) {
    if (patterns == null) {
      return null;
    }
    int[] left = problem.items().stream().mapToInt(StickProblem.Item::demand).toArray();
    Layout.Builder builder = new Layout.Builder(problem);
    for (Pattern pattern : patterns) {
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
      builder.add(Pattern.ofCounts(question.stockOfProblem(pattern.stock()), counts), 1);
    }
    return builder.buildIfComplete();
  }
}
