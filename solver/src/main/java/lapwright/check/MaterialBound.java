package lapwright.check;

import java.util.List;
import java.util.Objects;

/**
 * How the lower bound of one material was recomputed. Costs are in the unit of the material's plan.
 *
 * @param material id of the material
 * @param certified the least bound of the certificate's leaves
 * @param bound {@code certified}, raised to the next cost that can be reached at all; at least the
 *     plan's stated bound
 * @param leaves leaves of the certificate
 * @param emptyLeaves leaves in which no plan exists at all
 * @param weakest the leaf with the least bound, to be followed by hand
 * @param refuted the empty leaves in which sticks were shown not to suffice pattern by pattern
 */
public record MaterialBound(
    String material,
    long certified,
    long bound,
    int leaves,
    int emptyLeaves,
    LeafBound weakest,
    List<NoPlanLeaf> refuted) {
  public MaterialBound {
    Objects.requireNonNull(material);
    Objects.requireNonNull(weakest);
    refuted = List.copyOf(refuted);
    if (certified < 0 || bound < certified) {
      throw new IllegalArgumentException("bound " + bound + " below " + certified);
    }
  }
}
