package lapwright.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapwright.measure.Length;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.LayoutPaper.Alike;
import lapwright.paperwork.SpotPaper;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.plan.Proof;
import lapwright.print.Table.Kind;

/** One run that was asked for on the spot, as text. */
public final class SpotText {
  private final SpotPaper paper;
  private final Page page;

  private SpotText(SpotPaper paper, Style style) {
    this.paper = paper;
    page = new Page(style);
  }

  public static String render(SpotPaper paper, Style style) {
    return new SpotText(paper, style).write().printed();
  }

  private Page write() {
    page.strongText(answer());
    reach();
    page.blank();
    new LayoutText(page, "Stick").lines(paper.layout());
    sticks();
    where();
    page.blank();
    page.text(Cautions.RUNS, 0, 0);
    page.explainSigns();
    return page;
  }

  private String answer() {
    int lines = paper.layout().lines();
    List<Integer> pieces =
        paper.layout().groups().stream().map(group -> group.pieces().size()).distinct().toList();
    String taken =
        pieces.size() == 1
            ? Phrases.count(pieces.get(0), "piece", "pieces")
            : pieces.stream().map(String::valueOf).collect(Collectors.joining(" or ")) + " pieces";
    Map<Length, Integer> sticks = new LinkedHashMap<>();
    for (Ticket ticket : paper.tickets().tickets()) {
      sticks.merge(ticket.supply().length(), ticket.sticks(), Math::addExact);
    }
    List<String> buy = new ArrayList<>();
    sticks.forEach(
        (length, count) -> buy.add(Phrases.sticks(count) + " of " + page.length(length)));
    return (lines == 1 ? "" : "Each of " + lines + " lines of ")
        + page.length(paper.layout().run().length())
        + " takes "
        + taken
        + (lines == 1 ? ", from " : "; all of them take ")
        + Phrases.list(buy)
        + ". "
        + (paper.proof() == Proof.PROVED
            ? "Proved: no plan takes less stock."
            : "Not proved: no plan can do with less than "
                + page.style().units().atLeast(paper.bound())
                + ".");
  }

  private void reach() {
    SpotPaper.Reach reach = paper.reach();
    if (reach != null) {
      page.text(
          Phrases.count(reach.pieces(), "piece covers", "pieces cover")
              + " up to "
              + page.length(reach.most())
              + (reach.pieces() == 1
                  ? "."
                  : ", " + (reach.pieces() - 1) + " up to " + page.length(reach.before()) + "."),
          0,
          0);
    }
  }

  private void sticks() {
    page.heading("The sticks");
    Table table =
        new Table(page)
            .column("Stick", Kind.NAME)
            .column("Length", Kind.NUMBER)
            .column("Cut, in this order", Kind.LIST)
            .column("Left of each", Kind.NUMBER);
    for (TicketGroup group :
        TicketGroup.of(
            paper.tickets().tickets(), paper.tickets().ofOrder(), paper.tickets().layouts())) {
      Ticket ticket = group.tickets().get(0);
      table.row(
          List.of(
              group.name(),
              page.length(ticket.supply().length()),
              cuts(ticket),
              page.length(ticket.offcut())));
    }
    table.print(1);
  }

  private String cuts(Ticket ticket) {
    if (ticket.uncut()) {
      return "as it comes";
    }
    return (ticket.endTrim().isZero()
            ? ""
            : "trim " + page.style().units().exact(ticket.endTrim()) + ", ")
        + ticket.steps().stream()
            .map(Step::cut)
            .map(
                cut ->
                    (cut.qty() == 1 ? "" : MoneyStyle.grouped(cut.qty()) + " @ ")
                        + page.length(cut.length()))
            .collect(Collectors.joining(", "));
  }

  private void where() {
    page.blank();
    List<String> parts = new ArrayList<>();
    parts.add(page.length(paper.account().finished()) + " finished");
    int joints = paper.layout().groups().stream().mapToInt(SpotText::joints).sum();
    part(parts, paper.account().laps(), " in laps");
    part(parts, paper.account().kerf().plus(paper.account().endTrim()), " in cuts and trims");
    part(parts, paper.account().offcutsKept().plus(paper.account().scrap()), " left");
    part(parts, paper.account().shortAllowance(), " that sticks may come short");
    page.text(
        "Of "
            + page.length(paper.bought())
            + " of stock: "
            + Phrases.list(parts)
            + ". "
            + Phrases.count(joints, "joint", "joints")
            + " in all.",
        0,
        0);
  }

  private static int joints(Alike group) {
    return group.joints().size() * group.lines().size();
  }

  private void part(List<String> parts, Length length, String what) {
    if (!length.isZero()) {
      parts.add(page.length(length) + what);
    }
  }
}
