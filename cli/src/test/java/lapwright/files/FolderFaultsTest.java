package lapwright.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;
import lapwright.files.jobs.JobChoice;
import lapwright.files.source.Fault;
import lapwright.files.source.Note;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.paperwork.OrderFacts.Reason;
import lapwright.shop.JobStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said of each kind of slip: where it stands, what is wrong, what to do. */
final class FolderFaultsTest {
  private static final String JOB = "jobs/mill-lean-to.yaml";
  private static final String CSV = "jobs/ferry-canopy.csv";
  private static final String PRICES = "prices/marrowby.csv";
  private static final String P1 = "8 @ 9'-6\"  P1  post";

  @TempDir Path dir;

  /** One change to a sound folder, and the one fault that it makes. */
  static Stream<Arguments> slips() {
    return Stream.of(
        // jobs
        arguments(JOB, "status: firm", "status: sold", 2, "not one of bid, firm, done"),
        arguments(JOB, "status: firm", "state: firm", 2, "unknown field"),
        arguments(JOB, "due: 2026-12-04", "due: 2026-02-30", 3, "no such day"),
        arguments(JOB, "due: 2026-12-04", "due: 4.12.2026", 3, "not a day"),
        arguments(JOB, "due: 2026-12-04", "due:", 3, "no value"),
        arguments(JOB, "due: 2026-12-04", "due:2026-12-04", 3, "no space after the colon"),
        arguments(JOB, "times: 2", "times: 0", 4, "less than 1"),
        arguments(
            JOB, "times: 2", "times: 500000", 7, "times 500000 that is more than 1,000,000 pieces"),
        arguments(
            JOB,
            "tube-2x2-14ga:",
            "tube-2x2-14g:",
            7,
            "the shop's materials.yaml has no such material"),
        arguments(JOB, "  angle-2x2:", "  tube-2x2-14ga:", 9, "stands twice; first in line 6"),
        arguments(
            JOB,
            P1,
            "8 @ 9'-6\" P1 post #5",
            7,
            "'#5' after a space starts a comment and is not read"),
        arguments(JOB, P1, "8 @ 9.5 P1 post", 7, "a number without a unit"),
        arguments(JOB, P1, "8 @ 10' 6 P1", 7, "is the 6 after the feet inches, or a mark?"),
        arguments(JOB, P1, "0 @ 9'-6\" P1", 7, "less than 1"),
        arguments(JOB, P1, "-8 @ 9'-6\" P1", 7, "a negative number"),
        arguments(JOB, P1, "2.5 @ 9'-6\" P1", 7, "not a whole number"),
        arguments(JOB, P1, "010 @ 9'-6\" P1", 7, "a zero before the number"),
        arguments(JOB, P1, "1,000 @ 9'-6\" P1", 7, "a comma in a number"),
        arguments(JOB, P1, "1000001 @ 9'-6\" P1", 7, "more than 1,000,000"),
        arguments(JOB, P1, "99999999999 @ 9'-6\" P1", 7, "more than 1,000,000"),
        arguments(JOB, P1, "8 of 9'-6\" P1", 7, "not a piece"),
        arguments(JOB, P1, "8 @ 0\" P1", 7, "a length of 0"),
        arguments(JOB, P1, "8 @ -9' P1", 7, "a length is not negative"),
        arguments(JOB, P1, "8 @ 2000 m P1", 7, "longer than 1,000 m"),
        arguments(JOB, P1, "8 @ 9'-6\" P1 post: left", 7, "a colon inside words"),
        arguments(
            JOB, P1, P1 + "\n      4 @ 3'-0\" P2", 7, "a second @: two lines were taken for one"),
        arguments(
            JOB, P1, P1 + "\n    - 4 @ 3'-0\" P1", 8, "mark P1 has two lengths; 9'-6\" in line 7"),
        arguments(JOB, "mark: B1", "mark: P1", 8, "mark P1 has two lengths; 9'-6\" in line 7"),
        arguments(JOB, "length: 3'-10\"", "lenght: 3'-10\"", 8, "missing;unknown field"),
        arguments(JOB, "{ qty: 4, ", "{ ", 8, "missing"),
        arguments(JOB, "qty: 4", "qty: 2.7", 8, "not a whole number"),
        arguments(JOB, "length: 3'-10\"", "length:3'-10\"", 8, "missing;unknown field"),
        arguments(
            JOB,
            "length: 3'-10\"",
            "length: '3'-10\"'",
            8,
            "quotes around a length: its own foot or inch mark ends the quotes"),
        arguments(
            JOB,
            "length: 3'-10\"",
            "length: 2\"",
            8,
            "mark B1: cold-saw cuts nothing shorter than 4\""),
        arguments(JOB, "for: brace", "for: brace, 6' left", 8, "unknown field"),
        arguments(JOB, "for: brace", "for: \"a\\q\"", 8, "a backslash inside double quotes"),
        arguments(
            JOB,
            "for: brace",
            "ends: 45/45, measured: long-point",
            8,
            "angled ends, and nothing tells how deep tube-2x2-14ga is across the cut"),
        arguments(
            JOB,
            "for: brace",
            "ends: 45/45, depth: 2\"",
            8,
            "missing: a length with angled ends means nothing without it"),
        arguments(JOB, "for: brace", "ends: 45", 8, "not the angles of two ends"),
        arguments(
            JOB,
            "for: brace",
            "ends: 75/0, measured: centre",
            8,
            "more than 60 degrees from square"),
        arguments(
            JOB,
            "for: brace",
            "ends: 45/0, measured: centre, depth: 2\", long-points: opposite-edges",
            8,
            "one end is square"),
        arguments(
            JOB,
            "length: 3'-10\", mark: B1, for: brace",
            "length: 4\", mark: B1, ends: 60/60, measured: long-point, depth: 2\"",
            8,
            "the angled ends meet before the piece is that short"),
        arguments(JOB, "for: brace", "may-be-short: 4'", 8, "not longer than it may be short"),
        arguments(JOB, "for: brace", "one-way: maybe", 8, "not one of yes, no"),
        arguments(
            "shop.yaml",
            "end-trim: 1/2\", hold",
            "end-trim: 1/2\", stack-end-trim: 1\", hold",
            5,
            "the machine cuts one stick at a time"),
        arguments(
            "shop.yaml",
            "end-trim: 1/2\", hold",
            "end-trim: 1/2\", stack: 4, stack-end-trim: 1/4\", hold",
            5,
            "less than the end-trim"),
        arguments(JOB, "times: 2", "times: &a 2", 4, "anchors are not taken"),
        arguments(JOB, "times: 2", "times: !!int 2", 4, "tags are not taken"),
        arguments(JOB, "times: 2", "times: 2\n---", 6, "a second document, or text after the end"),
        arguments(JOB, "    - 8 @", "\t- 8 @", 7, "a tab at the start of the line"),
        arguments(JOB, "  angle-2x2:\n    - \"6 @", "  angle-2x2: \"6 @", 9, "not a list"),
        arguments(
            JOB,
            "times: 2",
            "roofs: { rib: [x] }",
            4,
            "this version does not plan roofs yet (job mill-lean-to)"),
        arguments(JOB, "times: 2", "items: { screw: 450, screws: }", 4, "not a quantity"),
        arguments(JOB, "times: 2", "times: 2\nitems: { screw-2-grey: -4 }", 5, "a negative number"),
        arguments(
            JOB,
            "times: 2",
            "times: 2\nitems: { angle-2x2: 4 }",
            5,
            "a material of materials.yaml, which is cut, not counted"),
        arguments(
            JOB,
            "times: 2",
            "times: 2\nitems: { screw-2-grey: 600000 }",
            5,
            "times 2 that is more than 1,000,000 of it"),
        arguments(
            "prices/tollgate.csv",
            "screw-2-grey,,18.40,pack",
            "screw-2-grey,,18.40,ft",
            3,
            "screw-2-grey has no length, so it is counted"),
        arguments(
            "prices/tollgate.csv",
            "screw-2-grey,,18.40,pack",
            "screw-2-grey,,18.40,pack\nscrew-2-grey,,19.00,pack",
            4,
            "offered twice in packs of 1; first in prices/tollgate.csv, line 3"),
        arguments(
            "prices/tollgate.csv",
            "screw-2-grey,,18.40,pack",
            "screw-2-grey,,18.40,pack\nscrew-2-grey,,,",
            4,
            "no price, another line has one (prices/tollgate.csv, line 3)"),
        arguments(
            "on-hand.csv",
            "material,length,qty,place\n",
            "material,length,qty,place\nscrew-2-grey,,x,\n",
            2,
            "not a whole number"),
        arguments(
            JOB,
            "job: mill-lean-to",
            "job: chapel-barn",
            1,
            "another file has a job of that name (jobs/chapel-barn.yaml, line 1, column 1)"),
        // tables
        arguments(
            CSV, ",qty,", ",qnty,", 1, "unknown column;the column is missing from the header"),
        arguments(CSV, "mark,for", "mark,mark", 1, "the column stands twice"),
        arguments(CSV, "8'-4\",6,T1,", "8'-4\",6", 2, "a short row: 3 cells under 5 columns"),
        arguments(
            CSV,
            "8'-4\",6,T1,",
            "8'-4\",1,200,T1,",
            2,
            "a number with a comma was taken for two cells"),
        arguments(
            CSV,
            "8'-4\",6,T1,",
            "8'-4\",6,T1,left, upper",
            2,
            "a cell under no column; a comma inside a number or words?"),
        arguments(
            CSV,
            "8'-4\",6,T1,",
            "\"8'-4\"\",6,T1,",
            2,
            "a quote that does not close, or text after a closing quote"),
        arguments(
            CSV,
            "8'-4\"",
            "8-Apr",
            2,
            "a date where a length belongs: spreadsheets turn 10-6 into a date"),
        arguments(CSV, "8'-4\"", "100", 2, "a number without a unit"),
        arguments(CSV, "8'-4\",6", "8'-4\",", 2, "not a whole number"),
        arguments(
            CSV,
            "drip-trim-grey",
            "drip-trim-gray",
            2,
            "the shop's materials.yaml has no such material"),
        arguments(CSV, "drip-trim-grey", "", 2, "no material"),
        arguments(PRICES, ",each,", ",,", 2, "a price without per: what does it buy?"),
        arguments(PRICES, "29.80,each", ",each", 2, "per without a price"),
        arguments(
            PRICES,
            "29.80,each",
            ",",
            2,
            "half priced: this length has no price, another has one (prices/marrowby.csv, line 3)"),
        arguments(PRICES, "29.80", "$29.80", 2, "not an amount of money"),
        arguments(PRICES, "29.80", "-29.80", 2, "an amount is not negative"),
        arguments(PRICES, "29.80", "0.00", 2, "a price of nothing"),
        arguments(PRICES, "29.80", "1000000001", 2, "more than 1,000,000,000"),
        arguments(
            PRICES,
            "14.20,each",
            "14.20,lb",
            4,
            "a price by weight, and the material has no weight"),
        arguments(PRICES, "14.20,each", "14.20,square", 4, "sticks are not sold by the square"),
        arguments(
            PRICES,
            "14.20,each",
            "14.20,yard",
            4,
            "not one of each, pack, ft, m, lb, kg, cwt, square"),
        arguments(
            PRICES,
            ",2026-11-27,2026-12-11\ntube-2x2-14ga,24'",
            ",2026-12-27,2026-12-11\ntube-2x2-14ga,24'",
            2,
            "before the day of the quotation, 2026-12-27"),
        arguments(
            PRICES,
            "drip-trim-grey,10'-2\"",
            "tube-2x2-14ga,20'",
            4,
            "offered twice; first in prices/marrowby.csv, line 2"),
        arguments("on-hand.csv", "20',3", "20',-3", 2, "a negative number"),
        arguments("rack.csv", "R9", "R7", 3, "the name stands twice; first in line 2"),
        arguments("rack.csv", "one-mill", "two-mill", 3, "not one of sawn, one-mill, mill"),
        // shop
        arguments(
            "shop.yaml",
            "currency: USD\n",
            "",
            1,
            "missing, though there are prices (prices/marrowby.csv, line 2)"),
        arguments("shop.yaml", "currency: USD", "currency: dollars", 2, "not a currency code"),
        arguments("shop.yaml", "units: ft-in", "units: inch", 3, "not one of ft-in, mm"),
        arguments("shop.yaml", "kerf: 3/32\"", "kerf: 3/32", 5, "a number without a unit"),
        arguments(
            "shop.yaml",
            "end-trim: 1/2\"",
            "end-trim: 1/32\"",
            5,
            "the end trim is less than the kerf; it includes its own kerf"),
        arguments("shop.yaml", "{ kerf: 0 }", "{ hold: 0 }", 6, "missing"),
        arguments("shop.yaml", "name: Reedham Shelters\n", "", 1, "missing"),
        arguments(
            "materials.yaml",
            "saw: cold-saw\n    weight",
            "saw: cold-sow\n    weight",
            4,
            "shop.yaml has no such saw"),
        arguments("materials.yaml", "2.25 lb/ft", "2.25 lb", 5, "not a weight"),
        arguments(
            "materials.yaml",
            "[20', 24']",
            "['20'', 24']",
            7,
            "',' is not understood after the length"),
        arguments(
            "materials.yaml",
            "price: 21.50, per: each",
            "price: 21.50",
            12,
            "a price without per: what does it buy?"),
        arguments(
            "materials.yaml",
            "supplier: marrowby",
            "supplier: marowby",
            12,
            "suppliers.yaml has no such supplier"),
        arguments("materials.yaml", "sold-in: 5", "sold-in: five", 12, "not a whole number"),
        arguments(
            "materials.yaml",
            "    saw: snips",
            "    form: flat",
            2,
            "this version does not plan flat stock yet (job ferry-canopy, material drip-trim-grey)"),
        arguments("suppliers.yaml", "\"10:00\"", "\"25:00\"", 2, "not a time of day"),
        arguments("suppliers.yaml", "rounds: line", "rounds: up", 2, "not one of line, each"));
  }

