package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** What choosing joints, and combining jobs with runs, is worth: worked by hand. */
class JointChoiceTest {
  private static final Shop SHOP =
      new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, true);
  private static final Saw SNIPS = new Saw("snips", Length.ZERO, Length.ZERO, Length.ZERO, null);
  private static final Length STEP = Length.ofSixteenths(1);

  private final AtomicInteger names = new AtomicInteger();
  private final Planner planner = new Planner(() -> "N" + names.incrementAndGet(), 1);

  private static Supply offer(long inches, String price) {
    return new Supply.Offer(
        "pellbrook" + inches,
        Length.ofInches(inches),
        new Price(new BigDecimal(price), Price.Per.EACH),
        1,
        Integer.MAX_VALUE,
        "",
        null,
        null);
  }

  private static RunNeed run(String job, String mark, int qty, long inches, JointRules rules) {
    return new RunNeed(
        job,
        null,
        1,
        new Run("trim", mark, Length.ofInches(inches), qty, Length.ZERO, Length.ZERO, rules, ""));
  }

  private static MaterialOrder order(OneLotPer per, List<Supply> supplies, List<RunNeed> runs) {
    Material material =
        new Material("trim", "trim", "snips", true, Length.ZERO, Length.ofInches(24), null, per);
    return new MaterialOrder(material, SNIPS, true, supplies, List.of(), runs);
  }

  private static JointRules lap(long lap, long shortest) {
    return JointRules.of(new Joint.Lap(Length.ofInches(lap)), STEP)
        .with(new JointRules.Pieces(Length.ofInches(shortest), null, null, STEP));
  }

  private CombinedResult combine(MaterialOrder order) {
    return new Combining(planner, 1).plan(SHOP, List.of(order), Effort.unlimited());
  }

  private MaterialPlan plan(MaterialOrder order) {
    CombinedResult result = combine(order);
    return ((lapwright.PlanResult.Planned) result.result()).plan().plan().materials().get(0);
  }

  private MaterialOrder trimOfTwoJobs() {
    JointRules rules = lap(2, 24);
    return order(
        OneLotPer.JOB,
        List.of(offer(122, "14.20"), offer(144, "17.10")),
        List.of(
            run("A", "E1", 2, 440, rules),
            run("A", "K1", 4, 161, rules),
            run("B", "E1", 2, 292, rules)));
  }

  @Test
  void combiningSavesNothingWhereTheJobsShareNoStick() {
    CombinedResult result = combine(trimOfTwoJobs());
    MaterialSaving saving = java.util.Objects.requireNonNull(result.saving()).materials().get(0);
    assertEquals(2_556_000, saving.together());
    assertEquals(0, saving.saved());
  }

  /** At the fewest joints, whole sticks and a closing piece lose nothing from one stock length. */
  @Test
  void choosingJointsSavesNothingWhereFullSticksAreAsGood() {
    MaterialPlan plan = plan(trimOfTwoJobs());
    JointChoice.Answer answer = new JointChoice(planner).ask(SHOP, plan, Effort.unlimited());
    assertNotNull(answer.fullSticks());
    assertEquals(0, answer.saved());
  }

  /** 240 in of run from 60 in sticks fill four sticks at the fewest joints already. */
  @Test
  void oneMoreJointSavesNothingWhereNothingIsWasted() {
    JointPlaces places =
        new JointPlaces.At(List.of(Length.ofInches(20), Length.ofInches(40), Length.ofInches(60)));
    JointRules rules = JointRules.of(new Joint.Butt(Length.ZERO), STEP).at(places);
    List<RunNeed> runs = new ArrayList<>(List.of(run("A", "U1", 3, 80, rules)));
    MaterialPlan plan = plan(order(OneLotPer.NONE, List.of(offer(60, "10.00")), runs));
    assertEquals(Proof.PROVED, plan.proof());
    assertEquals(400_000, plan.cost());
    JointChoice.Answer answer = new JointChoice(planner).ask(SHOP, plan, Effort.unlimited());
    assertEquals(0, answer.oneMoreWouldSave());
    assertTrue(answer.saved() >= 0);
  }

  /**
   * Two stock lengths: the man lays each job in the length that serves it best. By hand: 240 in is
   * two sticks of 120 in or one and a piece of 96 in from 144 in.
   */
  @Test
  void fullSticksOfSeveralLengthsAreLaidInTheBestOfThem() {
    MaterialPlan plan =
        plan(
            order(
                OneLotPer.NONE,
                List.of(offer(120, "12.00"), offer(144, "17.00")),
                List.of(run("A", "T1", 3, 240, lap(0, 24)))));
    JointChoice.Answer answer = new JointChoice(planner).ask(SHOP, plan, Effort.unlimited());
    assertEquals(720_000, plan.cost());
    assertEquals(720_000, java.util.Objects.requireNonNull(answer.fullSticks()).cost());
  }

  /**
   * By hand: 240 in of sticks of 240 in is no joint at 30.00 a line; of sticks of 120 in it would
   * be 24.00, with a joint that the run may not have.
   */
  @Test
  void fullSticksTakeNoMoreJointsThanTheRunMayHave() {
    MaterialPlan plan =
        plan(
            order(
                OneLotPer.NONE,
                List.of(offer(120, "12.00"), offer(240, "30.00")),
                List.of(run("A", "T1", 3, 240, lap(0, 24)))));
    JointChoice.Answer answer = new JointChoice(planner).ask(SHOP, plan, Effort.unlimited());
    assertEquals(900_000, plan.cost());
    assertEquals(900_000, java.util.Objects.requireNonNull(answer.fullSticks()).cost());
    assertEquals(180_000, answer.oneMoreWouldSave());
  }

  /** Maker by maker, where whole sticks of one are as long as offcuts that the other is cut to. */
  @Test
  void fullSticksAreComparedWhereOffcutsAreAsLongAsPieces() {
    MaterialOrder makers = trimOfTwoJobs();
    List<Supply> supplies = new ArrayList<>(makers.supplies());
    supplies.add(
        new Supply.RackOffcut(
            "R1", Length.ofInches(60), lapwright.shop.Ends.SAWN, "", "last spring"));
    MaterialPlan plan = plan(order(OneLotPer.NONE, supplies, makers.runs()));
    JointChoice.Answer answer = new JointChoice(planner).ask(SHOP, plan, Effort.unlimited());
    assertNotNull(answer.fullSticks());
    assertTrue(answer.saved() >= 0);
  }

  /** Three lines of 100 in from 60 in sticks: two pieces a line fill no stick together. */
  @Test
  void oneMoreJointIsToldAndNotTaken() {
    JointRules rules = lap(0, 10);
    List<RunNeed> runs = List.of(run("A", "T1", 3, 100, rules));
    MaterialPlan plan = plan(order(OneLotPer.NONE, List.of(offer(60, "10.00")), runs));
    // 60 and 40 in each line: six sticks. With three pieces a line 300 in fill five.
    assertEquals(600_000, plan.cost());
    JointChoice.Answer answer = new JointChoice(planner).ask(SHOP, plan, Effort.unlimited());
    assertEquals(100_000, answer.oneMoreWouldSave());
  }

  /** Runs of 150 in with one joint each, no lap: sticks of 75, 100 or 150 in waste nothing. */
  @Test
  void orderedLengthThatWastesNothingIsFound() {
    List<RunNeed> runs = List.of(run("A", "T1", 4, 150, lap(0, 10)));
    MaterialOrder order = order(OneLotPer.NONE, List.of(offer(120, "12.00")), runs);
    BestLength.Answer answer =
        new BestLength(planner, new Unanswered())
            .ask(
                SHOP,
                List.of(order),
                Length.ofInches(70),
                Length.ofInches(130),
                Length.ofInches(1),
                Effort.unlimited())
            .get(0);
    BestLength.Tried best = BestLength.best(answer.tried());
    // 600 in at 10 cents an inch.
    assertEquals(600_000, best.cost());
    assertTrue(best.proved());
    assertTrue(answer.isBest());
    assertTrue(answer.ruledOut().stream().allMatch(out -> out.atLeast() >= best.cost()));
    assertTrue(answer.ruledOut().size() > 40, answer.ruledOut().toString());
  }
}
