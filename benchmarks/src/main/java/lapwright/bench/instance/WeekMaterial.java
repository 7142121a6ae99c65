package lapwright.bench.instance;

import java.util.List;
import java.util.TreeMap;
import lapwright.measure.Money;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import lapwright.shop.Job;
import lapwright.shop.Piece;

/**
 * One material of a generated week as a problem in integers: both stock lengths, kerf and end trim
 * reckoned in. Instance {@code index} is the index-th needed material of the one week that the seed
 * makes.
 */
final class WeekMaterial implements InstanceClass {
  @Override
  public String name() {
    return "week";
  }

  @Override
  public String description() {
    return "one material of a week of jobs: 20 ft and 24 ft sticks, kerf 3/32 in, trim 1/2 in";
  }

  @Override
  public List<String> parameters() {
    return List.of("jobs");
  }

  @Override
  public List<String> usual() {
    return List.of("week:jobs=10", "week:jobs=100", "week:jobs=1000");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    int jobs = spec.getInt("jobs", 100);
    if (jobs < 1 || jobs > 100_000) {
      throw new IllegalArgumentException(spec + ": jobs from 1 to 100000");
    }
    List<Job> week = Week.of(jobs, seed).jobs();
    List<String> needed =
        week.stream()
            .flatMap(job -> job.pieces().stream())
            .map(Piece::material)
            .distinct()
            .sorted()
            .toList();
    String material = needed.get(index % needed.size());
    long kerf = Week.SAW.kerf().units();
    TreeMap<Long, Integer> demands = new TreeMap<>();
    for (Job job : week) {
      for (Piece piece : job.pieces()) {
        if (piece.material().equals(material)) {
          demands.merge(piece.length().units() + kerf, piece.qty(), Math::addExact);
        }
      }
    }
    List<Stock> stocks =
        List.of(
            stock(Week.SHORT_STICK.units(), 41 * Money.PER_UNIT),
            stock(Week.LONG_STICK.units(), 4920 * Money.PER_CENT));
    return new Instance(
        spec.toString(),
        spec.instanceName(seed, 0) + "-" + material,
        new StickProblem(Instance.items(demands), stocks, Week.KEEP_FROM.units()),
        Known.NOTHING,
        4);
  }

  private static Stock stock(long length, long price) {
    long capacity = length - Week.SAW.endTrim().units();
    return new Stock(length, capacity, capacity, false, 0, price, price, 1, Integer.MAX_VALUE);
  }
}