  @ParameterizedTest
  @MethodSource("slips")
  void aSlipIsToldWithItsLineAndWhatToDo(
      String file, String text, String by, int line, String wrong) throws IOException {
    List<Fault> faults = SampleFolder.sound().replace(file, text, by).faults(dir);
    assertTrue(!faults.isEmpty(), "taken: " + by);
    String all = Fault.print(faults);
    assertEquals(
        wrong, String.join(";", faults.stream().map(Fault::wrong).distinct().toList()), all);
    assertEquals(line, faults.get(0).place().line(), all);
    assertTrue(!faults.get(0).remedy().isBlank());
  }

  @Test
  void allFaultsAreToldTogetherAndByFile() throws IOException {
    List<Fault> faults =
        SampleFolder.sound()
            .replace("shop.yaml", "units: ft-in", "units: inch")
            .replace(PRICES, "29.80", "29,80")
            .replace(JOB, P1, "8 @ 9.5 P1")
            .replace(JOB, "qty: 4", "qty: many")
            .put(
                CSV,
                "material,length,qty\ndrip-trim-grey,10,1\ndrip-trim-grey,8'\ndrip-trim-grey,9',0\n")
            .faults(dir);
    assertEquals(
        List.of(
            "jobs/ferry-canopy.csv:2",
            "jobs/ferry-canopy.csv:3",
            "jobs/ferry-canopy.csv:4",
            "jobs/mill-lean-to.yaml:7",
            "jobs/mill-lean-to.yaml:8",
            "prices/marrowby.csv:2",
            "shop.yaml:3"),
        faults.stream().map(f -> f.place().file() + ":" + f.place().line()).toList());
  }

