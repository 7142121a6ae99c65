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
   * A leaf. With N_j the greatest weight of a proper pattern of stock j (the empty pattern
   * included, and no more of an item than its demand), the cost under the decisions above the leaf
   * is at least
   *
   * <p>ceil((sum_i d_i W_i + min sum_j (D P_j - k_j N_j) y_j) / D)
   *
   * <p>where D is the scale, P_j the pack cost, k_j the pack size, and the minimum is over all
   * packs 0 &lt;= y_j &lt;= mostPacks_j that obey the decisions above the leaf. When sum_i d_i W_i
   * exceeds the greatest sum_j k_j N_j y_j over the same packs, the leaf holds no solution at all.
   *
   * <p>Packs are whole: the leaf's bound is also at least min sum_j P_j y_j over the whole packs y
   * there with sum_j k_j N_j y_j &gt;= sum_i d_i W_i, which may be dearer.
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
   * A decision about the packs of some stocks together (equal stocks, as a rule): {@code fewer}
   * holds for at most {@code packs}, {@code more} for at least one pack more. In one tree the
   * stocks of any two decisions are the same set or disjoint, so that the packs within a leaf are
   * bounded set by set.
   *
   * @param stocks ascending indices of the stocks, at least one
   * @param packs at least 0
   */
  record PackSplit(List<Integer> stocks, int packs, StickCertificate fewer, StickCertificate more)
      implements StickCertificate {
    public PackSplit {
      stocks = List.copyOf(stocks);
      if (stocks.isEmpty() || packs < 0) {
        throw new IllegalArgumentException("split of stocks " + stocks + " at " + packs);
      }
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }

  /**
   * A leaf that holds no solution, whatever it costs: the sticks of the packs that are allowed
   * there, all stocks limited, cannot give all items.
   *
   * @param refutation of n_j = k_j Y_j sticks of each stock j, where Y_j is the most packs that the
   *     decisions above the leaf and the supply allow; equal stocks are one
   */
  record NoSolution(Refutation refutation) implements StickCertificate {
    public NoSolution {
      Objects.requireNonNull(refutation);
    }
  }
}
