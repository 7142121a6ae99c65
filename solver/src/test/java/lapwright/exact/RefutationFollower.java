package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import lapwright.problem.Refutation;

/**
 * Follows a refutation by the plainest means, for what an outsider could write after reading its
 * description: maps from size to count for patterns, big integers for all numbers.
 */
final class RefutationFollower {
  private final long unit;
  private final SortedMap<Long, Integer> demands;
  private final Map<Long, Long> sticks;
  private final BigInteger allSticks;
  private final long waste;

  /**
   * @param unit of the sizes that refutations name; demands and sticks are in units of it
   */
  RefutationFollower(long unit, SortedMap<Long, Integer> demands, Map<Long, Long> sticks) {
    this.unit = unit;
    this.demands = demands;
    this.sticks = new TreeMap<>(sticks);
    this.sticks.values().removeIf(count -> count == 0);
    long count = 0;
    long room = 0;
    for (Map.Entry<Long, Long> entry : this.sticks.entrySet()) {
      count += entry.getValue();
      room += entry.getKey() * entry.getValue();
    }
    for (Map.Entry<Long, Integer> entry : demands.entrySet()) {
      room -= entry.getKey() * entry.getValue();
    }
    allSticks = BigInteger.valueOf(count);
    waste = room;
  }

  private record Listed(long capacity, Map<Long, Integer> counts) {}

  private record Decided(Map<Long, Integer> holding, long times, boolean atMost) {
    boolean concerns(Map<Long, Integer> counts) {
      return holding.entrySet().stream()
          .allMatch(held -> counts.getOrDefault(held.getKey(), 0) >= held.getValue());
    }
  }

  /** Fails unless it holds. */
  void follow(Refutation root) {
    if (waste < 0) {
      return;
    }
    Refutation.Sieve first = (Refutation.Sieve) root;
    if (!first.cuts().isEmpty()) {
      List<Listed> all = new ArrayList<>();
      for (long capacity : sticks.keySet()) {
        list(capacity, demands, capacity, first, Long.MIN_VALUE, new TreeMap<>(), all);
      }
      assertNull(first.rest(), "a first list by more than weights alone");
      follow(first, all, List.of());
      return;
    }
    // Patterns by depth-first search; those that the root's weights leave are what counts.
    List<Listed> possible = new ArrayList<>();
    BigInteger reserve = value(demands, first.weights()).negate();
    Map<Long, Long> greatest = new TreeMap<>();
    for (Map.Entry<Long, Long> stick : sticks.entrySet()) {
      TreeMap<Long, Long> best = new TreeMap<>(Map.of(0L, 0L));
      for (Map.Entry<Long, Integer> demand : demands.entrySet()) {
        long weight = first.weights().getOrDefault(demand.getKey() * unit, 0L);
        for (int copy = 0; copy < demand.getValue(); copy++) {
          TreeMap<Long, Long> more = new TreeMap<>(best);
          best.headMap(stick.getKey() - demand.getKey(), true)
              .forEach((p, w) -> more.merge(p + demand.getKey(), w + weight, Math::max));
          best = more;
        }
      }
      SortedMap<Long, Long> window = best.tailMap(stick.getKey() - waste);
      if (window.isEmpty()) {
        return;
      }
      long most = window.values().stream().mapToLong(w -> w).max().orElseThrow();
      greatest.put(stick.getKey(), most);
      reserve =
          reserve.add(BigInteger.valueOf(most).multiply(BigInteger.valueOf(stick.getValue())));
    }
    if (reserve.signum() < 0) {
      return;
    }
    for (Map.Entry<Long, Long> best : greatest.entrySet()) {
      long enough = best.getValue() - reserve.longValueExact();
      list(best.getKey(), demands, best.getKey(), first, enough, new TreeMap<>(), possible);
    }
    assertNotNull(first.rest(), "weights alone do not refute");
    follow(first.rest(), possible, List.of());
  }

