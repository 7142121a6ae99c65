package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import lapwright.effort.Effort;
import lapwright.problem.Refutation;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.refute.Question;
import lapwright.refute.Refuter;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Refutations by cuts that list no pattern: they hold, and never where the sticks suffice. */
class CutRefutationTest {
  /**
   * The edges of the Petersen graph, each as long as its two nodes: every perfect matching fills a
   * stick, half of each of six of them gives all pieces, but three sticks do not, since three
   * colours do not colour the edges (J. Petersen, 1898).
   */
  @Test
  void matchingsThatNoThreeColoursMake() {
    List<Integer> nodes = List.of(153, 215, 260, 352, 355, 480, 489, 580, 764, 894);
    int stick = nodes.stream().mapToInt(length -> length).sum();
    List<Integer> pieces = edges(nodes);
    assertFalse(fit(pieces, new int[] {stick, stick, stick}, 0));

    StickProblem problem = problem(pieces, stick);
    assertNull(refutation(problem, 4));
    Refutation refutation = refutation(problem, 3);
    assertNotNull(refutation);
    follow(problem, stick, refutation);
  }

  @Property(tries = 150, seed = "31")
  void neverWhereTheSticksSuffice(@ForAll long seed) {
    tried(new Random(seed));
  }

  @Test
  void oftenEnoughForThatToMeanSomething() {
    int refuted = 0;
    for (int seed = 0; seed < 60; seed++) {
      refuted += tried(new Random(seed)) ? 1 : 0;
    }
    assertTrue(refuted > 5 && refuted < 55, "" + refuted);
  }

  /** Nodes so short that other pieces than matchings fill sticks too; true when cuts refute. */
  private static boolean tried(Random random) {
    List<Integer> nodes = new ArrayList<>();
    int range = 1 << 6 + random.nextInt(7);
    for (int v = 0; v < 10; v++) {
      nodes.add(range / 8 + random.nextInt(range));
    }
    int stick = nodes.stream().mapToInt(length -> length).sum();
    List<Integer> pieces = edges(nodes);
    StickProblem problem = problem(pieces, stick);
    Refutation refutation = refutation(problem, 3);
    if (refutation == null) {
      return false;
    }
    assertFalse(fit(pieces, new int[] {stick, stick, stick}, 0), problem::toString);
    follow(problem, stick, refutation);
    return !((Refutation.Sieve) refutation).cuts().isEmpty();
  }

  private static List<Integer> edges(List<Integer> nodes) {
    List<Integer> edges = new ArrayList<>();
    for (int v = 0; v < 5; v++) {
      edges.add(nodes.get(v) + nodes.get((v + 1) % 5));
      edges.add(nodes.get(5 + v) + nodes.get(5 + (v + 2) % 5));
      edges.add(nodes.get(v) + nodes.get(5 + v));
    }
    edges.sort(Comparator.reverseOrder());
    return edges;
  }

  /** Puts pieces on sticks one after the other in every way. */
  private static boolean fit(List<Integer> pieces, int[] rooms, int next) {
    if (next == pieces.size()) {
      return true;
    }
    for (int j = 0; j < rooms.length; j++) {
      if (rooms[j] >= pieces.get(next)) {
        rooms[j] -= pieces.get(next);
        boolean fits = fit(pieces, rooms, next + 1);
        rooms[j] += pieces.get(next);
        if (fits) {
          return true;
        }
      }
    }
    return false;
  }

  private static StickProblem problem(List<Integer> pieces, int stick) {
    Map<Integer, Integer> demands = new TreeMap<>();
    pieces.forEach(length -> demands.merge(length, 1, Integer::sum));
    List<Item> items = new ArrayList<>();
    demands.forEach((length, demand) -> items.add(new Item(length, demand, false)));
    Stock stock = new Stock(stick, stick, stick, false, 0, 1, 1, 1, Integer.MAX_VALUE);
    return new StickProblem(items, List.of(stock), 1);
  }

  private static @Nullable Refutation refutation(StickProblem problem, long sticks) {
    Question question = Question.of(problem, List.of(sticks));
    try (Refuter refuter = new Refuter(question, Effort.unlimited())) {
      Refutation byWeights = refuter.byWeights();
      return byWeights != null ? byWeights : refuter.byCuts(8);
    }
  }

  private static void follow(StickProblem problem, long stick, Refutation refutation) {
    TreeMap<Long, Integer> demands = new TreeMap<>();
    problem.items().forEach(item -> demands.put(item.size(), item.demand()));
    new RefutationFollower(1, demands, Map.of(stick, 3L)).follow(refutation);
  }
}
