package lapwright.shop;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;

/** Where the joints of a run may stand. */
public sealed interface JointPlaces {
  /** Anywhere. */
  record Anywhere() implements JointPlaces {}

  /**
   * At these positions from the start of the covered length.
   *
   * @param positions ascending and positive
   */
  record At(List<Length> positions) implements JointPlaces {
    public At {
      positions = List.copyOf(positions);
      for (int i = 0; i < positions.size(); i++) {
        if (positions.get(i).units() <= 0
            || (i > 0 && !positions.get(i).isLongerThan(positions.get(i - 1)))) {
          throw new IllegalArgumentException("joint positions do not ascend from 0");
        }
      }
    }
  }

  /**
   * On the bearings: the first, and one every {@code spacing} after it.
   *
   * @param first distance of the first bearing from the start, not negative
   * @param spacing positive
   */
  record Bearings(Length first, Length spacing) implements JointPlaces {
    public Bearings {
      if (first.units() < 0 || spacing.units() <= 0) {
        throw new IllegalArgumentException("bearings from " + first + " every " + spacing);
      }
    }
  }

  /** The positions strictly within a covered length, ascending; empty when joints go anywhere. */
  default List<Length> within(Length covered) {
    if (this instanceof At at) {
      return at.positions().stream().filter(p -> p.isShorterThan(covered)).toList();
    }
    List<Length> positions = new ArrayList<>();
    if (this instanceof Bearings bearings) {
      for (Length p = bearings.first(); p.isShorterThan(covered); p = p.plus(bearings.spacing())) {
        if (p.units() > 0) {
          positions.add(p);
        }
      }
    }
    return positions;
  }

  default boolean isAnywhere() {
    return this instanceof Anywhere;
  }
}
