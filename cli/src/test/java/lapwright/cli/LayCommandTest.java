package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LayCommandTest {
  private static CommandRun lay(String options) {
    List<Object> args = new ArrayList<>();
    args.add("lay");
    args.addAll(List.of(options.split(" ", -1)));
    return CommandRun.of(args.toArray());
  }

  private static JsonNode json(String options) throws IOException {
    CommandRun run = lay(options + " --json");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    return new ObjectMapper().readTree(run.out());
  }

  /**
   * Pieces of one run are 1 where it is no longer than a stick, else (length - lap)/(stick - lap),
   * rounded up: derived by hand, as are these values of it.
   */
  @ParameterizedTest
  @CsvSource({
    "40ft, 10ft, 4in, 5",
    "40ft, 10ft-2in, 2in, 4",
    "40ft, 10ft-6in, 4in, 4",
    "614in, 10ft-6in, 4in, 5",
    "614-1/16in, 10ft-6in, 4in, 6",
    "200ft, 20ft, 24in, 11",
    "10ft, 10ft, 4in, 1"
  })
  void piecesOfOneRun(String length, String stick, String lap, int pieces) throws IOException {
    JsonNode run = json("--length " + length + " --stock " + stick + " --lap " + lap);
    assertEquals(pieces, run.get("lines").get(0).get("pieces").size());
    assertEquals(pieces, run.get("sticks").size());
    assertEquals("proved", run.get("proof").asText());
  }

  @Test
  void tellsFromWhichLengthOnItTakesAnotherPiece() throws IOException {
    JsonNode reach = json("--length 50ft --stock 10ft-6in --lap 4in").get("reach");
    assertEquals(5, reach.get("pieces").asInt());
    // 614 in and 492 in, exactly.
    assertEquals(0, reach.get("mostMm").decimalValue().compareTo(new BigDecimal("15595.6")));
    assertEquals(
        0, reach.get("onePieceLessMm").decimalValue().compareTo(new BigDecimal("12496.8")));
  }

  /**
   * Few runs from sticks of 2000 mm at a lap of 50 mm, no piece below 100 mm: proved by the length
   * bound, 2150, 3650, 4600 and 4100 mm of stick for a line.
   */
  @ParameterizedTest
  @CsvSource({"2, 2100, 3", "4, 2100, 5", "2, 3600, 4", "2, 4500, 5", "4, 4000, 9"})
  void fewRunsShareTheirSticks(int lines, int length, int sticks) throws IOException {
    JsonNode run =
        json(
            "--units mm --stock 2000mm --lap 50mm --shortest-piece 100mm --qty "
                + lines
                + " --length "
                + length
                + "mm");
    assertEquals(sticks, run.get("sticks").size());
    assertEquals("proved", run.get("proof").asText());
  }

  @Test
  void layoutSaysWhereEachPieceLies() {
    CommandRun run = lay("--length 40ft --stock 10ft --lap 4in");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertEquals(
        "40'-0\" takes 5 pieces, from 5 sticks of 10'-0\". Proved: no plan takes less",
        run.firstLine());
    assertTrue(run.out().contains("L/1.5   1'-4\"  38'-8\"  40'-0\""), run.out());
    assertTrue(run.out().contains("lap 4\", middle 9'-10\""), run.out());
    assertTrue(run.out().contains("1'-4\" in laps and 8'-8\" left. 4 joints"), run.out());
    assertTrue(run.out().contains("only as the engineered drawings say"), run.out());
    assertTrue(run.out().lines().count() <= 40, run.out());
  }

  /** Worked by hand: two halves of a 24 ft stick give half of the cut each to the gap. */
  @Test
  void purlinsButtOverPosts() throws IOException {
    String purlins = "--length 36ft --qty 5 --stock 24ft --kerf 3/32in --joints-at 12ft,24ft";
    assertEquals(8, json(purlins + " --butt-gap 1/8in").get("sticks").size());
    assertEquals(10, json(purlins + " --joint butt").get("sticks").size());
    assertEquals(
        8,
        json("--length 36ft --qty 5 --stock 24ft --kerf 3/32in --bearings 0,12ft --butt-gap 1/8in")
            .get("sticks")
            .size());
  }

  /** One gap an interval, one more where the last leg exceeds half of it: UFGS 07 60 00. */
  @Test
  void expansionGapsAsTheGuideSpecificationCountsThem() throws IOException {
    JsonNode joints =
        json("--length 100ft --stock 10ft --lap 4in --longest-unbroken 40ft --gap 1in")
            .get("lines")
            .get(0)
            .get("joints");
    int gaps = 0;
    for (JsonNode joint : joints) {
      gaps += joint.get("joint").asText().equals("expansion-gap") ? 1 : 0;
    }
    assertEquals(2, gaps);
  }

  @Test
  void everythingThatIsWrongIsToldAtOnce() {
    CommandRun run = lay("--length 40 --stock 10ft,x --lap 4in --bearings 4ft");
    assertEquals(ExitStatus.WRONG_USAGE, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().contains("command line, --length: 40"), run.err());
    assertTrue(run.err().contains("command line, --stock: x"), run.err());
    assertTrue(run.err().contains("command line, --bearings: 4ft"), run.err());
    assertTrue(run.err().contains("such as --bearings 0,8ft"), run.err());
    assertTrue(run.err().contains("Write 40ft for feet, 40in for inches or 40mm."), run.err());
    assertTrue(run.err().contains("3 faults."), run.err());
  }

  @Test
  void lapIsNeverGuessed() {
    CommandRun neither = lay("--length 40ft --stock 10ft");
    assertEquals(ExitStatus.WRONG_USAGE, neither.status());
    assertTrue(neither.err().contains("such as --lap 4in; or --joint butt"), neither.err());
    assertTrue(neither.err().contains("command line, --lap"), neither.err());
    CommandRun noLap = lay("--length 40ft --stock 10ft --joint lap");
    assertEquals(ExitStatus.WRONG_USAGE, noLap.status());
    assertTrue(
        noLap.err().contains("the lap that the drawings give, such as --lap 2in."), noLap.err());
  }

  @Test
  void ruleThatNoSplitKeepsIsToldWithTheNearestChange() {
    CommandRun run = lay("--length 40ft --stock 10ft --lap 4in --most-joints 2");
    assertEquals(ExitStatus.NO_PLAN, run.status());
    assertTrue(run.err().contains("make --most-joints 4"), run.err());
    CommandRun longLap = lay("--length 40ft --stock 2in --lap 4in");
    assertEquals(ExitStatus.NO_PLAN, longLap.status());
    assertTrue(
        longLap.err().replaceAll("\\s+", " ").contains("make the lap shorter than 2in"),
        longLap.err());
  }

  @Test
  void everyRuleOfARunIsAnOption() {
    CommandRun run =
        lay(
            "--length 41ft --qty 3 --mark T1 --stock 10ft,12ft-2in --lap 2in --shortest-piece 2ft"
                + " --shortest-at-end 1ft --longest-piece 12ft --step 1/8in --closing either"
                + " --leave-long 1in --extra-joints 1 --stagger 1ft --add-at-start 1in"
                + " --add-at-end 1in --kerf 1/16in --end-trim 1/2in --hold 3in --mill-ends bad"
                + " --short-by 1/4in --time 20");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.out().contains("T1/"), run.out());
    CommandRun full =
        lay("--length 41ft --stock 10ft --lap 2in --full-sticks --longest-unbroken 50ft --gap 0");
    assertEquals(ExitStatus.DONE, full.status(), full.err());
  }

  /** First what is always typed: the length, the sticks, the lap. */
  @Test
  void helpListsFirstWhatIsAlwaysTyped() {
    String help = lay("--help").out();
    List<Integer> at = new ArrayList<>();
    for (String option :
        List.of("--length=", "--stock=", "--lap=", "--qty=", "--step=", "--json")) {
      at.add(help.indexOf("\n      " + option));
    }
    assertEquals(at.stream().sorted().toList(), at, help);
    assertTrue(at.get(0) > 0, help);
  }

  @Test
  void whatIsWrongIsSaidOfOptions() {
    CommandRun run =
        lay(
            "--length 40ft --stock 10ft --lap 4in --joint butt --joints-at 8ft,4ft --gap 1in"
                + " --extra-joints 1 --most-joints 3 --short-by 12ft");
    assertEquals(ExitStatus.WRONG_USAGE, run.status());
    for (String said :
        List.of(
            "--lap\n    A lap, and its pieces butt.\n    Write --joint lap, or leave out the lap.",
            "--joints-at: 4ft",
            "such as --longest-unbroken 40ft, or leave out --gap.",
            "--extra-joints\n    --most-joints tells already",
            "Correct --short-by or --stock.")) {
      assertTrue(run.err().contains(said), said + "\n" + run.err());
    }
  }
}
