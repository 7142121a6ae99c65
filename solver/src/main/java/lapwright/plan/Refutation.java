package lapwright.plan;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * Evidence that limited sticks cannot give all pieces, by arithmetic alone. Pieces are known by
 * their length as plans know it ({@link lapwright.shop.Need#planned}); d is how many of a length
 * are needed. Of stock j there are n_j sticks at most; stock too short for any piece is left out.
 *
 * <p>A piece takes its length and a cut, of what a stick can give and a cut, C_j. All sticks
 * together have B = sum_j n_j C_j - sum d (length + cut) to waste, so that what is cut from any one
 * stick takes C_j - B to C_j of it, an unused stick counting as the empty pattern: these are the
 * patterns to begin with, whatever a vise can hold.
 *
 * <p>A refutation is a tree. Whoever checks it keeps what is still possible: all patterns at first,
 * without a list. A sieve by weights alone that does not close its branch makes the list; each
 * sieve over the list drops some, and closes its branch when there cannot be enough. A sieve
 * without a list closes its branch, cuts and all, by the greatest value among all patterns: pieces
 * that its cuts and decisions do not name are a knapsack beside every combination of those that
 * they do.
 */
public sealed interface Refutation {
  /**
   * Gives each pattern a the value
   *
   * <p>v(a) = sum W a - sum_c u_c floor((p_c a + r_c) / q_c) + sum_e (+-) w_e [a holds H_e]
   *
   * <p>over cuts c and the decisions e above, minus for one that was decided "at most t_e", plus
   * for "at least t_e". All sticks together then have at least the value
   *
   * <p>V = sum d W - sum_c u_c floor((p_c d + r_c n) / q_c) + sum_e (+-) w_e t_e,
   *
   * <p>n = sum_j n_j, and at most sum_j n_j N_j with N_j the greatest value of a pattern of stock j
   * that is still possible. With S = sum_j n_j N_j - V: where S is negative the sticks do not
   * suffice; otherwise only patterns of at least N_j - S remain.
   *
   * @param weights W by length, of any sign; a length that is left out weighs 0
   * @param cuts rounded sums with their multipliers
   * @param decided w_e, one a decision above, the first one first; missing ones are 0
   * @param rest what is proved of the patterns that remain; null where S is negative
   */
  record Sieve(
      SortedMap<Length, Long> weights,
      List<CutTimes> cuts,
      List<Long> decided,
      @Nullable Refutation rest)
      implements Refutation {
    public Sieve {
      weights = Collections.unmodifiableSortedMap(new TreeMap<>(weights));
      cuts = List.copyOf(cuts);
      decided = List.copyOf(decided);
      if (decided.stream().anyMatch(w -> w < 0)) {
        throw new IllegalArgumentException("a negative multiplier of a decision");
      }
    }
  }

  /**
   * A cut by rounding (V. Chvatal, Discrete Mathematics 4, 1973): of all sticks together, sum
   * floor((p a + r) / q) is at most floor((p d + r n) / q), since the sum without rounding is equal
   * to the same.
   *
   * @param times u, its multiplier, positive
   * @param divisor q, positive
   * @param constant r
   * @param multipliers p by length, of any sign
   */
  record CutTimes(long times, long divisor, long constant, SortedMap<Length, Long> multipliers) {
    public CutTimes {
      multipliers = Collections.unmodifiableSortedMap(new TreeMap<>(multipliers));
      if (times < 1 || divisor < 1) {
        throw new IllegalArgumentException("cut " + times + " times, divided by " + divisor);
      }
    }
  }

  /**
   * A decision: either at most {@code times} sticks are cut to patterns that hold these pieces, or
   * at least one more.
   *
   * @param holding least count by length, positive
   * @param times at least 0
   */
  record HoldingSplit(
      SortedMap<Length, Integer> holding, int times, Refutation fewer, Refutation more)
      implements Refutation {
    public HoldingSplit {
      holding = Collections.unmodifiableSortedMap(new TreeMap<>(holding));
      if (holding.isEmpty() || times < 0 || holding.values().stream().anyMatch(c -> c < 1)) {
        throw new IllegalArgumentException("split of " + holding + " at " + times);
      }
    }
  }
}