  @Test
  void theNearestNameIsOffered() throws IOException {
    List<Fault> faults =
        SampleFolder.sound().replace(JOB, "  tube-2x2-14ga:", "  tube-2x2-41ga:").faults(dir);
    assertEquals("Did you mean tube-2x2-14ga?", faults.get(0).remedy());
  }

  @Test
  void aFaultIsPrintedWithPlaceValueAndAdvice() throws IOException {
    assertEquals(
        """
        jobs/mill-lean-to.yaml, line 7, column 7, pieces > tube-2x2-14ga > 1: 8 @ 9.5 P1 post
            A number without a unit.
            Write 9.5' for feet, 9.5" for inches or 9.5 mm.
        """,
        Fault.print(SampleFolder.sound().replace(JOB, P1, "8 @ 9.5 P1 post").faults(dir)));
  }

  @Test
  void marksStayAsTypedAndTheSameMarkAddsUp() throws IOException {
    OrderInput input =
        SampleFolder.sound()
            .put(
                JOB,
                "pieces:\n  angle-2x2:\n    - 1 @ 10' 2E1\n    - 2 @ 9' 007\n    - 3 @ 8' No\n"
                    + "    - 4 @ 9' 007\n    - {qty: 5, length: 1 m, mark: 010}\n")
            .read(dir);
    assertEquals(
        List.of("2E1:1", "007:6", "No:3", "010:5"),
        input.order().jobs().stream()
            .filter(job -> job.name().equals("mill-lean-to"))
            .flatMap(job -> job.pieces().stream())
            .map(piece -> piece.mark() + ":" + piece.qty())
            .toList());
  }

