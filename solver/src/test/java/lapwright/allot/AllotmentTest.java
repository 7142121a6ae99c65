package lapwright.allot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.OrderMaker;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.LengthPattern;
import lapwright.plan.Pattern;
import lapwright.shop.MaterialOrder;
import org.junit.jupiter.api.Test;

final class AllotmentTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
  private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

  private static List<Pattern> tickets(MaterialOrder order, LengthPattern... patterns) {
    AtomicInteger ticket = new AtomicInteger();
    AtomicInteger offcut = new AtomicInteger();
    return Allotment.tickets(
        order,
        List.of(patterns),
        Allotment.Uncut.NONE,
        () -> "t" + ticket.incrementAndGet(),
        () -> "o" + offcut.incrementAndGet());
  }

  private static LengthPattern pattern(int times, String offcut, Object... countsAndLengths) {
    Map<Length, Integer> counts = new TreeMap<>();
    for (int i = 0; i < countsAndLengths.length; i += 2) {
      counts.put(
          OrderMaker.length((String) countsAndLengths[i + 1]), (Integer) countsAndLengths[i]);
    }
    return new LengthPattern(
        "buy:mill:" + OrderMaker.length("20'").units() + ":1",
        new TreeMap<>(counts),
        times,
        OrderMaker.length(offcut));
  }

  private static OrderMaker order() {
    return new OrderMaker("tube").saw("1/8\"", "0", "3\"").keep("24\"").offer("20'", "41.00");
  }

  private static Length feet(long feet) {
    return Length.ofFeet(feet, 0);
  }

  @Test
  void piecesDueFirstComeOnTheFirstTicket() {
    MaterialOrder order =
        order()
            .need("friday", FRIDAY, 1, "P", 2, feet(9))
            .need("monday", MONDAY, 1, "P", 2, feet(9))
            .make();
    List<Pattern> tickets = tickets(order, pattern(2, "23\"", 2, "9'"));
    assertEquals(
        List.of("monday", "friday"), tickets.stream().map(t -> t.cuts().get(0).job()).toList());
    assertEquals(List.of("t1", "t2"), tickets.stream().map(Pattern::ticket).toList());
  }

  @Test
  void sticksWithTheSameCutsAndLabelsAreOneTicket() {
    MaterialOrder order = order().need("shed", FRIDAY, 1, "P", 12, feet(9)).make();
    List<Pattern> tickets =
        tickets(order, pattern(4, "23\"", 2, "9'"), pattern(2, "23\"", 2, "9'"));
    assertEquals(1, tickets.size());
    assertEquals(6, tickets.get(0).times());
    assertEquals(List.of(new Cut("shed", 1, "P", feet(9), 2)), tickets.get(0).cuts());
  }

  @Test
  void jobsThatFillWholeSticksAreNotMixed() {
    MaterialOrder order =
        order()
            .need("a", FRIDAY, 1, "P", 3, feet(9))
            .need("b", FRIDAY, 1, "P", 4, feet(9))
            .need("c", FRIDAY, 1, "P", 1, feet(9))
            .make();
    List<Pattern> tickets = tickets(order, pattern(4, "23\"", 2, "9'"));
    assertEquals(3, tickets.size());
    assertTrue(
        tickets.stream()
            .anyMatch(
                t -> t.times() == 2 && t.cuts().equals(List.of(new Cut("b", 1, "P", feet(9), 2)))));
  }

  @Test
  void everyCopyOfARepeatedJobGetsItsOwnPieces() {
    MaterialOrder order = order().need("shed", FRIDAY, 3, "P", 2, feet(9)).make();
    List<Pattern> tickets = tickets(order, pattern(3, "23\"", 2, "9'"));
    assertEquals(
        List.of(1, 2, 3), tickets.stream().map(t -> t.cuts().get(0).copy()).sorted().toList());
  }

  @Test
  void cutsGoLongestFirst() {
    MaterialOrder order =
        order()
            .need("shed", FRIDAY, 1, "B", 1, feet(4))
            .need("shed", FRIDAY, 1, "P", 1, feet(9))
            .make();
    List<Pattern> tickets = tickets(order, pattern(1, "6'", 1, "4'", 1, "9'"));
    assertEquals(List.of("P", "B"), tickets.get(0).cuts().stream().map(Cut::mark).toList());
  }

  @Test
  void theLongestGoesLastWhereOnlyItCanBeHeld() {
    MaterialOrder order =
        order()
            .need("shed", FRIDAY, 1, "B", 1, feet(1))
            .need("shed", FRIDAY, 1, "P", 2, feet(9))
            .make();
    List<Pattern> tickets = tickets(order, pattern(1, "2\"", 1, "1'", 2, "9'"));
    assertEquals(List.of("B", "P"), tickets.get(0).cuts().stream().map(Cut::mark).toList());
  }

  @Test
  void ticketsThatDifferOnlyInTheirMarksFollowEachOther() {
    MaterialOrder order =
        order()
            .need("shed", FRIDAY, 1, "P", 1, feet(10))
            .need("shed", FRIDAY, 1, "Q", 1, feet(10))
            .need("shed", FRIDAY, 1, "B", 4, feet(8))
            .make();
    List<Pattern> tickets =
        tickets(order, pattern(2, "23\"", 1, "10'", 1, "8'"), pattern(1, "47\"", 2, "8'"));
    assertEquals(
        List.of("P", "Q", "B"), tickets.stream().map(t -> t.cuts().get(0).mark()).toList());
  }

  @Test
  void onlyKeptOffcutsGetNamesOneAStick() {
    MaterialOrder order =
        order()
            .need("shed", FRIDAY, 1, "P", 2, feet(17))
            .need("shed", FRIDAY, 1, "Q", 1, feet(19))
            .make();
    List<Pattern> tickets =
        tickets(order, pattern(2, "35\"", 1, "17'"), pattern(1, "11\"", 1, "19'"));
    Pattern kept = tickets.stream().filter(t -> t.times() == 2).findFirst().orElseThrow();
    Pattern scrap = tickets.stream().filter(t -> t.times() == 1).findFirst().orElseThrow();
    assertEquals(2, kept.offcutNames().stream().distinct().count());
    assertTrue(scrap.offcutNames().isEmpty());
  }

  @Test
  void ofTheSameDayTheTicketWithTheNearestStopComesNext() {
    MaterialOrder order =
        order()
            .need("shed", FRIDAY, 1, "A", 1, feet(10))
            .need("shed", FRIDAY, 1, "B", 2, feet(5))
            .need("shed", FRIDAY, 1, "C", 1, feet(8))
            .make();
    List<Pattern> tickets =
        tickets(
            order,
            pattern(1, "11'", 1, "8'"),
            pattern(1, "14'", 1, "5'"),
            pattern(1, "4'", 1, "5'", 1, "10'"));
    assertEquals(
        List.of("A", "B", "C"), tickets.stream().map(t -> t.cuts().get(0).mark()).toList());
  }
}
