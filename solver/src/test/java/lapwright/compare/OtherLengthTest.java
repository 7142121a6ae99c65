package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapwright.OrderMaker;
import lapwright.Shortage;
import lapwright.effort.Effort;
import lapwright.measure.Money;
import lapwright.plan.OrderPlan;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import org.junit.jupiter.api.Test;

/** What if stock came in another length? */
final class OtherLengthTest {
  private static OtherLengthResult ask(String length, MaterialOrder... orders) {
    OtherLengthResult result =
        new OtherLength(OrderMaker.planner(1))
            .ask(OrderMaker.shop(), List.of(orders), OrderMaker.length(length), Effort.unlimited());
    assertNotNull(result);
    return result;
  }

  private static long cost(OrderPlan plan) {
    return plan.materials().get(0).cost();
  }

  /** By hand: 12 ft posts come one to a 20 ft stick, two to a 24 ft stick. */
  @Test
  void aLengthThatFitsThePiecesBetterCostsLess() {
    MaterialOrder order =
        new OrderMaker("tube")
            .offer("20'", "41.00")
            .onHand("20'", 3)
            .rack("R1", "12'", Ends.SAWN)
            .need("barn", "P", 4, "12'")
            .make();
    OtherLengthResult result = ask("24'", order);
    assertEquals(Money.ofCents(4 * 4100).tenThousandths(), cost(result.now().plan()));
    assertEquals(Money.ofCents(2 * 4920).tenThousandths(), cost(result.then().plan()));
  }

  /** 41.00 for 20 ft and 47.00 for 24 ft, which is 1.95833... a foot: 30 ft cost 58.75. */
  @Test
  void thePriceIsTheCheapestPerLength() {
    MaterialOrder order =
        new OrderMaker("tube")
            .offer("20'", "41.00")
            .offer("24'", "47.00")
            .need("barn", "P", 1, "9'")
            .make();
    assertEquals(Money.ofCents(5875).tenThousandths(), cost(ask("30'", order).then().plan()));
  }

  @Test
  void piecesThatDoNotFitTheLengthAreToldAndTheirMaterialLeftOut() {
    MaterialOrder tube =
        new OrderMaker("tube").offer("24'", "41.00").need("barn", "P", 1, "22'").make();
    MaterialOrder angle =
        new OrderMaker("angle").offer("24'", "41.00").need("barn", "A", 1, "9'").make();
    OtherLengthResult result = ask("20'", tube, angle);
    assertEquals(List.of("angle"), materials(result.now().plan()));
    assertEquals(List.of("angle"), materials(result.then().plan()));
    Shortage.FitsNothing shortage = (Shortage.FitsNothing) result.notThen().get(0);
    assertEquals("tube", shortage.material());
    assertEquals(OrderMaker.length("20'"), shortage.longestUsable());
  }

  @Test
  void aMaterialThatOnlyTheRackHasCannotBeComparedWithOffers() {
    MaterialOrder tube =
        new OrderMaker("tube").rack("R1", "9'", Ends.SAWN).need("barn", "P", 1, "9'").make();
    OtherLengthResult result = ask("20'", tube);
    assertTrue(result.now().plan().materials().isEmpty());
    assertEquals("tube", result.notNow().get(0).material());
  }

  @Test
  void withoutPricesLengthIsCompared() {
    MaterialOrder tube =
        new OrderMaker("tube")
            .offer("", OrderMaker.length("20'"), null, 1, OrderMaker.NO_LIMIT)
            .need("barn", "P", 4, "12'")
            .make();
    OtherLengthResult result = ask("24'", tube);
    assertEquals(OrderMaker.length("80'").units(), cost(result.now().plan()));
    assertEquals(OrderMaker.length("48'").units(), cost(result.then().plan()));
  }

  private static List<String> materials(OrderPlan plan) {
    return plan.materials().stream().map(material -> material.material()).toList();
  }
}