  @Test
  void aFileAndATableOfOneNameAreOneJobAndShareNoMark() throws IOException {
    SampleFolder sample =
        SampleFolder.sound()
            .put(
                "jobs/mill-lean-to.csv", "material,length,qty,mark\ndrip-trim-grey,5',7,T9\n,,,\n");
    OrderInput input = sample.read(dir.resolve("one"));
    assertEquals(4, input.wantedJobs().get(0).pieces().size());
    sample.put("jobs/mill-lean-to.csv", "material,length,qty,mark\ntube-2x2-14ga,9'-6\",7,P1\n");
    assertEquals(
        List.of("the mark is in jobs/mill-lean-to.yaml, line 7, column 7 as well"),
        sample.faults(dir.resolve("two")).stream().map(Fault::wrong).toList());
  }

  @Test
  void aTableWithAJobColumnHoldsSeveralJobs() throws IOException {
    OrderInput input =
        SampleFolder.sound()
            .put(
                "jobs/week.csv",
                "Job;Material;Length;Qty;Due\nharbour;angle-2x2;4'-6;3;2026-12-01\n"
                    + "quay;angle-2x2;5'-0\";2;\nmill-lean-to;angle-2x2;6';1;2026-12-04\n")
            .read(dir);
    assertEquals(
        List.of("harbour", "mill-lean-to", "ferry-canopy", "quay"),
        input.wantedJobs().stream().map(job -> job.name()).toList());
    assertEquals(List.of("ferry-canopy", "harbour", "quay"), input.takenAsFirm());
  }

