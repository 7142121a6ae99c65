package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** The cheapest whole packs that carry given weights, against all ways of taking packs. */
class WholePacksTest {

  @Property(tries = 3000, seed = "11")
  void areTheCheapestOfAllWays(@ForAll long seed) {
    Random random = new Random(seed);
    List<Stock> stocks = new ArrayList<>();
    List<Long> greatest = new ArrayList<>();
    for (int j = random.nextInt(3); j >= 0; j--) {
      long cost = random.nextInt(4) == 0 ? 0 : random.nextInt(13);
      int most = random.nextInt(3) == 0 ? Integer.MAX_VALUE : random.nextInt(5);
      stocks.add(new Stock(9, 9, 9, false, 0, cost, cost, 1 + random.nextInt(3), most));
      greatest.add((long) random.nextInt(9));
    }
    StickProblem problem =
        new StickProblem(List.of(new Item(1, 1 + random.nextInt(6), false)), stocks, 0);
    long weight = random.nextInt(8);
    long known = 1 + random.nextInt(90);
    PackLimits limits = PackLimits.of(problem);
    int split = random.nextInt(stocks.size());
    int packs = random.nextInt(3);
    if (random.nextBoolean()) {
      limits = random.nextBoolean() ? limits.atMost(split, packs) : limits.atLeast(split, packs);
    }
    if (limits.isLimited(split) && limits.least(split) > limits.most(split)) {
      return;
    }
    long demanded = weight * problem.items().get(0).demand();
    long least = leastOfAll(problem, limits, greatest, 0, 0, demanded);
    WholePacks.Cover cover = WholePacks.of(problem, limits, List.of(weight), greatest, known);
    assertNotNull(cover);
    assertEquals(Math.min(known, least), Math.min(known, cover.cost()));
    if (!cover.packs().isEmpty()) {
      long cost = 0;
      long carried = 0;
      for (int j = 0; j < stocks.size(); j++) {
        int taken = cover.packs().get(j);
        assertTrue(taken >= limits.least(j) && taken <= limits.most(j));
        cost += taken * stocks.get(j).packCost();
        carried += taken * stocks.get(j).packSize() * greatest.get(j);
      }
      assertEquals(cover.cost(), cost);
      assertTrue(carried >= demanded);
    }
  }

  private static long leastOfAll(
      StickProblem problem,
      PackLimits limits,
      List<Long> greatest,
      int stock,
      long spent,
      long rest) {
    if (stock == greatest.size()) {
      return rest <= 0 ? spent : Long.MAX_VALUE;
    }
    Stock from = problem.stocks().get(stock);
    long best = Long.MAX_VALUE;
    int most = Math.min(limits.most(stock), limits.least(stock) + 45);
    for (int packs = limits.least(stock); packs <= most; packs++) {
      best =
          Math.min(
              best,
              leastOfAll(
                  problem,
                  limits,
                  greatest,
                  stock + 1,
                  spent + packs * from.packCost(),
                  rest - packs * from.packSize() * greatest.get(stock)));
    }
    return best;
  }
}
