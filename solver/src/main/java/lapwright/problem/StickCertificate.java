package lapwright.problem;

import java.util.List;
import java.util.Objects;

/**
 * Evidence for a lower bound on the cost of a {@link StickProblem}: a tree of decisions about
 * packs, whose leaves each give one integer weight an item. The bound of the tree is the least
 * bound of its leaves; whoever verifies it computes every bound anew.
 */
public sealed interface StickCertificate {
  /**
   * A leaf. With N_j the greatest weight of a proper pattern of stock j, the cost under the
   * decisions above the leaf is at least
   *
   * <p>ceil((sum_i d_i W_i + sum_j min((D P_j - k_j N_j) L_j, (D P_j - k_j N_j) Y_j)) / D)
   *
   * <p>where D is the scale, P_j the pack cost, k_j the pack size, and L_j and Y_j the least and
   * most packs there. When sum_i d_i W_i exceeds sum_j k_j Y_j N_j the leaf holds no solution at
   * all.
   *
   * @param scale D, positive
   * @param weights W, one an item, not negative
   */
  record Weights(long scale, List<Long> weights) implements StickCertificate {
    public Weights {
      weights = List.copyOf(weights);
      if (scale < 1) {
        throw new IllegalArgumentException("scale " + scale);
      }
    }
  }

  /**
   * A decision about the packs of one stock: {@code fewer} holds for at most {@code packs}, {@code
   * more} for at least one pack more.
   *
   * @param stock index of the stock
   */
  record PackSplit(int stock, int packs, StickCertificate fewer, StickCertificate more)
      implements StickCertificate {
    public PackSplit {
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }
}
