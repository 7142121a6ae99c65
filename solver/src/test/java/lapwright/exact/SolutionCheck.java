package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.problem.Refutation;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;

/**
 * Every rule of a solution, and the bound of its certificate, by the plainest means: a map from
 * length to weight for the knapsacks, nothing shared with the solver.
 */
final class SolutionCheck {
  private SolutionCheck() {}

  static void check(StickProblem problem, StickSolution solution) {
    if (!solution.status().hasSolution()) {
      return;
    }
    int[] cut = new int[problem.items().size()];
    long[] sticks = new long[problem.stocks().size()];
    for (StickSolution.PatternUse use : solution.patterns()) {
      Stock stock = problem.stocks().get(use.stock());
      long total = 0;
      int pieces = 0;
      boolean other = false;
      for (StickSolution.Count count : use.counts()) {
        Item item = problem.items().get(count.item());
        total += item.size() * count.count();
        pieces += count.count();
        other |= !item.small();
        cut[count.item()] += count.count() * use.times();
      }
      assertTrue(total <= stock.capacity(), "pattern too long");
      assertTrue(
          other
              || total <= stock.smallCapacity()
              || (stock.wholeUse() && pieces == 1 && total == stock.capacity()),
          "small items that cannot be held");
      sticks[use.stock()] += use.times();
    }
    for (int i = 0; i < cut.length; i++) {
      assertEquals(problem.items().get(i).demand(), cut[i], "item " + i);
    }
    long cost = 0;
    for (int j = 0; j < sticks.length; j++) {
      Stock stock = problem.stocks().get(j);
      int packs = solution.packs().get(j);
      assertTrue(packs >= 0 && packs <= stock.mostPacks(), "packs of stock " + j);
      assertTrue(sticks[j] <= (long) packs * stock.packSize(), "sticks of stock " + j);
      cost += stock.packCost() * packs;
    }
    assertEquals(cost, solution.cost());
    StickCertificate certificate = solution.certificate();
    assertNotNull(certificate);
    int[] most = problem.stocks().stream().mapToInt(Stock::mostPacks).toArray();
    long bound =
        bound(problem, certificate, new TreeMap<>(), most)
            .min(BigInteger.valueOf(Long.MAX_VALUE))
            .longValueExact();
    long raised = raised(problem, bound, solution.cost());
    assertTrue(
        solution.bound() <= raised, () -> "bound " + solution.bound() + " but only " + raised);
  }

  private record Range(int least, int most) {}

  private static BigInteger bound(
      StickProblem problem,
      StickCertificate certificate,
      TreeMap<String, Range> decided,
      int[] most) {
    if (certificate instanceof StickCertificate.PackSplit split) {
      String key = split.stocks().toString();
      long all = split.stocks().stream().mapToLong(j -> most[j]).sum();
      Range before =
          decided.getOrDefault(key, new Range(0, (int) Math.min(all, Integer.MAX_VALUE)));
      TreeMap<String, Range> fewer = new TreeMap<>(decided);
      fewer.put(key, new Range(before.least(), Math.min(before.most(), split.packs())));
      TreeMap<String, Range> more = new TreeMap<>(decided);
      more.put(key, new Range(Math.max(before.least(), split.packs() + 1), before.most()));
      return bound(problem, split.fewer(), fewer, most)
          .min(bound(problem, split.more(), more, most));
    }
    if (certificate instanceof StickCertificate.NoSolution none) {
      refuted(problem, none.refutation(), decided, most);
      return BigInteger.valueOf(Long.MAX_VALUE);
    }
    StickCertificate.Weights leaf = (StickCertificate.Weights) certificate;
    BigInteger sum = BigInteger.ZERO;
    for (int i = 0; i < problem.items().size(); i++) {
      assertTrue(leaf.weights().get(i) >= 0);
      sum =
          sum.add(
              BigInteger.valueOf(leaf.weights().get(i))
                  .multiply(BigInteger.valueOf(problem.items().get(i).demand())));
    }
    BigInteger demanded = sum;
    BigInteger carried = BigInteger.ZERO;
    List<List<Integer>> groups = new ArrayList<>();
    List<Range> ranges = new ArrayList<>();
    boolean[] grouped = new boolean[most.length];
    decided.forEach(
        (key, range) -> {
          List<Integer> group = new ArrayList<>();
          for (String word : key.replaceAll("[\\[\\] ]", "").split(",")) {
            group.add(Integer.valueOf(word));
            assertFalse(grouped[group.get(group.size() - 1)], "overlapping decisions");
            grouped[group.get(group.size() - 1)] = true;
          }
          groups.add(group);
          ranges.add(range);
        });
    for (int j = 0; j < most.length; j++) {
      if (!grouped[j]) {
        groups.add(List.of(j));
        ranges.add(new Range(0, most[j]));
      }
    }
    for (int g = 0; g < groups.size(); g++) {
      // Equal stocks only: the tests' groups are never mixed.
      int j = groups.get(g).get(0);
      Stock stock = problem.stocks().get(j);
      BigInteger carries =
          BigInteger.valueOf(greatest(problem, stock, leaf.weights()))
              .multiply(BigInteger.valueOf(stock.packSize()));
      BigInteger slack =
          BigInteger.valueOf(leaf.scale())
              .multiply(BigInteger.valueOf(stock.packCost()))
              .subtract(carries);
      Range range = ranges.get(g);
      if (range.least() > range.most()) {
        return BigInteger.valueOf(Long.MAX_VALUE);
      }
      boolean limited = range.most() != Integer.MAX_VALUE;
      assertTrue(slack.signum() >= 0 || limited, "an unlimited stock is overdrawn");
      sum =
          sum.add(
              slack.multiply(
                  BigInteger.valueOf(slack.signum() < 0 ? range.most() : range.least())));
      carried = carried.add(carries.multiply(BigInteger.valueOf(range.most())));
    }
    if (demanded.compareTo(carried) > 0) {
      return BigInteger.valueOf(Long.MAX_VALUE);
    }
    BigInteger[] parts = sum.divideAndRemainder(BigInteger.valueOf(leaf.scale()));
    BigInteger plain = parts[1].signum() > 0 ? parts[0].add(BigInteger.ONE) : parts[0];
    return plain.max(BigInteger.valueOf(wholePacks(problem, leaf, groups, ranges)));
  }

