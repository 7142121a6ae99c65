package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import lapwright.OrderMaker;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Each line where it is true, and not where it is not. */
final class AttentionTest {
  /** A Wednesday. */
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

  private static Shop shop(
      @Nullable Integer days, @Nullable String minimum, @Nullable String freight, String freeFrom) {
    return new Shop(
        "Shop",
        "USD",
        Shop.Units.FEET_INCHES,
        true,
        List.of(
            new Supplier(
                "mill",
                days,
                "",
                cents(minimum),
                cents(freight),
                cents(freeFrom.isEmpty() ? null : freeFrom),
                null,
                Supplier.Rounds.LINE)));
  }

  private static @Nullable Money cents(@Nullable String cents) {
    return cents == null ? null : Money.ofCents(Long.parseLong(cents));
  }

  private static OrderMaker tube() {
    return new OrderMaker("tube").saw("3/32\"", "1/2\"", "3\"").keep("24\"");
  }

  private static String attention(Shop shop, MaterialOrder order) {
    return OrderPaper.of(
            PlannedPapers.plan(shop, order),
            null,
            new OrderFacts(TODAY, List.of(), List.of(), List.of()))
        .attention()
        .stream()
        .map(line -> line.what() + ": " + line.advice() + "\n")
        .collect(Collectors.joining());
  }

  private static MaterialOrder twoPosts(LocalDate due) {
    return tube()
        .offer("20'", "41.00")
        .need("shed", due, 1, "P1", 2, OrderMaker.length("9'-6\""))
        .make();
  }

  private static final LocalDate LATER = LocalDate.of(2026, 12, 31);

  @Test
  void quietWhereThereIsNothing() {
    assertEquals("", attention(OrderMaker.shop(), twoPosts(LATER)));
  }

  @Test
  void minimumNotMetAndByHowMuch() {
    String said = attention(shop(null, "5000", null, ""), twoPosts(LATER));
    assertTrue(said.contains("minimum of $50.00 is not met by $9.00"), said);
    assertEquals("", attention(shop(null, "4100", null, ""), twoPosts(LATER)));
  }

  /** Free from $80: a second stick at $41.00 saves delivery at $60.00, one at $40.00 not. */
  @Test
  void oneMoreStickThatIsCheaperThanNone() {
    String said = attention(shop(null, null, "6000", "8000"), twoPosts(LATER));
    assertTrue(said.contains("1 stick more would be cheaper than none"), said);
    assertTrue(said.contains("reach for $41.00"), said);
    assertEquals("", attention(shop(null, null, "4000", "8000"), twoPosts(LATER)));
    assertEquals("", attention(shop(null, null, "6000", "4100"), twoPosts(LATER)));
  }

  /** From Wednesday, six working days end on the Thursday of the week after. */
  @Test
  void dueBeforeTheSupplierDelivers() {
    assertEquals(LocalDate.of(2026, 12, 3), SupplierTerms.arrival(TODAY, 6));
    String said = attention(shop(6, null, null, ""), twoPosts(LocalDate.of(2026, 12, 2)));
    assertTrue(said.contains("for shed comes after it is due on 2026-12-02"), said);
    assertTrue(said.contains("until 2026-12-03"), said);
    assertEquals("", attention(shop(6, null, null, ""), twoPosts(LocalDate.of(2026, 12, 3))));
  }

  @Test
  void sticksLongerThanTheSawTakes() {
    OrderMaker maker =
        tube().offer("20'", "41.00").offer("30'", "61.00").need("shed", "P1", 2, "9'-6\"");
    String said = attention(OrderMaker.shop(), maker.longestStick("24'").make());
    assertTrue(said.contains("no stick longer than 24'-0\": 30'-0\" from mill"), said);
    assertFalse(
        attention(OrderMaker.shop(), maker.longestStick("30'").make()).contains("passed over"));
  }

  /** Mill ends good: two pieces of 12'-0" and the cut between them miss 24' by that cut. */
  @Test
  void aPieceThatMissesAStickByACut() {
    String said = attention(OrderMaker.shop(), purlins("12'-0\""));
    assertTrue(said.contains("2 times fails to fit 24'-0\" from mill by 3/32\""), said);
    assertTrue(said.contains("each may be 1/16\" shorter"), said);
    // 1/16" shorter each, they fit; 1/16" longer each, they miss it by more than a cut.
    assertEquals("", attention(OrderMaker.shop(), purlins("11'-11-15/16\"")));
    assertEquals("", attention(OrderMaker.shop(), purlins("12'-0-1/16\"")));
  }

  private static MaterialOrder purlins(String length) {
    return new OrderMaker("cee")
        .saw("3/32\"", "0\"", "3\"")
        .millEndsGood()
        .offer("24'", "20.60")
        .need("barn", "U1", 4, length)
        .make();
  }

  @Test
  void aMissNeedsAsManyPiecesAsWouldFit() {
    MaterialOrder one =
        new OrderMaker("cee")
            .saw("3/32\"", "0\"", "3\"")
            .millEndsGood()
            .offer("24'", "20.60")
            .need("barn", "U1", 1, "12'-0\"")
            .make();
    assertEquals("", attention(OrderMaker.shop(), one));
    assertEquals(Length.ofFeet(12, 0), one.needs().get(0).length());
  }
}
