package lapwright.paperwork;

import static lapwright.OrderMaker.butt;
import static lapwright.OrderMaker.lap;
import static lapwright.OrderMaker.length;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import lapwright.OrderMaker;
import lapwright.check.CheckedPlan;
import lapwright.compare.Comparisons;
import lapwright.measure.Length;
import lapwright.paperwork.LayoutPaper.Alike;
import lapwright.paperwork.LayoutPaper.Kind;
import lapwright.paperwork.LayoutPaper.Laid;
import lapwright.paperwork.LayoutPaper.Meeting;
import lapwright.paperwork.LayoutPaper.RunLayout;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Papers of orders with runs: how they are laid, what the jobs get and where it goes. */
final class LayoutPaperTest {
  private static LayoutPaper layout(OrderMaker order) {
    return LayoutPaper.of(List.of(PlannedPapers.plan(order.make())));
  }

  /** By hand: 36'-8" from 10'-2" at a lap of 2 in is three whole sticks and 6'-8". */
  @Test
  void lappedLineIsLaidFromItsStart() {
    RunLayout run =
        layout(
                new OrderMaker("trim")
                    .millEndsGood()
                    .offer("10'-2\"", "14.20")
                    .run("quay", "T1", 2, "36'-8\"", lap("2\"", "2'")))
            .runs()
            .get(0);
    assertEquals(1, run.groups().size(), "both lines are alike");
    Alike lines = run.groups().get(0);
    assertEquals(List.of(1, 2), lines.lines());
    assertEquals(
        List.of(length("10'-2\""), length("10'-2\""), length("10'-2\""), length("6'-8\"")),
        lines.pieces().stream().map(Laid::length).toList());
    assertEquals(
        List.of(length("0"), length("10'"), length("20'"), length("30'")),
        lines.pieces().stream().map(Laid::start).toList());
    assertEquals(length("36'-8\""), lines.end());
    assertEquals(new Meeting(Kind.LAP, length("10'-1\""), length("2\"")), lines.joints().get(0));
    assertEquals("T1/2.4", run.pieceMark(2, lines.pieces().get(3)));
    assertTrue(lines.pieces().get(3).closing());
  }

  /** Joints over posts at 12' and 24' only; two 12' pieces do not come from 24' without a gap. */
  @Test
  void buttJointsStandOnTheirBearings() {
    RunLayout run =
        layout(
                new OrderMaker("cee")
                    .saw("3/32\"", "0", "0")
                    .millEndsGood()
                    .offer("24'", "20.60")
                    .run(
                        "barn",
                        "U1",
                        2,
                        "36'",
                        butt("1/8\"").at(new JointPlaces.Bearings(length("0"), length("12'")))))
            .runs()
            .get(0);
    for (Alike group : run.groups()) {
      for (Meeting joint : group.joints()) {
        assertEquals(Kind.BUTT, joint.kind());
        assertTrue(
            Set.of(length("12'"), length("24'")).contains(joint.at()), joint.at().toString());
        assertTrue(!joint.width().isLongerThan(length("1/8\"")));
      }
    }
  }

  /** Three pieces of 8' from 24' share two cuts: every line is laid alike, to the unit. */
  @Test
  void piecesThatShareWhatTheirStickSparesStayEqual() {
    RunLayout run =
        layout(
                new OrderMaker("cee")
                    .saw("1/16\"", "0", "0")
                    .millEndsGood()
                    .offer("24'", "98.40")
                    .run(
                        "shed",
                        "U1",
                        12,
                        "40'",
                        butt("1/8\"")
                            .at(new JointPlaces.Bearings(length("8'"), length("8'")))
                            .with(new JointRules.JointCount.BeyondFewest(1))))
            .runs()
            .get(0);
    assertEquals(1, run.groups().size());
  }

  @Test
  void expansionGapsAreToldApartFromJoints() {
    RunLayout run =
        layout(
                new OrderMaker("gutter")
                    .millEndsGood()
                    .offer("10'", "10.00")
                    .run(
                        "barn",
                        "G1",
                        1,
                        "100'",
                        lap("4\"", "12\"")
                            .expanding(new JointRules.Expansion(length("40'"), length("1\"")))))
            .runs()
            .get(0);
    List<Meeting> gaps =
        run.groups().get(0).joints().stream()
            .filter(joint -> joint.kind() == Kind.EXPANSION_GAP)
            .toList();
    assertEquals(2, gaps.size());
    assertEquals(length("33'-4\""), gaps.get(0).at());
    assertEquals(length("1\""), gaps.get(1).width());
    assertEquals(
        3, run.groups().get(0).pieces().stream().filter(Laid::closing).count(), "one a stretch");
  }

