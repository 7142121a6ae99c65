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
import java.util.function.Predicate;
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
    return tickets(order, patterns, planned, Uncut.NONE, ticketNames, offcutNames);
  }

  private static List<Pattern> tickets(
      MaterialOrder order,
      List<LengthPattern> patterns,
      Function<Need, Length> planned,
      Uncut uncut,
      Supplier<String> ticketNames,
      Supplier<String> offcutNames) {
    List<Pattern> tickets = new ArrayList<>();
    for (Draft draft : TicketOrder.sort(drafts(order, patterns, planned, uncut))) {
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

  /**
   * The tickets of patterns that know each piece by the shortest length that it may have.
   *
   * @param uncut which pieces must be all that their stick gives
   */
  public static List<Pattern> tickets(
      MaterialOrder order,
      List<LengthPattern> patterns,
      Uncut uncut,
      Supplier<String> ticketNames,
      Supplier<String> offcutNames) {
    Length kerf = order.saw().kerf();
    return tickets(order, patterns, need -> need.planned(kerf), uncut, ticketNames, offcutNames);
  }

  /**
   * Pieces that must be all that their stick gives, and the sticks that can give them.
   *
   * @param sticks patterns of one piece that is all its stick gives; at least as many sticks of a
   *     length as there are such pieces of it
   */
  public record Uncut(Predicate<Need> pieces, Predicate<LengthPattern> sticks) {
    /** No piece must. */
    public static final Uncut NONE = new Uncut(need -> false, pattern -> false);
  }

  private static boolean isKept(MaterialOrder order, Length offcut) {
    return !offcut.isZero() && !offcut.isShorterThan(order.material().keepOffcutsFrom());
  }

  private static Collection<Draft> drafts(
      MaterialOrder order,
      List<LengthPattern> patterns,
      Function<Need, Length> planned,
      Uncut uncut) {
    PieceQueues queues = new PieceQueues(order, planned, uncut.pieces());
    List<OpenPattern> open = new ArrayList<>();
    Map<Length, List<OpenPattern>> withLength = new HashMap<>();
    for (OpenPattern added : openPatterns(patterns, uncut.sticks(), queues.uncutPieces())) {
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

  /** The patterns, those sticks apart that are kept for pieces that must stay uncut. */
  private static List<OpenPattern> openPatterns(
      List<LengthPattern> patterns, Predicate<LengthPattern> uncut, Map<Length, Integer> wanted) {
    List<OpenPattern> open = new ArrayList<>();
    for (LengthPattern pattern : patterns) {
      int sticks = 0;
      if (uncut.test(pattern)) {
        Length length = pattern.counts().firstKey();
        int still = wanted.getOrDefault(length, 0);
        sticks = Math.min(still, pattern.times());
        wanted.put(length, still - sticks);
      }
      if (sticks > 0) {
        open.add(new OpenPattern(pattern, sticks, true));
      }
      if (sticks < pattern.times()) {
        open.add(new OpenPattern(pattern, pattern.times() - sticks, false));
      }
    }
    return open;
  }
}
