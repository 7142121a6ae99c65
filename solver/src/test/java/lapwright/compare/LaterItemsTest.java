package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lapwright.ItemBuying;
import lapwright.OrderMaker;
import lapwright.check.PlacedCheck;
import lapwright.check.PlacedVerdict;
import lapwright.compare.LaterItems.ItemCount;
import lapwright.measure.Price;
import lapwright.plan.ItemPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;
import org.junit.jupiter.api.Test;

/** Items that are ordered again later: only the difference, and what is left over first. */
final class LaterItemsTest {
  private static final ItemStock PACKS = stock(0, Integer.MAX_VALUE);

  /** Packs of 100 at 5.00. */
  private static ItemStock stock(int onHand, int atMost) {
    return new ItemStock(
        "screw",
        List.of(
            new ItemStock.Offer(
                "mill",
                new Price(new BigDecimal("5.00"), Price.Per.PACK),
                100,
                atMost,
                "",
                null,
                null)),
        onHand);
  }

  private static ItemOrder.Need need(String job, int copies, int qty) {
    return new ItemOrder.Need(job, null, copies, qty, 1);
  }

  private static ItemOrder now(ItemStock stock, ItemOrder.Need... needs) {
    return new ItemOrder(stock, 0, List.of(needs));
  }

  private static OrderPlan order(ItemPlan... items) {
    return new OrderPlan(OrderMaker.shop(), List.of(), List.of(items), null);
  }

  private final List<OrderPlan> placed = new ArrayList<>();

  private void place(ItemOrder order) {
    placed.add(order(ItemBuying.buy(order)));
  }

  private LaterItems later(ItemOrder... now) {
    return LaterItems.of(placed, List.of(now), job -> !job.equals("done"));
  }

  /** Places what comes later, and has all orders checked together. */
  private ItemPlan placeLater(ItemOrder now) {
    LaterItems later = later(now);
    assertEquals(1, later.orders().size());
    ItemPlan plan = ItemBuying.buy(later.orders().get(0));
    placed.add(order(plan));
    PlacedVerdict verdict = PlacedCheck.check(placed);
    assertInstanceOf(PlacedVerdict.Sound.class, verdict, verdict.toString());
    return plan;
  }

  @Test
  void nothingChangedBuysNothing() {
    place(now(PACKS, need("barn", 2, 60), need("shed", 1, 10)));
    assertEquals(
        new LaterItems(List.of(), List.of()),
        later(now(PACKS, need("barn", 2, 60), need("shed", 1, 10))));
  }

  /** 130 of 200 are needed; 70 are left over. 60 more need none, then 20 more need a pack. */
  @Test
  void whatIsLeftOverServesFirst() {
    place(now(PACKS, need("barn", 2, 60), need("shed", 1, 10)));
    ItemPlan first = placeLater(now(PACKS, need("barn", 2, 80), need("shed", 1, 30)));
    assertEquals(0, first.cost());
    assertEquals(10, first.leftOver());
    ItemPlan second = placeLater(now(PACKS, need("barn", 2, 80), need("shed", 1, 50)));
    assertEquals(50_000, second.cost());
    assertEquals(90, second.leftOver());
    assertEquals(List.of(), later(now(PACKS, need("barn", 2, 80), need("shed", 1, 50))).orders());
  }

  @Test
  void anotherCopyNeedsItsOwn() {
    place(now(PACKS, need("barn", 2, 60)));
    LaterItems later = later(now(PACKS, need("barn", 3, 60)));
    assertEquals(
        List.of(new ItemOrder.Need("barn", null, 1, 60, 3)), later.orders().get(0).needs());
    assertEquals(List.of(new ItemCount("screw", "barn", 120, 180)), later.changed());
  }

