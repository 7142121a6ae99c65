package lapwright.files.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import lapwright.files.SampleFolder;
import lapwright.files.source.Fault;
import lapwright.measure.Length;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;
import lapwright.shop.MaterialOrder;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Runs in job files and kits: what is read, and what is said of each slip. */
final class RunsTest {
  private static final String JOB = "jobs/boat-cover.yaml";
  private static final String EAVE =
      "{ mark: T1, length: 36'-8\", qty: 2, joint: lap, lap: 2\", shortest-piece: 2' }";

  @TempDir Path dir;

  private static SampleFolder with(String run) {
    return SampleFolder.sound()
        .put(JOB, "job: boat-cover\nstatus: firm\nruns:\n  drip-trim-grey:\n    - " + run + "\n");
  }

  private List<Run> runs(SampleFolder folder) throws IOException {
    return folder.read(dir).materialOrders().stream()
        .flatMap(order -> order.runs().stream())
        .map(need -> need.run())
        .toList();
  }

  private static Length inches(int inches) {
    return Length.ofInches(inches);
  }

  @Test
  void readsWhatIsLeftOutAsTheLeastOfIt() throws IOException {
    assertEquals(
        List.of(
            new Run(
                "drip-trim-grey",
                "T1",
                inches(440),
                2,
                Length.ZERO,
                Length.ZERO,
                JointRules.of(new Joint.Lap(inches(2)), Length.ofUnits(inches(1).units() / 16))
                    .with(
                        new JointRules.Pieces(
                            inches(24), null, null, Length.ofUnits(inches(1).units() / 16))),
                "")),
        runs(with(EAVE)));
  }

  @Test
  void readsEveryField() throws IOException {
    Run run =
        runs(with(
                """
                    mark: T7
                          length: 100'
                          qty: 3
                          for: eave
                          add-at-start: 3"
                          add-at-end: 4"
                          joint: butt
                          butt-gap: 1/8"
                          bearings: { first: 4', spacing: 8' }
                          shortest-piece: 2'
                          shortest-at-end: 1'
                          longest-piece: 10'
                          step: 1/2"
                          closing: either
                          full-sticks: no
                          leave-long: 1"
                          extra-joints: 1
                          longest-unbroken: 40'
                          gap: 1/2"
                    """
                    .strip()))
            .get(0);
    assertEquals(inches(1200), run.length());
    assertEquals(3, run.qty());
    assertEquals("eave", run.purpose());
    assertEquals(inches(3), run.addAtStart());
    assertEquals(inches(4), run.addAtEnd());
    JointRules rules = run.rules();
    assertEquals(new Joint.Butt(Length.ofUnits(inches(1).units() / 8)), rules.joint());
    assertEquals(new JointPlaces.Bearings(inches(48), inches(96)), rules.places());
    assertEquals(
        new JointRules.Pieces(
            inches(24), inches(12), inches(120), Length.ofUnits(inches(1).units() / 2)),
        rules.pieces());
    assertEquals(new JointCount.BeyondFewest(1), rules.count());
    assertEquals(new ClosingPiece(Where.EITHER, false, inches(1)), rules.closing());
    assertEquals(
        new JointRules.Expansion(inches(480), Length.ofUnits(inches(1).units() / 2)),
        rules.expansion());
  }

  @Test
  void readsGivenPlacesFullSticksAndAGreatestNumberOfJoints() throws IOException {
    Run run =
        runs(with(
                "{ mark: T2, length: 24', qty: 1, joint: butt, joints-at: [10'-2\", 20'],"
                    + " most-joints: 2, closing: start }"))
            .get(0);
    assertEquals(new JointPlaces.At(List.of(inches(122), inches(240))), run.rules().places());
    assertEquals(new JointCount.AtMost(2), run.rules().count());
    assertEquals(Where.START, run.rules().closing().where());
    Run whole =
        runs(with("{ mark: T2, length: 24', qty: 1, joint: lap, lap: 2\", full-sticks: yes }"))
            .get(0);
    assertTrue(whole.rules().closing().othersWhole());
    Run apart =
        runs(with("{ mark: T2, length: 24', qty: 2, joint: lap, lap: 2\", stagger: 1' }")).get(0);
    assertEquals(inches(12), apart.rules().stagger());
  }

