package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.measure.Length;
import lapwright.plan.LengthPattern;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class PlannerTest {
  private static PlanResult plan(Effort effort, MaterialOrder... orders) {
    return OrderMaker.planner(2).plan(OrderMaker.shop(), List.of(orders), Map.of(), effort);
  }

  private static OrderPlan planned(Effort effort, MaterialOrder... orders) {
    return assertInstanceOf(PlanResult.Planned.class, plan(effort, orders)).plan().plan();
  }

  private static List<Shortage> shortages(MaterialOrder... orders) {
    return assertInstanceOf(PlanResult.Impossible.class, plan(Effort.unlimited(), orders))
        .shortages();
  }

  private static OrderMaker tube(String material) {
    return new OrderMaker(material).saw("1/8\"", "1/2\"", "3\"").keep("24\"");
  }

  private static Effort spent() {
    return Effort.limited(() -> 0, 0, () -> true, progress -> {});
  }

  @Test
  void piecesThatFitNothingAreNamedWithTheLongestUsableLength() {
    List<Shortage> shortages =
        shortages(
            tube("tube")
                .offer("20'", "41.00")
                .need("barn", "P1", 2, "20'")
                .need("barn", "P2", 2, "9'")
                .need("dock", "P3", 1, "21'")
                .make(),
            tube("angle").offer("20'", "9.00").need("barn", "A1", 2, "9'").make());
    assertEquals(1, shortages.size());
    Shortage.FitsNothing tooLong = (Shortage.FitsNothing) shortages.get(0);
    assertEquals("tube", tooLong.material());
    assertEquals(List.of("P1", "P3"), tooLong.needs().stream().map(n -> n.mark()).toList());
    assertEquals(OrderMaker.length("19'-11-3/8\""), tooLong.longestUsable());
  }

  @Test
  void aStickLongerThanTheSawTakesIsNoStock() {
    List<Shortage> shortages =
        shortages(
            tube("tube")
                .longestStick("22'")
                .offer("24'", "49.00")
                .need("barn", "P1", 1, "9'")
                .make());
    assertEquals(Length.ZERO, ((Shortage.FitsNothing) shortages.get(0)).longestUsable());
  }

  @Test
  void missingSticksAreCountedInTheLimitedLengthThatIsWanted() {
    List<Shortage> shortages =
        shortages(
            tube("tube")
                .offer("24'", "49.00", 1, 2)
                .offer("20'", "41.00")
                .need("barn", "P1", 5, "22'")
                .need("barn", "P2", 3, "9'")
                .make());
    assertEquals(
        List.of(new Shortage.TooFewSticks("tube", OrderMaker.length("24'"), 3, true)), shortages);
  }

  @Test
  void aStickThatNoStockIsLikeIsAskedForAsLongAsItMustBe() {
    List<Shortage> shortages =
        shortages(tube("tube").rack("R1", "9'", Ends.SAWN).need("barn", "P1", 2, "9'").make());
    assertEquals(
        List.of(new Shortage.TooFewSticks("tube", OrderMaker.length("9'-5/8\""), 1, true)),
        shortages);
  }

  @Test
  void aStickOfEverySupplyIsUsedBeforeOneIsMissing() {
    List<Shortage> shortages =
        shortages(
            tube("tube")
                .offer("20'", "41.00", 2, 5)
                .onHand("20'", 1)
                .rack("R1", "9'", Ends.SAWN)
                .need("barn", "P1", 12, "9'-6\"")
                .need("barn", "P2", 1, "9'")
                .make());
    assertEquals(
        List.of(new Shortage.TooFewSticks("tube", OrderMaker.length("20'"), 1, true)), shortages);
  }

  @Test
  void aPlanIsMadeEvenWithNoTimeLeft() {
    OrderMaker maker = tube("tube").offer("20'", "41.00").offer("24'", "49.15");
    for (int i = 0; i < 40; i++) {
      maker.need("barn", "P" + i, 1 + i % 7, 13 + i * 5 + "\"");
    }
    MaterialPlan plan = planned(spent(), maker.make()).materials().get(0);
    assertTrue(plan.lowerBound() > 0);
    assertTrue(plan.lowerBound() <= plan.cost());
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233})
  void aStopAtAnyMomentLeavesAPlan(int questions) {
    OrderMaker maker = tube("tube").offer("20'", "41.00").offer("24'", "49.20");
    for (int i = 0; i < 20; i++) {
      maker.need("barn", "P" + i, 1 + i % 7, 13 + i * 11 + "\"");
    }
    AtomicInteger asked = new AtomicInteger();
    Effort effort = Effort.unlimited().alsoStoppedBy(() -> asked.getAndIncrement() >= questions);
    MaterialPlan plan = planned(effort, maker.make()).materials().get(0);
    assertTrue(plan.lowerBound() <= plan.cost());
  }

  @Test
  void aPlanThatIsKnownAlreadyIsNeverMadeWorse() {
    OrderMaker maker = tube("tube").offer("20'", "41.00").offer("24'", "49.15");
    for (int i = 0; i < 25; i++) {
      maker.need("barn", "P" + i, 1 + i % 7, 13 + i * 8 + "\"");
    }
    MaterialOrder order = maker.make();
    MaterialPlan best = planned(Effort.unlimited(), order).materials().get(0);
    List<LengthPattern> patterns =
        best.patterns().stream()
            .map(pattern -> LengthPattern.of(pattern, order.saw().kerf()))
            .toList();
    PlanResult again =
        OrderMaker.planner(1)
            .plan(OrderMaker.shop(), List.of(order), Map.of("tube", patterns), spent());
    assertTrue(((PlanResult.Planned) again).plan().plan().materials().get(0).cost() <= best.cost());
  }

  @Test
  void aKnownPlanForOtherPiecesIsLeftAside() {
    MaterialOrder order = tube("tube").offer("20'", "41.00").need("barn", "P", 3, "9'").make();
    MaterialOrder other = tube("tube").offer("20'", "41.00").need("barn", "P", 2, "9'").make();
    List<LengthPattern> patterns =
        planned(Effort.unlimited(), other).materials().get(0).patterns().stream()
            .map(pattern -> LengthPattern.of(pattern, order.saw().kerf()))
            .toList();
    PlanResult result =
        OrderMaker.planner(1)
            .plan(OrderMaker.shop(), List.of(order), Map.of("tube", patterns), Effort.unlimited());
    assertInstanceOf(PlanResult.Planned.class, result);
  }

  @Test
  void ticketsAndOffcutsAreNamedOnceOverAllMaterials() {
    OrderPlan plan =
        planned(
            Effort.unlimited(),
            tube("a")
                .offer("20'", "41.00")
                .need("barn", "P", 3, "9'")
                .need("barn", "Q", 2, "17'")
                .make(),
            tube("b")
                .offer("20'", "41.00")
                .need("barn", "P", 3, "9'")
                .need("barn", "Q", 2, "17'")
                .make());
    List<Pattern> tickets = new ArrayList<>();
    plan.materials().forEach(material -> tickets.addAll(material.patterns()));
    assertEquals(tickets.size(), tickets.stream().map(Pattern::ticket).distinct().count());
    List<String> names = tickets.stream().flatMap(ticket -> ticket.offcutNames().stream()).toList();
    assertTrue(names.size() > 2);
    assertEquals(names.size(), Set.copyOf(names).size());
  }

  @Test
  void progressNamesTheMaterial() {
    ConcurrentLinkedQueue<Progress> told = new ConcurrentLinkedQueue<>();
    plan(
        Effort.limited(() -> 0, Long.MAX_VALUE, () -> false, told::add),
        tube("a").offer("20'", "41.00").need("barn", "P", 3, "9'").make(),
        tube("b").offer("20'", "41.00").need("barn", "P", 3, "9'").make());
    Set<String> subjects = new HashSet<>();
    told.forEach(progress -> subjects.add(progress.subject()));
    assertEquals(Set.of("a", "b"), subjects);
  }

  @Test
  void anOrderOfNoMaterialIsAnEmptyPlan() {
    assertTrue(planned(Effort.unlimited()).materials().isEmpty());
  }
}
