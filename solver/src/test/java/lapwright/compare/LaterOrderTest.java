package lapwright.compare;

import static lapwright.OrderMaker.length;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.OrderMaker;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.PlacedCheck;
import lapwright.check.PlacedVerdict;
import lapwright.check.Rule;
import lapwright.effort.Effort;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** Orders that are placed one after the other. Numbers are our own, worked by hand. */
class LaterOrderTest {
  private final AtomicInteger lastOffcut = new AtomicInteger();

  /** Ten-foot sticks in packs of 3, no kerf; offcuts from 2' are kept. */
  private static OrderMaker tenFeet() {
    return new OrderMaker("tube").keep("2'").offer("10'", "10.00", 3, OrderMaker.NO_LIMIT);
  }

  private OrderPlan plan(List<OrderPlan> placed, List<MaterialOrder> orders) {
    PlanResult result =
        new Planner(() -> "N" + lastOffcut.incrementAndGet(), 1)
            .continuingAfterTicket(LaterOrder.lastTicket(placed))
            .plan(OrderMaker.shop(), orders, Map.of(), Effort.unlimited());
    return assertInstanceOf(PlanResult.Planned.class, result).plan().plan();
  }

  private OrderPlan placedFirst(OrderMaker order) {
    return plan(List.of(), List.of(order.make()));
  }

  private static int packs(OrderPlan plan) {
    return plan.materials().stream()
        .flatMap(material -> material.purchases().stream())
        .mapToInt(Purchase::packs)
        .sum();
  }

  private static void assertSound(List<OrderPlan> placed) {
    assertInstanceOf(PlacedVerdict.Sound.class, PlacedCheck.check(placed));
  }

