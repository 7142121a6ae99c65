package lapwright.bench.instance;

import java.util.OptionalLong;

/**
 * What is known of an instance's optimum before anything is solved.
 *
 * @param optimum the optimal cost, by construction or as published; empty when not known
 * @param reached a cost that somebody's solution has; the optimum is at most this; empty when not
 *     known
 */
public record Known(OptionalLong optimum, OptionalLong reached) {
  public static final Known NOTHING = new Known(OptionalLong.empty(), OptionalLong.empty());

  public static Known optimum(long cost) {
    return new Known(OptionalLong.of(cost), OptionalLong.of(cost));
  }

  public static Known reached(long cost) {
    return new Known(OptionalLong.empty(), OptionalLong.of(cost));
  }
}
