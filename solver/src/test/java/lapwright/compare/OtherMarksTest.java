package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import lapwright.OrderMaker;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** A mark that is shorter, or left out: what its bound says, and what a plan confirms. */
final class OtherMarksTest {
  private static final Length STEP = Length.ofSixteenths(1);
  private static final int STEPS = 8;

  private static OrderMaker tube() {
    return new OrderMaker("tube").saw("3/32\"", "1/2\"", "3\"").offer("20'", "41.00");
  }

  private static MaterialPlan plan(MaterialOrder order) {
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    return ((PlanResult.Planned) result).plan().plan().materials().get(0);
  }

  private static List<ShorterMark> shorter(MaterialOrder order) {
    return ShorterMark.of(
        OrderMaker.planner(1), OrderMaker.shop(), plan(order), STEP, STEPS, Effort.unlimited());
  }

  private static Optional<CostlyMark> costly(MaterialOrder order) {
    return CostlyMark.of(OrderMaker.planner(1), OrderMaker.shop(), plan(order), Effort.unlimited());
  }

  /**
   * By hand: 20' less 1/2" of trim and a cut at the far end leaves 239-13/32", and two pieces with
   * the cut between them take twice the length and 3/32". So a pair comes out of one stick from
   * 9'-11-21/32" down, on the sixteenth from 9'-11-5/8" down.
   */
  @Test
  void aPairThatMissesItsStick() {
    List<ShorterMark> found = shorter(tube().need("shed", "P1", 2, "9'-11-3/4\"").make());
    assertEquals(1, found.size());
    assertEquals(OrderMaker.length("9'-11-5/8\""), found.get(0).shorter());
    assertEquals(410_000, found.get(0).saves());
    assertEquals(1, found.get(0).sticksFewer());
  }

  /** 9'-11-5/8" fits in pairs, and 10'-0-3/16" misses by more than half an inch each. */
  @Test
  void nothingWhereHalfAnInchDoesNotHelp() {
    assertEquals(List.of(), shorter(tube().need("shed", "P1", 2, "9'-11-5/8\"").make()));
    assertEquals(List.of(), shorter(tube().need("shed", "P1", 2, "10'-0-3/16\"").make()));
    // Only one sixteenth less, and it would do.
    assertEquals(1, shorter(tube().need("shed", "P1", 2, "10'-0-1/8\"").make()).size());
  }

  /** Three pieces: one stick holds two of them, so a third of the mark still takes a stick. */
  @Test
  void onlyOneMarkIsMadeShorterAtATime() {
    MaterialOrder both =
        tube().need("ash", "P1", 1, "9'-11-7/8\"").need("birch", "P1", 1, "9'-11-7/8\"").make();
    List<ShorterMark> found = shorter(both);
    assertEquals(2, found.size());
    for (ShorterMark mark : found) {
      // Both together are 7/16" too long, which one of them can give.
      assertEquals(OrderMaker.length("9'-11-7/16\""), mark.shorter());
    }
  }

  /** Five sticks a pack: five posts take a pack, and one more piece a second one. */
  @Test
  void aPieceThatTakesAPackOfFive() {
    OrderMaker packs =
        new OrderMaker("tube").saw("3/32\"", "1/2\"", "3\"").offer("20'", "41.00", 5, 1_000);
    CostlyMark found =
        costly(packs.need("shed", "P1", 5, "17'").need("shed", "B1", 1, "3'-10\"").make())
            .orElseThrow();
    assertEquals("B1", found.need().mark());
    assertEquals(5, found.sticks());
    assertEquals(1, found.fills());
    assertEquals(2_050_000, found.costs());
  }

  /** The same from single sticks; posts that only fill their sticks badly are no such mark. */
  @Test
  void notWhereItTakesOneStick() {
    assertEquals(
        Optional.empty(),
        costly(tube().need("shed", "P1", 5, "17'").need("shed", "B1", 1, "3'-10\"").make()));
    assertEquals(Optional.empty(), costly(tube().need("shed", "P1", 8, "11'").make()));
  }

  /** Two sticks for two pieces that would fill one: 20' end to end, and the cut between. */
  @Test
  void aPairThatWouldFillOneStick() {
    CostlyMark found = costly(tube().need("shed", "P1", 2, "10'").make()).orElseThrow();
    assertEquals(2, found.sticks());
    assertEquals(1, found.fills());
    assertEquals(Optional.empty(), costly(tube().need("shed", "P1", 2, "10'-0-1/16\"").make()));
  }

  /**
   * The bound by moved weights is never above what the other order costs, and of two marks every
   * one that saves is found.
   */
  @Property(seed = "20261125", tries = 60)
  void boundsHoldAndNothingIsMissed(
      @ForAll @IntRange(min = 300, max = 2_400) int first,
      @ForAll @IntRange(min = 300, max = 2_400) int second,
      @ForAll @IntRange(min = 1, max = 5) int some,
      @ForAll @IntRange(min = 1, max = 5) int others,
      @ForAll @IntRange(min = 1, max = 3) int pack) {
    MaterialOrder order =
        new OrderMaker("tube")
            .saw("3/32\"", "1/2\"", "0")
            .offer("mill", OrderMaker.length("20'"), "41.00", pack, OrderMaker.NO_LIMIT)
            .offer("mill", OrderMaker.length("24'"), "48.00", 1, 3)
            .need("ash", null, 1, "P1", some, Length.ofSixteenths(first))
            .need("birch", null, 1, "P2", others, Length.ofSixteenths(second))
            .make();
    MaterialPlan now = plan(order);
    assertEquals(Proof.PROVED, now.proof());
    Planner planner = OrderMaker.planner(1);
    List<String> saving = new ArrayList<>();
    for (Need need : order.needs()) {
      for (int steps : new int[] {1, STEPS}) {
        OtherMark shorter = new OtherMark(now, need, need.length().minus(STEP.times(steps)));
        MaterialPlan then =
            Objects.requireNonNull(shorter.planned(planner, OrderMaker.shop(), Effort.unlimited()));
        assertTrue(shorter.atLeast() <= then.cost());
        if (steps == STEPS && then.cost() < now.cost()) {
          saving.add(need.mark());
        }
      }
      OtherMark without = new OtherMark(now, need, null);
      MaterialPlan then =
          Objects.requireNonNull(without.planned(planner, OrderMaker.shop(), Effort.unlimited()));
      assertTrue(without.atLeast() <= then.cost());
    }
    List<ShorterMark> found =
        ShorterMark.of(planner, OrderMaker.shop(), now, STEP, STEPS, Effort.unlimited());
    assertEquals(saving, found.stream().map(mark -> mark.need().mark()).sorted().toList());
    for (ShorterMark mark : found) {
      assertTrue(mark.then().cost() < now.lowerBound());
      assertEquals(
          mark.then().cost(), plan(new OtherMark(now, mark.need(), mark.shorter()).order()).cost());
    }
  }
}
