package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Stocks in the groups that a certificate decides about: each stock is in one, alone when no
 * decision names it.
 */
final class PackGroups {
  /** Stands for no limit. */
  static final long UNLIMITED = Long.MAX_VALUE;

  private final List<List<Integer>> groups;
  private final Map<SortedSet<Integer>, Integer> indexOfSet;
  private final List<Long> mostOfStock;

  private PackGroups(
      List<List<Integer>> groups,
      Map<SortedSet<Integer>, Integer> indexOfSet,
      List<Long> mostOfStock) {
    this.groups = groups;
    this.indexOfSet = indexOfSet;
    this.mostOfStock = mostOfStock;
  }

  /**
   * Groups for these decisions; empty when two of them name sets that are neither equal nor
   * disjoint.
   *
   * @param mostOfStock packs of each stock that can be had, or {@link #UNLIMITED}
   */
  static Optional<PackGroups> of(List<SortedSet<Integer>> decided, List<Long> mostOfStock) {
    List<List<Integer>> groups = new ArrayList<>();
    Map<SortedSet<Integer>, Integer> indexOfSet = new HashMap<>();
    boolean[] taken = new boolean[mostOfStock.size()];
    for (SortedSet<Integer> set : decided) {
      if (indexOfSet.putIfAbsent(set, groups.size()) == null) {
        for (int stock : set) {
          if (taken[stock]) {
            return Optional.empty();
          }
          taken[stock] = true;
        }
        groups.add(List.copyOf(set));
      }
    }
    for (int stock = 0; stock < taken.length; stock++) {
      if (!taken[stock]) {
        indexOfSet.put(new TreeSet<>(List.of(stock)), groups.size());
        groups.add(List.of(stock));
      }
    }
    return Optional.of(new PackGroups(groups, indexOfSet, mostOfStock));
  }

  List<Integer> stocksOf(int group) {
    return groups.get(group);
  }

  int count() {
    return groups.size();
  }

  /** All packs that can be had. */
  Range everything() {
    long[] most = new long[groups.size()];
    Arrays.fill(most, UNLIMITED);
    return new Range(new long[groups.size()], most);
  }

  /** Sum of a value for each pack, over some choice of packs. */
  record Choice(BigInteger sum, List<Long> packs, int endless) {
    boolean isFinite() {
      return endless < 0;
    }
  }

  /** How many packs of each group the decisions above a leaf leave. Immutable. */
  final class Range {
    private final long[] least;
    private final long[] most;

    private Range(long[] least, long[] most) {
      this.least = least;
      this.most = most;
    }

    Range withAtMost(SortedSet<Integer> stocks, int packs) {
      long[] fewer = most.clone();
      int group = indexOf(stocks);
      fewer[group] = Math.min(fewer[group], packs);
      return new Range(least, fewer);
    }

    Range withMoreThan(SortedSet<Integer> stocks, int packs) {
      long[] more = least.clone();
      int group = indexOf(stocks);
      more[group] = Math.max(more[group], packs + 1L);
      return new Range(more, most);
    }

    private int indexOf(SortedSet<Integer> stocks) {
      Integer group = indexOfSet.get(stocks);
      if (group == null) {
        throw new IllegalArgumentException("no group of " + stocks);
      }
      return group;
    }

    long least(int group) {
      return least[group];
    }

    /** What the decisions leave at most; {@link #UNLIMITED} when none does. */
    long most(int group) {
      return most[group];
    }

    /** True when some group would need more packs than are left. */
    boolean isEmpty() {
      for (int group = 0; group < least.length; group++) {
        long available = 0;
        for (int stock : groups.get(group)) {
          long more = mostOfStock.get(stock);
          available = more == UNLIMITED || available == UNLIMITED ? UNLIMITED : available + more;
        }
        if (least[group] > Math.min(most[group], available)) {
          return true;
        }
      }
      return false;
    }

    /**
     * Kinds of packs, for costs of whole packs: a group of equal stocks as one, others stock by
     * stock and without what their group needs at least, which only lowers the cost.
     *
     * @param costs of a pack, by stock
     * @param carries weight that a pack carries at most, by stock
     */
    List<LeastPacks.Kind> kinds(List<Long> costs, List<BigInteger> carries) {
      List<LeastPacks.Kind> kinds = new ArrayList<>();
      for (int group = 0; group < least.length; group++) {
        List<Integer> stocks = groups.get(group);
        if (stocks.isEmpty()) {
          continue;
        }
        int first = stocks.get(0);
        boolean alike = true;
        long available = 0;
        for (int stock : stocks) {
          alike &= costs.get(stock).equals(costs.get(first));
          alike &= carries.get(stock).equals(carries.get(first));
          long more = mostOfStock.get(stock);
          available = more == UNLIMITED || available == UNLIMITED ? UNLIMITED : available + more;
        }
        if (alike) {
          kinds.add(
              new LeastPacks.Kind(
                  costs.get(first),
                  carries.get(first),
                  least[group],
                  Math.min(most[group], available)));
        } else {
          for (int stock : stocks) {
            long more = Math.min(most[group], mostOfStock.get(stock));
            kinds.add(new LeastPacks.Kind(costs.get(stock), carries.get(stock), 0, more));
          }
        }
      }
      return kinds;
    }

    /** Packs of stocks that are alike, told by the first of them. */
    record Limit(int stock, long packs) {}

    /**
     * The most packs that are left: of a group of stocks that are alike together, of others stock
     * by stock, which only allows more.
     *
     * @param looks by stock, equal where stocks are alike
     */
    List<Limit> limits(List<?> looks) {
      List<Limit> limits = new ArrayList<>();
      for (int group = 0; group < most.length; group++) {
        List<Integer> stocks = groups.get(group);
        boolean alike = stocks.stream().map(looks::get).distinct().count() <= 1;
        long together = 0;
        for (int stock : stocks) {
          long more = mostOfStock.get(stock);
          together = more == UNLIMITED || together == UNLIMITED ? UNLIMITED : together + more;
          if (!alike) {
            limits.add(new Limit(stock, Math.min(most[group], more)));
          }
        }
        if (alike && !stocks.isEmpty()) {
          limits.add(new Limit(stocks.get(0), Math.min(most[group], together)));
        }
      }
      return limits;
    }

    /**
     * The packs with the least sum of values: in each group first those that lower it, then as many
     * of the cheapest as the group needs at least.
     *
     * @param values of one pack, by stock
     */
    Choice cheapest(List<BigInteger> values) {
      Long[] packs = new Long[values.size()];
      BigInteger sum = BigInteger.ZERO;
      int endless = -1;
      for (int group = 0; group < least.length; group++) {
        List<Integer> byValue = new ArrayList<>(groups.get(group));
        byValue.sort(Comparator.comparing(values::get));
        long needed = least[group];
        long room = most[group];
        for (int stock : byValue) {
          BigInteger value = values.get(stock);
          long wanted = value.signum() < 0 ? room : Math.min(room, needed);
          long taken = Math.min(wanted, mostOfStock.get(stock));
          packs[stock] = taken;
          if (taken == UNLIMITED) {
            endless = stock;
            continue;
          }
          needed = Math.max(0, needed - taken);
          room = room == UNLIMITED ? UNLIMITED : room - taken;
          sum = sum.add(value.multiply(BigInteger.valueOf(taken)));
        }
      }
      return new Choice(sum, List.of(packs), endless);
    }
  }
}
