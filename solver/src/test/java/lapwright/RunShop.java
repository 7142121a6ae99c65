package lapwright;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.compare.LaterOrder;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/** A shop with one material and runs under a test's hands. */
final class RunShop {
  static final Length STEP = Length.ofSixteenths(1);

  final List<Supply> supplies = new ArrayList<>();
  final List<RunNeed> runs = new ArrayList<>();
  final List<Need> needs = new ArrayList<>();
  Saw saw = new Saw("snips", Length.ZERO, Length.ZERO, Length.ZERO, null);
  boolean millEndsGood = true;
  OneLotPer oneLotPer = OneLotPer.NONE;

  static Length inches(long inches) {
    return Length.ofInches(inches);
  }

  /** A saw with a cut of 3/32 in. */
  static Saw coldSaw(Length endTrim) {
    return new Saw("cold-saw", Length.ofUnits(38_100), endTrim, Length.ZERO, null);
  }

  static JointRules butt(Length gap) {
    return JointRules.of(new Joint.Butt(gap), STEP);
  }

  static JointRules lap(Length lap, Length shortest) {
    return JointRules.of(new Joint.Lap(lap), STEP)
        .with(new JointRules.Pieces(shortest, null, null, STEP));
  }

  RunShop offer(String supplier, Length length, String price) {
    supplies.add(
        new Supply.Offer(
            supplier,
            length,
            new Price(new BigDecimal(price), Price.Per.EACH),
            1,
            Integer.MAX_VALUE,
            "",
            null,
            null));
    return this;
  }

  RunShop run(String job, String mark, int qty, Length length, JointRules rules) {
    runs.add(
        new RunNeed(
            job,
            null,
            1,
            new Run("stuff", mark, length, qty, Length.ZERO, Length.ZERO, rules, "")));
    return this;
  }

  MaterialOrder order() {
    Material material =
        new Material(
            "stuff", "stuff", saw.id(), millEndsGood, Length.ZERO, inches(24), null, oneLotPer);
    return new MaterialOrder(material, saw, true, supplies, needs, runs);
  }

  PlanResult result() {
    return result(Effort.unlimited());
  }

  PlanResult result(Effort effort) {
    AtomicInteger names = new AtomicInteger();
    return new Planner(() -> "N" + names.incrementAndGet(), 1)
        .plan(
            new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, true),
            List.of(order()),
            Map.of(),
            effort);
  }

  /** What is missing once orders are placed, planned beyond them. */
  PlanResult more(List<OrderPlan> placed, Effort effort) {
    AtomicInteger names = new AtomicInteger(1_000 * placed.size());
    return new Planner(() -> "N" + names.incrementAndGet(), 1)
        .continuingAfterTicket(LaterOrder.lastTicket(placed))
        .plan(
            new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, true),
            LaterOrder.of(placed, List.of(order())).orders(),
            Map.of(),
            effort);
  }

  OrderPlan orderPlan() {
    return ((PlanResult.Planned) result()).plan().plan();
  }

  MaterialPlan plan() {
    return orderPlan().materials().get(0);
  }
}
