package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * What one machine that cuts sticks takes and needs.
 *
 * @param id the name that materials use for it
 * @param kerf width of material that a cut turns to dust; 0 for shears and snips
 * @param endTrim what is cut off a bad mill end to square it, its own kerf included: 0 when nothing
 *     is trimmed, else at least the kerf
 * @param hold the least length in the vise at the last cut
 * @param longestStick the longest stick that goes on this machine; null when any does
 * @param shortestCut the shortest piece that it cuts; 0 when it cuts any
 * @param stack how many sticks it cuts at once, 1 when one; the end trim is then what squares the
 *     ends of such a stack
 */
public record Saw(
    String id,
    Length kerf,
    Length endTrim,
    Length hold,
    @Nullable Length longestStick,
    Length shortestCut,
    int stack) {
  public Saw {
    Objects.requireNonNull(id);
    if (kerf.units() < 0 || endTrim.units() < 0 || hold.units() < 0 || shortestCut.units() < 0) {
      throw new IllegalArgumentException("saw " + id + ": a length is negative");
    }
    if (!endTrim.isZero() && endTrim.isShorterThan(kerf)) {
      throw new IllegalArgumentException(
          "saw " + id + ": the end trim includes its own kerf, so it is 0 or at least the kerf");
    }
    if (longestStick != null && longestStick.units() <= 0) {
      throw new IllegalArgumentException("saw " + id + ": longest stick is not positive");
    }
    if (stack < 1) {
      throw new IllegalArgumentException("saw " + id + ": stacks of " + stack);
    }
  }

  /** A machine that cuts pieces of any length, one stick at a time. */
  public Saw(String id, Length kerf, Length endTrim, Length hold, @Nullable Length longestStick) {
    this(id, kerf, endTrim, hold, longestStick, Length.ZERO, 1);
  }
}
