package lapwright.allot;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import lapwright.measure.Length;
import lapwright.plan.LengthPattern;
import lapwright.plan.Pattern;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;

/**
 * Decides whose piece is cut from which stick, and makes the tickets.
 *
 * <p>Each length has a queue of the pieces that need it, first due first, in blocks of one job and
 * mark. The pattern whose pieces are due first is taken up next, for as many sticks as blocks due
 * on the next day allow without a change of label, and each length is served from the block that is
 * used up most nearly; so few tickets arise. Pieces that may be short are cut full where their
 * stick has room. Sticks with the same cuts and labels are one ticket. Greedy, in O(tickets x
 * patterns x blocks of a day).
 */
public final class Allotment {
  private Allotment() {}

  /**
   * The tickets in the order in which they are cut: first due first, then so that the stop moves
   * least.
   *
   * @param patterns together they hold every needed piece exactly once
   * @param planned the length that the patterns know a piece by
   * @param ticketNames gives names that no other ticket of the plan has
   * @param offcutNames gives names that no other offcut has
   */
  public static List<Pattern> tickets(
      MaterialOrder order,
      List<LengthPattern> patterns,
      Function<Need, Length> planned,
      Supplier<String> ticketNames,
      Supplier<String> offcutNames) {
    List<Pattern> tickets = new ArrayList<>();
    for (Draft draft : TicketOrder.sort(drafts(order, patterns, planned))) {
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

  /** The tickets of patterns that know each piece by the shortest length that it may have. */
  public static List<Pattern> tickets(
      MaterialOrder order,
      List<LengthPattern> patterns,
      Supplier<String> ticketNames,
      Supplier<String> offcutNames) {
    Length kerf = order.saw().kerf();
    return tickets(order, patterns, need -> need.planned(kerf), ticketNames, offcutNames);
  }

  private static boolean isKept(MaterialOrder order, Length offcut) {
    return !offcut.isZero() && !offcut.isShorterThan(order.material().keepOffcutsFrom());
  }

  private static Collection<Draft> drafts(
      MaterialOrder order, List<LengthPattern> patterns, Function<Need, Length> planned) {
    PieceQueues queues = new PieceQueues(order, planned);
    List<OpenPattern> open = new ArrayList<>();
    Map<Length, List<OpenPattern>> withLength = new HashMap<>();
    for (LengthPattern pattern : patterns) {
      OpenPattern added = new OpenPattern(pattern);
      added.look(queues);
      open.add(added);
      for (Length length : added.lengths()) {
        withLength.computeIfAbsent(length, key -> new ArrayList<>()).add(added);
      }
    }
    Map<Draft.Likeness, Draft> drafts = new LinkedHashMap<>();
    while (!open.isEmpty()) {
      OpenPattern next = open.get(0);
      for (OpenPattern other : open) {
        if (other.isBefore(next)) {
          next = other;
        }
      }
      Draft draft = next.take(queues, order.saw().hold());
      drafts.merge(draft.likeness(), draft, Draft::plus);
      if (next.isDone()) {
        open.remove(next);
      }
      Set<OpenPattern> touched = new LinkedHashSet<>();
      for (Length length : next.lengths()) {
        touched.addAll(withLength.getOrDefault(length, List.of()));
      }
      for (OpenPattern pattern : touched) {
        if (!pattern.isDone()) {
          pattern.look(queues);
        }
      }
    }
    return drafts.values();
  }
}
