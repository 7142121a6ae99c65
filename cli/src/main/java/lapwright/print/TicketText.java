package lapwright.print;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.paperwork.TicketPaper.PieceLine;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.print.Table.Kind;

/** The tickets for the saw and the lists of the jobs, as text. */
public final class TicketText {
  private final TicketPaper paper;
  private final Page page;
  private final Shortening shortening;
  private final Map<String, Integer> copies = new HashMap<>();

  private TicketText(TicketPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    page = new Page(style);
    paper.jobs().forEach(list -> copies.merge(list.job(), list.copies(), Math::max));
  }

  /**
   * All tickets and lists where the style asks for them or they are short enough; else the list of
   * the tickets in the order in which they are cut, and how to see the rest.
   */
  public static String render(TicketPaper paper, Style style) {
    Page whole = new TicketText(paper, style, Shortening.NONE).whole();
    if (style.all() || whole.size() <= style.lines()) {
      return whole.printed();
    }
    return Shortening.fitting(style, limit -> new TicketText(paper, style, limit).overview());
  }

  private Page whole() {
    head();
    if (!paper.tickets().isEmpty()) {
      if (paper.tickets().size() > 1) {
        tickets();
      }
      // Counted order by order, so that a ticket stays as it is when more is ordered.
      int from = 0;
      for (int count : paper.ofOrder()) {
        for (int at = 0; at < count; at++) {
          page.blank();
          new OneTicket(page, paper.tickets().get(from + at), copies).write(at + 1, count);
        }
        from += count;
      }
      page.blank();
      page.faint(page.heavyRule(page.width()));
      page.strongText("Pieces of each job, and the tickets they come from");
      paper.jobs().forEach(this::job);
      end();
    }
    return page;
  }

  private Page overview() {
    head();
    tickets();
    page.blank();
    page.text("Every ticket with its cuts, and the pieces of each job: --all.", 0, 0);
    end();
    return page;
  }

  private void head() {
    if (paper.tickets().isEmpty()) {
      page.strongText("Nothing to cut: no firm job has pieces.");
      return;
    }
    long jobs = paper.jobs().stream().map(JobList::job).distinct().count();
    LocalDate due =
        paper.jobs().stream().map(JobList::due).filter(Objects::nonNull).findFirst().orElse(null);
    page.strongText(
        "Cut "
            + Phrases.count(paper.pieces(), "piece", "pieces")
            + " for "
            + Phrases.jobs(jobs)
            + " from "
            + Phrases.sticks(paper.sticks())
            + ": "
            + Phrases.count(paper.tickets().size(), "ticket", "tickets")
            + "."
            + (due == null ? "" : " The first job is due " + Phrases.day(due) + "."));
    page.text(Cautions.CUTTING, 0, 0);
  }

  private void end() {
    page.blank();
    page.text(Cautions.DESIGN, 0, 0);
    page.explainSigns();
  }

  private void tickets() {
    page.heading("Tickets, in the order in which they are cut");
    Table table =
        new Table(page)
            .column("Ticket", Kind.NAME)
            .column("Sticks", Kind.NUMBER)
            .column("Length", Kind.NUMBER)
            .column("Pieces", Kind.NUMBER)
            .column("Take", Kind.NAME)
            .column("Left", Kind.NAME);
    String group = "";
    int shown = Shortening.shown(paper.tickets().size(), shortening.main());
    for (Ticket ticket : paper.tickets().subList(0, shown)) {
      String here = ticket.material().name() + ", on the " + ticket.saw().id();
      if (!here.equals(group)) {
        group = here;
        table.title(here);
      }
      table.row(
          List.of(
              ticket.name(),
              MoneyStyle.grouped(ticket.sticks()),
              page.length(ticket.supply().length()),
              MoneyStyle.grouped((long) ticket.sticks() * ticket.pieces()),
              Phrases.source(ticket.supply()),
              ticket.kept() ? "keep " + page.length(ticket.offcut()) : ""));
    }
    if (shown < paper.tickets().size()) {
      table.note(
          "and "
              + Phrases.count(paper.tickets().size() - shown, "more ticket", "more tickets")
              + ": --all");
    }
    table.print(2);
  }

  private void job(JobList job) {
    page.heading(
        job.job()
            + (job.copies() > 1 ? ", copy " + job.copy() + " of " + job.copies() : "")
            + (job.due() == null ? "" : ", due " + Phrases.day(job.due())));
    boolean angled = job.lines().stream().anyMatch(line -> !line.rules().ends().isSquare());
    boolean purposes = job.lines().stream().anyMatch(line -> !line.purpose().isEmpty());
    Table table =
        new Table(page)
            .column("Mark", Kind.NAME)
            .column("Length", Kind.NUMBER)
            .column("Pieces", Kind.NUMBER)
            .columnIf(angled, "Ends", Kind.NAME)
            .columnIf(purposes, "For", Kind.NAME)
            .column("Where from", Kind.LIST);
    String material = "";
    for (PieceLine line : job.lines()) {
      if (!line.material().id().equals(material)) {
        material = line.material().id();
        table.title(line.material().name());
      }
      List<String> cells = new ArrayList<>();
      cells.add(line.mark().isEmpty() ? "-" : line.mark());
      cells.add(page.length(line.length()) + (line.shorter().isZero() ? "" : " short"));
      cells.add(MoneyStyle.grouped(line.qty()));
      if (angled) {
        cells.add(line.rules().ends().isSquare() ? "" : line.rules().ends().word());
      }
      if (purposes) {
        cells.add(line.purpose());
      }
      cells.add(
          String.join(
              ", ",
              line.from().stream()
                  .map(from -> from.qty() + " from ticket " + from.ticket())
                  .toList()));
      table.row(cells);
    }
    table.print(2);
    for (PieceLine line : job.lines()) {
      if (!line.shorter().isZero()) {
        page.text(
            "short: "
                + MoneyStyle.grouped(line.qty())
                + " of "
                + (line.mark().isEmpty() ? "these" : line.mark())
                + " "
                + (line.qty() == 1 ? "is" : "are")
                + " "
                + page.style().units().exact(line.shorter())
                + " shorter than asked for, which the job permits and which saves stock.",
            2,
            4);
      }
    }
  }
}
