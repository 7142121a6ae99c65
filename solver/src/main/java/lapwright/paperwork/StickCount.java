package lapwright.paperwork;

import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.Pattern;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Saw;
import lapwright.shop.Supply;

/**
 * One stick of a pattern, counted out: what the end trim, the cuts and the offcut take.
 *
 * @param counted the stick as long as it is counted: a stick that nobody has measured is shorter
 *     than its stock length by what the material allows
 * @param endTrim cut off the starting end, its kerf included; 0 when that end is good
 * @param finished all pieces together, along their centre lines
 * @param wedges what lies beside their angled ends: scrap
 * @param pieces how many pieces
 * @param lastKerf what the cut after the last piece takes, less than the kerf when it runs off the
 *     end, 0 when the last piece ends exactly there
 * @param kerf all cuts but the end trim's, the last included
 * @param offcut what is left
 * @param kept true when the offcut is long enough for the rack
 * @param farTrimmed true when the far end is a bad mill end, so that the last piece must be cut off
 *     it
 */
record StickCount(
    Length counted,
    Length endTrim,
    Length finished,
    Length wedges,
    int pieces,
    Length lastKerf,
    Length kerf,
    Length offcut,
    boolean kept,
    boolean farTrimmed) {

  static StickCount of(MaterialOrder order, Supply supply, Pattern pattern) {
    Material material = order.material();
    Saw saw = order.saw();
    boolean millEndsBad = !material.millEndsGood() && !saw.endTrim().isZero();
    Length counted = countedLength(material, supply);
    Length endTrim = millEndsBad && supply.ends() == Ends.MILL ? saw.endTrim() : Length.ZERO;
    Length boxes = Length.ZERO;
    Length widths = Length.ZERO;
    Length wedges = Length.ZERO;
    int pieces = 0;
    for (Cut cut : pattern.cuts()) {
      boxes = boxes.plus(cut.length().times(cut.qty()));
      widths = widths.plus(cut.rules().cutWidth(saw.kerf()).times(cut.qty()));
      wedges = wedges.plus(cut.rules().wedges().times(cut.qty()));
      pieces = Math.addExact(pieces, cut.qty());
    }
    Length between = widths.minus(saw.kerf());
    Length left = counted.minus(endTrim).minus(boxes).minus(between);
    Length lastKerf = left.isShorterThan(saw.kerf()) ? left : saw.kerf();
    Length offcut = left.minus(lastKerf);
    return new StickCount(
        counted,
        endTrim,
        boxes.minus(wedges),
        wedges,
        pieces,
        lastKerf,
        between.plus(lastKerf),
        offcut,
        !offcut.isZero() && !offcut.isShorterThan(material.keepOffcutsFrom()),
        millEndsBad && supply.ends() != Ends.SAWN);
  }

  /** The longest piece that a stick gives. */
  static Length longestPiece(MaterialOrder order, Supply supply) {
    Saw saw = order.saw();
    boolean millEndsBad = !order.material().millEndsGood() && !saw.endTrim().isZero();
    Length usable = countedLength(order.material(), supply);
    if (millEndsBad && supply.ends() == Ends.MILL) {
      usable = usable.minus(saw.endTrim());
    }
    return millEndsBad && supply.ends() != Ends.SAWN ? usable.minus(saw.kerf()) : usable;
  }

  static Length countedLength(Material material, Supply supply) {
    return supply instanceof Supply.RackOffcut
        ? supply.length()
        : supply.length().minus(material.shortBy());
  }

  /** True when the stick is a piece as it comes. */
  boolean isUncut() {
    return pieces == 1 && endTrim.isZero() && kerf.isZero() && wedges.isZero() && offcut.isZero();
  }

  /** The shortest stick that still gives the same pieces under the saw's rules. */
  Length shortestThatWorks(Saw saw, Length longestHeld) {
    if (isUncut()) {
      return counted;
    }
    Length used = endTrim.plus(finished).plus(wedges).plus(kerf).minus(lastKerf);
    if (longestHeld.isShorterThan(saw.hold())) {
      return used.plus(saw.kerf()).plus(saw.hold());
    }
    return farTrimmed ? used.plus(saw.kerf()) : used;
  }

  /** Where all sticks of a pattern go. */
  Account account(int sticks) {
    Length all = offcut.times(sticks);
    Length scrap = wedges.times(sticks);
    return new Account(
        counted.times(sticks),
        finished.times(sticks),
        Length.ZERO,
        kerf.times(sticks),
        endTrim.times(sticks),
        kept ? all : Length.ZERO,
        kept ? scrap : scrap.plus(all),
        Length.ZERO,
        Length.ZERO);
  }
}
