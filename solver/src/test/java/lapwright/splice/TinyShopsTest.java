package lapwright.splice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.BiPredicate;
import lapwright.effort.Effort;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Arc;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceProblem.Splits.Graph;
import lapwright.problem.SpliceSolution;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tiny shops whose least cost is found by trying every split on the grid of units and every way to
 * put the pieces on sticks.
 */
class TinyShopsTest {
  private static final int SHOPS = 150;

  @Test
  void costIsTheLeastOfAllSplitsAndPatterns() {
    int proved = 0;
    int planned = 0;
    for (int seed = 0; seed < SHOPS; seed++) {
      SpliceProblem problem = shop(new Random(seed));
      long least = leastCost(problem, (group, split) -> true);
      SpliceSolution solution = SpliceSolver.solve(problem, Effort.unlimited());
      if (least == Long.MAX_VALUE) {
        assertTrue(!solution.status().hasSolution(), "shop " + seed);
        continue;
      }
      assertTrue(solution.status().hasSolution(), "shop " + seed + " costs " + least);
      assertTrue(solution.bound() <= least, "shop " + seed + " bound " + solution.bound());
      assertTrue(solution.cost() >= least, "shop " + seed + " cost " + solution.cost());
      if (solution.status() == Status.PROVED) {
        assertEquals(least, solution.cost(), "shop " + seed);
        proved++;
      }
      planned++;
      checkSplits(problem, solution);
    }
    assertTrue(10 * proved >= 9 * planned, proved + " proved of " + planned);
  }

  /** Where the exchange argument holds, whole sticks and one or two other pieces lose nothing. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void wholeSticksAndOneOrTwoOtherPiecesLoseNothingWhereTheyNeedNot(int most) {
    int held = 0;
    for (int seed = 0; held < 60; seed++) {
      SpliceProblem problem = shop(new Random(10_000 + seed));
      List<Integer> others =
          problem.groups().stream().map(group -> WholeSticks.others(problem, group)).toList();
      if (Collections.max(others) != most || !others.stream().allMatch(few -> few <= 2)) {
        continue;
      }
      long least = leastCost(problem, (group, split) -> true);
      long fewOthers =
          leastCost(
              problem,
              (group, split) -> {
                List<Long> cut = cut(problem, split);
                long sum = cut.stream().mapToLong(Long::longValue).sum();
                Anywhere rules = (Anywhere) group.splits();
                return cut.size() <= 1
                    || (cut.size() <= WholeSticks.others(problem, group)
                        && sum < problem.longestUsable() + WholeSticks.shortest(problem, rules));
              });
      assertEquals(least, fewOthers, "shop " + seed);
      SpliceSolution solution = SpliceSolver.solve(problem, Effort.unlimited());
      assertTrue(solution.cost() >= least, "shop " + seed + " cost " + solution.cost());
      assertTrue(solution.bound() <= least, "shop " + seed + " bound " + solution.bound());
      held++;
    }
  }

  private static SpliceProblem shop(Random random) {
    int cut = random.nextInt(3) == 0 ? 1 : 0;
    List<Stock> stocks = new ArrayList<>();
    int kinds = 1 + random.nextInt(2);
    for (int j = 0; j < kinds; j++) {
      int length = 9 + random.nextInt(8);
      stocks.add(stock(length, cut, 10 * length + random.nextInt(20), Integer.MAX_VALUE));
    }
    if (random.nextInt(3) == 0) {
      stocks.add(stock(4 + random.nextInt(10), cut, 0, 1));
    }
    long unlimited = 0;
    long longest = 0;
    for (Stock stock : stocks) {
      longest = Math.max(longest, stock.capacity() - cut);
      unlimited = Math.max(unlimited, stock.isLimited() ? 0 : stock.capacity() - cut);
    }
    List<Item> plain = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      plain.add(new Item(2 + random.nextInt((int) unlimited - 2) + cut, 1, false));
    }
    List<Group> groups = new ArrayList<>();
    int lap = random.nextInt(3);
    int shortest = 1 + random.nextInt(3);
    for (int i = 1 + random.nextInt(2); i > 0; i--) {
      long total = 5 + random.nextInt(24);
      int fewest = 1;
      while (total + (fewest - 1L) * lap > fewest * unlimited) {
        fewest++;
      }
      int most = fewest + (random.nextInt(3) == 0 && fewest < 3 ? 1 : 0);
      Splits splits =
          random.nextInt(3) == 0
              ? graph(random, total, lap, most, shortest, longest)
              : new Anywhere(total, lap, most, shortest, shortest, longest, 1, Closing.ANY_CUT);
      groups.add(new Group(1 + random.nextInt(fewest > 2 ? 1 : 2), splits, 0));
    }
    return new SpliceProblem(plain, stocks, cut, 0, 0, groups);
  }

  private static Stock stock(long length, long cut, long price, int most) {
    return new Stock(length, length + cut, length + cut, true, 0, price, price, 1, most);
  }

  /** Joints at a few random places. */
  private static Graph graph(
      Random random, long total, long lap, int most, long shortest, long longest) {
    List<Long> places = new ArrayList<>();
    for (long place = 2; place < total - 1; place += 1 + random.nextInt(4)) {
      places.add(place);
    }
    List<Long> positions = new ArrayList<>();
    positions.add(0L);
    int[][] node = new int[places.size()][most];
    for (int p = 0; p < places.size(); p++) {
      for (int k = 1; k < most; k++) {
        node[p][k] = positions.size();
        positions.add(places.get(p));
      }
    }
    int sink = positions.size();
    positions.add(total);
    List<Arc> arcs = new ArrayList<>();
    for (int from = -1; from < places.size(); from++) {
      for (int k = from < 0 ? 0 : 1; k < (from < 0 ? 1 : most); k++) {
        int start = from < 0 ? 0 : node[from][k];
        for (int to = from + 1; to <= places.size(); to++) {
          boolean last = to == places.size();
          long length =
              (last ? total : places.get(to) + lap - lap / 2)
                  - (from < 0 ? 0 : places.get(from) - lap / 2);
          if (length >= shortest && length <= longest && (last || k + 1 < most)) {
            arcs.add(new Arc(start, last ? sink : node[to][k + 1], length));
          }
        }
      }
    }
    return new Graph(positions, arcs, Closing.ANY_CUT);
  }

