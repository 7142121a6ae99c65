package lapwright;

import java.util.List;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import org.jspecify.annotations.Nullable;

/** Why one material cannot be planned. */
public sealed interface Shortage {
  /** Id of the material. */
  String material();

  /**
   * Pieces that no stick gives, however many there are.
   *
   * @param needs the pieces, as the jobs list them; at least one
   * @param longestUsable the longest finished piece that any stick gives; 0 when there is no stock
   *     of the material that its saw can take
   */
  record FitsNothing(String material, List<Need> needs, Length longestUsable) implements Shortage {
    public FitsNothing {
      Objects.requireNonNull(material);
      Objects.requireNonNull(longestUsable);
      needs = List.copyOf(needs);
      if (needs.isEmpty()) {
        throw new IllegalArgumentException(material + ": nothing that fits nothing");
      }
    }
  }

  /**
   * Every piece fits some stick, but there are too few sticks.
   *
   * @param stockLength length of stick that would help
   * @param sticks how many more of that length, over all that can be had, let the plan be made
   * @param fewestKnown true when fewer would certainly not do; false when fewer might
   */
  record TooFewSticks(String material, Length stockLength, int sticks, boolean fewestKnown)
      implements Shortage {
    public TooFewSticks {
      Objects.requireNonNull(material);
      Objects.requireNonNull(stockLength);
      if (sticks < 1) {
        throw new IllegalArgumentException(material + ": " + sticks + " sticks short");
      }
    }
  }

  /**
   * There are too few sticks of makers and lots that must not mix.
   *
   * @param further what would let the plan be made, over all that can be had; at least one
   * @param fewestKnown true when fewer sticks in all would certainly not do; false when fewer might
   */
  record TooFewOfLots(String material, List<OfMaker> further, boolean fewestKnown)
      implements Shortage {
    public TooFewOfLots {
      Objects.requireNonNull(material);
      further = List.copyOf(further);
      if (further.isEmpty()) {
        throw new IllegalArgumentException(material + ": no sticks short");
      }
    }

    /**
     * Further sticks of one maker.
     *
     * @param supplier empty where nobody offers the material, and sticks of one lot would do
     */
    public record OfMaker(String supplier, Length stockLength, int sticks) {}
  }

  /**
   * A run that no split keeps to its rules.
   *
   * @param job whose run
   * @param mark the run's mark
   * @param rule field of the run that cannot be kept
   * @param reason what stands against it
   * @param advice the nearest change that would do, {@code {}} standing for {@code length}
   * @param length null when the advice speaks of no length
   */
  record NoSplit(
      String material,
      String job,
      String mark,
      String rule,
      String reason,
      String advice,
      @Nullable Length length)
      implements Shortage {
    static NoSplit of(
        MaterialOrder order,
        RunNeed need,
        String rule,
        String reason,
        String advice,
        @Nullable Length length) {
      return new NoSplit(
          order.material().id(), need.job(), need.run().mark(), rule, reason, advice, length);
    }
  }

  /**
   * What can be had of a material does not suffice, however its runs are split and whatever lots
   * its jobs are given.
   */
  record SuppliesFallShort(String material) implements Shortage {}

  /** No plan was found in which what must be whole sticks is uncut; there may be one. */
  record NoFullSticks(String material) implements Shortage {}
}
