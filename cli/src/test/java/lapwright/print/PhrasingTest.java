package lapwright.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lapwright.Shortage;
import lapwright.compare.MaterialSaving;
import lapwright.compare.Saving;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;
import lapwright.paperwork.Deliveries;
import lapwright.paperwork.OrderFacts;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.ProofFigure;
import lapwright.plan.Proof;
import lapwright.shop.Need;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** What the papers say in words. */
final class PhrasingTest {
  private static final MoneyStyle DOLLARS = new MoneyStyle("USD");
  private static final Style STYLE = Style.plain(LengthStyle.FEET_INCHES);

  private static String proof(
      Proof proof, long cost, long bound, int unproved, boolean withinOneStick) {
    return Phrases.proof(
        new ProofFigure(proof, true, cost, bound, unproved, withinOneStick),
        DOLLARS,
        LengthStyle.FEET_INCHES);
  }

  @Test
  void aProofSaysHowSureItIs() {
    assertEquals("Proved: no plan costs less.", proof(Proof.PROVED, 100, 100, 0, true));
    assertEquals(
        "Open: within 1 stick; no plan can do with less than $99.00.",
        proof(Proof.OPEN, 1_000_000, 990_000, 1, true));
    assertEquals(
        "Open: within 1 stick in each of 3 materials; no plan can do with less than $99.00.",
        proof(Proof.OPEN, 1_000_000, 990_000, 3, true));
    assertEquals(
        "Open: within 0.4 %; no plan can do with less than $99.61.",
        proof(Proof.OPEN, 1_000_000, 996_100, 1, false));
    assertTrue(proof(Proof.CLAIMED, 1_000_000, 996_100, 1, true).startsWith("Claimed: "));
    assertEquals(
        "Proved: no plan takes less stock.",
        Phrases.proof(
            new ProofFigure(Proof.PROVED, false, 5, 5, 0, true), DOLLARS, LengthStyle.FEET_INCHES));
  }

  private static String saving(
      MaterialSaving.JobByJob jobByJob, long together, long cash, boolean proved) {
    Page page = new Page(STYLE);
    new SavingText(
            new Saving(
                List.of(
                    new MaterialSaving(
                        "tube", true, List.of("a", "b"), together, cash, proved, jobByJob, null))),
            DOLLARS,
            page)
        .write();
    return page.printed().replaceAll("\\s+", " ");
  }

  @Test
  void anHonestNothingIsSaid() {
    String text =
        saving(new MaterialSaving.JobByJob(410_000, 410_000, true), 410_000, 410_000, true);
    assertTrue(text.contains("Saved by combining: nothing"), text);
    assertTrue(text.contains("Both ways are proved."), text);
  }

  @Test
  void whatIsSavedIsAShareOfJobByJob() {
    String text =
        saving(new MaterialSaving.JobByJob(820_000, 820_000, true), 410_000, 410_000, true);
    assertTrue(text.contains("$41.00 (50.00 %) of the $82.00 that job by job"), text);
  }

  @Test
  void cashThatRisesIsSaid() {
    String text = saving(new MaterialSaving.JobByJob(820_000, 0, true), 410_000, 410_000, true);
    assertTrue(text.contains("To pay now: $41.00 more than job by job"), text);
  }

  @Test
  void aSavingThatIsNotProvedSaysWhichWayItMayBeWrong() {
    assertTrue(
        saving(new MaterialSaving.JobByJob(820_000, 820_000, false), 410_000, 410_000, true)
            .contains("may be smaller"));
    assertTrue(
        saving(new MaterialSaving.JobByJob(820_000, 820_000, true), 410_000, 410_000, false)
            .contains("may be larger"));
  }

  @Test
  void aJobThatHasNoPlanByItselfIsNamed() {
    Page page = new Page(STYLE);
    new SavingText(
            new Saving(
                List.of(
                    new MaterialSaving("tube", true, List.of("a", "b"), 1, 1, true, null, "b"))),
            DOLLARS,
            page)
        .write();
    assertTrue(page.printed().contains("the jobs before b"), page.printed());
  }

