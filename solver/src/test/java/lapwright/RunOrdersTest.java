package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.RunLine;
import lapwright.shop.Ends;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** Orders with runs, from order to checked plan. The answers were worked out by hand. */
class RunOrdersTest {
  private static final Length STEP = Length.ofSixteenths(1);

  private final List<Supply> supplies = new ArrayList<>();
  private final List<RunNeed> runs = new ArrayList<>();
  private Saw saw = new Saw("snips", Length.ZERO, Length.ZERO, Length.ZERO, null);
  private boolean millEndsGood = true;
  private OneLotPer oneLotPer = OneLotPer.NONE;

  private static Length inches(long inches) {
    return Length.ofInches(inches);
  }

  private void offer(String supplier, Length length, String price) {
    supplies.add(
        new Supply.Offer(
            supplier,
            length,
            new Price(new BigDecimal(price), Price.Per.EACH),
            1,
            Integer.MAX_VALUE,
            "",
            null,
            null));
  }

  private void run(String job, String mark, int qty, Length length, JointRules rules) {
    runs.add(
        new RunNeed(
            job,
            null,
            1,
            new Run("stuff", mark, length, qty, Length.ZERO, Length.ZERO, rules, "")));
  }

  private MaterialOrder order() {
    Material material =
        new Material(
            "stuff", "stuff", saw.id(), millEndsGood, Length.ZERO, inches(24), null, oneLotPer);
    return new MaterialOrder(material, saw, true, supplies, List.of(), runs);
  }

  private MaterialPlan plan() {
    AtomicInteger names = new AtomicInteger();
    PlanResult result =
        new Planner(() -> "N" + names.incrementAndGet(), 1)
            .plan(
                new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, true),
                List.of(order()),
                Map.of(),
                Effort.unlimited());
    CheckedPlan checked = ((PlanResult.Planned) result).plan();
    return checked.plan().materials().get(0);
  }

  private static JointRules butt(Length gap) {
    return JointRules.of(new Joint.Butt(gap), STEP);
  }

  private static JointRules lap(Length lap, Length shortest) {
    return JointRules.of(new Joint.Lap(lap), STEP)
        .with(new JointRules.Pieces(shortest, null, null, STEP));
  }

  /** Purlins over posts: five lines of 36', joints at 12' and 24' only, from 24' at $20.60. */
  private void purlins(Length gap) {
    offer("pellbrook", Length.ofFeet(24, 0), "20.60");
    JointPlaces places = new JointPlaces.At(List.of(Length.ofFeet(12, 0), Length.ofFeet(24, 0)));
    run("A", "U1", 5, Length.ofFeet(36, 0), butt(gap).at(places));
  }

  @Test
  void purlinsButtOverPostsWithinTheGapThatTheDrawingsAllow() {
    saw = new Saw("cold-saw", Length.ofUnits(38_100), Length.ZERO, Length.ZERO, null);
    purlins(Length.ofSixteenths(2));
    MaterialPlan plan = plan();
    assertEquals(1_648_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
    // Two halves of a 24' stick give half of the cut each: 11'-11-61/64".
    Length half = Length.ofUnits(Length.ofFeet(12, 0).units() - 3 * Length.UNITS_PER_SIXTY_FOURTH);
    for (RunLine line : plan.runs()) {
      for (RunLine.RunPiece piece : line.pieces()) {
        assertTrue(
            piece.length().equals(Length.ofFeet(24, 0))
                || piece.length().equals(Length.ofFeet(12, 0))
                || piece.length().equals(half),
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
    saw = new Saw("cold-saw", Length.ofUnits(38_100), Length.ZERO, Length.ZERO, null);
    purlins(Length.ZERO);
    MaterialPlan plan = plan();
    assertEquals(2_060_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
  }

  @Test
  void withTrimmedEndsNoWholeStickReachesSoEachLineNeedsBothJoints() {
    saw = new Saw("cold-saw", Length.ofUnits(38_100), Length.ofSixteenths(8), Length.ZERO, null);
    millEndsGood = false;
    purlins(Length.ofSixteenths(2));
    MaterialPlan plan = plan();
    assertEquals(3_090_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
  }

  private void trimOfTwoJobs() {
    offer("pellbrook", inches(122), "14.20");
    offer("ostermoor", inches(144), "17.10");
    supplies.add(new Supply.RackOffcut("R1", inches(122), Ends.SAWN, "", "last spring"));
    supplies.add(new Supply.RackOffcut("R2", inches(60), Ends.SAWN, "", "last spring"));
    JointRules rules = lap(inches(2), inches(24));
    run("A", "E1", 2, inches(440), rules);
    run("A", "K1", 4, inches(161), rules);
    run("B", "E1", 2, inches(292), rules);
  }

  @Test
  void oneLotAJobChoosesTheMakerOfEachJobAndProvesIt() {
    oneLotPer = OneLotPer.JOB;
    trimOfTwoJobs();
    MaterialPlan plan = plan();
    assertEquals(2_556_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
    assertEquals(18, plan.patterns().stream().mapToInt(Pattern::times).sum());
  }

  @Test
  void mixedLotsWouldBeCheaper() {
    trimOfTwoJobs();
    assertEquals(2_301_000, plan().cost());
  }

  @Test
  void closingPieceLeftLongTakesOneMoreStick() {
    offer("pellbrook", inches(126), "10.00");
    JointRules rules = lap(inches(4), Length.ZERO);
    run("A", "E1", 1, inches(492), rules);
    assertEquals(400_000, plan().cost());
    runs.clear();
    run("A", "E1", 1, inches(492), rules.with(new ClosingPiece(Where.END, false, inches(1))));
    assertEquals(500_000, plan().cost());
  }
}
