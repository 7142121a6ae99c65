package lapwright.demand;

import java.util.List;
import lapwright.layout.StretchSplits.Place;
import lapwright.shop.JointRules.Where;
import lapwright.shop.RunNeed;

/**
 * One stretch of one line, split but not yet cut.
 *
 * @param run index of the run in the order
 * @param line over all copies, from 1
 * @param stretch index of the stretch within the line
 * @param places where its pieces lie, in order
 */
public record PlannedLine(
    int run, RunNeed need, int line, int stretch, Where closingAt, List<Place> places)
    implements Comparable<PlannedLine> {
  public PlannedLine {
    places = List.copyOf(places);
  }

  /** Which copy of a repeated job, from 1. */
  int copy() {
    return (line - 1) / need.run().qty() + 1;
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