  @Test
  void numbersReadAsPeopleWriteThem() {
    assertEquals("1.0832", Phrases.factor(new Percent(10_832)));
    assertEquals("0.0500", Phrases.factor(new Percent(500)));
    assertEquals("12.0000", Phrases.factor(new Percent(120_000)));
    assertEquals("$1,067.8764", Phrases.unrounded(new Money(10_678_764), DOLLARS));
    assertEquals("$1,067.00", Phrases.unrounded(new Money(10_670_000), DOLLARS));
    assertEquals("a, b and c", Phrases.list(List.of("a", "b", "c")));
    assertEquals("1 stick", Phrases.sticks(1));
    assertEquals("1,200 sticks", Phrases.sticks(1200));
  }

  @Test
  void shortagesNameThePiecesAndTheSticks() {
    Need tooLong = new Need("barn", null, 1, "P9", HandMadeWeek.length("25'-1/64\""), 3, "");
    String text =
        ShortageText.render(
            List.of(
                new Shortage.FitsNothing("tube", List.of(tooLong), HandMadeWeek.length("19'-11\"")),
                new Shortage.TooFewSticks("cee", HandMadeWeek.length("24'"), 2, true),
                new Shortage.TooFewOfLots(
                    "trim",
                    List.of(
                        new Shortage.TooFewOfLots.OfMaker(
                            "pellbrook", HandMadeWeek.length("10'"), 3)),
                    false)),
            STYLE);
    assertTrue(text.contains("3 @ 25'-0-1/64\" P9 of barn"), text);
    assertTrue(text.contains("2 sticks of 24'-0\" more would do, fewer would not."), text);
    assertTrue(text.contains("at most 3 sticks of 10'-0\" of pellbrook more would do"), text);
  }

  @Test
  void aNameWithoutSpacesIsNotBrokenWhereALineOfItsOwnKeepsItWhole() {
    Page page = new Page(STYLE);
    Table table =
        new Table(page)
            .column("Item", Table.Kind.NAME)
            .column("Left", Table.Kind.NAME)
            .column("Price", Table.Kind.NUMBER);
    table.row(List.of("x".repeat(38), "y".repeat(20), "1".repeat(20)));
    for (String name : List.of("a", "b", "c")) {
      table.row(List.of(name, "y", "1"));
    }
    table.print(0);
    assertTrue(page.printed().contains("x".repeat(38)), page.printed());
  }

  @Test
  void aLongListToBuyIsCutVisiblyAndItsSumIsNot() {
    List<OrderPaper.BuyLine> lines = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      lines.add(
          new OrderPaper.BuyLine(
              "m" + i,
              "material " + i,
              new Supply.Offer(
                  "pellbrook", Length.ofFeet(20, 0), null, 1, Integer.MAX_VALUE, "", null, null),
              2,
              null,
              null));
    }
    OrderPaper paper =
        new OrderPaper(
            new Shop("Shop", "", Shop.Units.FEET_INCHES, true),
            List.of("barn"),
            List.of(new OrderPaper.SupplierPart("pellbrook", lines)),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            new OrderPaper.Kept(0, Length.ZERO, Money.ZERO),
            null,
            Deliveries.NONE,
            List.of(new ProofFigure(Proof.PROVED, false, 1, 1, 0, true)),
            null,
            List.of(),
            OrderFacts.NONE.leftOut(),
            List.of(),
            List.of(),
            List.of());
    String text = OrderText.render(paper, STYLE);
    assertTrue(text.lines().count() <= Style.USUAL_LINES, text);
    assertTrue(
        text.startsWith("Buy 200 sticks from 1 supplier for 1 job: 4000'-0\" of stock."), text);
    assertTrue(text.contains("more lines: --all"), text);
    assertTrue(
        text.lines().anyMatch(line -> line.matches("\\s+All to buy\\s+200\\s+4000'-0\"")), text);
    assertTrue(OrderText.render(paper, STYLE.withAll(true)).contains("material 99"));
  }
}
