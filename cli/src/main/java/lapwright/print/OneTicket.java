package lapwright.print;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.plan.Cut;
import lapwright.print.Table.Kind;
import lapwright.shop.Ends;
import lapwright.shop.PieceEnds;

/** One ticket, small enough for a quarter of a page. */
final class OneTicket {
  private final Page page;
  private final TicketGroup group;
  private final Ticket ticket;
  private final Map<String, Integer> copies;

  /**
   * @param copies how many times each job is built
   */
  OneTicket(Page page, TicketGroup group, Map<String, Integer> copies) {
    this.page = page;
    this.group = group;
    this.ticket = group.together();
    this.copies = copies;
  }

  void write() {
    page.faint(page.heavyRule(page.width()));
    sides(
        group.isSingle()
            ? "TICKET " + ticket.name() + "   (" + group.number() + " of " + group.of() + ")"
            : "TICKETS "
                + ticket.name()
                + "   ("
                + group.number()
                + " to "
                + (group.number() + group.tickets().size() - 1)
                + " of "
                + group.of()
                + ")",
        (ticket.uncut() ? "USE " : "CUT ")
            + Phrases.sticks(ticket.sticks()).toUpperCase(Locale.ROOT)
            + " OF "
            + page.length(ticket.supply().length()));
    sides(ticket.material().name(), "on the " + ticket.saw().id());
    page.text("Take   " + Phrases.source(ticket.supply()), 1, 8);
    if (ticket.uncut()) {
      page.text(
          group.isSingle()
              ? "Use    it as it comes: it is the piece, no cut."
              : "Use    each as it comes: it is the piece, no cut.",
          1,
          8);
    } else {
      page.text(
          "Needs  "
              + page.style().units().atLeast(ticket.shortestStick())
              + " at least. Shorter? Stop and tell the office.",
          1,
          8);
      if (!ticket.endTrim().isZero()) {
        page.text(
            "First  square the end: cut off " + page.style().units().exact(ticket.endTrim()) + ".",
            1,
            8);
      }
    }
    stack();
    page.blank();
    steps();
    marks();
    ends();
    page.blank();
    Tape.draw(page, ticket, 1);
    page.blank();
    if (ticket.longestLast()) {
      page.text("Last   the longest piece: it is what the vise holds at the last cut.", 1, 8);
    }
    page.text("Left   " + left(), 1, 8);
    page.text("Spoiled a stick? Tell the office. Take none from another ticket.", 1, 8);
  }

  private void stack() {
    List<Integer> passes = ticket.passes();
    if (ticket.sticks() > 1 && ticket.saw().stack() > 1) {
      page.text(
          "Stack  up to "
              + ticket.saw().stack()
              + " at once: "
              + (passes.size() == 1
                  ? "all " + ticket.sticks() + " in one pass."
                  : ticket.sticks()
                      + " = "
                      + passes.stream().map(String::valueOf).collect(Collectors.joining(" + "))
                      + ", "
                      + passes.size()
                      + " passes."),
          1,
          8);
    }
  }

  /** What the saw operator must know of ends that are not square, and of pieces that have a way. */
  private void ends() {
    if (!ticket.isAngled() && !ticket.isOneWay() && !isShorter()) {
      return;
    }
    page.blank();
    Set<String> told = new HashSet<>(); // jobs of one kit have the same marks
    for (Step step : ticket.steps()) {
      Cut cut = step.cut();
      String mark = cut.mark().isEmpty() ? "pieces" : cut.mark();
      PieceEnds ends = cut.rules().ends();
      if (!ends.isSquare() && told.add(mark + EndWords.of(ends))) {
        page.text("Ends   " + mark + ": " + EndWords.of(ends) + ".", 1, 8);
      }
      if (!cut.shorter().isZero()) {
        page.text(
            "Short  "
                + mark
                + ": "
                + page.style().units().exact(cut.length())
                + ", which is "
                + page.style().units().exact(cut.shorter())
                + " less than asked for; the job permits it.",
            1,
            8);
      }
    }
    if (ticket.isAngled()) {
      page.text(
          "Angles are counted from square. Stop and tape are for the long points; trim the end left"
              + " by an angled cut to the next piece's own angle.",
          8,
          8);
    }
    if (ticket.isOneWay()) {
      page.text(
          "Turn   neither stick nor piece end for end: first end first, and mark it as the first.",
          1,
          8);
    }
  }

  private boolean isShorter() {
    return ticket.steps().stream().anyMatch(step -> !step.cut().shorter().isZero());
  }

  private void sides(String left, String right) {
    String end = page.words().clean(right);
    int room = page.width() - 2 - Words.columns(end) - 2;
    String start = page.words().clean(left);
    if (Words.columns(start) <= room) {
      page.strong(" " + Words.left(start, room) + "  " + end);
    } else {
      page.text(start, 1, 1);
      page.text(end, 1, 1);
    }
  }

  private void steps() {
    Table table =
        new Table(page)
            .column("Mark", Kind.NAME)
            .column("Job", Kind.NAME)
            .column(ticket.sticks() > 1 ? "Each stick" : "Pieces", Kind.NUMBER)
            .column("Set stop", Kind.NUMBER)
            .column("Tape from the squared end", Kind.LIST);
    for (int at = 0; at < ticket.steps().size(); at++) {
      Step step = ticket.steps().get(at);
      Cut cut = step.cut();
      table.row(
          List.of(
              group.isMarkedApart(at) ? "below" : cut.mark().isEmpty() ? "-" : cut.mark(),
              job(cut, at),
              MoneyStyle.grouped(cut.qty()),
              page.length(cut.length()),
              step.ends().stream().map(page::length).collect(Collectors.joining(", "))));
    }
    table.print(1);
  }

  /** Which mark is written on which piece, where the tickets are alike but for that. */
  private void marks() {
    if (!group.isSingle()) {
      page.blank();
      page.text("Write on the pieces of each stick, by ticket: " + group.marks() + ".", 1, 8);
    }
  }

  private String job(Cut cut, int step) {
    return !group.isMarkedApart(step) && copies.getOrDefault(cut.job(), 1) > 1
        ? cut.job() + " copy " + cut.copy()
        : cut.job();
  }

  private String left() {
    if (ticket.offcut().isZero()) {
      return "nothing.";
    }
    String length =
        page.length(ticket.offcut())
            + (ticket.offcutAngle().isSquare()
                ? ""
                : " to the short point of its end, which is left at "
                    + ticket.offcutAngle().degrees()
                    + " degrees");
    String each = ticket.sticks() > 1 ? " of each stick" : "";
    if (!ticket.kept()) {
      return length + each + ", scrap.";
    }
    List<String> names = ticket.offcutNames();
    return length
        + each
        + ", back to the rack"
        + (ticket.offcutEnds() == Ends.ONE_MILL && !ticket.material().millEndsGood()
            ? " with its mill end"
            : "")
        + ". Write on "
        + (names.size() > 1 ? "them " : "it ")
        + String.join(", ", names)
        + ".";
  }
}
