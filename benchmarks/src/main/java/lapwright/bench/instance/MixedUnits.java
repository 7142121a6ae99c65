package lapwright.bench.instance;

import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import lapwright.measure.Length;

/**
 * One order of lengths from 1 ft to 10 ft out of 20 ft sticks with a kerf of 3/32 in, in exact
 * units of length. The two classes differ in the grid alone: on the sixteenth of an inch, or half
 * the lengths moved to the nearest 1/64 in and half to the nearest 0.5 mm, so that they share no
 * useful divisor.
 */
final class MixedUnits implements InstanceClass {
  private static final long KERF = 3 * Length.UNITS_PER_INCH / 32;
  private static final long HALF_MM = Length.UNITS_PER_MM / 2;

  private final boolean mixed;

  MixedUnits(boolean mixed) {
    this.mixed = mixed;
  }

  @Override
  public String name() {
    return mixed ? "mixed-units" : "sixteenths";
  }

  @Override
  public String description() {
    return mixed
        ? "the orders of sixteenths, moved to 1/64 in and 0.5 mm"
        : "lengths on the sixteenth of an inch, kerf 3/32 in, sticks of 20 ft";
  }

  @Override
  public List<String> parameters() {
    return List.of("types", "pieces");
  }

  @Override
  public List<String> usual() {
    return List.of(name());
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int types = spec.getInt("types", 100);
    long pieces = spec.get("pieces", 1000);
    if (types < 1 || types > 1000 || pieces < types) {
      throw new IllegalArgumentException(spec + ": types from 1 to 1000, pieces at least as many");
    }
    int[] shares = DemandShares.of(types, pieces, random);
    TreeMap<Long, Integer> demands = new TreeMap<>();
    while (demands.size() < types) {
      long exact = random.nextLong(Length.UNITS_PER_FOOT, 10 * Length.UNITS_PER_FOOT);
      long grid =
          !mixed
              ? Length.UNITS_PER_SIXTEENTH
              : demands.size() % 2 == 0 ? Length.UNITS_PER_SIXTY_FOURTH : HALF_MM;
      long length = (exact + grid / 2) / grid * grid;
      demands.putIfAbsent(length + KERF, shares[demands.size()]);
    }
    long capacity = 20 * Length.UNITS_PER_FOOT + KERF;
    return Instance.ofDemands(
        spec.toString(), spec.instanceName(seed, index), capacity, demands, Known.NOTHING);
  }
}
