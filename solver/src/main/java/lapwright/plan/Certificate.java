package lapwright.plan;

import java.util.Collections;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;

/**
 * Evidence for a lower bound on the cost of one material, in the shop's words. The bound of a tree
 * is the least bound of its leaves. Whoever checks a plan recomputes every bound from the shop's
 * data; weights cannot be wrong, only weak.
 */
public sealed interface Certificate {
  /**
   * A leaf: one integer weight for each finished length.
   *
   * <p>With N the greatest total weight of the pieces that one stick of a supply can give, and P
   * the price of a pack of k sticks, the cost under the decisions above is at least ceil((sum of
   * weight x quantity + sum over supplies of the lesser of (scale x P - k x N) x least packs and
   * (scale x P - k x N) x most packs) / scale). Where sum of weight x quantity exceeds what all
   * sticks that can be had can carry (sum of k x most packs x N), no plan exists there at all.
   *
   * @param scale weight units that stand for one unit of cost; positive
   * @param weights by finished length; a length that is left out weighs 0
   */
  record Weights(long scale, SortedMap<Length, Long> weights) implements Certificate {
    public Weights {
      weights = Collections.unmodifiableSortedMap(new TreeMap<>(weights));
      if (scale < 1) {
        throw new IllegalArgumentException("scale " + scale);
      }
    }
  }

  /**
   * A decision: either at most {@code packs} packs of the supply are used, or more.
   *
   * @param supply key of the supply
   */
  record PackSplit(String supply, int packs, Certificate fewer, Certificate more)
      implements Certificate {
    public PackSplit {
      Objects.requireNonNull(supply);
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }
}
