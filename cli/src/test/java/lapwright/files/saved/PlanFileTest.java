package lapwright.files.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import lapwright.check.PlanCheck;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.measure.WeightRate;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PlanFileTest {
  @TempDir Path dir;

  @Test
  void readingBackGivesAnEqualPlan() throws Exception {
    for (OrderPlan plan : List.of(withEverything(true), withEverything(false))) {
      String text = PlanFile.text(plan, Map.of("shop.yaml", "ab12"), null);
      Path file = Files.writeString(dir.resolve(PlanFile.NAME), text);
      var saved = assertInstanceOf(PlanReading.Saved.class, PlanFile.read(file));
      assertEquals(plan, saved.plan());
      assertEquals(Map.of("shop.yaml", "ab12"), saved.inputs());
      assertEquals(PlanFile.planId(plan), saved.planId());
      assertEquals(text, PlanFile.text(saved.plan(), saved.inputs(), null));
    }
  }

  @Test
  void theIdFollowsThePlanAndNotTheFilesItCameFrom() {
    OrderPlan plan = withEverything(true);
    String one = PlanFile.text(plan, Map.of("a", "1"), null);
    String other = PlanFile.text(plan, Map.of("a", "2"), null);
    assertEquals(one.replace("\"1\"", "\"2\""), other);
    assertFalse(PlanFile.planId(plan).equals(PlanFile.planId(withEverything(false))));
  }

  @Test
  void moneyAndLengthsAreExactNumbersUnderTheirNames() {
    String text = PlanFile.text(withEverything(true), Map.of(), null);
    for (String expected :
        List.of(
            "\"format\" : 2",
            "\"currency\" : \"EUR\"",
            "\"cost\" : 214.3701",
            "\"billed\" : 214.37",
            "\"lowerBound\" : 214.37",
            "\"objective\" : \"money\"",
            "\"lengthMm\" : 2895.6",
            "\"stockMm\" : 6096",
            "\"length\" : \"9'-6\\\"\"",
            "\"proof\" : \"open\"")) {
      assertTrue(text.contains(expected), expected + " in\n" + text);
    }
    String unpriced = PlanFile.text(withEverything(false), Map.of(), null);
    assertFalse(unpriced.contains("\"cost\""));
    assertTrue(unpriced.contains("\"costMm\" : "));
  }

  @Test
  void aDeepTreeOfDecisionsIsSavedAndReadBack() throws Exception {
    Certificate tree = leaf(1);
    for (int i = 0; i < 3000; i++) {
      tree = new Certificate.PackSplit(List.of("rack:R7"), i, leaf(i + 2), tree);
    }
    String text = PlanFile.text(plan(order(true), tree), Map.of(), null);
    var saved = assertInstanceOf(PlanReading.Saved.class, PlanFile.read(text));
    assertEquals(text, PlanFile.text(saved.plan(), Map.of(), null));
  }

  @Test
  void aDamagedFileGivesFaultsWithLinesAndNeverAnException() {
    String text = PlanFile.text(withEverything(true), Map.of("shop.yaml", "ab12"), null);
    Random random = new Random(1);
    int accepted = 0;
    for (int n = 0; n < 3000; n++) {
      StringBuilder damaged = new StringBuilder(text);
      for (int change = random.nextInt(3); change >= 0; change--) {
        int at = random.nextInt(damaged.length());
        switch (random.nextInt(4)) {
          case 0 -> damaged.setCharAt(at, (char) (32 + random.nextInt(95)));
          case 1 -> damaged.deleteCharAt(at);
          case 2 -> damaged.delete(at, Math.min(damaged.length(), at + random.nextInt(200)));
          default -> damaged.insert(at, "0123456789-.\"{}[],:".charAt(random.nextInt(19)));
        }
      }
      PlanReading reading = PlanFile.read(damaged.toString());
      if (reading instanceof PlanReading.Saved saved) {
        accepted++;
        PlanCheck.check(saved.plan());
      }
    }
    assertTrue(accepted > 100, "some changes do no harm to the reader: " + accepted);
  }

  @Test
  void whatIsMissingIsNamedWithItsWay() {
    String text = PlanFile.text(withEverything(true), Map.of(), null);
    var faulty =
        assertInstanceOf(
            PlanReading.Faulty.class,
            PlanFile.read(
                text.replaceFirst("\"kerfMm\" : [0-9.]+,", "")
                    .replaceFirst("\"times\" : 3", "\"times\" : -3")));
    assertEquals(
        List.of("jobs > 1 > times: out of range"),
        faulty.faults().stream().map(f -> f.field() + ": " + f.wrong()).toList());
    var other =
        assertInstanceOf(
            PlanReading.Faulty.class, PlanFile.read(text.replace("\"kerfMm\"", "\"kerfmm\"")));
    assertEquals("materials > 1 > saw > kerfMm", other.faults().get(0).field());
    assertTrue(other.faults().get(0).place().line() > 1);
    assertInstanceOf(PlanReading.Faulty.class, PlanFile.read(""));
    assertInstanceOf(PlanReading.Faulty.class, PlanFile.read("[]"));
    assertInstanceOf(PlanReading.Faulty.class, PlanFile.read(dir.resolve("none.json")));
  }

  private static Certificate leaf(long weight) {
    return new Certificate.Weights(
        7, new TreeMap<>(Map.of(Length.ofFeet(9, 6), weight, Length.ofUnits(16_000_001), 3L)));
  }

  private static OrderPlan withEverything(boolean priced) {
    MaterialOrder order = order(priced);
    String bought = order.supplies().get(0).key();
    return plan(
        order,
        new Certificate.PackSplit(
            List.of(bought, "rack:R7"),
            4,
            leaf(5),
            new Certificate.PackSplit(List.of("rack:R7"), 0, leaf(6), leaf(7))));
  }

  private static MaterialOrder order(boolean priced) {
    Saw saw =
        new Saw(
            "cold-saw",
            Length.ofUnits(38_100),
            Length.ofUnits(203_200),
            Length.ofInches(3),
            Length.ofFeet(24, 0));
    Material material =
        new Material(
            "tube",
            "Tube, \"2 x 2\"",
            "cold-saw",
            false,
            Length.ofUnits(101_600),
            Length.ofInches(24),
            new WeightRate(
                new java.math.BigDecimal("2.250"),
                WeightRate.WeightUnit.KILOGRAM,
                WeightRate.LengthUnit.METRE),
            OneLotPer.NONE);
    Price price = priced ? new Price(new java.math.BigDecimal("42.87402"), Price.Per.EACH) : null;
    return new MaterialOrder(
        material,
        saw,
        true,
        List.of(
            new Supply.Offer(
                "marrowby",
                Length.ofFeet(20, 0),
                price,
                5,
                40,
                "ST-20",
                LocalDate.of(2026, 11, 27),
                null),
            new Supply.Offer(
                "",
                Length.ofFeet(24, 0),
                price,
                1,
                Integer.MAX_VALUE,
                "",
                null,
                LocalDate.of(2026, 12, 11)),
            new Supply.OnHand(Length.ofFeet(20, 0), 3, "B2", "H4"),
            new Supply.RackOffcut("R7", Length.ofUnits(48_000_001), Ends.ONE_MILL, "A1", "")),
        List.of(
            new Need("pier", LocalDate.of(2026, 12, 4), 3, "P1", Length.ofFeet(9, 6), 1, "post"),
            new Need("barn", null, 1, "", Length.ofUnits(16_000_001), 2, "")));
  }

  private static OrderPlan plan(MaterialOrder order, Certificate certificate) {
    boolean priced = order.isPriced();
    Shop shop =
        new Shop(
            "Reedham Shelters",
            priced ? "EUR" : "",
            Shop.Units.FEET_INCHES,
            true,
            List.of(
                new Supplier(
                    "marrowby",
                    2,
                    "10:00",
                    Money.ofCents(30_000),
                    Money.ofCents(8_500),
                    Money.ofCents(90_000),
                    Length.ofFeet(24, 0),
                    Supplier.Rounds.EACH),
                Supplier.named("tollgate")));
    Supply bought = order.supplies().get(0);
    return new OrderPlan(
        shop,
        List.of(
            new MaterialPlan(
                order,
                List.of(new Purchase(bought.key(), 1)),
                List.of(
                    new Pattern(
                        "T1",
                        bought.key(),
                        2,
                        List.of(
                            new Cut("pier", 2, "P1", Length.ofFeet(9, 6), 1),
                            new Cut("barn", 1, "", Length.ofUnits(16_000_001), 1)),
                        Length.ofUnits(33_333_333),
                        List.of("C4K", "D7M")),
                    new Pattern(
                        "T2",
                        "rack:R7",
                        1,
                        List.of(new Cut("pier", 1, "P1", Length.ofFeet(9, 6), 1)),
                        Length.ZERO,
                        List.of())),
                2_143_701,
                2_143_701,
                2_143_700,
                Proof.OPEN,
                certificate,
                new Account(
                    Length.ofUnits(9),
                    Length.ofUnits(8),
                    Length.ZERO,
                    Length.ofUnits(1),
                    Length.ZERO,
                    Length.ZERO,
                    Length.ZERO,
                    Length.ofFeet(60, 0),
                    Length.ofUnits(508_000)))));
  }
}
