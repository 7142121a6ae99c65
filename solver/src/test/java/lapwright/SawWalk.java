package lapwright;

import java.util.List;
import java.util.OptionalLong;
import lapwright.measure.Length;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;

/** Cuts one stick as the saw operator does, from one end to the other. */
public final class SawWalk {
  private SawWalk() {}

  /**
   * What is left after the last cut; empty when the pieces cannot be cut from the stick.
   *
   * @param counts how many of each length
   */
  public static OptionalLong along(
      MaterialOrder order, Supply supply, List<Length> lengths, int[] counts) {
    long kerf = order.saw().kerf().units();
    boolean millEndIsBad = !order.material().millEndsGood() && order.saw().endTrim().units() > 0;
    long end = supply.length().units();
    if (!(supply instanceof Supply.RackOffcut)) {
      end -= order.material().shortBy().units();
    }
    boolean startIsBad = millEndIsBad && supply.ends() == Ends.MILL;
    boolean endIsBad = millEndIsBad && supply.ends() != Ends.SAWN;
    long at = 0;
    boolean sawed = false;
    if (startIsBad) {
      at += order.saw().endTrim().units();
      sawed = true;
    }
    long longest = 0;
    int left = 0;
    for (int count : counts) {
      left += count;
    }
    for (int i = 0; i < counts.length; i++) {
      for (int n = 0; n < counts[i]; n++) {
        long length = lengths.get(i).units();
        longest = Math.max(longest, length);
        at += length;
        left--;
        if (left > 0 || endIsBad) {
          at += kerf;
          sawed = true;
        } else if (at < end) {
          at += Math.min(kerf, end - at);
          sawed = true;
        }
        if (at > end) {
          return OptionalLong.empty();
        }
      }
    }
    long offcut = end - at;
    long hold = order.saw().hold().units();
    return !sawed || offcut >= hold || longest >= hold
        ? OptionalLong.of(offcut)
        : OptionalLong.empty();
  }
}
