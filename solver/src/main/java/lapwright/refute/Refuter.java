package lapwright.refute;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.problem.Refutation;
import org.jspecify.annotations.Nullable;

/**
 * Answers one question, in three steps: whether the patterns within the window refute it by one set
 * of weights; which patterns a solution could use; and a tree over that list.
 *
 * <p>Deterministic. Holds native memory: close it. Not thread-safe.
 */
public final class Refuter implements AutoCloseable {
  private static final int CENTERINGS = 8;
  private static final double SHIFT = 0.01;
  private static final int MOST_LISTED = 150_000;
  private static final double FAR_TOO_MANY = 10;

  /** Part of the longest stick. */
  private static final long NEXT_TO_NOTHING = 500;

  private final Question question;
  private final Effort effort;
  private final WindowTable table;
  private final WindowProgram program;
  private List<Long> weights = List.of();

  public Refuter(Question question, Effort effort) {
    this.question = question;
    this.effort = effort;
    table = new WindowTable(question);
    program = new WindowProgram(question, table);
  }

  /** True when the question is coarse enough for a table of its lengths. */
  public static boolean isFeasible(Question question) {
    return question.stocks() > 0 && WindowTable.isFeasible(question);
  }

  /**
   * True when there is next to nothing to waste, so that weights can tell few patterns from others,
   * and far too many patterns for a list.
   */
  public boolean isBeyondListing() {
    if (question.waste() * NEXT_TO_NOTHING > question.longest()) {
      return false;
    }
    double all = 0;
    for (int j = 0; j < question.stocks(); j++) {
      all += table.count(j);
    }
    return all > FAR_TOO_MANY * MOST_LISTED;
  }

  /** The refutation by weights alone; null when there is none. */
  public @Nullable Refutation byWeights() {
    if (question.waste() < 0) {
      return sieve(null);
    }
    WindowProgram.Ending ending = program.run(effort);
    if (ending == null) {
      return null;
    }
    weights = ending.weights();
    return ending.refutes() ? sieve(null) : null;
  }

  /** Patterns of the last linear program's solution. */
  public Set<Pattern> inUse() {
    return program.values().keySet();
  }

  /**
   * The refutation by one set of weights with cuts, which lists no pattern; null when there is
   * none, at a limit, or effort is spent. The question is as it was afterwards.
   *
   * @param rounds of cuts at most
   */
  public @Nullable Refutation byCuts(int rounds) {
    Refutation found = new CutLoop(question, program, effort).run(rounds);
    program.uncut();
    program.ask(question);
    return found;
  }

  /** Every pattern that a solution could use; null when there are too many, or effort is spent. */
  public @Nullable List<Pattern> possible() {
    List<Long> centered = program.centered(CENTERINGS, SHIFT, effort);
    if (centered == null) {
      return null;
    }
    weights = centered;
    long reserve = program.reserve(weights);
    List<Pattern> patterns = new ArrayList<>();
    for (int j = 0; j < question.stocks(); j++) {
      Long greatest = table.greatest(j);
      if (greatest == null || reserve < 0) {
        return List.of();
      }
      if (!table.list(j, greatest - reserve, patterns, MOST_LISTED)) {
        return null;
      }
    }
    return patterns;
  }

  /** Patterns of a solution, one a stick, by diving; null when none is found. */
  public @Nullable List<Pattern> byDiving(int dives) {
    List<Pattern> found = new WindowDive(question, table, program, effort).run(dives);
    program.ask(question);
    return found;
  }

  /**
   * What an engine says of a list.
   *
   * @param patterns a solution, one pattern a stick; null without one
   * @param refused true when it says that there is none
   */
  public record Choice(@Nullable List<Pattern> patterns, boolean refused) {}

  /** Lets an engine choose from the list. */
  public Choice byEngine(List<Pattern> possible, long mostNodes) {
    return ListChoice.of(question, possible, mostNodes, effort);
  }

  /**
   * What a tree over a list came to: at most one of the two is there.
   *
   * @param solution one pattern a stick
   */
  public record TreeAnswer(@Nullable Refutation refutation, @Nullable List<Pattern> solution) {
    /** True when the tree was given up. */
    public boolean isOpen() {
      return refutation == null && solution == null;
    }
  }

  /**
   * A refutation by a tree over the list, or a solution from it.
   *
   * @param possible of {@link #possible}
   * @param mostPrograms linear programs after which to give up
   */
  public TreeAnswer byTree(List<Pattern> possible, int mostPrograms) {
    if (possible.isEmpty()) {
      return new TreeAnswer(sieve(null), null);
    }
    try (RefutationTree tree = new RefutationTree(question, possible, mostPrograms, effort)) {
      Refutation rest = tree.run();
      return new TreeAnswer(rest == null ? null : sieve(rest), tree.solution());
    }
  }

  private Refutation sieve(@Nullable Refutation rest) {
    return new Refutation.Sieve(question.bySize(weights), List.of(), List.of(), rest);
  }

  @Override
  public void close() {
    program.close();
  }
}
