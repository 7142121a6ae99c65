package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * One material as a shop has it: sticks of 20 ft singly and of 21 ft and 24 ft in packs at random
 * prices near 2.05 a foot, some 24 ft sticks on hand at the price of a bought one, rack offcuts
 * that cost nothing and are there once each, kerf 3/32 in, trim 1/2 in. Lengths lie on the
 * sixteenth, from 1 ft to 19 ft.
 */
final class ShopMaterial implements InstanceClass {
  private static final long KERF = 3 * Length.UNITS_PER_INCH / 32;
  private static final long TRIM = Length.UNITS_PER_INCH / 2;
  private static final int SIXTEENTHS_A_FOOT = 12 * 16;
  private static final int NICKEL = 5;

  @Override
  public String name() {
    return "shop";
  }

  @Override
  public String description() {
    return "one material of a shop: packs, sticks on hand, rack offcuts, three lengths to buy";
  }

  @Override
  public List<String> parameters() {
    return List.of("types", "pieces", "offcuts", "on-hand", "pack");
  }

  @Override
  public List<String> usual() {
    return List.of("shop:pieces=60,types=12", "shop:pieces=300,types=40");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int types = spec.getInt("types", 40);
    long pieces = spec.get("pieces", 300);
    int pack = spec.getInt("pack", random.nextInt(1, 3) * 5);
    if (types < 1 || types > 1000 || pieces < types || pack < 1) {
      throw new IllegalArgumentException(
          spec + ": types from 1 to 1000, pieces at least as many, packs of at least 1, please");
    }
    TreeMap<Long, Integer> demands = new TreeMap<>();
    int[] shares = DemandShares.of(types, pieces, random);
    while (demands.size() < types) {
      long sixteenths = random.nextLong(SIXTEENTHS_A_FOOT, 19 * SIXTEENTHS_A_FOOT + 1);
      long size = sixteenths * Length.UNITS_PER_SIXTEENTH + KERF;
      demands.putIfAbsent(size, shares[demands.size()]);
    }
    List<Stock> stocks = new ArrayList<>();
    stocks.add(bought(20, 1, random));
    stocks.add(bought(21, pack, random));
    Stock longest = bought(24, pack, random);
    stocks.add(longest);
    int onHand = spec.getInt("on-hand", random.nextInt(0, 9));
    if (onHand > 0) {
      long worth = longest.packCost() / pack;
      stocks.add(stock(24 * Length.UNITS_PER_FOOT, TRIM, worth, 0, 1, onHand));
    }
    int offcuts = spec.getInt("offcuts", random.nextInt(0, 13));
    for (int i = 0; i < offcuts; i++) {
      long length = random.nextLong(2 * SIXTEENTHS_A_FOOT, 16 * SIXTEENTHS_A_FOOT);
      // The far end of an offcut is sawn: nothing is trimmed, and no cut is made at it.
      stocks.add(stock(length * Length.UNITS_PER_SIXTEENTH, -KERF, 0, 0, 1, 1));
    }
    return new Instance(
        spec.toString(),
        spec.instanceName(seed, index),
        new StickProblem(Instance.items(demands), stocks, 2 * Length.UNITS_PER_FOOT),
        Known.NOTHING,
        4);
  }

  private static Stock bought(int feet, int pack, SplittableRandom random) {
    long cents = feet * random.nextLong(195, 216) / NICKEL * NICKEL;
    long cost = cents * pack * Money.PER_CENT;
    return stock(feet * Length.UNITS_PER_FOOT, TRIM, cost, cost, pack, Integer.MAX_VALUE);
  }

  private static Stock stock(
      long length, long lessThanLength, long cost, long cash, int pack, int most) {
    long capacity = length - lessThanLength;
    long tail = lessThanLength < 0 ? -KERF : 0;
    return new Stock(length, capacity, capacity, false, tail, cost, cash, pack, most);
  }
}
