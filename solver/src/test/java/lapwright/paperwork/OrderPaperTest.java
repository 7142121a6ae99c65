package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import lapwright.OrderMaker;
import lapwright.RandomOrders;
import lapwright.compare.Comparisons;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.paperwork.OrderPaper.BuyLine;
import lapwright.plan.Proof;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

final class OrderPaperTest {
  @Test
  void eightSticksAndAnOffcut() {
    OrderPaper paper =
        OrderPaper.of(PlannedPapers.postsAndBraces(), Comparisons.NONE, OrderFacts.NONE);
    assertEquals(8, paper.sticksBought());
    assertEquals(List.of("shed"), paper.jobs());
    assertEquals(List.of("shed"), paper.withoutDueDay());
    OrderPaper.MoneyFigures money = Objects.requireNonNull(paper.money());
    assertEquals(Money.ofCents(32_800), money.cost());
    assertEquals(Money.ofCents(32_800), money.billed());
    assertEquals(Money.ofCents(32_800), money.cash());
    assertEquals("mill", paper.suppliers().get(0).supplier());
    assertEquals(1, paper.rack().size());
    // 119 in of 240 in at $41.00 is $20.3292 to the nearest 1/10,000.
    assertEquals(new Money(203_292), paper.rack().get(0).worth());
    assertEquals(Proof.PROVED, paper.proofs().get(0).proof());
    assertNull(paper.saving());
  }

  /**
   * By hand: 28 roof lengths of 13'-4" at $2.0875 a foot are $779.33 rounded once and $779.24
   * rounded each.
   */
  @Test
  void invoicesRoundALineOrEach() {
    assertEquals(Money.ofCents(77_933), billed(Supplier.Rounds.LINE));
    assertEquals(Money.ofCents(77_924), billed(Supplier.Rounds.EACH));
  }

  private static Money billed(Supplier.Rounds rounds) {
    Supplier supplier = new Supplier("tidewater", null, "", null, null, null, null, rounds);
    Shop shop = new Shop("Shop", "USD", Shop.Units.FEET_INCHES, true, List.of(supplier));
    Length length = OrderMaker.length("13'-4\"");
    MaterialOrder order =
        new MaterialOrder(
            new Material("rib", "rib", "shear", true, Length.ZERO, Length.ZERO, null),
            new Saw("shear", Length.ZERO, Length.ZERO, Length.ZERO, null),
            true,
            List.of(
                new Supply.Offer(
                    "tidewater",
                    length,
                    new Price(new BigDecimal("2.0875"), Price.Per.FOOT),
                    1,
                    Integer.MAX_VALUE,
                    "",
                    null,
                    null)),
            List.of(new Need("barn", null, 1, "R1", length, 28, "")));
    OrderPaper paper =
        OrderPaper.of(PlannedPapers.plan(shop, order), Comparisons.NONE, OrderFacts.NONE);
    // 13'-4" at 2.0875 is 27.8333..., rounded once to 1/10,000 as the price of what is sold at
    // once.
    assertEquals(new Money(28 * 278_333L), Objects.requireNonNull(paper.money()).cost());
    return Objects.requireNonNull(paper.money()).billed();
  }

  @Test
  void aPriceOutOfDateCallsForAttentionUntilItsLastDayIsOver() {
    LocalDate last = LocalDate.of(2026, 12, 11);
    assertTrue(attention(last, last).isEmpty());
    assertEquals(1, attention(last, last.plusDays(1)).size());
  }

  private static List<OrderFacts.Attention> attention(LocalDate goodUntil, LocalDate today) {
    MaterialOrder plain = new OrderMaker("bar").need("shed", "A", 1, "1 m").make();
    MaterialOrder order =
        new MaterialOrder(
            plain.material(),
            plain.saw(),
            true,
            List.of(
                new Supply.Offer(
                    "mill",
                    Length.ofMm(1000),
                    new Price(BigDecimal.ONE, Price.Per.EACH),
                    1,
                    Integer.MAX_VALUE,
                    "",
                    null,
                    goodUntil)),
            plain.needs());
    return OrderPaper.of(
            PlannedPapers.plan(order),
            Comparisons.NONE,
            new OrderFacts(today, List.of(), List.of(), List.of()))
        .attention();
  }

  @Property(tries = 200, seed = "9")
  void linesAddUpToTheCostOfThePlan(@ForAll long seed) {
    MaterialOrder order = RandomOrders.small(new Random(seed)).make();
    PlannedPapers.planIfPossible(order)
        .map(plan -> OrderPaper.of(plan, Comparisons.NONE, OrderFacts.NONE))
        .ifPresent(
            paper -> {
              if (order.isPriced()) {
                assertMoneyAddsUp(paper, order.onHandValued());
              } else {
                assertNull(paper.money());
                assertLengthAddsUp(paper);
              }
            });
  }

  private static void assertMoneyAddsUp(OrderPaper paper, boolean onHandValued) {
    OrderPaper.MoneyFigures money = Objects.requireNonNull(paper.money());
    Money bought =
        paper.suppliers().stream()
            .flatMap(part -> part.lines().stream())
            .map(BuyLine::exact)
            .reduce(Money.ZERO, Money::plus);
    assertEquals(money.cash(), bought);
    Money onHand =
        paper.onHand().stream()
            .map(line -> Objects.requireNonNull(line.worth()))
            .reduce(Money.ZERO, Money::plus);
    assertEquals(money.onHand(), onHandValued ? onHand : Money.ZERO);
  }

  private static void assertLengthAddsUp(OrderPaper paper) {
    Length onHand =
        paper.onHand().stream()
            .map(line -> line.supply().length().times(line.sticks()))
            .reduce(Length.ZERO, Length::plus);
    long cost = paper.proofs().get(0).cost();
    Length bought = paper.boughtWithoutPrice();
    assertTrue(
        cost == bought.units() || cost == bought.plus(onHand).units(),
        "cost " + cost + ", bought " + bought + ", on hand " + onHand);
  }

  @Test
  void aGapIsRoundedUp() {
    ProofFigure figure = new ProofFigure(Proof.OPEN, true, 1_000_000, 999_999, 1, false);
    assertEquals(1, figure.gapThousandths());
    assertEquals(0, new ProofFigure(Proof.PROVED, true, 0, 0, 0, true).gapThousandths());
    assertEquals(1000, new ProofFigure(Proof.OPEN, true, 500, 0, 1, false).gapThousandths());
  }
}