  /** Fails unless the refutation holds for the packs that are decided. */
  private static void refuted(
      StickProblem problem, Refutation refutation, TreeMap<String, Range> decided, int[] most) {
    Map<Long, Long> sticksOfCapacity = new TreeMap<>();
    long unit = 0;
    for (Item item : problem.items()) {
      unit = Numbers.gcd(unit, item.size());
    }
    boolean[] done = new boolean[most.length];
    for (Map.Entry<String, Range> entry : decided.entrySet()) {
      long all = 0;
      Stock last = problem.stocks().get(0);
      for (String word : entry.getKey().replaceAll("[\\[\\] ]", "").split(",")) {
        int j = Integer.parseInt(word);
        done[j] = true;
        all += most[j];
        last = problem.stocks().get(j);
      }
      long packs = Math.min(all, entry.getValue().most());
      sticksOfCapacity.merge(last.capacity() / unit, packs * last.packSize(), Long::sum);
    }
    for (int j = 0; j < most.length; j++) {
      Stock stock = problem.stocks().get(j);
      if (!done[j] && problem.items().stream().anyMatch(item -> gives(stock, item))) {
        assertTrue(stock.isLimited(), "a refutation of endless sticks");
        sticksOfCapacity.merge(
            stock.capacity() / unit, (long) most[j] * stock.packSize(), Long::sum);
      }
    }
    TreeMap<Long, Integer> demands = new TreeMap<>();
    for (Item item : problem.items()) {
      demands.merge(item.size() / unit, item.demand(), Integer::sum);
    }
    sticksOfCapacity.keySet().removeIf(capacity -> capacity < demands.firstKey());
    new RefutationFollower(unit, demands, sticksOfCapacity).follow(refutation);
  }

  private static boolean gives(Stock stock, Item item) {
    return item.size() <= (item.small() ? stock.smallCapacity() : stock.capacity())
        || (stock.wholeUse() && item.size() == stock.capacity());
  }

