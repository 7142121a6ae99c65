package lapwright.files.papers;

import java.util.List;
import java.util.stream.Collectors;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.shop.PieceEnds;
import lapwright.shop.Supply;

/** {@code tickets.csv}: the tickets for the saw, a step of a ticket a row, in cutting order. */
public final class TicketsCsv {
  public static final String FILE = "tickets.csv";

  private static final List<String> HEAD =
      List.of(
          "ticket",
          "saw",
          "material",
          "name",
          "source",
          "supplier",
          "rack_id",
          "place",
          "lot",
          "stick",
          "stick_mm",
          "sticks",
          "passes",
          "shortest_stick",
          "shortest_stick_mm",
          "end_trim",
          "end_trim_mm",
          "step",
          "mark",
          "job",
          "copy",
          "length",
          "length_mm",
          "short_by_mm",
          "ends",
          "long_points",
          "one_way",
          "qty_per_stick",
          "qty",
          "tape_mm",
          "offcut",
          "offcut_mm",
          "kept",
          "offcut_names");

  private TicketsCsv() {}

  /**
   * {@code tape_mm} is where each piece ends on a tape from the squared end; several places and
   * names are set apart by spaces.
   */
  public static String text(TicketPaper paper, LengthStyle units) {
    CsvSheet sheet = new CsvSheet(HEAD);
    for (Ticket ticket : paper.tickets()) {
      int number = 0;
      for (Step step : ticket.steps()) {
        number++;
        CsvSheet.Row row = new CsvSheet.Row();
        stick(row, ticket, units);
        step(row, number, step, ticket.sticks(), units);
        sheet.row(
            row.length(units, ticket.offcut())
                .text(ticket.kept() ? "kept" : ticket.offcut().isZero() ? "" : "scrap")
                .text(String.join(" ", ticket.offcutNames())));
      }
    }
    return sheet.text();
  }

  private static void stick(CsvSheet.Row row, Ticket ticket, LengthStyle units) {
    row.text(ticket.name())
        .text(ticket.saw().id())
        .text(ticket.material().id())
        .text(ticket.material().name());
    if (ticket.supply() instanceof Supply.Offer offer) {
      row.text("buy").text(offer.supplier()).empty(3);
    } else if (ticket.supply() instanceof Supply.Bought bought) {
      row.text("bought").text(bought.supplier()).empty(3);
    } else if (ticket.supply() instanceof Supply.OnHand onHand) {
      row.text("on-hand").empty(2).text(onHand.place()).text(onHand.lot());
    } else if (ticket.supply() instanceof Supply.RackOffcut offcut) {
      row.text("rack").empty(1).text(offcut.id()).text(offcut.place()).text(offcut.lot());
    }
    row.length(units, ticket.supply().length())
        .number(ticket.sticks())
        .text(ticket.passes().stream().map(String::valueOf).collect(Collectors.joining(" ")))
        .length(units, ticket.shortestStick())
        .length(units, ticket.endTrim());
  }

  private static void step(CsvSheet.Row row, int number, Step step, int sticks, LengthStyle units) {
    PieceEnds ends = step.cut().rules().ends();
    row.number(number)
        .text(step.cut().mark())
        .text(step.cut().job())
        .number(step.cut().copy())
        .length(units, step.cut().length())
        .mm(step.cut().shorter())
        .text(ends.word())
        .text(ends.isSquare() ? "" : ends.pointsAcross() ? "opposite-edges" : "same-edge")
        .text(step.cut().rules().oneWay() ? "yes" : "")
        .number(step.cut().qty())
        .number(Math.multiplyExact(step.cut().qty(), sticks))
        .text(
            step.ends().stream()
                .map(end -> LengthStyle.exactMm(end).toPlainString())
                .collect(Collectors.joining(" ")));
  }
}
