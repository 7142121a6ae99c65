package lapwright.demand;

import java.util.List;
import lapwright.layout.StretchSplits.Laid;
import lapwright.layout.StretchSplits.Place;
import lapwright.shop.JointRules.Where;
import lapwright.shop.RunNeed;

/**
 * One stretch of one line, split but not yet cut.
 *
 * @param run index of the run in the order
 * @param line over all copies, from 1
 * @param stretch index of the stretch within the line
 * @param laid where its pieces lie
 */
public record PlannedLine(int run, RunNeed need, int line, int stretch, Laid laid)
    implements Comparable<PlannedLine> {
  Where closingAt() {
    return laid.closingAt();
  }

  List<Place> places() {
    return laid.places();
  }

  /** True when a piece must be all that its stick gives. */
  boolean isWhole(Place place) {
    boolean closing = closingAt() == Where.START ? place.first() : place.last();
    return need.run().rules().closing().othersWhole() && !closing;
  }

  /** Which copy of a repeated job, from 1. */
  int copy() {
    return need.copyOf(line);
  }

  @Override
  public int compareTo(PlannedLine other) {
    if (run != other.run) {
      return Integer.compare(run, other.run);
    }
    return line != other.line
        ? Integer.compare(line, other.line)
        : Integer.compare(stretch, other.stretch);
  }
}