  /** What is left long is cut off on the building: the gap is as wide as the drawings say. */
  @Test
  void gapIsToldWithoutWhatTheClosingPieceIsLeftLong() {
    for (JointRules.Where where : List.of(JointRules.Where.START, JointRules.Where.END)) {
      JointRules rules =
          lap("4\"", "12\"")
              .expanding(new JointRules.Expansion(length("40'"), length("1\"")))
              .with(new JointRules.ClosingPiece(where, false, length("2\"")));
      List<Meeting> gaps =
          layout(
                  new OrderMaker("gutter")
                      .millEndsGood()
                      .offer("10'", "10.00")
                      .run("barn", "G1", 1, "100'", rules))
              .runs()
              .get(0)
              .groups()
              .get(0)
              .joints()
              .stream()
              .filter(joint -> joint.kind() == Kind.EXPANSION_GAP)
              .toList();
      assertEquals(2, gaps.size());
      assertEquals(length("33'-4\""), gaps.get(0).at());
      assertEquals(length("1\""), gaps.get(0).width());
      assertEquals(length("1\""), gaps.get(1).width());
    }
  }

  @Test
  void orderOfRunsOnlyNamesItsJobs() {
    CheckedPlan plan =
        PlannedPapers.plan(
            new OrderMaker("trim")
                .millEndsGood()
                .offer("10'", "10.00")
                .run("quay", "T1", 1, "15'", lap("2\"", "12\""))
                .make());
    assertEquals(List.of("quay"), OrderPaper.of(plan, Comparisons.NONE, OrderFacts.NONE).jobs());
    assertEquals(
        2,
        TicketPaper.of(plan).jobs().get(0).lines().stream()
            .mapToInt(TicketPaper.PieceLine::qty)
            .sum());
  }

  /** Two jobs with runs and pieces, from one or two stock lengths. */
  private static OrderMaker random(long seed) {
    Random random = new Random(seed);
    OrderMaker order = new OrderMaker("stuff").keep("24\"").millEndsGood().offer("10'", "10.00");
    order.saw(random.nextBoolean() ? "0" : "1/8\"", "0", "0");
    if (random.nextBoolean()) {
      order.offer("12'-2\"", "11.90");
    }
    for (int r = 0; r < 1 + random.nextInt(4); r++) {
      Length length = Length.ofSixteenths(16 * 40 + random.nextInt(16 * 400));
      JointRules rules =
          random.nextBoolean() ? lap((1 + random.nextInt(4)) + "\"", "12\"") : butt("1/4\"");
      order.run(
          "job" + random.nextInt(2),
          null,
          1 + random.nextInt(2),
          "T" + r,
          1 + random.nextInt(3),
          length,
          rules);
    }
    if (random.nextBoolean()) {
      order.need("job0", "P1", 1 + random.nextInt(5), "3'-1\"");
    }
    return order;
  }

  @Property(tries = 60, seed = "20261125")
  void everyPieceOfALineComesFromTheTicketThatBearsItsMark(@ForAll long seed) {
    CheckedPlan checked = PlannedPapers.plan(random(seed).make());
    MaterialPlan plan = checked.plan().materials().get(0);
    Map<String, Length> cutOn = new HashMap<>();
    for (Pattern pattern : plan.patterns()) {
      for (Cut cut : pattern.cuts()) {
        cutOn.put(pattern.ticket() + " " + cut.job() + " " + cut.mark(), cut.length());
      }
    }
    Set<String> laid = new HashSet<>();
    for (RunLayout run : LayoutPaper.of(List.of(checked)).runs()) {
      Length covered = run.run().length();
      for (Alike group : run.groups()) {
        assertEquals(Length.ZERO, group.start());
        assertEquals(covered, group.end());
        for (Laid piece : group.pieces()) {
          piece
              .from()
              .forEach(
                  from ->
                      from.lines()
                          .forEach(
                              line -> {
                                String name = run.job() + " " + run.pieceMark(line, piece);
                                assertEquals(piece.length(), cutOn.get(from.ticket() + " " + name));
                                assertTrue(laid.add(name), name);
                              }));
        }
      }
    }
    assertEquals(plan.runs().stream().mapToInt(line -> line.pieces().size()).sum(), laid.size());
  }

  @Property(tries = 60, seed = "20261126")
  void jobsGetAllPiecesAndTheirAccountAddsUp(@ForAll long seed) {
    CheckedPlan checked = PlannedPapers.plan(random(seed).make());
    TicketPaper tickets = TicketPaper.of(checked);
    assertEquals(
        tickets.pieces(),
        tickets.jobs().stream()
            .flatMap(job -> job.lines().stream())
            .mapToInt(TicketPaper.PieceLine::qty)
            .sum());
    WastePaper waste = WastePaper.of(checked);
    Account total = waste.total();
    JobShare all = waste.jobs().stream().reduce(JobShare::plus).orElseThrow();
    assertEquals(total.finished(), all.finished());
    assertEquals(total.laps(), all.laps());
    assertEquals(total.scrap(), all.scrap());
    assertEquals(total.drawn(), all.used().plus(total.offcutsKept()));
    FactorCauses causes = FactorCauses.of(waste.bought(), total);
    assertEquals(
        causes.cut().hundredths(),
        causes.finished().hundredths()
            + causes.laps().hundredths()
            + causes.offcutsKept().hundredths()
            + causes.kerf().hundredths()
            + causes.endTrim().hundredths()
            + causes.scrap().hundredths());
  }
}
