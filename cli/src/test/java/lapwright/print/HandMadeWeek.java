package lapwright.print;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.compare.MaterialSaving;
import lapwright.compare.Saving;
import lapwright.measure.Length;
import lapwright.measure.LengthText;
import lapwright.measure.Price;
import lapwright.measure.Reading;
import lapwright.measure.SafeSide;
import lapwright.paperwork.OrderFacts;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.paperwork.OrderFacts.Reason;
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
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/**
 * A week with two materials, planned by hand so that its papers do not change when the planner
 * finds another plan of the same cost. Names may be replaced by hostile ones.
 */
public final class HandMadeWeek {
  private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
  private static final Saw COLD_SAW =
      new Saw("cold-saw", length("3/32\""), length("1/2\""), length("3\""), null);
  private static final Saw SNIPS = new Saw("snips", Length.ZERO, Length.ZERO, Length.ZERO, null);

  private final String quay;
  private final String boat;
  private final String dock;
  private final String mark;
  private final String supplier;
  private final String place;
  private final String tubeName;

  private HandMadeWeek(
      String quay, String boat, String mark, String supplier, String place, String tubeName) {
    this.quay = quay;
    this.boat = boat;
    dock = boat + "-dock";
    this.mark = mark;
    this.supplier = supplier;
    this.place = place;
    this.tubeName = tubeName;
  }

  public static HandMadeWeek plain() {
    return new HandMadeWeek(
        "quay-shelter",
        "boat-cover",
        "P1",
        "pellbrook",
        "bay 3",
        "Square tube 3 x 3, 11 ga, galvanized");
  }

  /** Everything that people name is called {@code name}. */
  public static HandMadeWeek called(String name) {
    return new HandMadeWeek(name + "1", name + "2", name, name, name, name);
  }

  static Length length(String text) {
    return ((Reading.Value<Length>) LengthText.read(text, SafeSide.LONGER)).value();
  }

  public CheckedPlan checked() {
    Shop shop = new Shop("Saltmarsh Shelters", "USD", Shop.Units.FEET_INCHES, true);
    Verdict verdict = PlanCheck.check(new OrderPlan(shop, List.of(tube(), trim())));
    if (verdict instanceof Verdict.Broken broken) {
      throw new AssertionError(broken.faults().toString());
    }
    return ((Verdict.Sound) verdict).plan();
  }

  /** Job by job would buy one stick of tube more. */
  Saving saving() {
    return new Saving(
        List.of(
            new MaterialSaving(
                "tube-3x3-11ga",
                true,
                List.of(quay, boat),
                1_230_000,
                1_230_000,
                true,
                new MaterialSaving.JobByJob(1_640_000, 1_640_000, true),
                null),
            new MaterialSaving(
                "eave-trim-brown",
                true,
                List.of(dock),
                343_992,
                0,
                true,
                new MaterialSaving.JobByJob(343_992, 0, true),
                null)));
  }

  OrderFacts facts() {
    return new OrderFacts(
        LocalDate.of(2026, 12, 14),
        List.of(new LeftOut("pier-canopy", Reason.BID), new LeftOut("old-barn", Reason.DONE)),
        List.of(boat),
        List.of(
            new Attention(
                "jobs/quay-shelter.yaml, line 9: 9'-14\" is 10'-2\"",
                "look whether it is meant so")));
  }

  /** Five posts and three braces; a post is an offcut as it comes. */
  private MaterialPlan tube() {
    Supply.Offer offer =
        new Supply.Offer(
            supplier,
            length("20'"),
            new Price(new BigDecimal("41.00"), Price.Per.EACH),
            1,
            Integer.MAX_VALUE,
            "SQ33-20",
            null,
            LocalDate.of(2026, 12, 11));
    Supply.RackOffcut post = new Supply.RackOffcut("R7", length("9'-11\""), Ends.SAWN, place, "");
    Length postLength = length("9'-11\"");
    Length brace = length("3'-10\"");
    MaterialOrder order =
        new MaterialOrder(
            new Material(
                "tube-3x3-11ga",
                tubeName,
                COLD_SAW.id(),
                false,
                length("1/4\""),
                length("24\""),
                null),
            COLD_SAW,
            true,
            List.of(offer, post),
            List.of(
                new Need(quay, FRIDAY, 1, mark, postLength, 5, "post"),
                new Need(boat, null, 1, "B1", brace, 3, "")));
    Cut one = new Cut(quay, 1, mark, postLength, 1);
    Cut two = new Cut(quay, 1, mark, postLength, 2);
    return new MaterialPlan(
        order,
        List.of(new Purchase(offer.key(), 3)),
        List.of(
            new Pattern("1", post.key(), 1, List.of(one), Length.ZERO, List.of()),
            new Pattern("2", offer.key(), 2, List.of(two), length("1-1/16\""), List.of()),
            new Pattern(
                "3",
                offer.key(),
                1,
                List.of(new Cut(boat, 1, "B1", brace, 3)),
                length("8'-4-31/32\""),
                List.of("K4M"))),
        1_230_000,
        1_230_000,
        1_230_000,
        Proof.PROVED,
        new Certificate.Weights(1, new TreeMap<>(Map.of(postLength, 205_000L, brace, 82_000L))),
        new Account(
            length("838.25\""),
            length("733\""),
            Length.ZERO,
            length("21/32\""),
            length("1-1/2\""),
            length("8'-4-31/32\""),
            length("2-1/8\""),
            Length.ZERO,
            length("3/4\"")));
  }

  /** Two copies of a job from two sticks on hand; one length lies between sixteenths. */
  private MaterialPlan trim() {
    Supply.Offer offer =
        new Supply.Offer(
            supplier,
            length("12'"),
            new Price(new BigDecimal("1.4333"), Price.Per.FOOT),
            1,
            Integer.MAX_VALUE,
            "",
            null,
            null);
    Supply.OnHand onHand = new Supply.OnHand(length("12'"), 4, place, "spring");
    Length eave = length("9'-4-1/8\"");
    Length rake = length("2'-1-1/32\"");
    MaterialOrder order =
        new MaterialOrder(
            new Material(
                "eave-trim-brown",
                "Eave trim, brown",
                SNIPS.id(),
                true,
                Length.ZERO,
                length("24\""),
                null),
            SNIPS,
            true,
            List.of(offer, onHand),
            List.of(
                new Need(dock, null, 2, "T1", eave, 1, "eave"),
                new Need(dock, null, 2, "", rake, 1, "")));
    return new MaterialPlan(
        order,
        List.of(),
        List.of(trimTicket("4", onHand, 1, eave, rake), trimTicket("5", onHand, 2, eave, rake)),
        343_992,
        0,
        343_992,
        Proof.PROVED,
        new Certificate.Weights(1, new TreeMap<>(Map.of(eave, 171_996L))),
        new Account(
            length("288\""),
            length("274-5/16\""),
            Length.ZERO,
            Length.ZERO,
            Length.ZERO,
            Length.ZERO,
            length("13-11/16\""),
            Length.ZERO,
            Length.ZERO));
  }

  private Pattern trimTicket(String ticket, Supply supply, int copy, Length eave, Length rake) {
    return new Pattern(
        ticket,
        supply.key(),
        1,
        List.of(new Cut(dock, copy, "T1", eave, 1), new Cut(dock, copy, "", rake, 1)),
        length("6-27/32\""),
        List.of());
  }
}