  @Test
  void anOrderFilePointsToShopAndJobsElsewhereAndChooses() throws IOException {
    SampleFolder sample = SampleFolder.sound();
    Path root = dir.resolve("root");
    sample.write(root.resolve("shop"));
    Files.move(root.resolve("shop/jobs"), root.resolve("jobs"));
    Path order = Files.createDirectories(root.resolve("orders/week-49"));
    Files.writeString(
        order.resolve("order.yaml"),
        "shop: ../../shop\njobs: ../../jobs\ndue-until: 2026-12-05\nwithout: [chapel-barn]\n");
    var sound = (FolderReading.Sound) OrderFolder.read(order, JobChoice.firm());
    assertEquals(List.of("mill-lean-to"), List.copyOf(sound.input().wanted()));
    assertEquals(
        List.of(
            new LeftOut("chapel-barn", Reason.HELD_BACK),
            new LeftOut("ferry-canopy", Reason.DUE_LATER)),
        sound.input().leftOut());
    assertTrue(sound.input().digests().containsKey("../../shop/shop.yaml"));
    Files.writeString(order.resolve("order.yaml"), "shop: ../shop\nwithout: [capel-barn]\n");
    var faulty = (FolderReading.Faulty) OrderFolder.read(order, JobChoice.firm());
    assertEquals("there is no such folder", faulty.faults().get(0).wrong());
  }

