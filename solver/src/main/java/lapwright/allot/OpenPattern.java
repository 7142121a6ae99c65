package lapwright.allot;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.LengthPattern;

/** A pattern with sticks whose pieces are not allotted yet. */
final class OpenPattern {
  private final LengthPattern pattern;
  private final boolean uncut;
  private int left;
  private int rank;
  private int alike;

  /**
   * Some sticks of a pattern.
   *
   * @param uncut true when they are kept for pieces that must be all that their stick gives
   */
  OpenPattern(LengthPattern pattern, int sticks, boolean uncut) {
    this.pattern = pattern;
    this.uncut = uncut;
    this.left = sticks;
  }

  boolean isDone() {
    return left == 0;
  }

  Iterable<Length> lengths() {
    return pattern.counts().keySet();
  }

  /** Looks again at the pieces that its next sticks would take. */
  void look(PieceQueues queues) {
    rank = Integer.MAX_VALUE;
    alike = left;
    for (Map.Entry<Length, Integer> count : pattern.counts().entrySet()) {
      rank = Math.min(rank, queues.nextRank(kind(count.getKey())));
      alike = Math.min(alike, queues.sticksAlike(kind(count.getKey()), count.getValue()));
    }
  }

  private PieceQueues.Kind kind(Length length) {
    return new PieceQueues.Kind(length, uncut);
  }

  /** Due first, then the most sticks with the same labels. */
  boolean isBefore(OpenPattern other) {
    return rank != other.rank ? rank < other.rank : alike > other.alike;
  }

  /** Gives as many sticks as can bear the same labels their pieces. */
  Draft take(PieceQueues queues, Length hold) {
    List<Cut> cuts = new ArrayList<>();
    for (Map.Entry<Length, Integer> count : pattern.counts().entrySet()) {
      cuts.addAll(queues.take(kind(count.getKey()), count.getValue(), alike));
    }
    left -= alike;
    return Draft.withRoom(pattern.supply(), cuts, alike, pattern.offcut(), pattern.room(), rank)
        .inCuttingOrder(hold);
  }
}
