package lapwright.exact;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/** Small problems with everything in them: several stocks, packs, limits, offcuts, a hold. */
final class RandomProblems {
  private RandomProblems() {}

  static StickProblem small(long seed) {
    Random random = new Random(seed);
    int hold = random.nextInt(3) == 0 ? 2 + random.nextInt(5) : 0;
    int unit = random.nextBoolean() ? 1 : 1 + random.nextInt(4);
    List<Item> items = new ArrayList<>();
    int kinds = 1 + random.nextInt(5);
    for (int i = 0; i < kinds; i++) {
      int size = 2 + random.nextInt(16);
      items.add(new Item((long) size * unit, 1 + random.nextInt(5), size < hold));
    }
    List<Stock> stocks = new ArrayList<>();
    int count = 1 + random.nextInt(4);
    for (int j = 0; j < count; j++) {
      int capacity = 10 + random.nextInt(20);
      boolean offcut = random.nextInt(3) == 0;
      int packSize = offcut ? 1 : 1 + random.nextInt(3) * random.nextInt(2);
      long cost = offcut ? 0 : packSize * (capacity + random.nextInt(8)) * 10L;
      int most =
          offcut
              ? 1 + random.nextInt(2)
              : random.nextInt(3) == 0 ? 1 + random.nextInt(4) : Integer.MAX_VALUE;
      long rawCapacity = (long) capacity * unit + random.nextInt(unit);
      stocks.add(
          new Stock(
              rawCapacity,
              rawCapacity,
              hold == 0 ? rawCapacity : rawCapacity - (long) hold * unit,
              random.nextBoolean(),
              0,
              cost,
              offcut ? 0 : random.nextInt(4) == 0 ? 0 : cost,
              packSize,
              most));
    }
    return new StickProblem(items, stocks, 5L * unit);
  }
}