  @Test
  void whatIsNotPlannedYetIsRefusedOnlyWhereItIsWanted() throws IOException {
    SampleFolder sample =
        SampleFolder.sound()
            .replace("jobs/chapel-barn.yaml", "status: bid", "status: bid\nroofs: {rib: [1]}");
    sample.read(dir);
    JobChoice bids = JobChoice.of(EnumSet.of(JobStatus.BID));
    var faulty = (FolderReading.Faulty) OrderFolder.read(dir, bids);
    assertEquals(
        List.of("this version does not plan roofs yet (job chapel-barn)"),
        faulty.faults().stream().map(Fault::wrong).toList());
    var unknown =
        (FolderReading.Faulty) OrderFolder.read(dir, JobChoice.firm().only(List.of("mill-leanto")));
    assertEquals("Did you mean mill-lean-to?", unknown.faults().get(0).remedy());
  }

  @Test
  void linesForUnknownMaterialsAreListedAndNotFatal() throws IOException {
    OrderInput input =
        SampleFolder.sound()
            .put("rack.csv", "id,material,length\nR1,tube-2x2-14g,9'\n,,\n")
            .read(dir);
    assertEquals(
        List.of(
            "rack.csv, line 2, material: the shop has no material tube-2x2-14g; did you mean"
                + " tube-2x2-14ga?"),
        input.notes().stream()
            .filter(note -> note.kind() == Note.Kind.NOT_USED)
            .map(Note::print)
            .toList());
    assertEquals(1, input.otherStock().rack().size());
  }

  @Test
  void oddEncodingsAreReadWhenTheyAreMarkedAndRefusedWhenTheyMustBeGuessed() throws IOException {
    SampleFolder sample = SampleFolder.sound();
    String csv = "material,length,qty\r\ndrip-trim-grey,8'-4½\",6\r\n";
    Path file = sample.write(dir).resolve(CSV);
    for (String marked : List.of("\ufeff" + csv, csv)) {
      Files.writeString(file, marked, StandardCharsets.UTF_8);
      assertTrue(OrderFolder.read(dir, JobChoice.firm()) instanceof FolderReading.Sound);
    }
    Files.writeString(file, csv.replace(',', '\t'), StandardCharsets.UTF_16);
    assertTrue(OrderFolder.read(dir, JobChoice.firm()) instanceof FolderReading.Sound);
    for (Charset charset : List.of(Charset.forName("windows-1252"), StandardCharsets.UTF_16LE)) {
      Files.writeString(file, csv, charset);
      var faulty = (FolderReading.Faulty) OrderFolder.read(dir, JobChoice.firm());
      assertEquals(1, faulty.faults().size());
      assertEquals(CSV, faulty.faults().get(0).place().file());
      assertTrue(faulty.faults().get(0).remedy().contains("UTF-8"));
    }
  }

  @Test
  void whatIsNoFolderOrNoFileIsSaid() throws IOException {
    assertEquals("there is no such folder", only(dir.resolve("nowhere")).wrong());
    Path file = Files.writeString(dir.resolve("file"), "x");
    assertEquals("not a folder", only(file).wrong());
    SampleFolder.sound().write(dir.resolve("loop"));
    Path rack = dir.resolve("loop/rack.csv");
    Files.delete(rack);
    Files.createSymbolicLink(rack, rack.getFileName());
    assertEquals("rack.csv", only(dir.resolve("loop")).place().file());
    Files.delete(rack);
    Files.writeString(rack, "");
    assertEquals("the file is empty", only(dir.resolve("loop")).wrong());
    Files.writeString(rack, "id,material,length\n");
    Files.writeString(dir.resolve("loop/jobs/list.xlsx"), "PK");
    assertEquals("a workbook, and no CSV of that name", only(dir.resolve("loop")).wrong());
  }

  private static Fault only(Path folder) {
    List<Fault> faults =
        ((FolderReading.Faulty) OrderFolder.read(folder, JobChoice.firm())).faults();
    assertEquals(1, faults.size(), Fault.print(faults));
    return faults.get(0);
  }
}
