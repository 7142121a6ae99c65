package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import lapwright.OrderMaker;
import lapwright.RandomOrders;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper.FromTicket;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.paperwork.TicketPaper.PieceLine;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

final class TicketPaperTest {
  private static List<Ticket> postsAndBraces() {
    return TicketPaper.of(PlannedPapers.postsAndBraces()).tickets();
  }

  /** By hand: 1/2" trim, two posts and two cuts make 238-11/16". */
  @Test
  void twoPostsWorkDownToAStickOfNineteenFeetTenAndElevenSixteenths() {
    Ticket twoPosts =
        postsAndBraces().stream()
            .filter(ticket -> ticket.supply() instanceof Supply.Offer)
            .filter(ticket -> ticket.pieces() == 2)
            .findFirst()
            .orElseThrow();
    assertEquals(OrderMaker.length("19'-10-11/16\""), twoPosts.shortestStick());
    assertEquals(OrderMaker.length("1/2\""), twoPosts.endTrim());
    assertEquals(
        List.of(OrderMaker.length("9'-11\""), OrderMaker.length("19'-10-3/32\"")),
        twoPosts.steps().get(0).ends());
    assertFalse(twoPosts.uncut());
    assertFalse(twoPosts.kept());
  }

  @Test
  void theOffcutThatIsAPostIsNotCut() {
    Ticket post =
        postsAndBraces().stream()
            .filter(ticket -> ticket.supply() instanceof Supply.RackOffcut)
            .findFirst()
            .orElseThrow();
    assertTrue(post.uncut());
    assertEquals(Length.ZERO, post.endTrim());
    assertEquals(Length.ZERO, post.offcut());
    assertEquals(post.supply().length(), post.shortestStick());
  }

  /** Four 100 mm pieces from 500 mm, kerf 5 mm, hold 90 mm: the vise needs 90 mm of remnant. */
  @Test
  void aShortRemnantIsCountedInTheShortestStick() {
    Ticket ticket =
        TicketPaper.of(
                PlannedPapers.plan(
                    new OrderMaker("bar")
                        .saw("5 mm", "10 mm", "150 mm")
                        .offer("600 mm", "1.00")
                        .need("shed", "A", 4, "100 mm")
                        .make()))
            .tickets()
            .get(0);
    // 10 trim, 4 x 100, 4 cuts of 5, 150 to hold; 20 would be left over that.
    assertEquals(Length.ofMm(580), ticket.shortestStick());
    assertEquals(Length.ofMm(170), ticket.offcut());
  }

  /** A bad far end must be cut off; a good one need not. */
  @Test
  void theFarMillEndIsCutOffTheLastPiece() {
    OrderMaker bad =
        new OrderMaker("bar")
            .saw("5 mm", "10 mm", "0")
            .offer("240 mm", "1.00")
            .need("shed", "A", 2, "100 mm");
    assertEquals(Length.ofMm(220), shortest(bad));
    OrderMaker good =
        new OrderMaker("bar")
            .saw("5 mm", "10 mm", "0")
            .millEndsGood()
            .offer("240 mm", "1.00")
            .need("shed", "A", 2, "100 mm");
    assertEquals(Length.ofMm(205), shortest(good));
  }

  private static Length shortest(OrderMaker maker) {
    return TicketPaper.of(PlannedPapers.plan(maker.make())).tickets().get(0).shortestStick();
  }

  @Test
  void eachCopyOfAJobHasItsOwnListFirstDueFirst() {
    LocalDate friday = LocalDate.of(2026, 12, 4);
    TicketPaper paper =
        TicketPaper.of(
            PlannedPapers.plan(
                new OrderMaker("bar")
                    .offer("1000 mm", "1.00")
                    .need("late", null, 1, "A", 2, Length.ofMm(300))
                    .need("soon", friday, 3, "B", 2, Length.ofMm(400))
                    .make()));
    assertEquals(
        List.of("soon 1 of 3", "soon 2 of 3", "soon 3 of 3", "late 1 of 1"),
        paper.jobs().stream()
            .map(list -> list.job() + " " + list.copy() + " of " + list.copies())
            .toList());
    assertEquals(8, paper.pieces());
  }

  @Property(tries = 150, seed = "8")
  void jobListsAndTicketsTellOfTheSamePieces(@ForAll long seed) {
    PlannedPapers.planIfPossible(RandomOrders.small(new Random(seed)).make())
        .map(TicketPaper::of)
        .ifPresent(TicketPaperTest::assertSamePieces);
  }

  private static void assertSamePieces(TicketPaper paper) {
    Map<String, Integer> onTickets = new HashMap<>();
    for (Ticket ticket : paper.tickets()) {
      onTickets.merge(ticket.name(), ticket.pieces() * ticket.sticks(), Integer::sum);
      assertFitsItsShortestStick(ticket);
    }
    Map<String, Integer> onLists = new HashMap<>();
    for (JobList list : paper.jobs()) {
      for (PieceLine line : list.lines()) {
        assertEquals(line.qty(), line.from().stream().mapToInt(FromTicket::qty).sum());
        line.from().forEach(from -> onLists.merge(from.ticket(), from.qty(), Integer::sum));
      }
    }
    assertEquals(onTickets, onLists);
  }

  /** Measured anew from the running marks: the last piece ends on the shortest stick. */
  private static void assertFitsItsShortestStick(Ticket ticket) {
    List<Step> steps = ticket.steps();
    List<Length> lastEnds = steps.get(steps.size() - 1).ends();
    Length lastEnd = ticket.endTrim().plus(lastEnds.get(lastEnds.size() - 1));
    Length counted =
        ticket.supply() instanceof Supply.RackOffcut
            ? ticket.supply().length()
            : ticket.supply().length().minus(ticket.material().shortBy());
    assertFalse(lastEnd.isLongerThan(ticket.shortestStick()), ticket.name());
    assertFalse(ticket.shortestStick().isLongerThan(counted), ticket.name());
    Saw saw = ticket.saw();
    Length rest = counted.minus(lastEnd);
    assertEquals(
        rest.isShorterThan(saw.kerf()) ? Length.ZERO : rest.minus(saw.kerf()), ticket.offcut());
    assertEquals(ticket.kept() ? ticket.sticks() : 0, ticket.offcutNames().size());
  }
}
