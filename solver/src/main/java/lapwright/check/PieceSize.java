package lapwright.check;

import lapwright.measure.Angle;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.shop.CutRules;
import lapwright.shop.Need;

/**
 * What a piece takes of its stick. All in units of length.
 *
 * <p>The piece is counted from point to point, then the wider of the cuts at its two ends. Whatever
 * end is cut first, nothing of the next piece lies within that: each end's cut lies beside the
 * piece's box or within its own width past the box's far end.
 *
 * @param box from point to point
 * @param cut the wider of its end cuts
 * @param wedges what its sloping ends leave beside it in the box, half their slope
 * @param gripped between the short points, when it is cut as short as permitted
 */
record PieceSize(long box, long cut, long wedges, long gripped) {

  static PieceSize of(Cut cut, Length kerf) {
    return of(cut.length().units(), cut.fullLength().units(), cut.rules(), kerf);
  }

  /** The piece of a need when it is cut as short as permitted. */
  static PieceSize shortest(Need need, Length kerf) {
    long full = need.length().units();
    return of(
        Math.subtractExact(full, need.rules().mayBeShort().units()), full, need.rules(), kerf);
  }

  private static PieceSize of(long box, long full, CutRules rules, Length kerf) {
    long slope = 0;
    long widest = kerf.units();
    for (Angle angle : new Angle[] {rules.ends().first(), rules.ends().second()}) {
      slope = Math.addExact(slope, angle.skew(rules.depth()).units());
      widest = Math.max(widest, angle.cutWidth(kerf).units());
    }
    return new PieceSize(box, widest, (slope + 1) / 2, full - rules.mayBeShort().units() - slope);
  }

  /** All that it takes of its stick. */
  long size() {
    return Math.addExact(box, cut);
  }

  /** The length that certificates know it by. */
  Length named(Length kerf) {
    return Length.ofUnits(size() - kerf.units());
  }
}
