package lapwright.bench.instance;

import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * Cutting stock with a given number of types and of pieces: distinct lengths uniform in a range,
 * demands by random shares. What growth curves are drawn from.
 */
final class DemandMix implements InstanceClass {
  @Override
  public String name() {
    return "demand-mix";
  }

  @Override
  public String description() {
    return "cutting stock with given numbers of types and pieces, from and to thousandths of c";
  }

  @Override
  public List<String> parameters() {
    return List.of("types", "pieces", "c", "from", "to");
  }

  @Override
  public List<String> usual() {
    return List.of("demand-mix:pieces=4000,types=100");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int types = spec.getInt("types", 100);
    long pieces = spec.get("pieces", 4000);
    long capacity = spec.get("c", 10_000);
    long from = Math.max(1, capacity * spec.get("from", 50) / 1000);
    long to = capacity * spec.get("to", 700) / 1000;
    if (types < 1 || pieces < types || to > capacity || to - from + 1 < types) {
      throw new IllegalArgumentException(
          spec + ": needs pieces >= types, and as many lengths between from and to as types");
    }
    TreeMap<Long, Integer> demands = new TreeMap<>();
    int[] shares = DemandShares.of(types, pieces, random);
    while (demands.size() < types) {
      demands.putIfAbsent(random.nextLong(from, to + 1), shares[demands.size()]);
    }
    return Instance.ofDemands(
        spec.toString(), spec.instanceName(seed, index), capacity, demands, Known.NOTHING);
  }
}
