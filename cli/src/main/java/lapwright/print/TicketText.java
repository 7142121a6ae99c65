package lapwright.print;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.TicketPaper.FromTicket;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.paperwork.TicketPaper.PieceLine;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.print.Table.Kind;

/** The tickets for the saw and the lists of the jobs, as text. */
public final class TicketText {
  private final TicketPaper paper;
  private final Page page;
  private final Shortening shortening;
  private final List<TicketGroup> groups;
  private final Map<String, Integer> copies = new HashMap<>();

  private TicketText(TicketPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    page = new Page(style);
    groups = TicketGroup.of(paper.tickets(), paper.ofOrder(), paper.layouts());
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
    if (!paper.jobs().isEmpty()) {
      if (paper.tickets().size() > 1) {
        tickets();
      }
      // Counted order by order, so that a ticket stays as it is when more is ordered.
      for (TicketGroup group : groups) {
        page.blank();
        new OneTicket(page, group, copies).write();
      }
      page.blank();
      page.faint(page.heavyRule(page.width()));
      page.strongText(
          "Pieces of each job, and the tickets they come from"
              + (hasItems() ? "; items to pack with them" : ""));
      paper.jobs().forEach(this::job);
      new LayoutText(page, "Ticket").write(paper.layouts());
      end();
    }
    return page;
  }

  private Page overview() {
    head();
    if (!paper.tickets().isEmpty()) {
      tickets();
    }
    page.blank();
    page.text(
        "Every ticket with its cuts, "
            + (paper.layouts().runs().isEmpty() ? "and " : "")
            + (hasItems() ? "the pieces and items of each job" : "the pieces of each job")
            + (paper.layouts().runs().isEmpty() ? "" : ", and how the runs are laid")
            + ": --all.",
        0,
        0);
    end();
    return page;
  }

  private boolean hasItems() {
    return paper.jobs().stream().anyMatch(job -> !job.items().isEmpty());
  }

  private void head() {
    if (paper.tickets().isEmpty()) {
      page.strongText(
          "Nothing to cut: no firm job has pieces." + (hasItems() ? " Items to pack:" : ""));
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
    int shown = Shortening.shown(groups.size(), shortening.main());
    for (TicketGroup one : groups.subList(0, shown)) {
      Ticket ticket = one.tickets().get(0);
      String here = ticket.material().name() + ", on the " + ticket.saw().id();
      if (!here.equals(group)) {
        group = here;
        table.title(here);
      }
      table.row(
          List.of(
              one.name(),
              MoneyStyle.grouped(one.sticks()),
              page.length(ticket.supply().length()),
              MoneyStyle.grouped(one.pieces()),
              Phrases.source(ticket.supply()),
              ticket.kept() ? "keep " + page.length(ticket.offcut()) : ""));
    }
    if (shown < groups.size()) {
      int hidden =
          groups.subList(shown, groups.size()).stream().mapToInt(one -> one.tickets().size()).sum();
      table.note("and " + Phrases.count(hidden, "more ticket", "more tickets") + ": --all");
    }
    table.print(2);
  }

  /** {@code 2 from ticket 7, 1 each from tickets 9 to 12}. */
  private static String whereFrom(PieceLine line) {
    List<String> parts = new ArrayList<>();
    List<FromTicket> from = line.from();
    for (int i = 0; i < from.size(); ) {
      int end = i + 1;
      while (end < from.size()
          && from.get(end).qty() == from.get(i).qty()
          && Phrases.follow(from.get(end - 1).ticket(), from.get(end).ticket())) {
        end++;
      }
      int alike = end - i < 3 ? 1 : end - i;
      parts.add(
          alike == 1
              ? from.get(i).qty() + " from ticket " + from.get(i).ticket()
              : from.get(i).qty()
                  + " each from tickets "
                  + from.get(i).ticket()
                  + " to "
                  + from.get(end - 1).ticket());
      i += alike;
    }
    return String.join(", ", parts);
  }

  private void job(JobList job) {
    page.heading(
        job.job()
            + (job.copies() > 1 ? ", copy " + job.copy() + " of " + job.copies() : "")
            + (job.due() == null ? "" : ", due " + Phrases.day(job.due())));
    if (!job.lines().isEmpty()) {
      pieces(job);
    }
    items(job);
  }

  /** Counted goods, to be ticked off when they are packed. */
  private void items(JobList job) {
    if (job.items().isEmpty()) {
      return;
    }
    if (!job.lines().isEmpty()) {
      page.blank();
    }
    Table table = new Table(page).column("Pack", Kind.NAME).column("Pieces", Kind.NUMBER);
    job.items().forEach(item -> table.row(List.of(item.item(), MoneyStyle.grouped(item.qty()))));
    table.print(2);
  }

  private void pieces(JobList job) {
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
      cells.add(whereFrom(line));
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
