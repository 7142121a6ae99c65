package lapwright.bench.instance;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/**
 * A generated shop of runs: lines of 8 to 60 ft on the eighth of an inch, one to three of a length,
 * butted or lapped by 2 to 6 in, no piece shorter than 2 ft, and as many plain pieces of 1 to 12
 * ft. The kerf is 1/8 in. Joints go anywhere or stand on bearings 4 to 10 ft apart. One seed gives
 * the same lines, pieces and prices to every kind.
 *
 * @param kind lines, stock, places and joints
 * @param order one material
 */
public record RunShop(Kind kind, MaterialOrder order) {
  public static final Shop SHOP = new Shop("Generated shop", "USD", Shop.Units.FEET_INCHES, true);
  private static final int EIGHTHS_A_FOOT = 96;
  private static final int MOST_LINES_A_RUN = 3;
  private static final Length SIXTEENTH = Length.ofSixteenths(1);
  private static final Length SHORTEST = Length.ofFeet(2, 0);
  private static final BigDecimal PRICE_A_FOOT = new BigDecimal("1.40");
  private static final String WORD = "member";
  private static final Saw SAW =
      new Saw(
          "bench-saw", Length.ofUnits(Length.UNITS_PER_INCH / 8), Length.ZERO, Length.ZERO, null);

  /**
   * What shops have in common.
   *
   * @param lines how many lines, and how many plain pieces
   * @param severalLengths sticks of 10, 12 and 20 ft; of 20 ft only when false
   * @param bearings joints on bearings; anywhere when false
   * @param extraJoints beyond the fewest
   */
  public record Kind(int lines, boolean severalLengths, boolean bearings, int extraJoints) {
    public Kind {
      if (lines < 1 || extraJoints < 0) {
        throw new IllegalArgumentException(lines + " lines, " + extraJoints + " extra joints");
      }
    }

    /** In words for a table. */
    public String name() {
      return (bearings ? "bearings" : "anywhere")
          + (extraJoints == 0 ? "" : " + " + extraJoints)
          + (severalLengths ? ", 10 12 20 ft" : ", 20 ft");
    }

    /** The same with the fewest joints. */
    public Kind atFewest() {
      return new Kind(lines, severalLengths, bearings, 0);
    }
  }

  /** The shop of a kind and a seed. */
  public static RunShop of(Kind kind, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Supply> supplies = new ArrayList<>();
    for (int feet : new int[] {20, 10, 12}) {
      // All kinds draw the same numbers, whether they use them or not.
      int perMille = random.nextInt(970, 1031);
      if (feet == 20 || kind.severalLengths()) {
        supplies.add(offer(feet, perMille));
      }
    }
    List<RunNeed> runs = new ArrayList<>();
    int left = kind.lines();
    while (left > 0) {
      int qty = Math.min(left, random.nextInt(1, MOST_LINES_A_RUN + 1));
      left -= qty;
      Length length = eighths(random, 8, 60);
      int lap = random.nextInt(1, 7);
      long spacing = random.nextLong(48, 121);
      Length first = Length.ofInches(random.nextLong(0, spacing));
      JointPlaces places =
          kind.bearings()
              ? new JointPlaces.Bearings(first, Length.ofInches(spacing))
              : new JointPlaces.Anywhere();
      JointRules rules =
          JointRules.of(
                  lap == 1 ? new Joint.Butt(Length.ZERO) : new Joint.Lap(Length.ofInches(lap)),
                  SIXTEENTH)
              .with(new JointRules.Pieces(SHORTEST, null, null, SIXTEENTH))
              .at(places)
              .with(new JointCount.BeyondFewest(kind.extraJoints()));
      Run run =
          new Run(
              WORD, "L" + (runs.size() + 1), length, qty, Length.ZERO, Length.ZERO, rules, "line");
      runs.add(new RunNeed("job-" + (runs.size() % 10 + 1), null, 1, run));
    }
    List<Need> needs = new ArrayList<>();
    left = kind.lines();
    while (left > 0) {
      int qty = Math.min(left, random.nextInt(1, MOST_LINES_A_RUN + 1));
      left -= qty;
      String job = "job-" + (needs.size() % 10 + 1);
      needs.add(new Need(job, null, 1, "P" + (needs.size() + 1), eighths(random, 1, 12), qty, ""));
    }
    Material material = new Material(WORD, WORD, SAW.id(), true, Length.ZERO, SHORTEST, null);
    return new RunShop(kind, new MaterialOrder(material, SAW, true, supplies, needs, runs));
  }

  private static Length eighths(SplittableRandom random, long leastFeet, long mostFeet) {
    return Length.ofSixteenths(
        2 * random.nextLong(leastFeet * EIGHTHS_A_FOOT, mostFeet * EIGHTHS_A_FOOT + 1));
  }

  private static Supply offer(int feet, int perMille) {
    BigDecimal price =
        PRICE_A_FOOT
            .multiply(BigDecimal.valueOf((long) feet * perMille, 3))
            .setScale(2, RoundingMode.HALF_UP);
    return new Supply.Offer(
        "hollowmere",
        Length.ofFeet(feet, 0),
        new Price(price, Price.Per.EACH),
        1,
        Integer.MAX_VALUE,
        "",
        null,
        null);
  }
}
