package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Several stock lengths of limited supply: the longest c, the others uniform from c/2 up, prices by
 * length give or take {@code spread} thousandths, and supplies that together hold about {@code
 * supply} percent of what is to be cut, so that the cheap lengths run out.
 *
 * <p>Supplies grow until a first-fit by falling length finds a solution, so that one exists.
 */
final class SeveralLengths implements InstanceClass {
  private static final int LENGTH_STEP = 10;

  @Override
  public String name() {
    return "several-lengths";
  }

  @Override
  public String description() {
    return "k stock lengths with prices and limits, from and to thousandths of c";
  }

  @Override
  public List<String> parameters() {
    return List.of("k", "types", "pieces", "c", "from", "to", "supply", "spread");
  }

  @Override
  public List<String> usual() {
    return List.of("several-lengths", "several-lengths:spread=0");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int lengths = spec.getInt("k", random.nextInt(4, 11));
    int types = spec.getInt("types", 100);
    long pieces = spec.get("pieces", 4000);
    long longest = spec.get("c", 10_000);
    long from = Math.max(1, longest * spec.get("from", 20) / 1000);
    long to = longest * spec.get("to", 450) / 1000;
    if (lengths < 1
        || types < 1
        || pieces < types
        || to > longest
        || to - from + 1 < types
        || longest < 2L * LENGTH_STEP * lengths
        || spec.get("spread", 0) > 900) {
      throw new IllegalArgumentException(
          spec
              + ": needs pieces >= types, enough lengths between from and to, c >= 20 k, spread <= 900");
    }
    TreeMap<Long, Integer> demands = new TreeMap<>();
    int[] shares = DemandShares.of(types, pieces, random);
    while (demands.size() < types) {
      demands.putIfAbsent(random.nextLong(from, to + 1), shares[demands.size()]);
    }
    List<Item> items = Instance.items(demands);
    long toCut = items.stream().mapToLong(item -> item.size() * item.demand()).sum();

    TreeSet<Long> stockLengths = new TreeSet<>(List.of(longest));
    while (stockLengths.size() < lengths) {
      stockLengths.add(random.nextLong(longest / 2, longest) / LENGTH_STEP * LENGTH_STEP);
    }
    List<Stock> stocks = new ArrayList<>();
    long supply = spec.get("supply", 130);
    long spread = spec.get("spread", 100);
    for (long length : stockLengths) {
      long price = length * random.nextLong(1000 - spread, 1001 + spread) / 1000;
      long share = random.nextLong(50, 151);
      long sticks = toCut * supply * share / 100 / 100 / lengths / length + 1;
      stocks.add(Instance.stock(length, price, Math.toIntExact(sticks)));
    }
    while (!FirstFitSupply.suffices(items, stocks)) {
      stocks.replaceAll(SeveralLengths::oneTenthMore);
    }
    return new Instance(
        spec.toString(),
        spec.instanceName(seed, index),
        new StickProblem(items, stocks, 0),
        Known.NOTHING,
        0);
  }

  private static Stock oneTenthMore(Stock stock) {
    return Instance.stock(
        stock.capacity(), stock.packCost(), stock.mostPacks() + stock.mostPacks() / 10 + 1);
  }
}
