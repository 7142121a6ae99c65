package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import lapwright.OrderMaker;
import lapwright.check.CheckedPlan;
import lapwright.compare.Comparisons;
import lapwright.compare.CostlyMark;
import lapwright.effort.Effort;
import lapwright.measure.Angle;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.CutRules;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.MaterialOrder;
import lapwright.shop.PieceEnds;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
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
            Comparisons.NONE,
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
    assertEquals(LocalDate.of(2026, 12, 3), WorkingDays.after(TODAY, 6));
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
    assertEquals(said.indexOf("passed over"), said.lastIndexOf("passed over"), said);
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

  /** Angled ends: the piece is as long as its long points, and its cuts are wider than the kerf. */
  @Test
  void anAngledPieceThatMissesAStickByACut() {
    String said = attention(OrderMaker.shop(), braces("11'-11-15/16\""));
    assertTrue(said.contains("2 times fails to fit 24'-0\" from mill by "), said);
    assertEquals("", attention(OrderMaker.shop(), braces("11'-11-3/4\"")));
  }

  /** 45 degrees: a cut of 3/32" is a little less than 9/64" wide along the stick. */
  private static MaterialOrder braces(String length) {
    return new OrderMaker("cee")
        .saw("3/32\"", "0\"", "0\"")
        .millEndsGood()
        .offer("24'", "20.60")
        .need(
            "barn",
            "B1",
            4,
            length,
            new CutRules(
                new PieceEnds(Angle.ofDegrees(45), Angle.ofDegrees(45), false),
                OrderMaker.length("2\""),
                false,
                Length.ZERO))
        .make();
  }

  @Test
  void aPieceThatMayBeShortMissesAtItsShortest() {
    String fits = attention(OrderMaker.shop(), shortable("12'-0\"", "1/4\""));
    assertFalse(fits.contains("fails to fit"), fits);
    assertTrue(fits.contains("2 pieces are cut shorter than asked for"), fits);
    String said = attention(OrderMaker.shop(), shortable("12'-0-1/4\"", "1/4\""));
    assertTrue(said.contains("2 times fails to fit 24'-0\" from mill by 3/32\""), said);
  }

  private static MaterialOrder shortable(String length, String by) {
    return new OrderMaker("cee")
        .saw("3/32\"", "0\"", "0\"")
        .millEndsGood()
        .offer("24'", "20.60")
        .need(
            "barn",
            "U1",
            4,
            length,
            new CutRules(PieceEnds.SQUARE, Length.ZERO, false, OrderMaker.length(by)))
        .make();
  }

  /** A brace that makes the order a pack of five longer, and the same where sticks come singly. */
  @Test
  void aMarkThatAloneCostsTwoSticks() {
    String said = costly(5);
    assertTrue(
        said.contains(
            "tube: B1 of shed (1 piece of 3'-10\") alone costs 5 sticks, $205.00, and would fill 1"
                + " end to end"),
        said);
    assertTrue(said.contains("ask for single sticks"), said);
    assertEquals("", costly(1));
  }

  private static String costly(int soldIn) {
    MaterialOrder order =
        tube()
            .offer("20'", "41.00", soldIn, 1_000)
            .need("shed", "P1", 5, "17'-0\"")
            .need("shed", "B1", 1, "3'-10\"")
            .make();
    CheckedPlan plan = PlannedPapers.plan(OrderMaker.shop(), order);
    List<CostlyMark> marks =
        CostlyMark.of(
                OrderMaker.planner(1),
                OrderMaker.shop(),
                plan.plan().materials().get(0),
                Effort.unlimited())
            .stream()
            .toList();
    return OrderPaper.of(plan, new Comparisons(null, List.of(), marks, List.of()), OrderFacts.NONE)
        .attention()
        .stream()
        .map(line -> line.what() + ": " + line.advice() + "\n")
        .collect(Collectors.joining());
  }

  /** Good until yesterday, and until today. */
  @Test
  void aPriceThatIsOutOfDate() {
    String said = attention(OrderMaker.shop(), quotedUntil(TODAY.minusDays(1)));
    assertTrue(said.contains("2026-11-24"), said);
    assertTrue(said.contains("ask for today's price"), said);
    assertEquals("", attention(OrderMaker.shop(), quotedUntil(TODAY)));
  }

  private static MaterialOrder quotedUntil(LocalDate day) {
    MaterialOrder order = twoPosts(LATER);
    return order.withSupplies(
        List.of(
            new Supply.Offer(
                "mill",
                OrderMaker.length("20'"),
                new Price(new BigDecimal("41.00"), Price.Per.EACH),
                1,
                OrderMaker.NO_LIMIT,
                "",
                null,
                day)));
  }

  /** Not proved, 20 ft sticks can be had for less than those that the plan buys. */
  @Test
  void moreSticksForLessMoneyThanAnUnprovedPlanBuys() {
    MaterialOrder order =
        tube().offer("20'", "41.00").offer("24'", "40.00").need("shed", "P1", 2, "9'-6\"").make();
    MaterialPlan plan = PlannedPapers.plan(OrderMaker.shop(), order).plan().materials().get(0);
    assertEquals(List.of(), StockFit.of(OrderMaker.shop(), plan));
    MaterialPlan dearer =
        new MaterialPlan(
            order,
            List.of(new Purchase(order.supplies().get(0).key(), 1)),
            plan.patterns(),
            410_000,
            410_000,
            0,
            Proof.OPEN,
            plan.certificate(),
            plan.account());
    String said =
        StockFit.of(OrderMaker.shop(), dearer).stream()
            .map(Attention::what)
            .collect(Collectors.joining());
    assertTrue(said.contains("1 stick of 24'-0\" from mill would cost $40.00"), said);
  }

  /**
   * Two lines of 36', joined where bearings are: each is a stick of 24' and a piece of 12', of
   * which two miss a stick by the cut between them. Joined anywhere, lengths are the plan's own
   * choice.
   */
  @Test
  void piecesOfARunWhoseJointsAreGiven() {
    String said =
        attention(
            OrderMaker.shop(),
            lines(new JointPlaces.At(List.of(Length.ofFeet(12, 0), Length.ofFeet(24, 0)))));
    assertTrue(said.contains("of barn (12'-0\") 2 times fails to fit 24'-0\" from mill"), said);
    String anywhere = attention(OrderMaker.shop(), lines(new JointPlaces.Anywhere()));
    assertFalse(anywhere.contains("fails to fit"), anywhere);
  }

  private static MaterialOrder lines(JointPlaces places) {
    return new OrderMaker("cee")
        .saw("3/32\"", "0\"", "0\"")
        .millEndsGood()
        .offer("24'", "20.60")
        .run(
            "barn",
            "U1",
            2,
            "36'",
            JointRules.of(new JointRules.Joint.Butt(Length.ZERO), Length.ofSixteenths(1))
                .at(places))
        .make();
  }
}
