package lapwright.check;

import java.util.List;

/**
 * A leaf of a certificate in which the sticks were shown not to suffice.
 *
 * @param decisions what is supposed in the leaf
 * @param sticks how many there are then at most, of all that can hold a piece
 * @param listed patterns that are possible at the root of its refutation; 0 where none had to be
 *     listed
 * @param steps sieves and decisions that were followed over that list
 */
public record NoPlanLeaf(List<LeafBound.Decision> decisions, long sticks, int listed, int steps) {
  public NoPlanLeaf {
    decisions = List.copyOf(decisions);
  }
}
