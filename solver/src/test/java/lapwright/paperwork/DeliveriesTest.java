package lapwright.paperwork;

import static lapwright.OrderMaker.length;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import lapwright.OrderMaker;
import lapwright.check.CheckedPlan;
import lapwright.compare.SupplierAlone;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.paperwork.Deliveries.FromOne;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import org.junit.jupiter.api.Test;

/** What suppliers bring, on their terms. Numbers are our own, worked by hand. */
class DeliveriesTest {
  private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

  /** Two days, least order 100.00, freight 20.00 that is free from 200.00. */
  private static final Supplier NEAR =
      new Supplier(
          "near",
          2,
          "10:00",
          Money.ofCents(100_00),
          Money.ofCents(20_00),
          Money.ofCents(200_00),
          null,
          Supplier.Rounds.LINE);

  private static Shop shop() {
    return new Shop("Test shop", "USD", Shop.Units.FEET_INCHES, true, List.of(NEAR));
  }

  private static Delivery delivery(int sticks) {
    CheckedPlan plan =
        PlannedPapers.plan(
            shop(),
            new OrderMaker("tube")
                .offer("near", length("10'"), "30.00", 1, OrderMaker.NO_LIMIT)
                .need("barn", FRIDAY, 1, "P", sticks, length("10'"))
                .make());
    return Deliveries.of(plan, List.of()).deliveries().get(0);
  }

  @Test
  void freightIsPaidUntilDeliveryIsFree() {
    assertEquals(Money.ofCents(180_00 + 20_00), delivery(6).delivered());
    assertEquals(Money.ofCents(210_00), delivery(7).delivered());
    assertTrue(delivery(7).isFree());
  }

  @Test
  void whatIsMissingToTheLeastOrderIsTold() {
    assertEquals(Money.ofCents(10_00), delivery(3).shortOfMinimum());
    assertEquals(Money.ZERO, delivery(4).shortOfMinimum());
  }

  @Test
  void theLastDayToOrderCountsWorkingDaysBack() {
    // Friday less two is Wednesday; over a weekend, Monday less two is Thursday.
    assertEquals(LocalDate.of(2026, 12, 2), WorkingDays.before(FRIDAY, 2));
    assertEquals(LocalDate.of(2026, 12, 3), WorkingDays.before(LocalDate.of(2026, 12, 7), 2));
    // What is due on a Sunday must come on Friday.
    assertEquals(LocalDate.of(2026, 12, 2), WorkingDays.before(FRIDAY.plusDays(2), 2));
    assertEquals(FRIDAY, WorkingDays.before(FRIDAY, 0));
    assertEquals(
        List.of(new Delivery.LastDay(LocalDate.of(2026, 12, 2), FRIDAY, List.of("barn"))),
        delivery(1).lastDays());
  }

  @Test
  void aSupplierOfWhomOnlyTheNameIsKnownHasNoTerms() {
    CheckedPlan plan =
        PlannedPapers.plan(
            new OrderMaker("tube")
                .offer("10'", "30.00")
                .need("barn", FRIDAY, 1, "P", 1, length("10'"))
                .make());

    Delivery one = Deliveries.of(plan, List.of()).deliveries().get(0);

    assertEquals(List.of(), one.lastDays());
    assertEquals(Money.ofCents(30_00), one.delivered());
    assertEquals(1, one.unweighed());
    assertNull(one.goodUntil());
    assertEquals(Length.ofFeet(10, 0), one.longest());
  }

  @Test
  void everythingFromOneSupplierIsHeldAgainstThePlan() {
    // Ten-foot posts from near at 30.00, from far at 29.00; only far has what a 12' brace needs.
    MaterialOrder order =
        new OrderMaker("tube")
            .offer("near", length("10'"), "30.00", 1, OrderMaker.NO_LIMIT)
            .offer("far", length("10'"), "29.00", 1, OrderMaker.NO_LIMIT)
            .offer("far", length("12'"), "50.00", 1, OrderMaker.NO_LIMIT)
            .need("barn", "P", 4, "10'")
            .need("barn", "B", 1, "12'")
            .make();
    List<SupplierAlone> alone =
        SupplierAlone.each(
            OrderMaker.planner(1),
            shop(),
            List.of(order),
            List.of(),
            new Unanswered(),
            Effort.unlimited());

    Deliveries deliveries = Deliveries.of(PlannedPapers.plan(shop(), order), alone);

    assertEquals(
        List.of(
            new FromOne("far", Money.ofCents(4 * 29_00 + 50_00), false, List.of()),
            new FromOne("near", null, false, List.of("tube"))),
        deliveries.fromOne());
    assertEquals(Money.ofCents(4 * 29_00 + 50_00), deliveries.asPlanned());
    assertTrue(deliveries.proved());
  }
}
