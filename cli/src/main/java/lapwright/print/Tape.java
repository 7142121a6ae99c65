package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.print.ScaleBar.Part;

/**
 * A stick drawn as a tape: the pieces to scale, below each the running mark at its far end,
 * measured from the squared end.
 */
final class Tape {
  private final Page page;
  private final Ticket ticket;
  private final int width;
  private final List<Part> parts = new ArrayList<>();

  private Tape(Page page, Ticket ticket, int width) {
    this.page = page;
    this.ticket = ticket;
    this.width = width;
    addParts();
  }

  static void draw(Page page, Ticket ticket, int indent) {
    Tape tape = new Tape(page, ticket, page.width() - 2 * indent - 1);
    ScaleBar.draw(page, tape.parts, ticket.endTrim().isZero() ? 0 : 1, "0", indent);
  }

  /** The end trim, the pieces, each with the cut after it, and the offcut. */
  private void addParts() {
    if (!ticket.endTrim().isZero()) {
      parts.add(new Part(true, List.of(), ticket.endTrim().units(), ""));
    }
    // Where pieces are too narrow for their marks, equal ones are drawn as one stretch.
    boolean together = ticket.pieces() > width / 6;
    Length start = Length.ZERO;
    for (Step step : ticket.steps()) {
      List<Length> ends = step.ends();
      int each = together ? ends.size() : 1;
      for (int i = each - 1; i < ends.size(); i += each) {
        parts.add(
            new Part(
                false,
                label(step, each),
                ends.get(i).minus(start).units(),
                page.length(ends.get(i))));
        start = ends.get(i);
      }
    }
    if (!ticket.offcut().isZero()) {
      String length = page.length(ticket.offcut());
      parts.add(
          ticket.kept()
              ? new Part(false, List.of("keep " + length, "keep"), ticket.offcut().units(), "")
              : new Part(true, List.of(), ticket.offcut().units(), ""));
    }
  }

  private List<String> label(Step step, int times) {
    String mark = page.words().clean(step.cut().mark());
    String length = page.length(step.cut().length());
    String many = times > 1 ? times + " x " : "";
    return mark.isEmpty()
        ? List.of(many + length)
        : List.of(many + mark + "  " + length, many + mark, mark);
  }
}