  @Test
  void nothingIsOrderedWhenNothingHasChanged() {
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 2, "6'"));

    LaterOrder later =
        LaterOrder.of(List.of(first), List.of(tenFeet().need("barn", "P", 2, "6'").make()));

    assertEquals(new LaterOrder(List.of(), List.of(), List.of(), List.of(), List.of()), later);
  }

  @Test
  void surplusAndKeptOffcutsServeLaterPiecesAtNoCost() {
    // 2 posts of 6' take 2 of the pack's 3 sticks and leave two offcuts of 4'.
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 2, "6'"));

    LaterOrder later =
        LaterOrder.of(
            List.of(first),
            List.of(tenFeet().need("barn", "P", 3, "6'").need("shed", "B", 2, "4'").make()));
    OrderPlan second = plan(List.of(first), later.orders());

    assertEquals(1, packs(first));
    assertEquals(0, packs(second));
    assertEquals(0, second.materials().get(0).cost());
    assertEquals(
        List.of(
            new LaterOrder.PieceCount("tube", "barn", "P", length("6'"), 2, 3),
            new LaterOrder.PieceCount("tube", "shed", "B", length("4'"), 0, 2)),
        later.missing());
    assertSound(List.of(first, second));
  }

  @Test
  void ticketsOfALaterOrderAreCountedOn() {
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 2, "6'"));
    LaterOrder later =
        LaterOrder.of(List.of(first), List.of(tenFeet().need("barn", "P", 9, "6'").make()));
    OrderPlan second = plan(List.of(first), later.orders());

    List<Integer> names = new ArrayList<>();
    for (OrderPlan order : List.of(first, second)) {
      order.materials().get(0).patterns().forEach(p -> names.add(Integer.valueOf(p.ticket())));
    }
    List<Integer> counted = new ArrayList<>();
    for (int i = 1; i <= names.size(); i++) {
      counted.add(i);
    }
    assertEquals(counted, names);
  }

  @Test
  void aThirdOrderTakesWhatBothBeforeItLeft() {
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 1, "6'"));
    List<OrderPlan> placed = new ArrayList<>(List.of(first));
    for (int posts = 2; posts <= 3; posts++) {
      LaterOrder later =
          LaterOrder.of(placed, List.of(tenFeet().need("barn", "P", posts, "6'").make()));
      placed.add(plan(placed, later.orders()));
      assertEquals(0, packs(placed.get(placed.size() - 1)), "the pack of the first order does");
    }
    LaterOrder later = LaterOrder.of(placed, List.of(tenFeet().need("barn", "P", 4, "6'").make()));
    placed.add(plan(placed, later.orders()));

    assertEquals(1, packs(placed.get(3)), "the pack is used up");
    assertSound(placed);
  }

  @Test
  void piecesThatNobodyNeedsAreToldAndNotPlannedAgain() {
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 3, "6'").need("shed", "B", 1, "4'"));

    LaterOrder later =
        LaterOrder.of(List.of(first), List.of(tenFeet().need("barn", "P", 1, "6'").make()));

    assertEquals(List.of(), later.orders());
    assertEquals(
        List.of(
            new LaterOrder.PieceCount("tube", "barn", "P", length("6'"), 3, 1),
            new LaterOrder.PieceCount("tube", "shed", "B", length("4'"), 1, 0)),
        later.unneeded());
  }

  @Test
  void aFurtherCopyOfAJobIsPlannedUnderItsOwnNumber() {
    OrderPlan first = placedFirst(tenFeet().need("barn", null, 1, "P", 2, length("6'")));

    LaterOrder later =
        LaterOrder.of(
            List.of(first), List.of(tenFeet().need("barn", null, 3, "P", 2, length("6'")).make()));
    OrderPlan second = plan(List.of(first), later.orders());

    Need further = later.orders().get(0).needs().get(0);
    assertEquals(2, further.firstCopy());
    assertEquals(3, further.lastCopy());
    assertTrue(
        second.materials().get(0).patterns().stream()
            .flatMap(pattern -> pattern.cuts().stream())
            .noneMatch(cut -> cut.copy() == 1));
    assertSound(List.of(first, second));
  }

  @Test
  void sticksAndOffcutsThatAnEarlierOrderTakesAreGone() {
    OrderMaker before =
        new OrderMaker("tube")
            .onHandWorthNothing()
            .offer("10'", "10.00")
            .onHand("10'", 2)
            .rack("R1", "6'", Ends.SAWN);
    MaterialOrder stock = before.make();
    OrderPlan first = placedFirst(before.need("barn", "P", 2, "6'"));

    LaterOrder later =
        LaterOrder.of(
            List.of(first),
            List.of(
                stock.withPieces(List.of(new Need("barn", null, 1, "P", length("6'"), 4, "")))));
    OrderPlan second = plan(List.of(first), later.orders());

    // One post of the four comes from the rack, two from the sticks on hand, one is bought.
    assertEquals(1, packs(first) + packs(second));
    assertSound(List.of(first, second));
  }

  @Test
  void whatIsBoughtAlreadyCountsAgainstALimit() {
    OrderMaker few = new OrderMaker("tube").offer("10'", "10.00", 1, 3);
    OrderPlan first = placedFirst(few.need("barn", "P", 2, "6'"));

    LaterOrder later =
        LaterOrder.of(
            List.of(first),
            List.of(
                new OrderMaker("tube")
                    .offer("10'", "10.00", 1, 3)
                    .need("barn", "P", 4, "6'")
                    .make()));
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), later.orders(), Map.of(), Effort.unlimited());

    assertInstanceOf(PlanResult.Impossible.class, result);
  }

  @Test
  void sticksThatAreCountedOffAlreadyAreNoticed() {
    OrderMaker before = new OrderMaker("tube").offer("10'", "10.00").onHand("10'", 3);
    MaterialOrder stock = before.make();
    OrderPlan first = placedFirst(before.need("barn", "P", 2, "10'"));
    int used = first.materials().get(0).patterns().stream().mapToInt(Pattern::times).sum();
    MaterialOrder countedOff =
        new OrderMaker("tube").offer("10'", "10.00").onHand("10'", 3 - used).make();

    assertEquals(2, used);
    assertEquals(List.of(), LaterOrder.countedOff(List.of(first), List.of(stock)));
    assertEquals(List.of("tube"), LaterOrder.countedOff(List.of(first), List.of(countedOff)));
  }

  @Test
  void anOrderThatTakesWhatWasNotLeftIsBroken() {
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 2, "6'"));
    LaterOrder later =
        LaterOrder.of(List.of(first), List.of(tenFeet().need("barn", "P", 3, "6'").make()));
    MaterialPlan sound = plan(List.of(first), later.orders()).materials().get(0);
    List<Supply> supplies = new ArrayList<>(sound.order().supplies());
    supplies.replaceAll(
        supply ->
            supply instanceof Supply.Bought bought
                ? new Supply.Bought(bought.supplier(), bought.length(), bought.qty() + 1)
                : supply);
    MaterialPlan more =
        new MaterialPlan(
            sound.order().withSupplies(supplies),
            sound.purchases(),
            sound.patterns(),
            sound.cost(),
            sound.cash(),
            sound.lowerBound(),
            sound.proof(),
            sound.certificate(),
            sound.account());

    PlacedVerdict verdict =
        PlacedCheck.check(List.of(first, new OrderPlan(first.shop(), List.of(more))));

    PlacedVerdict.Broken broken = assertInstanceOf(PlacedVerdict.Broken.class, verdict);
    assertEquals(Rule.PLACED_BEFORE, broken.faults().get(0).rule());
  }

  @Test
  void theSameOrderTwiceIsBroken() {
    OrderPlan first = placedFirst(tenFeet().need("barn", "P", 2, "6'"));

    PlacedVerdict.Broken broken =
        assertInstanceOf(PlacedVerdict.Broken.class, PlacedCheck.check(List.of(first, first)));

    assertTrue(broken.faults().stream().anyMatch(fault -> fault.rule() == Rule.TICKET_NAME));
    assertTrue(broken.faults().stream().anyMatch(fault -> fault.rule() == Rule.OFFCUT_NAME));
  }
}
