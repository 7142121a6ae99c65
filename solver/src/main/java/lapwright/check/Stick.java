package lapwright.check;

import lapwright.shop.Material;
import lapwright.shop.Saw;
import lapwright.shop.Supply;

/**
 * What can be cut from one stick of a supply. All in units of length.
 *
 * @param counted the length that may be relied on: an offcut as measured, else the stock length
 *     less what a stick nobody has measured may be short
 * @param startTrim cut off the starting end when it is a bad mill end, kerf included
 * @param farCut a kerf when the far end is a bad mill end, off which the last piece must be cut
 * @param kerf width of a cut
 * @param hold the least length in the vise at the last cut
 */
record Stick(long counted, long startTrim, long farCut, long kerf, long hold) {

  static Stick of(Supply supply, Material material, Saw saw) {
    long counted = supply.length().units();
    if (!(supply instanceof Supply.RackOffcut)) {
      counted = Math.subtractExact(counted, material.shortBy().units());
    }
    boolean trimsMillEnds = saw.endTrim().units() > 0 && !material.millEndsGood();
    boolean millAtStart = false;
    boolean millAtFarEnd = false;
    switch (supply.ends()) {
      case MILL -> {
        millAtStart = true;
        millAtFarEnd = true;
      }
      case ONE_MILL -> millAtFarEnd = true;
      case SAWN -> {}
    }
    return new Stick(
        counted,
        trimsMillEnds && millAtStart ? saw.endTrim().units() : 0,
        trimsMillEnds && millAtFarEnd ? saw.kerf().units() : 0,
        saw.kerf().units(),
        saw.hold().units());
  }

  /** False for a stick that the machine does not take. */
  static boolean fitsMachine(Supply supply, Saw saw) {
    return saw.longestStick() == null || !supply.length().isLongerThan(saw.longestStick());
  }

  /** What pieces and the cuts between them may take. */
  long usable() {
    return Math.subtractExact(Math.subtractExact(counted, startTrim), farCut);
  }

  /** What pieces may take when each is counted with a cut, also the last. */
  long usableAndCut() {
    return Math.addExact(usable(), kerf);
  }

  /** The same when the offcut, and not a piece, is what the vise holds at the last cut. */
  long usableAndCutHoldingOffcut() {
    return Math.subtractExact(Math.addExact(usable(), farCut), hold);
  }

  /** True when no end needs a trim, so that a stick that is exactly a piece is used as it comes. */
  boolean usedWhole(long pieceLength) {
    return startTrim == 0 && farCut == 0 && pieceLength == counted;
  }

  /** What is left beyond the pieces and a cut for each; negative when they do not fit. */
  long rest(long pieces, long cuts) {
    return Math.subtractExact(usableAndCut(), Math.addExact(pieces, cuts));
  }

  /** Width of the last cut: nothing when the last piece ends exactly at a good end. */
  long lastCut(long rest) {
    return Math.min(kerf, rest + farCut);
  }

  /** What remains after the last cut. */
  long offcut(long rest) {
    return Math.max(0, rest + farCut - kerf);
  }
}
