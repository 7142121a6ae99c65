package lapwright.allot;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.LengthPattern;
import lapwright.plan.Pattern;
import lapwright.shop.MaterialOrder;

/**
 * Decides whose piece is cut from which stick, and makes the tickets.
 *
 * <p>Each length has a queue of the pieces that need it, first due first. Sticks are taken up one
 * pattern at a time, the one whose pieces are due first before the others, for as many sticks as
 * the pieces in front of the queues are of one job and mark; so blocks of equal labels are used up
 * whole and few tickets arise. Sticks with the same cuts and labels are one ticket.
 */
public final class Allotment {
  private Allotment() {}

  /**
   * The tickets in the order in which they are cut: first due first, then so that the stop moves
   * least.
   *
   * @param patterns together they hold every needed piece exactly once
   * @param ticketNames gives names that no other ticket of the plan has
   * @param offcutNames gives names that no other offcut has
   */
  public static List<Pattern> tickets(
      MaterialOrder order,
      List<LengthPattern> patterns,
      Supplier<String> ticketNames,
      Supplier<String> offcutNames) {
    List<Pattern> tickets = new ArrayList<>();
    for (Draft draft : TicketOrder.sort(drafts(order, patterns))) {
      List<String> names = new ArrayList<>();
      if (isKept(order, draft.offcut())) {
        for (int stick = 0; stick < draft.times(); stick++) {
          names.add(offcutNames.get());
        }
      }
      tickets.add(
          new Pattern(
              ticketNames.get(),
              draft.supply(),
              draft.times(),
              draft.cuts(),
              draft.offcut(),
              names));
    }
    return tickets;
  }

  private static boolean isKept(MaterialOrder order, Length offcut) {
    return !offcut.isZero() && !offcut.isShorterThan(order.material().keepOffcutsFrom());
  }

  private static List<Draft> drafts(MaterialOrder order, List<LengthPattern> patterns) {
    PieceQueues queues = new PieceQueues(order);
    List<LengthPattern> remaining = new ArrayList<>(patterns);
    Map<Draft.Likeness, Draft> drafts = new LinkedHashMap<>();
    while (!remaining.isEmpty()) {
      int next = mostUrgent(queues, remaining);
      LengthPattern pattern = remaining.get(next);
      int sticks = pattern.times();
      for (Map.Entry<Length, Integer> count : pattern.counts().entrySet()) {
        sticks = Math.min(sticks, queues.sticksAlike(count.getKey(), count.getValue()));
      }
      Draft draft = take(order, queues, pattern, sticks);
      drafts.merge(draft.likeness(), draft, Draft::plus);
      if (sticks == pattern.times()) {
        remaining.remove(next);
      } else {
        remaining.set(
            next,
            new LengthPattern(
                pattern.supply(), pattern.counts(), pattern.times() - sticks, pattern.offcut()));
      }
    }
    return List.copyOf(drafts.values());
  }

  private static Draft take(
      MaterialOrder order, PieceQueues queues, LengthPattern pattern, int sticks) {
    int rank = Integer.MAX_VALUE;
    List<Cut> cuts = new ArrayList<>();
    for (Map.Entry<Length, Integer> count : pattern.counts().entrySet()) {
      rank = Math.min(rank, queues.nextRank(count.getKey()));
      cuts.addAll(queues.take(count.getKey(), count.getValue(), sticks));
    }
    return new Draft(
        pattern.supply(),
        Draft.inCuttingOrder(cuts, pattern.offcut(), order.saw().hold()),
        sticks,
        pattern.offcut(),
        rank);
  }

  private static int mostUrgent(PieceQueues queues, List<LengthPattern> patterns) {
    int best = 0;
    long bestRank = Long.MAX_VALUE;
    for (int p = 0; p < patterns.size(); p++) {
      long rank = Integer.MAX_VALUE;
      for (Length length : patterns.get(p).counts().keySet()) {
        rank = Math.min(rank, queues.nextRank(length));
      }
      if (rank < bestRank) {
        bestRank = rank;
        best = p;
      }
    }
    return best;
  }
}
