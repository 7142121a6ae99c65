package lapwright.files.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
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
import lapwright.plan.Refutation;
import lapwright.plan.RunLine;
import lapwright.shop.Ends;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
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
    for (OrderPlan plan : List.of(withEverything(true), withEverything(false), withRuns())) {
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
  void aRefutationIsSavedAndReadBack() throws Exception {
    Length post = Length.ofFeet(9, 6);
    SortedMap<Length, Long> weights = new TreeMap<>(Map.of(post, -4L, Length.ofUnits(9), 11L));
    Refutation.CutTimes cut = new Refutation.CutTimes(5, 2, -1, new TreeMap<>(Map.of(post, 1L)));
    Refutation closed = new Refutation.Sieve(weights, List.of(cut), List.of(0L, 7L), null);
    Refutation tree =
        new Refutation.Sieve(
            weights,
            List.of(),
            List.of(),
            new Refutation.HoldingSplit(
                new TreeMap<>(Map.of(post, 2)),
                0,
                closed,
                new Refutation.Sieve(weights, List.of(), List.of(3L), closed)));
    Certificate certificate =
        new Certificate.PackSplit(List.of("rack:R7"), 1, new Certificate.NoPlan(tree), leaf(2));
    String text = PlanFile.text(plan(order(true), certificate), Map.of(), null);
    var saved = assertInstanceOf(PlanReading.Saved.class, PlanFile.read(text));
    assertEquals(certificate, saved.plan().materials().get(0).certificate());
    assertEquals(text, PlanFile.text(saved.plan(), Map.of(), null));
    // A leaf of the outer tree where a refutation belongs.
    assertInstanceOf(
        PlanReading.Faulty.class,
        PlanFile.read(text.replace("\"refuted\" : 3", "\"refuted\" : 2")));
  }

  @Test
  void aDamagedFileGivesFaultsWithLinesAndNeverAnException() {
    damage(PlanFile.text(withEverything(true), Map.of("shop.yaml", "ab12"), null));
  }

  @Test
  void soDoesADamagedFileWithRuns() {
    damage(PlanFile.text(withRuns(), Map.of("shop.yaml", "ab12"), null));
  }

  @Test
  void aBranchThatIsNotThereOrUsedTwiceIsNoCertificate() {
    String text = PlanFile.text(withRuns(), Map.of(), null);
    for (String[] change :
        new String[][] {
          {"\"within\" : 1", "\"within\" : 0"},
          {"\"within\" : 1", "\"within\" : 99"},
          {"\"within\" : 1", "\"within\" : 2"},
          {"\"bound\" : 7", "\"bound\" : 8"},
          {"\"more\" : 4", "\"more\" : 3"},
        }) {
      assertTrue(text.contains(change[0]), change[0]);
      assertInstanceOf(
          PlanReading.Faulty.class, PlanFile.read(text.replace(change[0], change[1])), change[1]);
    }
  }

  @Test
  void endlessPlacesAndLinesAreRefused() {
    String text = PlanFile.text(withRuns(), Map.of(), null);
    for (String[] change :
        new String[][] {
          {"\"spacingMm\" : 2438.4", "\"spacingMm\" : 0.0000625"},
          {"\"qty\" : 3", "\"qty\" : 2000000000"},
        }) {
      assertTrue(text.contains(change[0]), change[0]);
      assertInstanceOf(
          PlanReading.Faulty.class, PlanFile.read(text.replace(change[0], change[1])), change[1]);
    }
  }

  private static void damage(String text) {
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

  private static RunLine line(int line, Where closing, int firstPiece, int... inches) {
    List<RunLine.RunPiece> pieces = new ArrayList<>();
    for (int i = 0; i < inches.length; i += 2) {
      pieces.add(
          new RunLine.RunPiece(
              firstPiece + i / 2, Length.ofInches(inches[i]), Length.ofInches(inches[i + 1])));
    }
    return new RunLine("pier", 1, "T1", line, closing, pieces);
  }

  /** Two runs with every rule between them, a line in two stretches, every kind of node. */
  private static OrderPlan withRuns() {
    JointRules lapped =
        new JointRules(
            new Joint.Lap(Length.ofInches(2)),
            new JointPlaces.Bearings(Length.ofFeet(4, 0), Length.ofFeet(8, 0)),
            new JointRules.Pieces(
                Length.ofInches(24), Length.ofInches(12), Length.ofFeet(11, 0), Length.ofInches(1)),
            new JointCount.BeyondFewest(1),
            new ClosingPiece(Where.EITHER, true, Length.ofUnits(12_700)),
            Length.ofInches(30),
            new JointRules.Expansion(Length.ofFeet(40, 0), Length.ofInches(1)));
    JointRules butted =
        JointRules.of(new Joint.Butt(Length.ofUnits(25_400)), Length.ofMm(1))
            .at(new JointPlaces.At(List.of(Length.ofFeet(12, 0), Length.ofUnits(80_000_001))))
            .with(new JointCount.AtMost(2));
    MaterialOrder plain = order(true);
    MaterialOrder order =
        plain.withRuns(
            List.of(
                new RunNeed(
                    "pier",
                    LocalDate.of(2026, 12, 4),
                    3,
                    new Run(
                        "tube",
                        "T1",
                        Length.ofFeet(20, 0),
                        1,
                        Length.ofInches(3),
                        Length.ofInches(4),
                        lapped,
                        "eave")),
                new RunNeed(
                    "mill",
                    null,
                    2,
                    new Run(
                        "tube",
                        "T2",
                        Length.ofFeet(36, 0),
                        3,
                        Length.ZERO,
                        Length.ZERO,
                        butted,
                        ""))));
    SortedMap<Length, Long> weights =
        new TreeMap<>(Map.of(Length.ofFeet(9, 6), 5L, Length.ofUnits(16_000_001), 3L));
    Certificate certificate =
        new Certificate.LotSplit(
            "pier",
            "T1",
            List.of("to-buy:marrowby", "lot:H4"),
            new Certificate.PackSplit(
                List.of("rack:R7"), 0, leaf(6), new Certificate.RunWeights(9, weights, 2)),
            new Certificate.PieceSplit(
                Length.ofFeet(9, 6),
                List.of("lot:H4", "lot:H5"),
                2,
                new Certificate.LotWeights(
                    9,
                    List.of(
                        new Certificate.LotWeights.OfLots(List.of("to-buy:"), weights, 2),
                        new Certificate.LotWeights.OfLots(
                            List.of("lot:H4", "lot:H5"), new TreeMap<>(), 0))),
                new Certificate.ByLot(
                    new TreeMap<>(
                        Map.of(
                            "lot:H4",
                            new Certificate.RunWeights(1, new TreeMap<>(), 0),
                            "to-buy:",
                            leaf(7))))));
    OrderPlan plan = plan(order, certificate);
    MaterialPlan material = plan.materials().get(0);
    return new OrderPlan(
        plan.shop(),
        List.of(
            new MaterialPlan(
                order,
                material.purchases(),
                material.patterns(),
                material.cost(),
                material.cash(),
                material.lowerBound(),
                material.proof(),
                certificate,
                material.account(),
                List.of(
                    line(1, Where.END, 1, -3, 60, 55, 61),
                    line(1, Where.START, 3, 117, 127),
                    line(2, Where.END, 1, -3, 247)))));
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