  private void list(
      long capacity,
      SortedMap<Long, Integer> items,
      long room,
      Refutation.Sieve sieve,
      long enough,
      SortedMap<Long, Integer> counts,
      List<Listed> possible) {
    if (items.isEmpty()) {
      if (room <= waste && value(counts, sieve.weights()).longValueExact() >= enough) {
        possible.add(new Listed(capacity, new TreeMap<>(counts)));
      }
      return;
    }
    long size = items.lastKey();
    SortedMap<Long, Integer> smaller = items.headMap(size);
    int most = (int) Math.min(demands.getOrDefault(size, 0), room / size);
    for (int count = 0; count <= most; count++) {
      if (count > 0) {
        counts.put(size, count);
      }
      list(capacity, smaller, room - count * size, sieve, enough, counts, possible);
      counts.remove(size);
    }
  }

  private void follow(Refutation step, List<Listed> possible, List<Decided> above) {
    if (step instanceof Refutation.HoldingSplit split) {
      Map<Long, Integer> holding = new TreeMap<>();
      split.holding().forEach((size, count) -> holding.put(size / unit, count));
      List<Decided> fewer = new ArrayList<>(above);
      fewer.add(new Decided(holding, split.times(), true));
      follow(split.fewer(), possible, fewer);
      List<Decided> more = new ArrayList<>(above);
      more.add(new Decided(holding, split.times() + 1L, false));
      follow(split.more(), possible, more);
      return;
    }
    Refutation.Sieve sieve = (Refutation.Sieve) step;
    assertTrue(sieve.decided().size() <= above.size(), "a multiplier without decision");
    Map<Long, BigInteger> greatest = new TreeMap<>();
    for (Listed pattern : possible) {
      greatest.merge(pattern.capacity(), value(pattern.counts(), sieve, above), BigInteger::max);
    }
    BigInteger reserve = valueOfAll(sieve, above).negate();
    for (Map.Entry<Long, Long> stick : sticks.entrySet()) {
      BigInteger most = greatest.get(stick.getKey());
      if (most == null) {
        return;
      }
      reserve = reserve.add(most.multiply(BigInteger.valueOf(stick.getValue())));
    }
    if (reserve.signum() < 0) {
      return;
    }
    assertNotNull(sieve.rest(), "a branch that is not closed");
    List<Listed> rest = new ArrayList<>();
    for (Listed pattern : possible) {
      BigInteger most = greatest.getOrDefault(pattern.capacity(), BigInteger.ZERO);
      if (most.subtract(value(pattern.counts(), sieve, above)).compareTo(reserve) <= 0) {
        rest.add(pattern);
      }
    }
    follow(sieve.rest(), rest, above);
  }

  private BigInteger value(Map<Long, Integer> counts, Refutation.Sieve sieve, List<Decided> above) {
    return value(
        counts, sieve, above, BigInteger.ONE, decision -> decision.concerns(counts) ? 1L : 0L);
  }

  private BigInteger valueOfAll(Refutation.Sieve sieve, List<Decided> above) {
    return value(demands, sieve, above, allSticks, Decided::times);
  }

  private BigInteger value(
      Map<Long, Integer> counts,
      Refutation.Sieve sieve,
      List<Decided> above,
      BigInteger times,
      Function<Decided, Long> held) {
    BigInteger value = value(counts, sieve.weights());
    for (Refutation.CutTimes cut : sieve.cuts()) {
      BigInteger sum =
          value(counts, cut.multipliers()).add(times.multiply(BigInteger.valueOf(cut.constant())));
      BigInteger divisor = BigInteger.valueOf(cut.divisor());
      BigInteger floor = sum.subtract(sum.mod(divisor)).divide(divisor);
      value = value.subtract(floor.multiply(BigInteger.valueOf(cut.times())));
    }
    for (int e = 0; e < sieve.decided().size(); e++) {
      Decided decision = above.get(e);
      BigInteger part =
          BigInteger.valueOf(sieve.decided().get(e))
              .multiply(BigInteger.valueOf(held.apply(decision)));
      value = decision.atMost() ? value.subtract(part) : value.add(part);
    }
    return value;
  }

  private BigInteger value(Map<Long, Integer> counts, SortedMap<Long, Long> weights) {
    BigInteger sum = BigInteger.ZERO;
    for (Map.Entry<Long, Integer> entry : counts.entrySet()) {
      sum =
          sum.add(
              BigInteger.valueOf(weights.getOrDefault(entry.getKey() * unit, 0L))
                  .multiply(BigInteger.valueOf(entry.getValue())));
    }
    return sum;
  }
}
