package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.UnaryOperator;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;

/** What must not change the cost of an order, and what may only lower it. */
final class SameOrderOtherwiseSaidTest {
  @Provide
  Arbitrary<MaterialOrder> orders() {
    return Arbitraries.randomValue(random -> RandomOrders.small(random).make());
  }

  @Property(tries = 100, seed = "1", shrinking = ShrinkingMode.OFF)
  void orderOfPiecesAndOfStockDoesNotMatter(
      @ForAll("orders") MaterialOrder order, @ForAll int seed) {
    List<Need> needs = new ArrayList<>(order.needs());
    Collections.shuffle(needs, new Random(seed));
    List<Supply> supplies = new ArrayList<>(order.supplies());
    Collections.shuffle(supplies, new Random(seed));
    assertEquals(cost(order), cost(with(order, supplies, needs)));
  }

  @Property(tries = 100, seed = "2", shrinking = ShrinkingMode.OFF)
  void scalingAllLengthsScalesNothingButLengths(
      @ForAll("orders") MaterialOrder order, @ForAll @IntRange(min = 2, max = 9) int factor) {
    OptionalLong cost = cost(order);
    OptionalLong scaled = cost(scaled(order, length -> length.times(factor)));
    assertEquals(cost.isPresent(), scaled.isPresent());
    if (cost.isPresent()) {
      assertEquals(
          order.isPriced() ? cost.getAsLong() : factor * cost.getAsLong(), scaled.getAsLong());
    }
  }

  @Property(tries = 100, seed = "3", shrinking = ShrinkingMode.OFF)
  void splittingAJobInTwoDoesNotMatter(@ForAll("orders") MaterialOrder order, @ForAll int seed) {
    Random random = new Random(seed);
    List<Need> needs = new ArrayList<>();
    for (Need need : order.needs()) {
      int second = random.nextInt(need.qty() + 1);
      addNeed(needs, need, need.job(), need.qty() - second);
      addNeed(needs, need, need.job() + " second half", second);
    }
    assertEquals(cost(order), cost(with(order, order.supplies(), needs)));
  }

  @Property(tries = 100, seed = "4", shrinking = ShrinkingMode.OFF)
  void moreStockNeverCostsMore(@ForAll("orders") MaterialOrder order, @ForAll int seed) {
    Random random = new Random(seed);
    List<Supply> more = new ArrayList<>();
    for (Supply supply : order.supplies()) {
      more.add(
          supply instanceof Supply.Offer offer && offer.atMostSticks() != Integer.MAX_VALUE
              ? new Supply.Offer(
                  offer.supplier(),
                  offer.length(),
                  offer.price(),
                  offer.soldIn(),
                  offer.atMostSticks() + random.nextInt(4),
                  "",
                  null,
                  null)
              : supply);
    }
    if (random.nextBoolean()) {
      more.add(
          new Supply.RackOffcut(
              "one more",
              Length.ofMm(10 + random.nextInt(100)),
              Ends.values()[random.nextInt(3)],
              "",
              ""));
    }
    if (random.nextBoolean()) {
      more.add(new Supply.OnHand(Length.ofMm(50 + random.nextInt(60)), 1, "one more", ""));
    }
    OptionalLong cost = cost(order);
    OptionalLong cheaper = cost(with(order, more, order.needs()));
    if (cost.isPresent()) {
      assertTrue(cheaper.isPresent());
      assertTrue(cheaper.getAsLong() <= cost.getAsLong());
    }
  }

  private static void addNeed(List<Need> needs, Need need, String job, int qty) {
    if (qty > 0) {
      needs.add(new Need(job, need.due(), need.copies(), need.mark(), need.length(), qty, ""));
    }
  }

  private static MaterialOrder with(MaterialOrder order, List<Supply> supplies, List<Need> needs) {
    return new MaterialOrder(order.material(), order.saw(), order.onHandValued(), supplies, needs);
  }

  private static MaterialOrder scaled(MaterialOrder order, UnaryOperator<Length> scale) {
    Material material = order.material();
    Saw saw = order.saw();
    List<Supply> supplies = new ArrayList<>();
    for (Supply supply : order.supplies()) {
      if (supply instanceof Supply.Offer offer) {
        supplies.add(
            new Supply.Offer(
                offer.supplier(),
                scale.apply(offer.length()),
                offer.price(),
                offer.soldIn(),
                offer.atMostSticks(),
                "",
                null,
                null));
      } else if (supply instanceof Supply.OnHand onHand) {
        supplies.add(
            new Supply.OnHand(
                scale.apply(onHand.length()), onHand.qty(), onHand.place(), onHand.lot()));
      } else if (supply instanceof Supply.RackOffcut offcut) {
        supplies.add(
            new Supply.RackOffcut(
                offcut.id(), scale.apply(offcut.length()), offcut.ends(), "", ""));
      }
    }
    List<Need> needs = new ArrayList<>();
    for (Need need : order.needs()) {
      needs.add(
          new Need(
              need.job(),
              need.due(),
              need.copies(),
              need.mark(),
              scale.apply(need.length()),
              need.qty(),
              need.purpose()));
    }
    return new MaterialOrder(
        new Material(
            material.id(),
            material.name(),
            material.saw(),
            material.millEndsGood(),
            scale.apply(material.shortBy()),
            scale.apply(material.keepOffcutsFrom()),
            null),
        new Saw(
            saw.id(),
            scale.apply(saw.kerf()),
            scale.apply(saw.endTrim()),
            scale.apply(saw.hold()),
            saw.longestStick() == null ? null : scale.apply(saw.longestStick())),
        order.onHandValued(),
        supplies,
        needs);
  }

  private static OptionalLong cost(MaterialOrder order) {
    PlanResult result =
        OrderMaker.planner(1).plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    if (result instanceof PlanResult.Planned planned) {
      MaterialPlan plan = planned.plan().plan().materials().get(0);
      return OptionalLong.of(plan.cost());
    }
    assertTrue(result instanceof PlanResult.Impossible, result.toString());
    return OptionalLong.empty();
  }
}
