package lapwright;

import static lapwright.RunShop.butt;
import static lapwright.RunShop.coldSaw;
import static lapwright.RunShop.inches;
import static lapwright.RunShop.lap;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import lapwright.demand.RunDemand;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.RunLine;
import lapwright.problem.SpliceProblem;
import lapwright.shop.Ends;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;
import lapwright.shop.OneLotPer;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/**
 * Orders with runs, from order to checked plan. Every plan has passed the check. The answers were
 * worked out by hand.
 */
class RunOrdersTest {
  private static final JointPlaces OVER_POSTS =
      new JointPlaces.At(List.of(Length.ofFeet(12, 0), Length.ofFeet(24, 0)));

  /** Purlins over posts: five lines of 36', joints at 12' and 24' only, from 24' at $20.60. */
  static RunShop purlins(Length gap) {
    RunShop shop = new RunShop().offer("pellbrook", Length.ofFeet(24, 0), "20.60");
    shop.saw = coldSaw(Length.ZERO);
    return shop.run("A", "U1", 5, Length.ofFeet(36, 0), butt(gap).at(OVER_POSTS));
  }

  @Test
  void purlinsButtOverPostsWithinTheGapThatTheDrawingsAllow() {
    MaterialPlan plan = purlins(Length.ofSixteenths(2)).plan();
    assertEquals(1_648_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
    // Two halves of a 24' stick give half of the cut each: 11'-11-61/64".
    Length half = Length.ofUnits(Length.ofFeet(12, 0).units() - 3 * Length.UNITS_PER_SIXTY_FOURTH);
    for (RunLine line : plan.runs()) {
      for (RunLine.RunPiece piece : line.pieces()) {
        assertTrue(
            List.of(Length.ofFeet(24, 0), Length.ofFeet(12, 0), half).contains(piece.length()),
            piece.toString());
      }
    }
    long whole =
        plan.patterns().stream()
            .flatMap(pattern -> pattern.cuts().stream())
            .map(Cut::length)
            .filter(Length.ofFeet(24, 0)::equals)
            .count();
    assertEquals(5, whole);
  }

  @Test
  void withoutAGapTwoHalvesFailByTheWidthOfOneCut() {
    MaterialPlan plan = purlins(Length.ZERO).plan();
    assertEquals(2_060_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
  }

  @Test
  void withTrimmedEndsNoWholeStickReachesSoEachLineNeedsBothJoints() {
    RunShop shop = purlins(Length.ofSixteenths(2));
    shop.saw = coldSaw(Length.ofSixteenths(8));
    shop.millEndsGood = false;
    MaterialPlan plan = shop.plan();
    assertEquals(3_090_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
  }

  static RunShop trimOfTwoJobs() {
    RunShop shop =
        new RunShop()
            .offer("pellbrook", inches(122), "14.20")
            .offer("ostermoor", inches(144), "17.10");
    shop.supplies.add(new Supply.RackOffcut("R1", inches(122), Ends.SAWN, "", "last spring"));
    shop.supplies.add(new Supply.RackOffcut("R2", inches(60), Ends.SAWN, "", "last spring"));
    JointRules rules = lap(inches(2), inches(24));
    return shop.run("A", "E1", 2, inches(440), rules)
        .run("A", "K1", 4, inches(161), rules)
        .run("B", "E1", 2, inches(292), rules);
  }

  @Test
  void oneLotAJobChoosesTheMakerOfEachJobAndProvesIt() {
    RunShop shop = trimOfTwoJobs();
    shop.oneLotPer = OneLotPer.JOB;
    MaterialPlan plan = shop.plan();
    assertEquals(2_556_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
    assertEquals(18, plan.patterns().stream().mapToInt(Pattern::times).sum());
  }

  @Test
  void oneLotARunCostsNoMoreThanOneLotAJob() {
    RunShop shop = trimOfTwoJobs();
    shop.oneLotPer = OneLotPer.RUN;
    MaterialPlan plan = shop.plan();
    assertTrue(plan.cost() <= 2_556_000);
    assertEquals(Proof.PROVED, plan.proof());
  }

  @Test
  void mixedLotsWouldBeCheaper() {
    MaterialPlan plan = trimOfTwoJobs().plan();
    assertEquals(2_301_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
  }

  @Test
  void overlapsAreNoFinishedLength() {
    MaterialPlan plan = trimOfTwoJobs().plan();
    assertEquals(inches(2 * 440 + 4 * 161 + 2 * 292), plan.account().finished());
    assertEquals(inches(2 * (2 * 3 + 4 + 2 * 2)), plan.account().laps());
  }

  /** 41 ft of eave from 10'-6" at a lap of 4 in: (492 - 4)/(126 - 4) = 4 exactly. */
  @Test
  void closingPieceLeftLongTakesOneMoreStick() {
    JointRules rules = lap(inches(4), Length.ZERO);
    RunShop eave = new RunShop().offer("pellbrook", inches(126), "10.00");
    assertEquals(400_000, eave.run("A", "E1", 1, inches(492), rules).plan().cost());
    eave.runs.clear();
    ClosingPiece leftLong = new ClosingPiece(Where.END, false, inches(1));
    assertEquals(500_000, eave.run("A", "E1", 1, inches(492), rules.with(leftLong)).plan().cost());
  }

  /** (L - lap)/(S - lap), by hand: 610/122 is 5 exactly. */
  @Test
  void aSixteenthMoreThanTheSticksCoverTakesOneMore() {
    for (int more = 0; more < 2; more++) {
      RunShop shop = new RunShop().offer("pellbrook", inches(126), "10.00");
      Length length = Length.ofSixteenths(16 * 614 + more);
      MaterialPlan plan = shop.run("A", "E1", 1, length, lap(inches(4), Length.ZERO)).plan();
      assertEquals((5 + more) * 100_000, plan.cost());
      assertEquals(5 + more, plan.runs().get(0).pieces().size());
    }
  }

  @Test
  void jointsOfNeighbouringLinesKeepTheirDistance() {
    RunShop anywhere = new RunShop().offer("pellbrook", inches(120), "10.00");
    anywhere.run("A", "T1", 4, inches(300), lap(inches(4), inches(12)).staggered(inches(30)));
    assertEquals(4, anywhere.plan().runs().size());
    RunShop overPosts = purlins(Length.ofSixteenths(2));
    overPosts.runs.clear();
    overPosts.run(
        "A",
        "U1",
        5,
        Length.ofFeet(36, 0),
        butt(Length.ofSixteenths(2)).at(OVER_POSTS).staggered(Length.ofFeet(10, 0)));
    assertEquals(1_648_000, overPosts.plan().cost());
  }

  /** The piece itself is in the vise: its offcut, which is kept, may be shorter than the hold. */
  @Test
  void pieceThatIsHeldGivesNothingToAnOffcutShorterThanTheHold() {
    RunShop shop = new RunShop().offer("pellbrook", Length.ofFeet(20, 0), "20.00");
    shop.saw = new Saw("saw", Length.ofUnits(38_100), Length.ZERO, inches(122), null);
    shop.run(
        "A",
        "U1",
        2,
        Length.ofFeet(36, 0),
        butt(Length.ofSixteenths(2))
            .at(new JointPlaces.Bearings(Length.ofFeet(4, 0), Length.ofFeet(8, 0))));
    assertEquals(800_000, shop.plan().cost());
  }

  @Test
  void longRunIsInterruptedSoThatItCanExpand() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "10.00");
    JointRules rules =
        lap(inches(4), inches(12))
            .expanding(new JointRules.Expansion(Length.ofFeet(40, 0), inches(1)));
    MaterialPlan plan = shop.run("A", "G1", 2, Length.ofFeet(100, 0), rules).plan();
    assertEquals(2 * 3, plan.runs().size());
    Length gap =
        plan.runs()
            .get(1)
            .pieces()
            .get(0)
            .start()
            .minus(plan.runs().get(0).pieces().get(plan.runs().get(0).pieces().size() - 1).end());
    assertEquals(inches(1), gap);
  }

  @Test
  void wholeSticksButForTheClosingPiece() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "10.00");
    JointRules rules =
        lap(inches(4), inches(12)).with(new ClosingPiece(Where.START, true, Length.ZERO));
    RunLine line = shop.run("A", "T1", 1, inches(300), rules).plan().runs().get(0);
    assertEquals(inches(120), line.pieces().get(1).length());
    assertEquals(inches(120), line.pieces().get(2).length());
    assertEquals(inches(300 + 8 - 240), line.pieces().get(0).length());
  }

  @Test
  void tooFewJointsAreRefusedWithTheNumberThatWouldDo() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "10.00");
    shop.run("A", "T1", 1, inches(300), lap(inches(4), inches(12)).with(new JointCount.AtMost(1)));
    PlanResult.Impossible impossible = assertInstanceOf(PlanResult.Impossible.class, shop.result());
    Shortage.NoSplit run = assertInstanceOf(Shortage.NoSplit.class, impossible.shortages().get(0));
    assertEquals("most-joints", run.rule());
    assertEquals("make most-joints 2", run.advice());
  }

  /** Three lines of 25' fill 7.5 sticks of 10', and 4 can be had: 4 more, not 3. */
  @Test
  void stockThatIsShortOfRunsIsToldInSticks() {
    RunShop shop = new RunShop();
    shop.supplies.add(
        new Supply.Offer(
            "pellbrook",
            inches(120),
            new Price(new BigDecimal("10.00"), Price.Per.EACH),
            1,
            4,
            "",
            null,
            null));
    shop.run("A", "T1", 3, inches(300), lap(Length.ZERO, Length.ZERO));
    PlanResult.Impossible impossible = assertInstanceOf(PlanResult.Impossible.class, shop.result());
    assertEquals(
        List.of(new Shortage.TooFewSticks("stuff", inches(120), 4, true)), impossible.shortages());
  }

  @Test
  void shortestPieceThatNoSplitKeepsIsRefusedWithTheLengthThatWouldDo() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "10.00");
    shop.run("A", "T1", 1, inches(130), lap(Length.ZERO, inches(100)));
    PlanResult.Impossible impossible = assertInstanceOf(PlanResult.Impossible.class, shop.result());
    Shortage.NoSplit run = assertInstanceOf(Shortage.NoSplit.class, impossible.shortages().get(0));
    assertEquals(inches(65), run.length());
  }

  @Test
  void staggerThatNoTwoSplitsKeepIsRefusedWithTheOneThatWouldDo() {
    RunShop shop = purlins(Length.ofSixteenths(2));
    shop.runs.clear();
    shop.run(
        "A",
        "U1",
        2,
        Length.ofFeet(36, 0),
        butt(Length.ofSixteenths(2)).at(OVER_POSTS).staggered(Length.ofFeet(13, 0)));
    PlanResult.Impossible impossible = assertInstanceOf(PlanResult.Impossible.class, shop.result());
    Shortage.NoSplit run = assertInstanceOf(Shortage.NoSplit.class, impossible.shortages().get(0));
    assertEquals("stagger", run.rule());
    assertEquals(Length.ofFeet(12, 0), run.length());
  }

  /** One line of three pieces and one of four: joints at 10, 20 and at 5, 15, 25 ft would do. */
  @Test
  void linesOfDifferentNumbersOfPiecesKeepTheirJointsApart() {
    RunShop shop = new RunShop().offer("pellbrook", inches(122), "18.00");
    shop.run(
        "A",
        "E1",
        2,
        inches(358),
        lap(inches(2), inches(24)).with(new JointCount.BeyondFewest(1)).staggered(inches(12)));
    assertEquals(2, shop.plan().runs().size());
  }

  /** Sticks give back what they can spare of a gap, which moves the middle of a joint. */
  @Test
  void jointsThatMayMoveArePlannedFartherApart() {
    Length stagger = inches(12);
    Length gap = Length.ofSixteenths(2);
    RunShop shop = new RunShop().offer("pellbrook", inches(240), "20.00");
    JointRules rules = butt(gap).staggered(stagger);
    shop.run("A", "U1", 4, inches(553), rules).run("A", "U2", 4, inches(432), rules.at(OVER_POSTS));
    List<Long> apart =
        RunDemand.of(shop.order()).problem().groups().stream()
            .map(SpliceProblem.Group::apart)
            .toList();
    assertEquals(List.of(stagger.units() + gap.units() / 2 + 1, stagger.units()), apart);
  }
}
