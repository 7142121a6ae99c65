package lapwright.files.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.files.MarkerNames;
import lapwright.files.OrderInput;
import lapwright.files.SampleFolder;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class StockAfterTest {
  @TempDir Path dir;

  @Test
  void listsWhatIsLeftWithItsTrueEndsAndKeepsWhatItDoesNotKnow() throws IOException {
    OrderInput input =
        SampleFolder.sound()
            .replace("rack.csv", "R9,", "X1,gone-material,3'-0\",,-shelf,\nR9,")
            .read(dir);
    MaterialOrder tube = input.materialOrders().get(0);
    MaterialOrder angle = input.materialOrders().get(1);
    List<Cut> cuts = List.of(new Cut("mill-lean-to", 1, "P1", Length.ofFeet(3, 0), 1));
    String offer = angle.supplies().get(0).key();
    String onHand = angle.supplies().get(1).key();
    OrderPlan plan =
        new OrderPlan(
            input.order().shop(),
            List.of(
                plan(
                    tube,
                    List.of(),
                    List.of(
                        new Pattern("T1", "rack:R7", 1, cuts, Length.ofFeet(6, 0), List.of("ACEH")),
                        new Pattern(
                            "T2", "rack:R9", 1, cuts, Length.ofFeet(4, 0), List.of("KLMP")))),
                plan(
                    angle,
                    List.of(new Purchase(offer, 1)),
                    List.of(
                        new Pattern(
                            "T3", offer, 2, cuts, Length.ofFeet(3, 0), List.of("RTXY", "PLKJ")),
                        new Pattern("T4", onHand, 1, cuts, Length.ZERO, List.of())))));
    StockAfter after = new StockAfter(input.order(), input.otherStock(), List.of(plan));
    assertEquals(
        """
        material,length,qty,place,lot
        angle-2x2,20'-0",2,B2,
        angle-2x2,20'-0",3,,
        """,
        plain(after.onHand(LengthStyle.FEET_INCHES)));
    assertEquals(
        """
        id,material,length,width,ends,place,lot,not-for-planning
        ACEH,tube-2x2-14ga,6'-0",,sawn,,,
        KLMP,tube-2x2-14ga,4'-0",,one-mill,,H42,
        RTXY,angle-2x2,3'-0",,one-mill,,,
        PLKJ,angle-2x2,3'-0",,one-mill,,,
        X1,gone-material,3'-0",,,"'-shelf",,
        """,
        plain(after.rack(LengthStyle.FEET_INCHES)));
  }

  @Test
  void theNextWeekStartsTrue() throws IOException {
    SampleFolder sample = SampleFolder.sound();
    OrderInput input = sample.read(dir.resolve("one"));
    var planned =
        assertInstanceOf(
            PlanResult.Planned.class,
            new Planner(new MarkerNames(input.offcutNames()), 1)
                .plan(input.order().shop(), input.materialOrders(), Map.of(), Effort.unlimited()));
    OrderPlan plan = planned.plan().plan();
    StockAfter after = new StockAfter(input.order(), input.otherStock(), List.of(plan));
    sample.put("on-hand.csv", after.onHand(LengthStyle.FEET_INCHES));
    sample.put("rack.csv", after.rack(LengthStyle.FEET_INCHES));
    OrderInput next = sample.read(dir.resolve("two"));
    for (MaterialPlan material : plan.materials()) {
      long before = stockLength(input, material.material());
      Map<String, Supply> byKey = new HashMap<>();
      material.order().supplies().forEach(supply -> byKey.put(supply.key(), supply));
      long used = 0;
      for (Pattern pattern : material.patterns()) {
        used += byKey.get(pattern.supply()).length().units() * pattern.times();
        used -= pattern.offcut().units() * pattern.offcutNames().size();
      }
      for (Purchase purchase : material.purchases()) {
        Supply.Offer offer = (Supply.Offer) byKey.get(purchase.supply());
        before += offer.length().units() * offer.soldIn() * purchase.packs();
      }
      assertEquals(before - used, stockLength(next, material.material()), material.material());
    }
  }

  private static long stockLength(OrderInput input, String material) {
    return input.order().supplies().get(material).stream()
        .filter(supply -> !(supply instanceof Supply.Offer))
        .mapToLong(supply -> supply.length().units() * supply.atMost())
        .sum();
  }

  private static String plain(String csv) {
    return csv.replace("\r\n", "\n").replace("\"\"", "\"").replaceAll("\"([^,]*\")\"", "$1");
  }

  private static MaterialPlan plan(
      MaterialOrder order, List<Purchase> purchases, List<Pattern> patterns) {
    return new MaterialPlan(
        order,
        purchases,
        patterns,
        0,
        0,
        0,
        Proof.OPEN,
        new Certificate.Weights(1, new java.util.TreeMap<>()),
        Account.NOTHING);
  }
}
