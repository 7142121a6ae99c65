package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapwright.colgen.Pattern;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Completing a solution at a cost, against the least cost by going through every way. */
class ExactFinishTest {

  @Property(tries = 800, seed = "11")
  void findsTheLeastCostAndNothingBelowIt(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    Assume.that(isWithinTheWork(problem));
    long least = EveryWay.leastCost(problem);
    ExactFinish finish = new ExactFinish(problem, PackLimits.of(problem), byWeights(problem, seed));
    Layout.Builder nothing = new Layout.Builder(problem);
    if (least == PatternOracle.IMPOSSIBLE) {
      assertNull(finish.finish(nothing, Long.MAX_VALUE / 1_000_000));
      return;
    }
    Layout found = finish.finish(nothing, least);
    assertNotNull(found, "nothing at " + least);
    assertEquals(least, found.cost());
    assertNull(finish.finish(nothing, least - 1));
    assertTrue(finish.budget(nothing, least) >= 0);
    long lost = finish.budget(nothing, least);
    for (Layout.Use use : found.uses()) {
      lost -= use.times() * finish.lost(use.pattern());
    }
    assertTrue(lost >= 0, "the solution loses more than its cost allows");
  }

  @Property(tries = 800, seed = "12")
  void keepsWhatIsBegun(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    Assume.that(isWithinTheWork(problem));
    long least = EveryWay.leastCost(problem);
    if (least == PatternOracle.IMPOSSIBLE) {
      return;
    }
    ExactFinish finish = new ExactFinish(problem, PackLimits.of(problem), byWeights(problem, seed));
    Layout whole = finish.finish(new Layout.Builder(problem), least);
    assertNotNull(whole);
    Layout.Builder begun = new Layout.Builder(problem);
    Pattern first = whole.uses().get(0).pattern();
    begun.add(first, 1);
    Layout found = finish.finish(begun, least);
    assertNotNull(found, "nothing beside " + first);
    assertEquals(least, found.cost());
    assertTrue(found.uses().stream().anyMatch(use -> use.pattern().equals(first)));
  }

  /** True where the limits of the search cut nothing off: a stick has few patterns. */
  private static boolean isWithinTheWork(StickProblem problem) {
    int all = 0;
    for (Stock stock : problem.stocks()) {
      List<int[]> patterns = new ArrayList<>();
      PatternOracle.list(problem, stock, 0, new int[problem.items().size()], patterns);
      all += patterns.size();
    }
    return all <= 30 && problem.items().stream().mapToInt(Item::demand).sum() <= 10;
  }

  /** Random weights, what no pattern weighs more than, and a scale at which they prove a bound. */
  private static Relaxation.Bounded byWeights(StickProblem problem, long seed) {
    Random random = new Random(seed);
    List<Long> weights = new ArrayList<>();
    for (Item item : problem.items()) {
      weights.add(item.size() * 3 + random.nextInt(3));
    }
    List<Long> greatest = new ArrayList<>();
    long scale = 1;
    for (Stock stock : problem.stocks()) {
      List<int[]> patterns = new ArrayList<>();
      PatternOracle.list(problem, stock, 0, new int[weights.size()], patterns);
      long most = 0;
      for (int[] counts : patterns) {
        long weight = 0;
        for (int i = 0; i < counts.length; i++) {
          weight += counts[i] * weights.get(i);
        }
        most = Math.max(most, weight);
      }
      greatest.add(most);
      if (!stock.isLimited()) {
        scale = Math.max(scale, Numbers.ceilDiv(most * stock.packSize(), stock.packCost()));
      }
    }
    return new Relaxation.Bounded(null, 0, new StickCertificate.Weights(scale, weights), greatest);
  }
}
