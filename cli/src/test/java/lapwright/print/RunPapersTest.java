package lapwright.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapwright.check.CheckedPlan;
import lapwright.compare.Comparisons;
import lapwright.compare.JointChoice;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.OrderFacts;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.WastePaper;
import org.junit.jupiter.api.Test;

/** The papers of orders with runs, word by word. */
final class RunPapersTest {
  private static final Style BOXES = Style.plain(LengthStyle.FEET_INCHES).withBoxes(true);
  private static final TicketPaper TICKETS = TicketPaper.of(PlannedRuns.checked());

  @Test
  void ticketsAndLayoutsReadAsApproved() {
    Approved.assertApproved("cut-runs.txt", TicketText.render(TICKETS, BOXES.withAll(true)));
  }

  @Test
  void layoutsOfOneJobInMillimetresReadAsApproved() {
    Page page = new Page(Style.plain(LengthStyle.MILLIMETRES).withAll(true));
    new LayoutText(page, "Ticket").write(TICKETS.layouts().only(List.of("barn")));
    Approved.assertApproved("layouts-ascii-mm.txt", page.printed());
  }

  @Test
  void theListOfTicketsFitsTheScreen() {
    String text = TicketText.render(TICKETS, BOXES);
    assertTrue(text.lines().count() <= Style.USUAL_LINES, text);
    assertTrue(text.contains("how the runs are laid"), text);
  }

  private static String order(CheckedPlan plan) {
    return OrderText.render(
        OrderPaper.of(
            plan,
            new Comparisons(
                null,
                List.of(),
                List.of(),
                JointChoice.each(
                    PlannedRuns.planner(), plan, new Unanswered(), Effort.unlimited())),
            OrderFacts.NONE),
        BOXES);
  }

  @Test
  void orderReadsAsApproved() {
    Approved.assertApproved("order-runs.txt", order(PlannedRuns.checked()));
  }

  /** Worked by hand: 60 + 40 in a line from six sticks; cut once more, 300 in fill five. */
  @Test
  void oneMoreJointIsToldAndNotTaken() {
    String text = order(PlannedRuns.checked(PlannedRuns.shortSticks()));
    assertTrue(text.contains("$60.00 of material"), text);
    assertTrue(text.contains("Saved by choosing joints: nothing; full sticks"), text);
    assertTrue(text.contains("save $10.00; it is not"), text);
    assertTrue(text.contains("All of it is proved."), text);
  }

  /** A way that is not proved may cost less yet. */
  @Test
  void whatIsNotProvedBoundsWhatIsSaved() {
    CheckedPlan plan = PlannedRuns.checked();
    List<JointChoice.Answer> answers =
        plan.plan().materials().stream()
            .filter(material -> !material.order().runs().isEmpty())
            .map(
                material ->
                    new JointChoice.Answer(
                        material,
                        new JointChoice.OtherWay(material.cost() + 200_000, false),
                        new JointChoice.OtherWay(material.cost() - 100_000, false)))
            .toList();
    String text =
        OrderText.render(
            OrderPaper.of(
                plan, new Comparisons(null, List.of(), List.of(), answers), OrderFacts.NONE),
            BOXES);
    String words = text.replaceAll("\\s+", " ");
    assertTrue(words.contains("Saved by choosing joints: at most $20.00"), text);
    assertTrue(words.contains("One more joint a line would save at least $10.00"), text);
    assertTrue(words.contains("Not every plan that this compares is proved."), text);
  }

  @Test
  void lapsAreNoWaste() {
    String text = WasteText.render(WastePaper.of(PlannedRuns.checked()), BOXES.withAll(true));
    assertTrue(text.contains("Laps"), text);
    assertFalse(text.contains("Waste: laps"), text);
  }

  @Test
  void noLineIsWiderThanThePage() {
    for (int width : List.of(Style.NARROWEST, 60, 80, 132)) {
      TicketText.render(TICKETS, BOXES.withAll(true).withWidth(width))
          .lines()
          .forEach(line -> assertTrue(Words.columns(line) <= width, line));
    }
  }

  @Test
  void ticketsThatAreAlikeButForTheirMarksArePrintedAsOne() {
    List<TicketGroup> groups =
        TicketGroup.of(TICKETS.tickets(), TICKETS.ofOrder(), TICKETS.layouts());
    assertTrue(groups.size() < TICKETS.tickets().size() / 2);
    assertEquals(
        TICKETS.tickets(), groups.stream().flatMap(group -> group.tickets().stream()).toList());
    assertEquals(TICKETS.pieces(), groups.stream().mapToInt(TicketGroup::pieces).sum());
  }
}
