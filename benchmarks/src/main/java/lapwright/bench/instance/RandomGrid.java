package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The random classes of Delorme, Iori and Martello (EJOR 255, 2016): number of pieces, capacity and
 * the range of sizes each from a grid. Every instance draws its own cell of the grid; n and c may
 * be held.
 */
final class RandomGrid implements InstanceClass {
  private static final int[] PIECES = {50, 100, 200, 300, 400, 500, 750, 1000};
  private static final int[] CAPACITIES = {
    50, 75, 100, 120, 125, 150, 200, 300, 400, 500, 750, 1000
  };
  private static final int[] LEAST_TENTHS = {1, 2};
  private static final int[] MOST_TENTHS = {7, 8};

  @Override
  public String name() {
    return "random-grid";
  }

  @Override
  public String description() {
    return "sizes uniform in [{0.1,0.2} c, {0.7,0.8} c], n 50 to 1000, c 50 to 1000";
  }

  @Override
  public List<String> parameters() {
    return List.of("n", "c");
  }

  @Override
  public List<String> usual() {
    return List.of("random-grid");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int pieces = spec.getInt("n", pick(PIECES, random));
    long capacity = spec.get("c", pick(CAPACITIES, random));
    long from = -Math.floorDiv(-capacity * pick(LEAST_TENTHS, random), 10);
    long to = capacity * pick(MOST_TENTHS, random) / 10;
    if (pieces < 1 || from < 1 || to < from) {
      throw new IllegalArgumentException(spec + ": n of at least 1 and c of at least 2, please");
    }
    List<Long> sizes = new ArrayList<>();
    for (int piece = 0; piece < pieces; piece++) {
      sizes.add(random.nextLong(from, to + 1));
    }
    return Instance.ofPieces(
        spec.toString(), spec.instanceName(seed, index), capacity, sizes, Known.NOTHING);
  }

  private static int pick(int[] values, SplittableRandom random) {
    return values[random.nextInt(values.length)];
  }
}
