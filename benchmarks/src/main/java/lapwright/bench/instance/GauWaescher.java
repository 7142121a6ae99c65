package lapwright.bench.instance;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/**
 * Cutting stock instances of T. Gau and G. Waescher (EJOR 84, 1995): m lengths uniform in [v1, v2]
 * of the stick, a total demand of m times the mean, shared out by uniform random numbers.
 *
 * <p>Their own Lehmer generator is used, so that instance {@code index} of a seed takes up the
 * stream where the one before it left off. Length: floor((v1 + (v2 - v1) u) L + u); demand: max(1,
 * floor(D r_i / sum r + 1/2)). Equal lengths are merged.
 */
final class GauWaescher implements InstanceClass {
  private static final double THOUSAND = 1000.0;

  @Override
  public String name() {
    return "gau-waescher";
  }

  @Override
  public String description() {
    return "m lengths from v1 to v2 thousandths of c, mean demand given";
  }

  @Override
  public List<String> parameters() {
    return List.of("m", "c", "mean", "v1", "v2");
  }

  @Override
  public List<String> usual() {
    return List.of(
        "gau-waescher:m=20,mean=10,v1=10,v2=250",
        "gau-waescher:m=40,mean=50,v1=10,v2=500",
        "gau-waescher:m=50,mean=100,v1=10,v2=800");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    int types = spec.getInt("m", 20);
    long capacity = spec.get("c", 10_000);
    long mean = spec.get("mean", 10);
    double least = spec.get("v1", 10) / THOUSAND;
    double most = spec.get("v2", 800) / THOUSAND;
    if (types < 1 || mean < 1 || least > most || most > 1 || capacity * least < 1) {
      throw new IllegalArgumentException(
          spec + ": m and mean of at least 1, v1 <= v2 <= 1000 (thousandths), please");
    }
    LehmerGenerator random = new LehmerGenerator(seed);
    for (int skipped = 0; skipped < 2L * types * index; skipped++) {
      random.next();
    }
    Long[] lengths = new Long[types];
    for (int i = 0; i < types; i++) {
      double u = random.next();
      lengths[i] =
          Math.min(capacity, (long) Math.floor((least + (most - least) * u) * capacity + u));
    }
    Arrays.sort(lengths, Comparator.reverseOrder());
    double[] shares = new double[types];
    double sum = 0;
    for (int i = 0; i < types; i++) {
      shares[i] = random.next();
      sum += shares[i];
    }
    long total = types * mean;
    TreeMap<Long, Integer> demands = new TreeMap<>();
    for (int i = 0; i < types; i++) {
      int demand = (int) Math.max(1, Math.floor(total * shares[i] / sum + 0.5));
      demands.merge(lengths[i], demand, Math::addExact);
    }
    return Instance.ofDemands(
        spec.toString(), spec.instanceName(seed, index), capacity, demands, Known.NOTHING);
  }
}
