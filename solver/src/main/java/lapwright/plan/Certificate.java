package lapwright.plan;

import java.util.Collections;
import java.util.List;
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
   * A leaf: one integer weight for each finished length, as plans know it ({@link
   * lapwright.shop.Need#planned}).
   *
   * <p>With N the greatest total weight of the pieces that one stick of a supply can give (no more
   * pieces of a length than are needed), P the price of a pack of k sticks, and y the packs of the
   * supply, the cost under the decisions above is at least ceil((sum of weight x quantity + the
   * least possible sum over supplies of (scale x P - k x N) x y) / scale), the least over all packs
   * that can be had and that obey the decisions above. Where sum of weight x quantity exceeds what
   * those packs can carry at most (sum of k x N x y), no plan exists there at all.
   *
   * <p>Packs are whole: the cost there is also at least that of the cheapest whole packs y which
   * can carry the weights, sum of k x N x y at least the sum of weight x quantity.
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
   * A leaf where runs are planned: a weight for every length there is. A piece weighs as much as
   * the longest listed length that is no longer (0 below the first), and {@code perUnit} for each
   * unit of its length and one cut besides.
   *
   * <p>As {@link Weights}, with N over pieces of any lengths, and with (lines x the least weight of
   * a permitted split of such a line) added for every run.
   *
   * @param weights by length, not negative and not falling
   * @param perUnit at least 0
   */
  record RunWeights(long scale, SortedMap<Length, Long> weights, long perUnit)
      implements Certificate {
    public RunWeights {
      weights = Collections.unmodifiableSortedMap(new TreeMap<>(weights));
      if (scale < 1 || perUnit < 0) {
        throw new IllegalArgumentException("scale " + scale + ", per unit " + perUnit);
      }
    }
  }

  /**
   * A leaf where lots must not mix: weights for every length there is, as {@link RunWeights} has
   * them, for each lot its own, all of one scale. A stick carries the weights of its lot. A job or
   * run adds the least that it weighs in a lot that it may still be cut from, and a plain piece
   * that may come from any lot the least that it weighs in a lot that has a stick as long.
   *
   * @param lots each lot at most once; all weighs nothing in a lot that is left out
   */
  record LotWeights(long scale, List<OfLots> lots) implements Certificate {
    public LotWeights {
      lots = List.copyOf(lots);
      if (scale < 1) {
        throw new IllegalArgumentException("scale " + scale);
      }
    }

    /**
     * What is weighed alike in some lots.
     *
     * @param lots as {@link lapwright.shop.Supply#lotKey} names them, at least one
     * @param weights by length, not negative and not falling
     * @param perUnit at least 0
     */
    public record OfLots(List<String> lots, SortedMap<Length, Long> weights, long perUnit) {
      public OfLots {
        lots = List.copyOf(lots);
        weights = Collections.unmodifiableSortedMap(new TreeMap<>(weights));
        if (lots.isEmpty() || perUnit < 0) {
          throw new IllegalArgumentException("lots " + lots + ", per unit " + perUnit);
        }
      }
    }
  }

  /**
   * A decision about whose sticks a job (or a run) is cut from: either one of {@code lots}, or one
   * of the others.
   *
   * @param job name of the job
   * @param mark the run's mark where lots must not mix within a run; empty where not within a job
   * @param lots lots as {@link lapwright.shop.Supply#lotKey} names them, at least one
   */
  record LotSplit(
      String job, String mark, List<String> lots, Certificate within, Certificate outside)
      implements Certificate {
    public LotSplit {
      Objects.requireNonNull(job);
      Objects.requireNonNull(mark);
      Objects.requireNonNull(within);
      Objects.requireNonNull(outside);
      lots = List.copyOf(lots);
      if (lots.isEmpty()) {
        throw new IllegalArgumentException("a decision about no lot");
      }
    }
  }

  /**
   * A decision about plain pieces that may come from any lot: either at most {@code pieces} of a
   * length come from {@code lots} together, or more. In one tree the lots of any two decisions
   * about a length are the same or disjoint.
   *
   * @param length as plans know the pieces ({@link lapwright.shop.Need#planned})
   * @param lots as {@link lapwright.shop.Supply#lotKey} names them, at least one
   */
  record PieceSplit(
      Length length, List<String> lots, int pieces, Certificate fewer, Certificate more)
      implements Certificate {
    public PieceSplit {
      Objects.requireNonNull(length);
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
      lots = List.copyOf(lots);
      if (lots.isEmpty() || pieces < 0) {
        throw new IllegalArgumentException("at most " + pieces + " pieces of " + lots);
      }
    }
  }

  /**
   * A leaf that bounds each lot by itself: what was decided to be cut from it must be cut from its
   * supplies, so the cost is at least the sum of the bounds.
   *
   * @param lots a certificate for each lot; a lot that is left out costs nothing
   */
  record ByLot(SortedMap<String, Certificate> lots) implements Certificate {
    public ByLot {
      lots = Collections.unmodifiableSortedMap(new TreeMap<>(lots));
    }
  }

  /**
   * A decision: either at most {@code packs} packs of the supplies together are used, or more. In
   * one tree the supplies of any two decisions are the same set or disjoint.
   *
   * @param supplies keys of the supplies (equal sticks, as a rule), at least one
   */
  record PackSplit(List<String> supplies, int packs, Certificate fewer, Certificate more)
      implements Certificate {
    public PackSplit {
      supplies = List.copyOf(supplies);
      if (supplies.isEmpty() || packs < 0) {
        throw new IllegalArgumentException("split of " + supplies + " at " + packs);
      }
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }

  /**
   * A leaf that holds no plan, whatever it costs: the sticks of the packs that are allowed there,
   * all of them limited, cannot give all pieces.
   *
   * @param refutation of as many sticks of each kind of stock as the decisions above the leaf and
   *     the supply leave at most
   */
  record NoPlan(Refutation refutation) implements Certificate {
    public NoPlan {
      Objects.requireNonNull(refutation);
    }
  }
}
