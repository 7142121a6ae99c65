package lapwright.plan;

import lapwright.measure.Length;

/**
 * Where the material goes. Exact: drawn = finished + laps + kerf + endTrim + offcutsKept + scrap.
 *
 * @param drawn sticks that are cut, each as long as it is counted
 * @param finished pieces
 * @param laps overlaps at joints
 * @param kerf dust
 * @param endTrim trims of bad mill ends, their own kerf included
 * @param offcutsKept go to the rack
 * @param scrap offcuts that are too short to keep
 * @param surplus sticks bought and not cut, each as long as it is counted
 * @param shortAllowance what bought sticks are counted shorter than their stock length
 */
public record Account(
    Length drawn,
    Length finished,
    Length laps,
    Length kerf,
    Length endTrim,
    Length offcutsKept,
    Length scrap,
    Length surplus,
    Length shortAllowance) {
  public static final Account NOTHING =
      new Account(
          Length.ZERO,
          Length.ZERO,
          Length.ZERO,
          Length.ZERO,
          Length.ZERO,
          Length.ZERO,
          Length.ZERO,
          Length.ZERO,
          Length.ZERO);

  public Account plus(Account other) {
    return new Account(
        drawn.plus(other.drawn),
        finished.plus(other.finished),
        laps.plus(other.laps),
        kerf.plus(other.kerf),
        endTrim.plus(other.endTrim),
        offcutsKept.plus(other.offcutsKept),
        scrap.plus(other.scrap),
        surplus.plus(other.surplus),
        shortAllowance.plus(other.shortAllowance));
  }
}
