package lapwright.files.lists;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapwright.files.JobTable;
import lapwright.files.source.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * One list of a lean-to as twenty people would export it: the same pieces each time, counted and
 * measured by hand. And what is said of lists that can be read two ways.
 */
final class SpreadsheetHabitsTest {
  /** 4 posts of 9'-6", 2 beams of 12'-0-1/2", 6 girts of 7'-3-3/4". */
  private static final String PIECES =
      """
      4 @ 9'-6" P1 tube-3x2
      2 @ 12'-0-1/2" B1 tube-3x2
      6 @ 7'-3-3/4" G1 angle-2""";

  private static final Charset WINDOWS = Charset.forName("windows-1252");

  @TempDir Path dir;

  static Stream<Arguments> habits() {
    return Stream.of(
        habit(
            "plain",
            "material,length,qty,mark\ntube-3x2,9'-6\",4,P1\ntube-3x2,12'-0-1/2\",2,B1\n"
                + "angle-2,7'-3-3/4\",6,G1\n"),
        habit(
            "other order, case and words",
            "Qty,Mark,LENGTH,Section\n4,P1,9'-6\",tube-3x2\n2,B1,12'-0 1/2\",tube-3x2\n"
                + "6,G1,7'-3 3/4\",angle-2\n"),
        habit(
            "quoted as spreadsheets do",
            "\"Piece\",\"Pcs\",\"Length\",\"Material\"\r\n\"P1\",\"4\",\"9'-6\"\"\",\"tube-3x2\"\r\n"
                + "\"B1\",\"2\",\"12'-0 1/2\"\"\",\"tube-3x2\"\r\n"
                + "\"G1\",\"6\",\"7'-3 3/4\"\"\",\"angle-2\"\r\n"),
        habit(
            "a title and an empty row above",
            "Lean-to for Kirby,,,\n,,,\nMark,Count,Length,Material\nP1,4,9'-6\",tube-3x2\n"
                + "B1,2,12'-0-1/2\",tube-3x2\nG1,6,7'-3-3/4\",angle-2\n"),
        habit(
            "a total below, named",
            "Mark,Qty,Length,Material\nP1,4,9'-6\",tube-3x2\nB1,2,12'-0-1/2\",tube-3x2\n"
                + "G1,6,7'-3-3/4\",angle-2\nTotal,12,,\n"),
        habit(
            "a sum below, not named",
            "Mark,Qty,Length,Material\nP1,4,9'-6\",tube-3x2\nB1,2,12'-0-1/2\",tube-3x2\n"
                + "G1,6,7'-3-3/4\",angle-2\n,12,,\n"),
        habit(
            "subtotals and empty rows between",
            "Mark,Qty,Length,Material\nP1,4,9'-6\",tube-3x2\nB1,2,12'-0-1/2\",tube-3x2\n"
                + "Sub-total,6,,\n,,,\nG1,6,7'-3-3/4\",angle-2\nGrand total,12,,\n"),
        habit(
            "decimal inches, the unit in the header",
            "Mark,Qty,Length (in),Material\nP1,4,114,tube-3x2\nB1,2,144.5,tube-3x2\n"
                + "G1,6,87.75,angle-2\n"),
        habit(
            "decimal feet, the unit in the header",
            "Mark,Qty,Length [ft],Material\nP1,4,9.5,tube-3x2\nB1,2,12.0416666667,tube-3x2\n"
                + "G1,6,7.3125,angle-2\n"),
        habit(
            "fractions of inches under a unit",
            "Mark,Qty,Length in,Material\nP1,4,114,tube-3x2\nB1,2,144 1/2,tube-3x2\n"
                + "G1,6,87 3/4,angle-2\n"),
        habit(
            "each with its ea",
            "Qty.,Mark,Material,Len.\n4 ea,P1,tube-3x2,9'-6\"\n2 EA,B1,tube-3x2,12'-0-1/2\"\n"
                + "6 pcs,G1,angle-2,7'-3-3/4\"\n"),
        habit(
            "quantities as decimals",
            "Qty,Mark,Material,Length\n4.0,P1,tube-3x2,9'-6\"\n2.00,B1,tube-3x2,12'-0-1/2\"\n"
                + "x6,G1,angle-2,7'-3-3/4\"\n"),
        habit(
            "semicolons and decimal commas",
            "Mark;Qty;Length (in);Material\nP1;4;114,0;tube-3x2\nB1;2;144,5;tube-3x2\n"
                + "G1;6;87,75;angle-2\n"),
        habit(
            "semicolons, told in the first line",
            "sep=;\nMark;Qty;Length;Material\nP1;4;9'-6\";tube-3x2\nB1;2;12'-0-1/2\";tube-3x2\n"
                + "G1;6;7'-3-3/4\";angle-2\n"),
        habit(
            "tabs",
            "Mark\tQty\tLength\tMaterial\nP1\t4\t9'-6\"\ttube-3x2\nB1\t2\t12'-0-1/2\"\ttube-3x2\n"
                + "G1\t6\t7'-3-3/4\"\tangle-2\n"),
        habit(
            "feet and inches in two columns",
            "Mark,Qty,Ft,In,Material\nP1,4,9,6,tube-3x2\nB1,2,12,0.5,tube-3x2\n"
                + "G1,6,7,3 3/4,angle-2\n"),
        habit(
            "the material once, in merged cells",
            "Section,Mark,Qty,Length\ntube-3x2,P1,4,9'-6\"\n,B1,2,12'-0-1/2\"\n"
                + "angle-2,G1,6,7'-3-3/4\"\n"),
        habit(
            "the material as a heading",
            "Mark,Qty,Length\ntube-3x2,,\nP1,4,9'-6\"\nB1,2,12'-0-1/2\"\n,,\nangle-2,,\n"
                + "G1,6,7'-3-3/4\"\n"),
        habit(
            "millimetres beside a unit column",
            "Mark,Qty,Length,Unit,Material\nP1,4,2895.6,mm,tube-3x2\nB1,2,144.5,in,tube-3x2\n"
                + "G1,6,7.3125,ft,angle-2\n"),
        habit(
            "a header over two lines, repeated on the next page",
            "Mark,Qty,\"Length\n(in)\",Material\nP1,4,114,tube-3x2\nB1,2,144.5,tube-3x2\n"
                + "Mark,Qty,\"Length\n(in)\",Material\nG1,6,87.75,angle-2\n"),
        habit(
            "rows that are not wanted this time, and a remark below",
            "Mark,Qty,Length,Material\nP1,4,9'-6\",tube-3x2\nP2,0,8'-0\",tube-3x2\n"
                + "B1,2,12'-0-1/2\",tube-3x2\nG1,6,7'-3-3/4\",angle-2\n\nall galvanized,,,\n"),
        habit(
            "trailing separators",
            "Mark,Qty,Length,Material,,\nP1,4,9'-6\",tube-3x2,,\nB1,2,12'-0-1/2\",tube-3x2,,\n"
                + "G1,6,7'-3-3/4\",angle-2,,\n,,,,,\n"));
  }

