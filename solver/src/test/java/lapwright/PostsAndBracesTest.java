package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import org.junit.jupiter.api.Test;

/**
 * Thirteen posts and ten braces from 20 ft tube, two posts to a stick where the hold, the trim and
 * the short sticks allow it. Our own numbers; the answers were found by enumerating all patterns
 * and by an independent solver of integer programs.
 */
final class PostsAndBracesTest {
  private static OrderMaker tube() {
    return new OrderMaker("tube")
        .saw("3/32\"", "1/2\"", "3\"")
        .shortBy("1/4\"")
        .keep("24\"")
        .offer("20'", "41.00");
  }

  private static OrderMaker withPieces(OrderMaker maker, String post) {
    return maker.need("shed", "P1", 13, post).need("shed", "B1", 10, "3'-10\"");
  }

  private static MaterialPlan plan(MaterialOrder order) {
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    return ((PlanResult.Planned) result).plan().plan().materials().get(0);
  }

  private static void assertSticksBought(int sticks, MaterialPlan plan) {
    assertEquals(Money.ofCents(4100).times(sticks).tenThousandths(), plan.cost());
    assertEquals(plan.cost(), plan.cash());
    assertEquals(sticks, plan.purchases().stream().mapToInt(Purchase::packs).sum());
    assertEquals(Proof.PROVED, plan.proof());
    assertEquals(plan.cost(), plan.lowerBound());
  }

  @Test
  void eightSticksAndTheOffcutThatIsAPost() {
    MaterialPlan plan = plan(withPieces(tube().rack("R7", "9'-11\"", Ends.SAWN), "9'-11\"").make());
    assertSticksBought(8, plan);
    Pattern offcut =
        plan.patterns().stream()
            .filter(t -> t.supply().equals("rack:R7"))
            .findFirst()
            .orElseThrow();
    assertEquals(1, offcut.cuts().size());
    assertEquals(OrderMaker.length("9'-11\""), offcut.cuts().get(0).length());
    assertTrue(offcut.offcut().isZero());
    List<Pattern> bought =
        plan.patterns().stream().filter(t -> !t.supply().equals("rack:R7")).toList();
    assertEquals(8, bought.stream().mapToInt(Pattern::times).sum());
  }

  @Test
  void theAccountAddsUpToTheUnit() {
    MaterialPlan plan = plan(withPieces(tube().rack("R7", "9'-11\"", Ends.SAWN), "9'-11\"").make());
    Length drawn = OrderMaker.length("19'-11-3/4\"").times(8).plus(OrderMaker.length("9'-11\""));
    assertEquals(drawn, plan.account().drawn());
    assertEquals(
        OrderMaker.length("9'-11\"").times(13).plus(OrderMaker.length("3'-10\"").times(10)),
        plan.account().finished());
    assertEquals(OrderMaker.length("1/2\"").times(8), plan.account().endTrim());
    assertEquals(OrderMaker.length("3/32\"").times(22), plan.account().kerf());
    assertEquals(OrderMaker.length("1/4\"").times(8), plan.account().shortAllowance());
    assertEquals(
        plan.account().drawn(),
        plan.account()
            .finished()
            .plus(plan.account().kerf())
            .plus(plan.account().endTrim())
            .plus(plan.account().offcutsKept())
            .plus(plan.account().scrap()));
  }

  @Test
  void anOffcutWithMillEndsIsTrimmedAgainAndNoLongerAPost() {
    assertSticksBought(
        9, plan(withPieces(tube().rack("R7", "9'-11\"", Ends.MILL), "9'-11\"").make()));
  }

  @Test
  void sticksThatComeThreeInchesShorterGiveOnePostEach() {
    assertSticksBought(
        12,
        plan(
            withPieces(tube().shortBy("3-1/4\"").rack("R7", "9'-11\"", Ends.SAWN), "9'-11\"")
                .make()));
  }

  @Test
  void postsThreeQuartersLongerGoOneToAStick() {
    assertSticksBought(
        13, plan(withPieces(tube().rack("R7", "9'-11\"", Ends.SAWN), "9'-11-3/4\"").make()));
  }

  @Test
  void withoutTrimAndShortSticksTwoOfTheLongerPostsWouldCome() {
    assertSticksBought(
        9,
        plan(
            withPieces(
                    tube().saw("3/32\"", "0", "3\"").shortBy("0").rack("R7", "9'-11\"", Ends.SAWN),
                    "9'-11-3/4\"")
                .make()));
  }

  @Test
  void aPostThatOnlyTheHoldForbidsIsNotCut() {
    MaterialOrder order =
        new OrderMaker("tube")
            .saw("3/32\"", "0", "3\"")
            .offer("4\"", "1.00")
            .need("shed", "S1", 2, "2\"")
            .make();
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    Shortage shortage = ((PlanResult.Impossible) result).shortages().get(0);
    assertEquals("tube", shortage.material());
    assertEquals(1, ((Shortage.FitsNothing) shortage).needs().size());
  }
}
