package lapwright.problem;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a solver answers.
 *
 * @param status why it stopped
 * @param patterns distinct patterns with how often each is cut; together they hold every item
 *     exactly as often as demanded; empty without a solution
 * @param packs packs of each stock that are bought or used, in the order of the problem's stocks;
 *     empty without a solution
 * @param cost sum of pack costs; -1 without a solution
 * @param bound no solution costs less: the bound of {@code certificate}, raised to the next cost
 *     that can be reached; at least 0
 * @param certificate from which the bound is recomputed; null only without a solution
 */
public record StickSolution(
    Status status,
    List<PatternUse> patterns,
    List<Integer> packs,
    long cost,
    long bound,
    @Nullable StickCertificate certificate) {
  public StickSolution {
    Objects.requireNonNull(status);
    patterns = List.copyOf(patterns);
    packs = List.copyOf(packs);
    if (status == Status.PROVED && cost != bound) {
      throw new IllegalArgumentException("proved, but cost " + cost + " and bound " + bound);
    }
    if (status.hasSolution() != (cost >= 0 && certificate != null)) {
      throw new IllegalArgumentException(status + " with cost " + cost);
    }
    if (status.hasSolution() && bound > cost) {
      throw new IllegalArgumentException("bound " + bound + " above cost " + cost);
    }
  }

  /** Why the solver stopped. */
  public enum Status {
    /** Cost equals the certificate's bound. */
    PROVED,
    /** An engine says that nothing cheaper exists; the certificate's bound is lower. */
    CLAIMED,
    /** Neither; the effort was spent or the method has no more to try. */
    OPEN,
    /** No solution exists: some item fits nothing, or supply is short. */
    IMPOSSIBLE,
    /** Stopped before any solution was found. */
    NOTHING_FOUND;

    public boolean hasSolution() {
      return this == PROVED || this == CLAIMED || this == OPEN;
    }
  }

  /**
   * A pattern and how often it is cut.
   *
   * @param stock index of the stock
   * @param counts how many of each item, in the order of the problem's items, most of them 0
   * @param times at least 1
   */
  public record PatternUse(int stock, List<Count> counts, int times) {
    public PatternUse {
      counts = List.copyOf(counts);
      if (times < 1) {
        throw new IllegalArgumentException("pattern used " + times + " times");
      }
    }
  }

  /**
   * How many of an item a pattern holds.
   *
   * @param item index of the item
   * @param count at least 1
   */
  public record Count(int item, int count) {
    public Count {
      if (count < 1) {
        throw new IllegalArgumentException("count " + count);
      }
    }
  }
}
