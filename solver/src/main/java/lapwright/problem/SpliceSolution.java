package lapwright.problem;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a solver answers.
 *
 * @param status as in {@link StickSolution}
 * @param splits for each group how its lines are split; together as often as there are lines; empty
 *     without a solution
 * @param pieces lengths of the fixed problem's items, the plain ones first in the order of the
 *     problem, then one for each distinct length of the splits
 * @param cutting the sticks that hold all of them; null without a solution
 * @param cost -1 without a solution
 * @param bound no solution costs less, by the certificate and raised to a cost that can be reached
 * @param certificate null only without a solution
 */
public record SpliceSolution(
    StickSolution.Status status,
    List<List<Split>> splits,
    List<Long> pieces,
    @Nullable StickSolution cutting,
    long cost,
    long bound,
    @Nullable SpliceCertificate certificate) {
  public SpliceSolution {
    Objects.requireNonNull(status);
    splits = splits.stream().map(List::copyOf).toList();
    pieces = List.copyOf(pieces);
    if (status.hasSolution() != (cutting != null && certificate != null && cost >= bound)) {
      throw new IllegalArgumentException(status + " with cost " + cost + ", bound " + bound);
    }
    if (status == StickSolution.Status.PROVED && cost != bound) {
      throw new IllegalArgumentException("proved, but cost " + cost + " and bound " + bound);
    }
  }

  /** No solution. */
  public static SpliceSolution none(StickSolution.Status status) {
    return new SpliceSolution(status, List.of(), List.of(), null, -1, 0, null);
  }

  /**
   * One way to split a line.
   *
   * @param lengths of its pieces; in order along the line where the group's splits are a graph
   * @param lines how many lines are split so, at least 1
   */
  public record Split(List<Long> lengths, int lines) {
    public Split {
      lengths = List.copyOf(lengths);
      if (lengths.isEmpty() || lines < 1) {
        throw new IllegalArgumentException("split " + lengths + " of " + lines + " lines");
      }
    }
  }
}
