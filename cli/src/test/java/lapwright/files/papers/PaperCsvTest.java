package lapwright.files.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import lapwright.compare.Comparisons;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.OrderFacts;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.WastePaper;
import lapwright.print.HandMadeWeek;
import lapwright.print.PlannedRuns;
import org.junit.jupiter.api.Test;

final class PaperCsvTest {
  private static List<Map<String, String>> read(String csv) throws IOException {
    return new CsvMapper()
        .readerFor(Map.class)
        .with(CsvSchema.emptySchema().withHeader())
        .<Map<String, String>>readValues(csv)
        .readAll();
  }

  private static String order(HandMadeWeek week) {
    return OrderCsv.text(
        OrderPaper.of(week.checked(), Comparisons.NONE, OrderFacts.NONE), LengthStyle.FEET_INCHES);
  }

  private static BigDecimal sum(List<Map<String, String>> rows, String kind, String column) {
    return rows.stream()
        .filter(row -> row.get("row").equals(kind))
        .map(row -> new BigDecimal(row.get(column)))
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  @Test
  void orderHasALineForWhatIsBought() throws IOException {
    List<Map<String, String>> rows = read(order(HandMadeWeek.plain()));
    assertEquals(1, rows.size());
    assertEquals("pellbrook", rows.get(0).get("supplier"));
    assertEquals("20'-0\"", rows.get(0).get("length"));
    assertEquals("6096", rows.get(0).get("length_mm"));
    assertEquals("3", rows.get(0).get("sticks"));
    assertEquals("123.00", rows.get(0).get("total"));
    assertEquals("USD", rows.get(0).get("currency"));
  }

  @Test
  void layoutsHaveARowForEachPieceOfEachLine() throws IOException {
    TicketPaper tickets = TicketPaper.of(PlannedRuns.checked());
    List<Map<String, String>> rows =
        read(LayoutsCsv.text(tickets.layouts(), LengthStyle.FEET_INCHES));
    assertEquals(4 * 4 + 3 + 5 * 2, rows.size());
    Map<String, String> second = rows.get(1);
    assertEquals("T1/1.2", second.get("mark"));
    assertEquals("10'-0\"", second.get("from"));
    assertEquals("lap", second.get("joint"));
    assertEquals("20'-1\"", second.get("joint_at"));
    assertEquals("50.8", second.get("joint_width_mm"));
    List<Map<String, String>> ticketRows = read(TicketsCsv.text(tickets, LengthStyle.FEET_INCHES));
    for (Map<String, String> row : rows) {
      assertTrue(
          ticketRows.stream()
              .anyMatch(
                  ticket ->
                      ticket.get("ticket").equals(row.get("ticket"))
                          && ticket.get("job").equals(row.get("job"))
                          && ticket.get("mark").equals(row.get("mark"))
                          && ticket.get("length").equals(row.get("length"))),
          row.toString());
    }
  }

  @Test
  void ticketsHaveARowForEachStepAndEveryPiece() throws IOException {
    List<Map<String, String>> rows =
        read(
            TicketsCsv.text(
                TicketPaper.of(HandMadeWeek.plain().checked()), LengthStyle.FEET_INCHES));
    assertEquals(7, rows.size());
    assertEquals(12, rows.stream().mapToInt(row -> Integer.parseInt(row.get("qty"))).sum());
    Map<String, String> braces = rows.get(2);
    assertEquals("K4M", braces.get("offcut_names"));
    assertEquals("8'-4-31/32\"", braces.get("offcut"));
    assertEquals("1168.4 2339.18125 3509.9625", braces.get("tape_mm"));
    assertEquals("R7", rows.get(0).get("rack_id"));
  }

  @Test
  void wasteAddsUpInTheSpreadsheetToo() throws IOException {
    List<Map<String, String>> rows =
        read(WasteCsv.text(WastePaper.of(HandMadeWeek.plain().checked())));
    for (String column : List.of("finished_mm", "laps_mm", "kerf_mm", "end_trim_mm", "scrap_mm")) {
      BigDecimal total = sum(rows, "total", column);
      assertEquals(0, total.compareTo(sum(rows, "material", column)), column);
      assertEquals(0, total.compareTo(sum(rows, "job", column)), column);
      assertEquals(0, total.compareTo(sum(rows, "job-of-material", column)), column);
    }
    BigDecimal causes = BigDecimal.ZERO;
    for (String column :
        List.of(
            "finished_mm", "laps_mm", "kerf_mm", "end_trim_mm", "scrap_mm", "offcuts_kept_mm")) {
      causes = causes.add(sum(rows, "total", column));
    }
    assertEquals(0, causes.compareTo(sum(rows, "total", "drawn_mm")));
  }

  @Test
  void formulasAreMadeInert() throws IOException {
    for (String name : List.of("=1+1", "+1", "-1", "@A1", "=cmd|' /C calc'!A0")) {
      List<Map<String, String>> rows = read(order(HandMadeWeek.called(name)));
      assertEquals("'" + name, rows.get(0).get("supplier"));
      String tickets =
          TicketsCsv.text(
              TicketPaper.of(HandMadeWeek.called(name).checked()), LengthStyle.FEET_INCHES);
      assertTrue(
          read(tickets).stream().noneMatch(row -> row.get("job").startsWith(name.substring(0, 1))));
    }
  }

  @Test
  void quotesCommasAndLineBreaksComeBack() throws IOException {
    String name = "a \"b\", c\r\nd;e";
    assertEquals(name, read(order(HandMadeWeek.called(name))).get(0).get("supplier"));
  }

  @Test
  void onlyTextBeyondAsciiIsMarkedAsUtf8() {
    assertFalse(order(HandMadeWeek.plain()).startsWith("\ufeff"));
    assertTrue(order(HandMadeWeek.called("Fj\u00e6rbygd")).startsWith("\ufeff"));
    assertTrue(order(HandMadeWeek.plain()).endsWith("\r\n"));
  }

  @Test
  void aRowThatLacksACellIsRefused() {
    CsvSheet sheet = new CsvSheet(List.of("a", "b"));
    assertThrows(IllegalArgumentException.class, () -> sheet.row(new CsvSheet.Row().text("x")));
  }
}
