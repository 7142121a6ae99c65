package lapwright.bench.method;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.bench.method.Answer.Outcome;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;

/** Collects what a model cuts from stick after stick; equal sticks become one pattern. */
final class StickPatterns {
  private final StickProblem problem;
  private final Map<Cut, Integer> times = new LinkedHashMap<>();

  private record Cut(int stock, List<Count> counts) {}

  StickPatterns(StickProblem problem) {
    this.problem = problem;
  }

  /** True when an assignment model would have more variables than it is worth building. */
  static boolean tooManyVariables(StickProblem problem, long[] sticks) {
    long all = 0;
    for (long some : sticks) {
      all += some;
    }
    return all * problem.items().size() > AssignmentModel.MOST_VARIABLES;
  }

  /** Adds a stick, unless nothing is cut from it. */
  void add(int stock, long[] counts) {
    List<Count> cut = new ArrayList<>();
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] > 0) {
        cut.add(new Count(i, Math.toIntExact(counts[i])));
      }
    }
    if (!cut.isEmpty()) {
      times.merge(new Cut(stock, List.copyOf(cut)), 1, Integer::sum);
    }
  }

  /**
   * The answer that the sticks make.
   *
   * @param optimal the engine says so
   * @param bound the engine's bound
   */
  Answer answer(boolean optimal, long bound) {
    List<PatternUse> patterns = new ArrayList<>();
    long[] sticks = new long[problem.stocks().size()];
    times.forEach(
        (cut, count) -> {
          patterns.add(new PatternUse(cut.stock(), cut.counts(), count));
          sticks[cut.stock()] += count;
        });
    Answer answer = Answers.of(problem, patterns, sticks, bound, Outcome.CLAIMED);
    return optimal
        ? new Answer(
            Outcome.CLAIMED, answer.patterns(), answer.packs(), answer.cost(), answer.cost(), "")
        : answer;
  }
}
