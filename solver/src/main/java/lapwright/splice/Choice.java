package lapwright.splice;

import java.util.List;

/** The ways in which the lines of one group may be split, as column generation sees them. */
interface Choice {
  /**
   * A split of least price, or one close to it; empty when no split is permitted.
   *
   * @return lengths of the pieces, in order where the group's splits are a graph
   */
  List<Long> cheapest(LengthPrices prices);

  /**
   * The least weight of a permitted split, exactly or from below.
   *
   * @param cut width of a cut
   */
  long leastWeight(StepWeights weights, long cut);

  /**
   * A split of least weight, exactly or close to it; empty when no split is permitted.
   *
   * @param cut width of a cut
   */
  List<Long> lightest(StepWeights weights, long cut);

  /** Lengths that splits may use, of which there are few; see {@link #hasAnyLength}. */
  List<Long> lengths();

  /** True when splits may use other lengths than {@link #lengths}. */
  default boolean hasAnyLength() {
    return false;
  }

  /** A few splits to begin with: those of whole sticks and one closing piece, for instance. */
  default List<List<Long>> plainOnes() {
    return List.of();
  }
}
