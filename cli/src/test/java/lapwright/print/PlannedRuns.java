package lapwright.print;

import static lapwright.print.HandMadeWeek.length;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/** Orders with runs that have few plans of least cost, so that their papers stay as they are. */
public final class PlannedRuns {
  private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
  private static final Length STEP = Length.ofSixteenths(1);
  public static final Shop SHOP =
      new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, true);

  private PlannedRuns() {}

  static Planner planner() {
    AtomicInteger names = new AtomicInteger();
    return new Planner(() -> "N" + names.incrementAndGet(), 1);
  }

  private static Supply offer(String length, String price) {
    return new Supply.Offer(
        "pellbrook",
        length(length),
        new Price(new BigDecimal(price), Price.Per.EACH),
        1,
        Integer.MAX_VALUE,
        "",
        null,
        null);
  }

  private static RunNeed run(
      String job, int copies, String mark, int qty, String length, JointRules rules, String what) {
    return new RunNeed(
        job,
        FRIDAY,
        copies,
        new Run("any", mark, length(length), qty, Length.ZERO, Length.ZERO, rules, what));
  }

  private static JointRules lap(String lap) {
    return JointRules.of(new Joint.Lap(length(lap)), STEP)
        .with(new JointRules.Pieces(length("2'"), null, null, STEP));
  }

  /** Eave trim of two copies of a shelter, a ridge whose closing piece is cut on the building. */
  static MaterialOrder trim() {
    Saw snips = new Saw("snips", Length.ZERO, Length.ZERO, Length.ZERO, null);
    return new MaterialOrder(
        new Material(
            "eave-trim", "Eave trim, brown", "snips", true, Length.ZERO, length("24\""), null),
        snips,
        true,
        List.of(offer("10'-2\"", "14.20")),
        List.of(new Need("quay", FRIDAY, 2, "K1", length("5'-1\""), 1, "rake")),
        List.of(
            run("quay", 2, "T1", 2, "36'-8\"", lap("2\""), "eave"),
            run(
                "barn",
                1,
                "S1",
                1,
                "25'",
                lap("2\"").with(new ClosingPiece(Where.START, false, length("1\""))),
                "ridge")));
  }

  /** Purlins that butt over posts. */
  static MaterialOrder purlins() {
    Saw saw = new Saw("cold-saw", length("3/32\""), Length.ZERO, Length.ZERO, null);
    return new MaterialOrder(
        new Material(
            "cee-4", "Cee 4 in, 16 ga", "cold-saw", true, Length.ZERO, length("24\""), null),
        saw,
        true,
        List.of(offer("24'", "20.60")),
        List.of(),
        List.of(
            run(
                "barn",
                1,
                "U1",
                5,
                "36'",
                JointRules.of(new Joint.Butt(length("1/8\"")), STEP)
                    .at(new JointPlaces.At(List.of(length("12'"), length("24'")))),
                "purlin")));
  }

  /** Three lines of 100 in from 60 in at no lap: six sticks, with a joint more five. */
  static MaterialOrder shortSticks() {
    Saw snips = new Saw("snips", Length.ZERO, Length.ZERO, Length.ZERO, null);
    JointRules rules =
        JointRules.of(new Joint.Lap(Length.ZERO), STEP)
            .with(new JointRules.Pieces(length("10\""), null, null, STEP));
    return new MaterialOrder(
        new Material("edge-trim", "Edge trim", "snips", true, Length.ZERO, length("24\""), null),
        snips,
        true,
        List.of(offer("60\"", "10.00")),
        List.of(),
        List.of(run("barn", 1, "E1", 3, "100\"", rules, "")));
  }

  public static CheckedPlan checked() {
    return checked(trim(), purlins());
  }

  static CheckedPlan checked(MaterialOrder... orders) {
    PlanResult result = planner().plan(SHOP, List.of(orders), Map.of(), Effort.unlimited());
    return ((PlanResult.Planned) result).plan();
  }
}
