package lapwright.bench.instance;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import lapwright.shop.Material;
import lapwright.shop.Piece;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supply;

/**
 * A generated week of jobs. Each job needs 5 of 60 materials, of each 8 lengths uniform on the
 * sixteenth from 1 to 19 ft, 1 to 10 of every length. Sticks are 20 ft at 41.00 and 24 ft at 49.20;
 * the kerf is 3/32 in, the end trim 1/2 in at the starting end.
 */
public final class Week {
  static final int MATERIALS = 60;
  private static final int MATERIALS_A_JOB = 5;
  private static final int LENGTHS_A_MATERIAL = 8;
  private static final int MOST_OF_A_LENGTH = 10;
  private static final int SIXTEENTHS_A_FOOT = 12 * 16;
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
  private static final int WORKING_DAYS = 5;
  static final String SUPPLIER = "hollowmere";
  static final Saw SAW =
      new Saw(
          "bench-saw",
          Length.ofUnits(3 * Length.UNITS_PER_INCH / 32),
          Length.ofUnits(Length.UNITS_PER_INCH / 2),
          Length.ZERO,
          null);
  static final Length KEEP_FROM = Length.ofFeet(2, 0);
  static final Length SHORT_STICK = Length.ofFeet(20, 0);
  static final Length LONG_STICK = Length.ofFeet(24, 0);
  static final String SHORT_PRICE = "41.00";
  static final String LONG_PRICE = "49.20";

  private Week() {}

  /** The week of {@code jobs} jobs of a seed. */
  public static ShopOrder of(int jobs, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Material> materials = new ArrayList<>();
    Map<String, List<Supply>> supplies = new LinkedHashMap<>();
    for (int m = 0; m < MATERIALS; m++) {
      String id = materialId(m);
      materials.add(new Material(id, id, SAW.id(), false, Length.ZERO, KEEP_FROM, null));
      supplies.put(id, List.of(offer(SHORT_STICK, SHORT_PRICE), offer(LONG_STICK, LONG_PRICE)));
    }
    List<Job> firmJobs = new ArrayList<>();
    for (int j = 0; j < jobs; j++) {
      firmJobs.add(job(j, random));
    }
    return new ShopOrder(
        new Shop("Generated week", "USD", Shop.Units.FEET_INCHES, true),
        Map.of(SAW.id(), SAW),
        materials,
        supplies,
        firmJobs);
  }

  private static Job job(int number, SplittableRandom random) {
    TreeSet<Integer> chosen = new TreeSet<>();
    while (chosen.size() < MATERIALS_A_JOB) {
      chosen.add(random.nextInt(MATERIALS));
    }
    List<Piece> pieces = new ArrayList<>();
    for (int material : chosen) {
      for (int k = 1; k <= LENGTHS_A_MATERIAL; k++) {
        long sixteenths = random.nextLong(SIXTEENTHS_A_FOOT, 19 * SIXTEENTHS_A_FOOT + 1);
        int qty = random.nextInt(1, MOST_OF_A_LENGTH + 1);
        String mark = "M" + material + "-" + k;
        pieces.add(new Piece(materialId(material), mark, Length.ofSixteenths(sixteenths), qty, ""));
      }
    }
    return new Job(
        String.format(Locale.ROOT, "job-%04d", number + 1),
        JobStatus.FIRM,
        MONDAY.plusDays(number % WORKING_DAYS),
        1,
        pieces);
  }

  private static Supply offer(Length length, String price) {
    return new Supply.Offer(
        SUPPLIER,
        length,
        new Price(new BigDecimal(price), Price.Per.EACH),
        1,
        Integer.MAX_VALUE,
        "",
        null,
        null);
  }

  static String materialId(int number) {
    return String.format(Locale.ROOT, "section-%02d", number + 1);
  }
}
