package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import lapwright.check.PlanCheck;
import lapwright.check.Rule;
import lapwright.check.Verdict;
import lapwright.measure.Price;
import lapwright.plan.ItemPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Packs of items, counted by hand and against trying everything. */
final class ItemBuyingTest {
  private static final int NO_LIMIT = Integer.MAX_VALUE;

  private static ItemStock.Offer pack(String supplier, int pieces, String price, int atMost) {
    return new ItemStock.Offer(
        supplier, new Price(new BigDecimal(price), Price.Per.PACK), pieces, atMost, "", null, null);
  }

  private static ItemOrder order(int qty, int onHand, ItemStock.Offer... offers) {
    return new ItemOrder(
        new ItemStock("screw", List.of(offers), onHand),
        0,
        List.of(new ItemOrder.Need("barn", null, 1, qty, 1)));
  }

  private static ItemPlan checked(ItemPlan plan) {
    Verdict verdict = PlanCheck.check(plan(plan));
    assertInstanceOf(Verdict.Sound.class, verdict, verdict.toString());
    return plan;
  }

  private static OrderPlan plan(ItemPlan... items) {
    return new OrderPlan(OrderMaker.shop(), List.of(), List.of(items), null);
  }

  private static String bought(ItemOrder order) {
    ItemPlan plan = checked(ItemBuying.buy(order));
    return plan.purchases().stream()
            .map(purchase -> purchase.packs() + " x " + purchase.supply())
            .collect(Collectors.joining(", "))
        + " for "
        + plan.cost()
        + (plan.missing() == 0 ? "" : ", missing " + plan.missing());
  }

  /** 1450 of packs of 250 at 18.40: six, 110.40. Of 1000 at 61.00: one and two, 97.80. */
  @Test
  void packsOfSeveralSizesMixWhereThatCostsLess() {
    ItemStock.Offer small = pack("larkmoor", 250, "18.40", NO_LIMIT);
    ItemStock.Offer large = pack("larkmoor", 1000, "61.00", NO_LIMIT);
    assertEquals("6 x buy:larkmoor:250 for 1104000", bought(order(1450, 0, small)));
    assertEquals(
        "2 x buy:larkmoor:250, 1 x buy:larkmoor:1000 for 978000",
        bought(order(1450, 0, small, large)));
  }

  @Test
  void roundsUpToWholePacksAndTakesWhatIsThereFirst() {
    ItemStock.Offer pack = pack("larkmoor", 250, "18.40", NO_LIMIT);
    assertEquals("1 x buy:larkmoor:250 for 184000", bought(order(250, 0, pack)));
    assertEquals("2 x buy:larkmoor:250 for 368000", bought(order(251, 0, pack)));
    assertEquals("1 x buy:larkmoor:250 for 184000", bought(order(251, 1, pack)));
    assertEquals(" for 0", bought(order(251, 251, pack)));
  }

  @Test
  void equalCostIsDecidedByFewerPacksThenByTheName() {
    assertEquals(
        "1 x buy:b:100 for 100000",
        bought(order(100, 0, pack("a", 50, "5.00", NO_LIMIT), pack("b", 100, "10.00", NO_LIMIT))));
    assertEquals(
        "2 x buy:a:50 for 100000",
        bought(order(100, 0, pack("b", 50, "5.00", NO_LIMIT), pack("a", 50, "5.00", NO_LIMIT))));
  }

  @Test
  void whatCannotBeHadIsMissingAndStopsNothing() {
    assertEquals(" for 0, missing 70", bought(order(70, 0)));
    assertEquals(
        "4 x buy:a:10 for 80000, missing 25", bought(order(70, 5, pack("a", 10, "2.00", 49))));
  }

  @Test
  void withoutPricesAsFewPiecesAsWillDo() {
    ItemStock.Offer hundred = new ItemStock.Offer("a", null, 100, NO_LIMIT, "", null, null);
    ItemStock.Offer thirty = new ItemStock.Offer("b", null, 30, NO_LIMIT, "", null, null);
    assertEquals("4 x buy:b:30 for 120", bought(order(115, 0, hundred, thirty)));
    assertEquals("1 x buy:a:100, 1 x buy:b:30 for 130", bought(order(125, 0, hundred, thirty)));
  }

