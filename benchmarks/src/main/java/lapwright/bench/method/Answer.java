package lapwright.bench.method;

import java.util.List;
import java.util.Objects;
import lapwright.problem.StickSolution.PatternUse;

/**
 * What a method answers. Nothing in it is believed: {@code AnswerCheck} recomputes it.
 *
 * @param patterns empty without a solution
 * @param packs packs of each stock; empty without a solution
 * @param cost -1 without a solution
 * @param bound no solution costs less; at least 0
 * @param note why there is no solution, or other words for the reader; empty when there are none
 */
public record Answer(
    Outcome outcome,
    List<PatternUse> patterns,
    List<Integer> packs,
    long cost,
    long bound,
    String note) {
  public Answer {
    Objects.requireNonNull(outcome);
    Objects.requireNonNull(note);
    patterns = List.copyOf(patterns);
    packs = List.copyOf(packs);
  }

  /** No solution was found. */
  public static Answer nothing(long bound, String note) {
    return new Answer(Outcome.NOTHING, List.of(), List.of(), -1, bound, note);
  }

  /** How far a method came. */
  public enum Outcome {
    /** Optimal by a bound in exact arithmetic. */
    PROVED("proved"),
    /** Optimal by the word of an engine that reckons in floating point or shows no evidence. */
    CLAIMED("claimed"),
    /** A solution and a bound below it. */
    OPEN("open"),
    /** No solution was found. */
    NOTHING("nothing"),
    /** The method says that there is no solution. */
    IMPOSSIBLE("impossible");

    private final String word;

    Outcome(String word) {
      this.word = word;
    }

    /** The word that tables use. */
    public String word() {
      return word;
    }

    public boolean isSolved() {
      return this == PROVED || this == CLAIMED;
    }

    public boolean hasSolution() {
      return isSolved() || this == OPEN;
    }
  }
}