  /** Barn gives back 100 of its 120: with 80 left over 180 serve the shed's 180. */
  @Test
  void whatOneJobGivesBackServesAnother() {
    place(now(PACKS, need("barn", 2, 60)));
    ItemPlan more = placeLater(now(PACKS, need("barn", 2, 10), need("shed", 1, 180)));
    assertEquals(0, more.cost());
    assertEquals(0, more.leftOver());
    assertEquals(List.of(), later(now(PACKS, need("barn", 2, 10), need("shed", 1, 180))).changed());
  }

  @Test
  void aJobThatIsDoneKeepsWhatItHad() {
    place(now(PACKS, need("done", 1, 100)));
    ItemPlan more = placeLater(now(PACKS, need("shed", 1, 1)));
    assertEquals(50_000, more.cost());
  }

  @Test
  void whatCouldNotBeHadIsBoughtOnceSomebodySellsIt() {
    place(now(ItemStock.unknown("screw"), need("barn", 1, 130)));
    assertEquals(-130, placed.get(0).items().get(0).leftOver());
    assertEquals(List.of(), later(now(ItemStock.unknown("screw"), need("barn", 1, 130))).orders());
    ItemPlan more = placeLater(now(PACKS, need("barn", 1, 130)));
    assertEquals(100_000, more.cost());
    assertEquals(0, more.missing());
  }

  @Test
  void limitsAndPiecesOnHandAreUsedOnce() {
    place(now(stock(30, 300), need("barn", 1, 200)));
    assertEquals(30, placed.get(0).items().get(0).fromOnHand());
    ItemPlan more = placeLater(now(stock(30, 300), need("barn", 1, 500)));
    // 170 were bought as 200; of the 300 more, 30 are left over, 100 can be bought.
    assertEquals(0, more.fromOnHand());
    assertEquals(100, more.bought());
    assertEquals(170, more.missing());
  }

  @Test
  void aCountThatIsTakenOffAlreadyIsNoticed() {
    place(now(stock(30, 300), need("barn", 1, 200)));
    List<ItemOrder> before = List.of(now(stock(30, 300), need("barn", 1, 200)));
    // Nothing of the 30 and 30 of the 200 bought are left: the same number, so nothing to notice.
    assertEquals(List.of(), LaterItems.countedOff(placed, before));
    placed.clear();
    place(now(stock(30, 300), need("barn", 1, 180)));
    assertEquals(
        List.of("screw"),
        LaterItems.countedOff(placed, List.of(now(stock(50, 300), need("barn", 1, 180)))));
  }

  @Test
  void thePlacedCheckFindsWhatWasNotLeft() {
    place(now(PACKS, need("barn", 1, 130)));
    ItemOrder tooMuch = new ItemOrder(PACKS, 80, List.of(need("shed", 1, 80)));
    placed.add(order(ItemBuying.buy(tooMuch)));
    assertInstanceOf(PlacedVerdict.Broken.class, PlacedCheck.check(placed));
    placed.remove(1);
    ItemOrder givesBack = new ItemOrder(PACKS, 70, List.of(need("barn", 1, -131)));
    placed.add(order(ItemBuying.buy(givesBack)));
    assertInstanceOf(PlacedVerdict.Broken.class, PlacedCheck.check(placed));
  }

  /** Job by job: 130 take two packs, 70 left over; 60 take none; 20 take one. Together three. */
  @Test
  void savedByCombiningCountsPacksThatJobsShare() {
    ItemStock odd =
        new ItemStock(
            "screw",
            List.of(
                PACKS.offers().get(0),
                new ItemStock.Offer(
                    "mill",
                    new Price(new BigDecimal("12.00"), Price.Per.PACK),
                    300,
                    Integer.MAX_VALUE,
                    "",
                    null,
                    null)),
            0);
    ItemPlan together =
        ItemBuying.buy(now(odd, need("a", 1, 130), need("b", 1, 60), need("c", 1, 20)));
    assertEquals(
        new ItemSaving("screw", true, List.of("a", "b", "c"), 120_000, 150_000),
        ItemsJobByJob.saving(together));
  }
}