  @Test
  void aMillionPiecesSoldSinglyAreNoTrouble() {
    ItemPlan plan =
        checked(
            ItemBuying.buy(
                order(
                    999_999,
                    0,
                    pack("a", 1, "0.08", NO_LIMIT),
                    pack("a", 250, "19.99", NO_LIMIT),
                    pack("b", 1000, "79.95", 400_000))));
    assertTrue(plan.bought() >= 999_999);
  }

  /** Everything that can be bought, tried. */
  private static long least(List<ItemStock.Offer> offers, int at, long wanted) {
    if (wanted <= 0) {
      return 0;
    }
    if (at == offers.size()) {
      return Long.MAX_VALUE;
    }
    ItemStock.Offer offer = offers.get(at);
    long best = Long.MAX_VALUE;
    long enough = (wanted + offer.soldIn() - 1) / offer.soldIn();
    for (long packs = 0; packs <= Math.min(enough, offer.atMostPacks()); packs++) {
      long rest = least(offers, at + 1, wanted - packs * offer.soldIn());
      if (rest < Long.MAX_VALUE) {
        best = Math.min(best, rest + packs * offer.packPrice().tenThousandths());
      }
    }
    return best;
  }

  @Property(tries = 400, seed = "20261125")
  void costsTheLeast(
      @ForAll @IntRange(min = 0, max = 90) int wanted,
      @ForAll @Size(min = 1, max = 3) List<@IntRange(min = 1, max = 999) Integer> kinds) {
    List<ItemStock.Offer> offers = new ArrayList<>();
    for (int kind : kinds) {
      int pieces = 1 + kind % 13;
      int atMost = kind % 3 == 0 ? kind % 50 : NO_LIMIT;
      offers.add(pack("s" + offers.size(), pieces, 1 + kind % 29 + ".00", atMost));
    }
    ItemPlan plan =
        checked(ItemBuying.buy(order(wanted + 1, 0, offers.toArray(ItemStock.Offer[]::new))));
    assertEquals(least(offers, 0, wanted + 1L - plan.missing()), plan.cost());
  }

  private static void assertBroken(Rule rule, ItemPlan... items) {
    Verdict.Broken broken =
        assertInstanceOf(Verdict.Broken.class, PlanCheck.check(plan(items)), rule.statement());
    assertTrue(
        broken.faults().stream().anyMatch(fault -> fault.rule() == rule),
        broken.faults().toString());
  }

  @Test
  void theCheckFindsEveryMistake() {
    ItemStock.Offer small = pack("a", 250, "18.40", 1000);
    ItemStock.Offer large = pack("a", 1000, "61.00", NO_LIMIT);
    ItemOrder order = order(600, 20, small, large);
    ItemPlan right = checked(ItemBuying.buy(order));
    assertEquals(List.of(new Purchase(small.key(), 3)), right.purchases());
    assertBroken(Rule.ITEM, right, right);
    assertBroken(Rule.ITEM, new ItemPlan(order, 0, right.purchases(), 0, right.cost()));
    assertBroken(Rule.ITEM_PACKS, new ItemPlan(order, 20, right.purchases(), 1, right.cost()));
    assertBroken(
        Rule.ITEM_PACKS,
        new ItemPlan(order, 20, List.of(new Purchase(small.key(), 2)), 0, 368_000));
    assertBroken(
        Rule.ITEM_PACKS,
        new ItemPlan(order, 20, List.of(new Purchase(small.key(), 5)), 0, 920_000));
    assertBroken(Rule.ITEM_COST, new ItemPlan(order, 20, right.purchases(), 0, 551_999));
    // Whole and true, but not the cheapest.
    assertBroken(
        Rule.ITEM_COST, new ItemPlan(order, 20, List.of(new Purchase(large.key(), 1)), 0, 610_000));
    assertBroken(Rule.ITEM, new ItemPlan(order, 20, List.of(new Purchase("buy:b:1", 1)), 0, 1));
  }
}
