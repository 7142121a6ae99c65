package lapwright.problem;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Evidence for a lower bound on the cost of a {@link SpliceProblem}: a tree of decisions about
 * packs, whose leaves each give a weight to every length there is.
 */
public sealed interface SpliceCertificate {
  /**
   * A leaf. A piece of length l weighs as much as the longest listed length up to l (0 below the
   * first), and {@code perSize} for each unit of its size besides. With N_j the greatest weight of
   * the pieces from a stick of stock j and s_r the least weight of a permitted split of a line of
   * group r, the cost under the decisions above is at least
   *
   * <p>ceil((sum_i d_i W_i + sum_r n_r s_r + min sum_j (D P_j - k_j N_j) y_j) / D).
   *
   * @param scale D, positive
   * @param weights by length, not negative and not falling
   * @param perSize weight of each unit of size, at least 0
   */
  record Weights(long scale, SortedMap<Long, Long> weights, long perSize)
      implements SpliceCertificate {
    public Weights {
      weights = Collections.unmodifiableSortedMap(new TreeMap<>(weights));
      if (scale < 1 || perSize < 0) {
        throw new IllegalArgumentException("scale " + scale + ", per size " + perSize);
      }
    }
  }

  /**
   * A decision about the packs of some stocks together, as in {@link StickCertificate.PackSplit}.
   */
  record PackSplit(List<Integer> stocks, int packs, SpliceCertificate fewer, SpliceCertificate more)
      implements SpliceCertificate {
    public PackSplit {
      stocks = List.copyOf(stocks);
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }
}
