package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import lapwright.OrderMaker;
import lapwright.PlanResult;
import lapwright.compare.Change.Kind;
import lapwright.effort.Effort;
import lapwright.measure.LengthStyle;
import lapwright.plan.OrderPlan;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import org.junit.jupiter.api.Test;

/**
 * Two posts of 9' and ten braces of 4'. By hand: with the offcut R1 as a post, one 20' stick gives
 * the other post and two braces, two give four braces each; without it a fourth stick is needed. So
 * every cheapest plan takes R1, and buys at least one stick besides the two on hand.
 */
class PlanChangesTest {
  private static OrderMaker tube() {
    return new OrderMaker("tube")
        .saw("3/32\"", "0", "0")
        .need("pier", "P1", 2, "9'")
        .need("pier", "B1", 10, "4'");
  }

  private static OrderMaker stocked() {
    return tube().offer("20'", "41.00").onHand("20'", 2).rack("R1", "9'", Ends.SAWN);
  }

  private static final OrderPlan PLAN = plan(stocked().make());

  private static OrderPlan plan(MaterialOrder order) {
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    return ((PlanResult.Planned) result).plan().plan();
  }

  private static List<String> changes(OrderMaker... now) {
    return PlanChanges.of(
            PLAN, List.of(now).stream().map(OrderMaker::make).toList(), LengthStyle.FEET_INCHES)
        .stream()
        .map(
            change ->
                change.kind()
                    + " "
                    + change.what()
                    + ": "
                    + change.planned()
                    + " -> "
                    + change.now())
        .toList();
  }

  @Test
  void theSameShopHasNotChanged() {
    assertEquals(List.of(), changes(stocked()));
  }

  @Test
  void aNewPieceAndAChangedQuantityAreBothNamed() {
    assertEquals(
        List.of("PIECES P1 of pier, 9'-0\": 2 -> 3", "PIECES P1 of shed, 9'-0\": 0 -> 1"),
        changes(stocked().need("pier", "P1", 1, "9'").need("shed", "P1", 1, "9'")));
  }

  @Test
  void aJobThatIsGoneNeedsNothing() {
    assertEquals(
        List.of("PIECES P1 of pier, 9'-0\": 2 -> 0", "PIECES B1 of pier, 4'-0\": 10 -> 0"),
        changes());
  }

  @Test
  void anOffcutThatWasTakenIsMissed() {
    assertEquals(
        List.of("STOCK offcut R1: 9'-0\", ends sawn -> none"),
        changes(tube().offer("20'", "41.00").onHand("20'", 2)));
    assertEquals(
        List.of("STOCK offcut R1: 9'-0\", ends sawn -> 8'-11\", ends sawn"),
        changes(tube().offer("20'", "41.00").onHand("20'", 2).rack("R1", "8'-11\"", Ends.SAWN)));
  }

  @Test
  void anotherPriceIsToldButSpoilsNothing() {
    List<Change> changes =
        PlanChanges.of(
            PLAN,
            List.of(
                tube().offer("20'", "43.50").onHand("20'", 2).rack("R1", "9'", Ends.SAWN).make()),
            LengthStyle.FEET_INCHES);
    assertEquals(1, changes.size());
    assertEquals(Kind.PRICE, changes.get(0).kind());
    assertEquals("41.00 each", changes.get(0).planned());
  }

  @Test
  void stockThatCanNoLongerBeBoughtSpoilsThePlan() {
    List<String> changes =
        changes(tube().offer("24'", "50.00").onHand("20'", 2).rack("R1", "9'", Ends.SAWN));
    assertEquals(
        List.of("STOCK", "PRICE"), changes.stream().map(line -> line.split(" ")[0]).toList());
  }

  @Test
  void anotherKerfSpoilsThePlan() {
    assertEquals(
        List.of("CUTTING kerf: 3/32\" -> 1/8\""), changes(stocked().saw("1/8\"", "0", "0")));
  }
}