  private static void checkSplits(SpliceProblem problem, SpliceSolution solution) {
    for (int g = 0; g < problem.groups().size(); g++) {
      Group group = problem.groups().get(g);
      List<List<Long>> permitted = splits(group.splits());
      int lines = 0;
      for (SpliceSolution.Split split : solution.splits().get(g)) {
        lines += split.lines();
        List<Long> sorted = split.lengths().stream().sorted().toList();
        assertTrue(permitted.contains(sorted), sorted + " is no split of " + group.splits());
      }
      assertEquals(group.lines(), lines);
    }
  }

  /** Every permitted split, its pieces sorted. */
  private static List<List<Long>> splits(Splits splits) {
    List<List<Long>> found = new ArrayList<>();
    if (splits instanceof Graph graph) {
      follow(graph, 0, new ArrayList<>(), found);
    } else {
      Anywhere rules = (Anywhere) splits;
      for (int k = 1; k <= rules.mostPieces(); k++) {
        partition(rules, k, rules.sumOf(k), rules.shortest(), new ArrayList<>(), found);
      }
    }
    return found.stream().distinct().toList();
  }

  private static void follow(Graph graph, int node, List<Long> pieces, List<List<Long>> found) {
    if (node == graph.positions().size() - 1) {
      found.add(pieces.stream().sorted().toList());
      return;
    }
    for (Arc arc : graph.arcs()) {
      if (arc.from() == node) {
        pieces.add(arc.length());
        follow(graph, arc.to(), pieces, found);
        pieces.remove(pieces.size() - 1);
      }
    }
  }

  private static void partition(
      Anywhere rules, int pieces, long left, long least, List<Long> laid, List<List<Long>> found) {
    if (pieces == 1) {
      if (left >= least && left <= rules.longest()) {
        List<Long> split = new ArrayList<>(laid);
        split.add(left);
        found.add(split.stream().sorted().toList());
      }
      return;
    }
    for (long length = least; length <= rules.longest() && length * pieces <= left; length++) {
      laid.add(length);
      partition(rules, pieces - 1, left - length, length, laid, found);
      laid.remove(laid.size() - 1);
    }
  }

  private static long leastCost(SpliceProblem problem, BiPredicate<Group, List<Long>> permitted) {
    List<Long> pieces = new ArrayList<>();
    problem.plain().forEach(item -> pieces.add(item.size()));
    List<List<List<Long>>> choices = new ArrayList<>();
    for (Group group : problem.groups()) {
      List<List<Long>> splits =
          splits(group.splits()).stream().filter(split -> permitted.test(group, split)).toList();
      for (int line = 0; line < group.lines(); line++) {
        choices.add(splits);
      }
    }
    return leastCost(problem, choices, 0, pieces, new long[] {Long.MAX_VALUE});
  }

  /** The pieces that are not as long as what some stick gives. */
  private static List<Long> cut(SpliceProblem problem, List<Long> split) {
    return split.stream()
        .filter(
            length ->
                problem.stocks().stream()
                    .noneMatch(stock -> stock.capacity() - problem.cut() == length))
        .toList();
  }

  private static long leastCost(
      SpliceProblem problem,
      List<List<List<Long>>> choices,
      int line,
      List<Long> pieces,
      long[] best) {
    if (line == choices.size()) {
      long[] sorted =
          pieces.stream().sorted(Collections.reverseOrder()).mapToLong(Long::longValue).toArray();
      int[] left = problem.stocks().stream().mapToInt(Stock::mostPacks).toArray();
      place(problem, sorted, 0, new ArrayList<>(), left, 0, best);
      return best[0];
    }
    for (List<Long> split : choices.get(line)) {
      List<Long> more = new ArrayList<>(pieces);
      split.forEach(length -> more.add(length + problem.cut()));
      leastCost(problem, choices, line + 1, more, best);
    }
    return best[0];
  }

  /** Puts the pieces, longest first, on open sticks or new ones. */
  private static void place(
      SpliceProblem problem,
      long[] sizes,
      int next,
      List<Long> rooms,
      int[] left,
      long cost,
      long[] best) {
    if (cost >= best[0]) {
      return;
    }
    if (next == sizes.length) {
      best[0] = cost;
      return;
    }
    long[] tried = new long[rooms.size()];
    Arrays.fill(tried, -1);
    for (int r = 0; r < rooms.size(); r++) {
      long room = rooms.get(r);
      boolean again = Arrays.stream(tried).anyMatch(one -> one == room);
      tried[r] = room;
      if (room >= sizes[next] && !again) {
        rooms.set(r, room - sizes[next]);
        place(problem, sizes, next + 1, rooms, left, cost, best);
        rooms.set(r, room);
      }
    }
    for (int j = 0; j < left.length; j++) {
      Stock stock = problem.stocks().get(j);
      if (left[j] > 0 && stock.capacity() >= sizes[next]) {
        left[j]--;
        rooms.add(stock.capacity() - sizes[next]);
        place(problem, sizes, next + 1, rooms, left, cost + stock.packCost(), best);
        rooms.remove(rooms.size() - 1);
        left[j]++;
      }
    }
  }
}