  @Test
  void aShopInMillimetresCutsRunsToTheMillimetre() throws IOException {
    SampleFolder metric = with(EAVE).replace("shop.yaml", "units: ft-in", "units: mm");
    assertEquals(Length.ofMm(1), runs(metric).get(0).rules().pieces().step());
  }

  @Test
  void noPieceOfARunIsShorterThanItsSawCuts() throws IOException {
    SampleFolder sawn =
        with(EAVE)
            .replace("shop.yaml", "snips: { kerf: 0 }", "snips: { kerf: 0, shortest-cut: 30\" }");
    assertEquals(inches(30), runs(sawn).get(0).rules().pieces().shortest());
  }

  @Test
  void theSameRunTwiceAddsUp() throws IOException {
    assertEquals(4, runs(with(EAVE + "\n    - " + EAVE)).get(0).qty());
  }

  @Test
  void aKitGivesItsRunsAsOftenAsTheJobSaysWithItsPrefixAndTheChanges() throws IOException {
    SampleFolder folder =
        SampleFolder.sound()
            .put(
                "kits/lean-to.yaml",
                "runs:\n  drip-trim-grey:\n    - "
                    + EAVE
                    + "\n    - { mark: T2, length: 20', qty: 1, joint: butt }\n")
            .put(
                JOB,
                """
                status: firm
                kits:
                  - { kit: lean-to, times: 3, prefix: N- }
                  - lean-to
                change: { N-T2: 5, T1: dropped }
                """);
    assertEquals(
        List.of("N-T1 x 6", "N-T2 x 5", "T2 x 1"),
        runs(folder).stream().map(run -> run.mark() + " x " + run.qty()).toList());
  }