  /** The least cost of whole packs that carry the weights, by a table over costs. */
  private static long wholePacks(
      StickProblem problem,
      StickCertificate.Weights leaf,
      List<List<Integer>> groups,
      List<Range> ranges) {
    long unit = 0;
    long top = 0;
    for (Stock stock : problem.stocks()) {
      unit = Numbers.gcd(unit, stock.packCost());
      top = Math.max(top, stock.packCost());
    }
    if (unit == 0) {
      return 0;
    }
    long demanded = 0;
    for (int i = 0; i < problem.items().size(); i++) {
      demanded += leaf.weights().get(i) * problem.items().get(i).demand();
    }
    int pieces = problem.items().stream().mapToInt(Item::demand).sum();
    int amounts = (int) Math.min(400_000, top / unit * Math.min(pieces, 400)) + 1;
    long[] carried = new long[amounts];
    Arrays.fill(carried, -1);
    carried[0] = 0;
    for (int g = 0; g < groups.size(); g++) {
      Stock stock = problem.stocks().get(groups.get(g).get(0));
      long carries = greatest(problem, stock, leaf.weights()) * stock.packSize();
      int step = (int) (stock.packCost() / unit);
      long most = Math.min(ranges.get(g).most(), pieces);
      if (step == 0) {
        for (int at = 0; at < amounts; at++) {
          carried[at] += carried[at] < 0 ? 0 : carries * most;
        }
        continue;
      }
      long[] with = new long[amounts];
      Arrays.fill(with, -1);
      for (int packs = ranges.get(g).least(); packs <= most; packs++) {
        if ((long) packs * step >= amounts) {
          break;
        }
        for (int at = packs * step; at < amounts; at++) {
          long before = carried[at - packs * step];
          if (before >= 0) {
            with[at] = Math.max(with[at], before + packs * carries);
          }
        }
      }
      carried = with;
    }
    for (int at = 0; at < amounts; at++) {
      if (carried[at] >= demanded) {
        return at * unit;
      }
    }
    return 0;
  }

  /** The greatest weight of a proper pattern: lengths mapped to weights, item by item. */
  private static long greatest(StickProblem problem, Stock stock, List<Long> weights) {
    TreeMap<Long, Long> small = new TreeMap<>();
    small.put(0L, 0L);
    TreeMap<Long, Long> mixed = new TreeMap<>();
    long best = 0;
    Integer[] order = new Integer[problem.items().size()];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Boolean.compare(isOther(problem, a), isOther(problem, b)));
    for (int i : order) {
      Item item = problem.items().get(i);
      long most = Math.min(item.demand(), stock.capacity() / item.size());
      for (int copy = 0; copy < most; copy++) {
        if (item.small()) {
          extend(small, small, item.size(), weights.get(i), stock.capacity());
        } else {
          TreeMap<Long, Long> grown = new TreeMap<>(mixed);
          extend(mixed, grown, item.size(), weights.get(i), stock.capacity());
          extend(small, grown, item.size(), weights.get(i), stock.capacity());
          mixed = grown;
        }
      }
      if (item.small() && stock.wholeUse() && item.size() == stock.capacity()) {
        best = Math.max(best, weights.get(i));
      }
    }
    for (var entry : small.entrySet()) {
      if (entry.getKey() <= Math.max(0, stock.smallCapacity())) {
        best = Math.max(best, entry.getValue());
      }
    }
    for (long weight : mixed.values()) {
      best = Math.max(best, weight);
    }
    return best;
  }

  private static boolean isOther(StickProblem problem, int item) {
    return !problem.items().get(item).small();
  }

  private static void extend(
      TreeMap<Long, Long> from, TreeMap<Long, Long> to, long size, long weight, long capacity) {
    TreeMap<Long, Long> source = new TreeMap<>(from);
    source.forEach(
        (length, value) -> {
          if (length + size <= capacity) {
            to.merge(length + size, value + weight, Math::max);
          }
        });
  }

  /** False when the item alone says that the stock is of no use to it. */
  private static boolean holds(Stock stock, Item item) {
    return item.size() <= stock.capacity();
  }

  /** The least cost at or above the bound that can be reached, by a plain set of sums. */
  private static long raised(StickProblem problem, long bound, long cost) {
    if (bound >= cost || cost > 3_000_000) {
      long unit = 0;
      for (Stock stock : problem.stocks()) {
        unit = Numbers.gcd(unit, stock.packCost());
      }
      return unit == 0 ? bound : Numbers.ceilDiv(bound, unit) * unit;
    }
    boolean[] reached = new boolean[(int) cost + 1];
    reached[0] = true;
    for (Stock stock : problem.stocks()) {
      if (stock.packCost() == 0 || problem.items().stream().noneMatch(i -> holds(stock, i))) {
        continue;
      }
      int[] used = new int[reached.length];
      for (int at = (int) stock.packCost(); at < reached.length; at++) {
        int from = at - (int) stock.packCost();
        if (!reached[at] && reached[from] && used[from] < stock.mostPacks()) {
          reached[at] = true;
          used[at] = used[from] + 1;
        }
      }
    }
    for (long at = Math.max(0, bound); at < cost; at++) {
      if (reached[(int) at]) {
        return at;
      }
    }
    return cost;
  }
}