  private static Arguments habit(String name, String text) {
    return arguments(name, text);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("habits")
  void theSamePiecesHoweverTheyWereExported(String name, String text) throws IOException {
    assertEquals(PIECES, pieces(understood(text.getBytes(StandardCharsets.UTF_8))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("habits")
  void everyRowWithContentIsAccountedFor(String name, String text) throws IOException {
    CutList list = understood(text.getBytes(StandardCharsets.UTF_8));
    for (CutList.Row row : list.rows()) {
      assertTrue(row.piece() != null || !row.said().isEmpty(), row.toString());
    }
    List<Integer> lines = list.rows().stream().map(CutList.Row::line).toList();
    assertEquals(lines.stream().sorted().distinct().toList(), lines);
  }

  @Test
  void windowsTextIsReadAndSaid() throws IOException {
    String text = "Mark,Qty,Length,Material,Remarks\nP1,4,9'-6½\",tube-3x2,für die Nordwand\n";
    CutList list = understood(text.getBytes(WINDOWS));
    assertEquals("4 @ 9'-6-1/2\" P1 tube-3x2", pieces(list));
    assertEquals("für die Nordwand", list.pieces().get(0).purpose());
    assertTrue(list.notes().get(0).contains("Windows-1252"), list.notes()::toString);
  }

  @Test
  void wideTextWithItsMarkIsReadToo() throws IOException {
    String text = "Mark\tQty\tLength\tMaterial\nP1\t4\t9'-6\"\ttube-3x2\n";
    assertEquals(
        "4 @ 9'-6\" P1 tube-3x2", pieces(understood(text.getBytes(StandardCharsets.UTF_16))));
  }

  @Test
  void aTotalThatDoesNotAgreeIsSaid() throws IOException {
    CutList list =
        understood("Mark,Qty,Length,Material\nP1,4,9'-6\",tube-3x2\nTotal,5,,\n".getBytes(WINDOWS));
    assertTrue(list.rows().get(1).said().contains("the rows above make 4"));
  }

  @Test
  void decimalsOfAFootThatNoSixteenthRoundsToStayAsTheyAre() throws IOException {
    CutList list =
        understood(
            "Qty,Length (ft),Material\n1,10.333,t\n1,10.33,t\n1,10.34,t\n1,10.337,t\n"
                .getBytes(WINDOWS));
    assertEquals(
        List.of("10'-4\"", "123.96\"", "124.08\"", "124.044\""),
        list.pieces().stream().map(piece -> inches(piece)).toList());
    assertTrue(
        list.notes().get(0).contains("10.333 is taken for 10'-4\""), list.notes().toString());
  }

  private static String inches(CutList.Piece piece) {
    long units = piece.length().units();
    return units == 124 * 406_400L
        ? "10'-4\""
        : java.math.BigDecimal.valueOf(units)
                .divide(java.math.BigDecimal.valueOf(406_400), 4, java.math.RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString()
            + "\"";
  }

  @Test
  void columnsThatAreNotReadAreNamed() throws IOException {
    CutList list =
        understood("Qty,Length,Material,Weight\n4,9'-6\",tube-3x2,88\n".getBytes(WINDOWS));
    assertTrue(list.notes().get(0).contains("Weight"), list.notes()::toString);
  }

  static Stream<Arguments> ambiguous() {
    String head = "Mark,Qty,Length,Material\n";
    return Stream.of(
        arguments(head + "P1,4,114,tube\n", 2, "column C", "a number without a unit"),
        arguments(head + "P1,4,9-6,tube\n", 2, "column C", "feet and inches, or a date?"),
        arguments(head + "P1,4,6-Sep,tube\n", 2, "column C", "a date where a length belongs"),
        arguments(head + "P1,4.5,9',tube\n", 2, "column B", "not a whole number"),
        arguments(head + "P1,four,9',tube\n", 2, "column B", "not a quantity"),
        arguments(head + "P1,,9',tube\n", 2, "column B", "no qty in a row with P1, 9', tube"),
        arguments(head + "P1,4,,tube\n", 2, "column C", "no length in a row with P1, 4, tube"),
        arguments(head + "P1,4,0\",tube\n", 2, "column C", "a length of 0"),
        arguments(head + "P1,4,9',\n", 2, "column D", "no material, and none above"),
        arguments(head + "P1,4,9',tube\n,7,,\n", 3, "column C", "no length beside 7"),
        arguments(
            head + "P1,4,9',tube\nP1,4,8',tube\n",
            3,
            "column A",
            "another material or length in line 2"),
        arguments(
            "Mark;Qty;Length (mm);Material\nP1;4;1.200;tube\n", 2, "column C", "part thousands?"),
        arguments(
            "Mark\tQty\tLength (mm)\tMaterial\nP1\t4\t1,200\ttube\n", 2, "column C", "thousands?"),
        arguments(
            "Qty,Count,Length,Material\n4,4,9',tube\n", 1, "column B", "two columns for the qty"),
        arguments(
            "Length,Ft,Qty,Material\n9',9,4,tube\n", 1, "column B", "a column of lengths, and"),
        arguments("Qty,Ft,In,Material\n4,9,14,tube\n", 2, "column C", "12 inches or more"),
        arguments("Mark,No,Section\nP1,4,tube\n", 1, "", "no row names a column"),
        arguments("", 0, "", "the file is empty"),
        arguments(head, 0, "", "no row is a piece"));
  }

  @ParameterizedTest
  @MethodSource("ambiguous")
  void refusesWhatIsAmbiguousWithRowAndColumn(String text, int line, String column, String wrong)
      throws IOException {
    List<Fault> faults = faults(text);
    assertEquals(1, faults.size(), () -> Fault.print(faults));
    assertEquals(line, faults.get(0).place().line());
    assertTrue(faults.get(0).field().startsWith(column), faults::toString);
    assertTrue(faults.get(0).wrong().contains(wrong), faults::toString);
    assertTrue(!faults.get(0).remedy().isBlank());
  }

  @Test
  void tellsAllFaultsTogether() throws IOException {
    assertEquals(
        3, faults("Mark,Qty,Length,Material\nP1,x,9,tube\nP2,4,9',tube\nP3,4,9 6,tube\n").size());
  }

  @Test
  void whatIsWrittenSaysTheSame() throws IOException {
    String text =
        "Mark,Qty,Length (mm),Material,Ends\n=P1,4,3200,tube-3x2,45/45\n007,2,2895.6,tube,\n";
    CutList list =
        assertInstanceOf(
                CutList.Result.Understood.class,
                CutListReader.read(
                    file(text.getBytes(WINDOWS)), new CutList.Hints("", null, JobTable.KEPT)))
            .list();
    CutList again =
        assertInstanceOf(
                CutList.Result.Understood.class,
                CutListReader.read(
                    file(JobTable.text(list).getBytes(StandardCharsets.UTF_8)),
                    new CutList.Hints("", null, JobTable.KEPT)))
            .list();
    assertEquals(list.pieces(), again.pieces());
    assertEquals("45/45", again.pieces().get(0).other().get("ends"));
    assertEquals("007", again.pieces().get(1).mark());
  }

  private CutList understood(byte[] bytes) throws IOException {
    CutList.Result result = CutListReader.read(file(bytes), CutList.Hints.NONE);
    if (result instanceof CutList.Result.Faulty faulty) {
      throw new AssertionError("\n" + Fault.print(faulty.faults()));
    }
    return ((CutList.Result.Understood) result).list();
  }

  private List<Fault> faults(String text) throws IOException {
    return assertInstanceOf(
            CutList.Result.Faulty.class,
            CutListReader.read(file(text.getBytes(StandardCharsets.UTF_8)), CutList.Hints.NONE))
        .faults();
  }

  private Path file(byte[] bytes) throws IOException {
    return Files.write(dir.resolve("list.csv"), bytes);
  }

  private static String pieces(CutList list) {
    return list.pieces().stream()
        .map(
            piece ->
                piece.qty()
                    + " @ "
                    + JobTable.style(piece.length()).exact(piece.length())
                    + " "
                    + piece.mark()
                    + " "
                    + piece.material())
        .collect(Collectors.joining("\n"));
  }
}