  @Test
  void oneLotIsReadForEachMaterial() throws IOException {
    for (OneLotPer within : OneLotPer.values()) {
      SampleFolder folder =
          with(EAVE)
              .replace(
                  "materials.yaml",
                  "    saw: snips",
                  "    saw: snips\n    one-lot-per: " + within.word());
      MaterialOrder order =
          folder.read(dir).materialOrders().stream()
              .filter(one -> one.material().id().equals("drip-trim-grey"))
              .findFirst()
              .orElseThrow();
      assertEquals(within, order.material().oneLotPer());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "length: 36'-8\"|lenght: 36'-8\"|missing;unknown field",
        "lap: 2\",||missing",
        "lap: 2\"|lap: 0|a length of 0",
        "joint: lap,||missing",
        "joint: lap|joint: weld|not one of butt, lap",
        "joint: lap|joint: butt|a lap, and its pieces butt",
        "lap: 2\"|lap: 2\", butt-gap: 1/8\"|a gap, and its pieces lap",
        "mark: T1,||missing",
        "mark: T1|mark: -|no mark",
        "qty: 2,||missing",
        "qty: 2|qty: 0|less than 1",
        "qty: 2|qty: 2, joints-at: [9', 18', 16']|not after the place before it",
        "qty: 2|qty: 2, joints-at: 9'|not a list",
        "qty: 2|qty: 2, joints-at: [9'], bearings: { first: 0, spacing: 4' }|joints-at tells already where it may be joined",
        "qty: 2|qty: 2, bearings: { first: 0 }|missing",
        "qty: 2|qty: 2, bearings: { first: 0, spacing: 1/16\" }|more than 500 bearings in one line",
        "qty: 2|qty: 2, bearings: { first: 0, every: 4' }|missing;unknown field",
        "qty: 2|qty: 2, extra-joints: 1, most-joints: 5|most-joints tells already how many joints there may be",
        "qty: 2|qty: 2, gap: 1/2\"|missing",
        "qty: 2|qty: 2, longest-unbroken: 20'|missing",
        "qty: 2|qty: 2, longest-piece: 1'|shorter than the shortest piece",
        "qty: 2|qty: 2, closing: left|not one of end, start, either",
        "qty: 2|qty: 2, full-sticks: maybe|not one of yes, no",
        "  drip-trim-grey:|  drip-trim-gray:|the shop's materials.yaml has no such material",
      })
  void tellsEachSlipAtItsPlace(String text, String by, String wrong) throws IOException {
    List<Fault> faults = with(EAVE).replace(JOB, text, by == null ? "" : by).faults(dir);
    assertEquals(
        wrong,
        faults.stream().map(Fault::wrong).collect(Collectors.joining(";")),
        faults::toString);
    faults.forEach(fault -> assertEquals(JOB, fault.place().file()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // 10'-2" sticks: joined at 12' a piece of 12'-1" is needed
        "qty: 2|qty: 2, joints-at: [12', 24']|joints-at|Add a place between, or offer sticks that give 12'-9\".",
        // 440" takes 4 sticks: 3 joints
        "qty: 2|qty: 2, most-joints: 2|most-joints|Make most-joints 3.",
        // 440" + 3 x 2" in four pieces: 111-1/2" each
        "shortest-piece: 2'|shortest-piece: 9'-4\"|shortest-piece|Allow pieces of 9'-3-1/2\".",
        // 8'-8" are left beyond 28', and half of the lap
        "shortest-piece: 2'|shortest-piece: 9', joints-at: [9', 18', 28']|shortest-piece|Allow pieces of 8'-9\".",
        "qty: 2|qty: 2, shortest-at-end: 9'-2\", joints-at: [9', 18', 27']|shortest-at-end|Allow pieces of 9'-1\" at the ends.",
        // joined at 9' and 18': 9'-2" between them, with both halves of the lap
        "shortest-piece: 2'|longest-piece: 9', joints-at: [9', 18', 27']|longest-piece|Allow pieces of 9'-9\".",
        // no whole stick of 10'-2" ends one inch beyond 9'
        "qty: 2|qty: 2, full-sticks: yes, joints-at: [9', 18', 27']|full-sticks|Leave full-sticks out, or add places where it may be joined.",
        // 9'-8" + 1" of the last lap leaves 5" of 10'-2"
        "qty: 2|qty: 2, leave-long: 1', joints-at: [9', 18', 27']|leave-long|Leave it no more than 5\" long.",
        "lap: 2\"|lap: 11'|lap|Make the lap shorter than 10'-2\".",
        "qty: 2|qty: 2, longest-unbroken: 10', gap: 15'|gap|Make gap less than 7'-4\".",
      })
  void tellsTheRuleThatNoSplitKeepsAndTheNearestChange(
      String text, String by, String rule, String remedy) throws IOException {
    List<Fault> faults = with(EAVE).replace(JOB, text, by).faults(dir);
    assertEquals(1, faults.size(), faults::toString);
    Fault fault = faults.get(0);
    assertTrue(fault.wrong().startsWith("run T1 of boat-cover: "), fault::toString);
    assertEquals("runs > drip-trim-grey > 1 > " + rule, fault.field());
    assertEquals(5, fault.place().line());
    assertEquals(remedy, fault.remedy());
  }

  @Test
  void aMarkBelongsToOneKind() throws IOException {
    List<Fault> faults =
        with(EAVE + "\npieces:\n  angle-2x2:\n    - 2 @ 4' T1\n    - 1 @ 5' T1/2.3").faults(dir);
    assertEquals(
        "pieces and a run have that mark; the other is in jobs/boat-cover.yaml, line 8, column 7",
        faults.stream().map(Fault::wrong).collect(Collectors.joining(";")));
  }

  @Test
  void pieceOfAnotherKindIsNotCalledLikeAPieceOfARun() throws IOException {
    List<Fault> faults = with(EAVE + "\npieces:\n  angle-2x2:\n    - 1 @ 5' T1/2.3").faults(dir);
    assertEquals(
        List.of("the pieces of run T1 are called like that"),
        faults.stream().map(Fault::wrong).toList());
  }

  @Test
  void aRunWithoutAnyStockIsNoFaultOfItsFile() throws IOException {
    SampleFolder none =
        with(EAVE)
            .replace(
                "prices/marrowby.csv",
                "drip-trim-grey,10'-2\",14.20,each,1,,DT10,2026-11-27,2026-12-11\n",
                "");
    assertEquals(1, runs(none).size());
  }
}
