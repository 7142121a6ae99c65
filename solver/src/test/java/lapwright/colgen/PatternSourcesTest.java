package lapwright.colgen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Both sources of stick patterns, each by itself, against all patterns of small problems. */
class PatternSourcesTest {

  @Property(tries = 1500, seed = "11")
  void listsGiveTheHeaviestPatterns(@ForAll long seed) {
    Case of = new Case(seed);
    of.check(new PatternLists(of.problem));
  }

  @Property(tries = 1500, seed = "11")
  void tablesGiveTheHeaviestPatterns(@ForAll long seed) {
    Case of = new Case(seed);
    of.check(new PatternTable(of.problem));
  }

  @Property(tries = 500, seed = "11")
  void aSourceGivesTheSameAgainAfterOtherQuestions(@ForAll long seed) {
    Case of = new Case(seed);
    for (PatternSource source :
        List.of(new PatternLists(of.problem), new PatternTable(of.problem))) {
      PatternSource.Priced first = of.price(source);
      source.price(new long[of.weights.length], of.limits, of.thresholds, 3);
      assertEquals(first, of.price(source));
    }
  }

  /** A small problem with everything in it, and a question about it. */
  private static final class Case {
    final StickProblem problem;
    final long[] weights;
    final int[] limits;
    final long[] thresholds;
    final int most;

    Case(long seed) {
      Random random = new Random(seed);
      int hold = random.nextInt(3) == 0 ? 2 + random.nextInt(6) : 0;
      List<Item> items = new ArrayList<>();
      for (int i = random.nextInt(5); i >= 0; i--) {
        int size = 1 + random.nextInt(14);
        items.add(new Item(size, 1 + random.nextInt(4), size < hold));
      }
      List<Stock> stocks = new ArrayList<>();
      for (int j = random.nextInt(3); j >= 0; j--) {
        long capacity = 3 + random.nextInt(25);
        long small = Math.max(-1, capacity - hold);
        stocks.add(new Stock(30, capacity, small, random.nextBoolean(), 0, 9, 9, 1, 7));
      }
      problem = new StickProblem(items, stocks, 0);
      weights = new long[items.size()];
      limits = new int[items.size()];
      boolean nearSize = random.nextBoolean();
      for (int i = 0; i < weights.length; i++) {
        weights[i] = nearSize ? items.get(i).size() * 4 + random.nextInt(3) : random.nextInt(30);
        limits[i] = random.nextInt(items.get(i).demand() + 1);
      }
      thresholds = new long[stocks.size()];
      for (int j = 0; j < thresholds.length; j++) {
        thresholds[j] = random.nextInt(60);
      }
      most = random.nextInt(12);
    }

    PatternSource.Priced price(PatternSource source) {
      return source.price(weights, limits, thresholds, most);
    }

    void check(PatternSource source) {
      PatternSource.Priced priced = price(source);
      for (int j = 0; j < thresholds.length; j++) {
        long heaviest = heaviest(j, 0, new int[weights.length]);
        long told = priced.greatest().get(j);
        assertTrue(
            told == heaviest
                || (heaviest <= thresholds[j] && told >= heaviest && told <= thresholds[j]),
            "stock " + j + ": " + heaviest + " told as " + told);
        int stock = j;
        assertTrue(
            most == 0
                || heaviest <= thresholds[j]
                || priced.patterns().stream()
                    .anyMatch(p -> p.stock() == stock && p.sum(weights) == heaviest),
            "no heaviest pattern of stock " + j);
      }
      assertEquals(priced.patterns().size(), new HashSet<>(priced.patterns()).size());
      assertTrue(most > 0 || priced.patterns().isEmpty());
      for (Pattern pattern : priced.patterns()) {
        int[] counts = new int[weights.length];
        pattern.addTo(counts, 1);
        assertTrue(isProper(pattern.stock(), counts), "improper " + pattern);
        assertTrue(pattern.mostTimes(limits) > 0, "beyond its limits " + pattern);
        assertTrue(pattern.sum(weights) > thresholds[pattern.stock()], "too light " + pattern);
      }
    }

    /** The greatest weight over all proper patterns, the empty one included. */
    private long heaviest(int stock, int from, int[] counts) {
      if (from == counts.length) {
        long weight = 0;
        for (int i = 0; i < counts.length; i++) {
          weight += counts[i] * weights[i];
        }
        return isProper(stock, counts) ? weight : 0;
      }
      long best = 0;
      for (int count = 0; count <= limits[from]; count++) {
        counts[from] = count;
        best = Math.max(best, heaviest(stock, from + 1, counts));
      }
      counts[from] = 0;
      return best;
    }

    private boolean isProper(int j, int[] counts) {
      Stock stock = problem.stocks().get(j);
      long total = 0;
      int pieces = 0;
      boolean other = false;
      for (int i = 0; i < counts.length; i++) {
        total += counts[i] * problem.items().get(i).size();
        pieces += counts[i];
        other |= counts[i] > 0 && !problem.items().get(i).small();
      }
      return pieces == 0
          || (total <= stock.capacity()
              && (other
                  || total <= stock.smallCapacity()
                  || (stock.wholeUse() && pieces == 1 && total == stock.capacity())));
    }
  }
}
