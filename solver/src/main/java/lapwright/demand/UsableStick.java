package lapwright.demand;

import lapwright.measure.Length;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.Saw;
import lapwright.shop.Supply;

/**
 * The arithmetic of one stick on its saw, in units of length.
 *
 * <p>With S the counted length, q the kerf, e the end trim where the starting end is a bad mill
 * end, and f = q where the far end is one (the last piece must be cut off it), pieces l1..lk fit
 * when sum(l + q) &lt;= S - e - f + q. The rest r of that leaves the offcut max(0, r + f - q).
 * Where any cut is made, the offcut or the longest piece must be at least the hold.
 *
 * @param counted S: measured length of an offcut, else stock length less what sticks may come short
 * @param endTrim e
 * @param farCut f, 0 or the kerf
 */
record UsableStick(long counted, long endTrim, long farCut, long kerf, long hold) {
  static UsableStick of(Material material, Saw saw, Supply supply) {
    boolean badMillEnds = !material.millEndsGood() && !saw.endTrim().isZero();
    long kerf = saw.kerf().units();
    return new UsableStick(
        countedLength(material, supply).units(),
        badMillEnds && supply.ends() == Ends.MILL ? saw.endTrim().units() : 0,
        badMillEnds && supply.ends() != Ends.SAWN ? kerf : 0,
        kerf,
        saw.hold().units());
  }

  static Length countedLength(Material material, Supply supply) {
    return supply instanceof Supply.RackOffcut
        ? supply.length()
        : supply.length().minus(material.shortBy());
  }

  /** The longest finished piece, negative when not even the trims fit. */
  long usable() {
    return counted - endTrim - farCut;
  }

  long capacity() {
    return usable() + kerf;
  }

  long smallCapacity() {
    return capacity() - (hold + kerf - farCut);
  }

  boolean wholeUse() {
    return endTrim == 0 && farCut == 0;
  }

  long tail() {
    return farCut - kerf;
  }

  /** What is left of a stick whose pieces and their cuts add up to {@code sizes}. */
  long offcut(long sizes) {
    return Math.max(0, capacity() - sizes + tail());
  }
}
