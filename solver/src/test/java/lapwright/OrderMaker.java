package lapwright;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import lapwright.measure.Length;
import lapwright.measure.LengthText;
import lapwright.measure.Price;
import lapwright.measure.Reading;
import lapwright.measure.SafeSide;
import lapwright.shop.CutRules;
import lapwright.shop.Ends;
import lapwright.shop.JointRules;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** Builds one material's order for a test, lengths as people write them. */
public final class OrderMaker {
  public static final int NO_LIMIT = Integer.MAX_VALUE;

  private final String material;
  private Length kerf = Length.ZERO;
  private Length endTrim = Length.ZERO;
  private Length hold = Length.ZERO;
  private @Nullable Length longestStick;
  private Length shortestCut = Length.ZERO;
  private int stack = 1;
  private boolean millEndsGood;
  private boolean onHandValued = true;
  private Length shortBy = Length.ZERO;
  private Length keep = Length.ZERO;
  private final List<Supply> offers = new ArrayList<>();
  private final List<Supply> onHand = new ArrayList<>();
  private final List<Supply> rack = new ArrayList<>();
  private final List<Need> needs = new ArrayList<>();
  private final List<RunNeed> runs = new ArrayList<>();

  public OrderMaker(String material) {
    this.material = material;
  }

  public static Length length(String text) {
    Reading<Length> reading = LengthText.read(text, SafeSide.LONGER);
    if (reading instanceof Reading.Value<Length> value) {
      return value.value();
    }
    throw new IllegalArgumentException(reading.toString());
  }

  public static Shop shop() {
    return new Shop("Test shop", "USD", Shop.Units.FEET_INCHES, true, List.of());
  }

  public static Planner planner(int threads) {
    AtomicInteger last = new AtomicInteger();
    return new Planner(() -> "N" + last.incrementAndGet(), threads);
  }

  public OrderMaker saw(String kerf, String endTrim, String hold) {
    return saw(length(kerf), length(endTrim), length(hold));
  }

  public OrderMaker saw(Length kerf, Length endTrim, Length hold) {
    this.kerf = kerf;
    this.endTrim = endTrim;
    this.hold = hold;
    return this;
  }

  public OrderMaker longestStick(String length) {
    longestStick = length(length);
    return this;
  }

  public OrderMaker millEndsGood() {
    millEndsGood = true;
    return this;
  }

  public OrderMaker onHandWorthNothing() {
    onHandValued = false;
    return this;
  }

  public OrderMaker shortBy(Length length) {
    shortBy = length;
    return this;
  }

  public OrderMaker shortBy(String length) {
    return shortBy(length(length));
  }

  public OrderMaker keep(Length length) {
    keep = length;
    return this;
  }

  public OrderMaker keep(String length) {
    return keep(length(length));
  }

  public OrderMaker offer(String length, String price) {
    return offer("mill", length(length), price, 1, NO_LIMIT);
  }

  public OrderMaker offer(String length, String price, int soldIn, int atMost) {
    return offer("mill", length(length), price, soldIn, atMost);
  }

  public OrderMaker offer(
      String supplier, Length length, @Nullable String price, int soldIn, int atMost) {
    offers.add(
        new Supply.Offer(
            supplier,
            length,
            price == null ? null : new Price(new BigDecimal(price), Price.Per.EACH),
            soldIn,
            atMost,
            "",
            null,
            null));
    return this;
  }

  public OrderMaker onHand(String length, int qty) {
    return onHand(length(length), qty);
  }

  public OrderMaker onHand(Length length, int qty) {
    onHand.add(new Supply.OnHand(length, qty, "bay " + onHand.size(), ""));
    return this;
  }

  public OrderMaker rack(String id, String length, Ends ends) {
    return rack(id, length(length), ends);
  }

  public OrderMaker rack(String id, Length length, Ends ends) {
    rack.add(new Supply.RackOffcut(id, length, ends, "", ""));
    return this;
  }

  public OrderMaker need(String job, String mark, int qty, String length) {
    return need(job, null, 1, mark, qty, length(length));
  }

  public OrderMaker need(
      String job, @Nullable LocalDate due, int copies, String mark, int qty, Length length) {
    needs.add(new Need(job, due, copies, mark, length, qty, ""));
    return this;
  }

  public OrderMaker need(String job, String mark, int qty, String length, CutRules rules) {
    needs.add(new Need(job, null, 1, mark, length(length), qty, "", rules));
    return this;
  }

  /** Rules for pieces that lap, joined anywhere, in steps of 1/16 in. */
  public static JointRules lap(String lap, String shortest) {
    return JointRules.of(new JointRules.Joint.Lap(length(lap)), Length.ofSixteenths(1))
        .with(new JointRules.Pieces(length(shortest), null, null, Length.ofSixteenths(1)));
  }

  /** Rules for pieces that butt, with at most so much left open, in steps of 1/16 in. */
  public static JointRules butt(String gap) {
    return JointRules.of(new JointRules.Joint.Butt(length(gap)), Length.ofSixteenths(1));
  }

  public OrderMaker run(String job, String mark, int qty, String length, JointRules rules) {
    return run(job, null, 1, mark, qty, length(length), rules);
  }

  public OrderMaker run(
      String job,
      @Nullable LocalDate due,
      int copies,
      String mark,
      int qty,
      Length length,
      JointRules rules) {
    runs.add(
        new RunNeed(
            job,
            due,
            copies,
            new Run(material, mark, length, qty, Length.ZERO, Length.ZERO, rules, "")));
    return this;
  }

  /** Sticks cut at once, and the shortest piece. */
  public OrderMaker stack(int sticks, String shortest) {
    stack = sticks;
    shortestCut = length(shortest);
    return this;
  }

  public MaterialOrder make() {
    List<Supply> supplies = new ArrayList<>(offers);
    supplies.addAll(onHand);
    supplies.addAll(rack);
    return new MaterialOrder(
        new Material(material, material, "saw", millEndsGood, shortBy, keep, null),
        new Saw("saw", kerf, endTrim, hold, longestStick, shortestCut, stack),
        onHandValued,
        supplies,
        needs,
        runs);
  }
}
