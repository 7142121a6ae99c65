package lapwright.refute;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;

/**
 * Can these sticks give all items? Items are known by size, longest first, those of equal size
 * together; what is small plays no part, so that "no" holds for the problem, and "yes" need not.
 *
 * <p>Of stock j there are n_j sticks. All of them together have B = sum n_j C_j - sum d_i s_i to
 * waste, so that in a solution each measures from C_j - B to C_j.
 */
public final class Question {
  private final int[] sizes;
  private final int[] demands;
  private final int[] capacities;
  private final long[] sticks;
  private final int[] stocks;
  private final long waste;

  private Question(int[] sizes, int[] demands, int[] capacities, long[] sticks, int[] stocks) {
    this.sizes = sizes;
    this.demands = demands;
    this.capacities = capacities;
    this.sticks = sticks;
    this.stocks = stocks;
    long room = 0;
    for (int j = 0; j < capacities.length; j++) {
      room = Math.addExact(room, Math.multiplyExact(capacities[j], sticks[j]));
    }
    for (int i = 0; i < sizes.length; i++) {
      room = Math.subtractExact(room, (long) sizes[i] * demands[i]);
    }
    waste = room;
  }

  /**
   * The question for a problem with so many sticks of each stock; stocks of no sticks, and those
   * too short for any item, play no part.
   *
   * @param sticks by stock
   */
  public static Question of(StickProblem problem, List<Long> sticks) {
    NavigableMap<Long, Integer> demandOfSize = new TreeMap<>();
    for (StickProblem.Item item : problem.items()) {
      demandOfSize.merge(item.size(), item.demand(), Math::addExact);
    }
    List<Integer> used = new ArrayList<>();
    for (int j = 0; j < problem.stocks().size(); j++) {
      if (sticks.get(j) > 0 && problem.stocks().get(j).capacity() >= demandOfSize.firstKey()) {
        used.add(j);
      }
    }
    int[] sizes = new int[demandOfSize.size()];
    int[] demands = new int[sizes.length];
    int i = 0;
    for (Map.Entry<Long, Integer> entry : demandOfSize.descendingMap().entrySet()) {
      sizes[i] = Math.toIntExact(entry.getKey());
      demands[i++] = entry.getValue();
    }
    return new Question(
        sizes,
        demands,
        used.stream().mapToInt(j -> Math.toIntExact(problem.stocks().get(j).capacity())).toArray(),
        used.stream().mapToLong(sticks::get).toArray(),
        used.stream().mapToInt(j -> j).toArray());
  }

  /**
   * What is left to ask when these patterns are cut: the same items, some of demand 0, and fewer
   * sticks.
   */
  Question without(Pattern pattern, int times) {
    int[] rest = demands.clone();
    pattern.addTo(rest, -times);
    long[] fewer = sticks.clone();
    fewer[pattern.stock()] -= times;
    return new Question(sizes, rest, capacities, fewer, stocks);
  }

  /** How often the pattern can be cut at all. */
  int mostTimes(Pattern pattern) {
    return (int) Math.min(pattern.mostTimes(demands), sticks[pattern.stock()]);
  }

  /** What the items of a pattern measure together. */
  long length(Pattern pattern) {
    long length = 0;
    for (int k = 0; k < pattern.kinds(); k++) {
      length += (long) pattern.count(k) * sizes[pattern.item(k)];
    }
    return length;
  }

  /** True when nothing is left to be cut. */
  boolean isAnswered() {
    return Arrays.stream(demands).allMatch(demand -> demand == 0);
  }

  /** True when these patterns, one a stick, give every item exactly as often as demanded. */
  boolean isSolvedBy(List<Pattern> patterns) {
    int[] left = demands.clone();
    long[] sticksLeft = sticks.clone();
    for (Pattern pattern : patterns) {
      pattern.addTo(left, -1);
      if (--sticksLeft[pattern.stock()] < 0 || length(pattern) > capacities[pattern.stock()]) {
        return false;
      }
    }
    return Arrays.stream(left).allMatch(rest -> rest == 0);
  }

  /** Numbers by item as numbers by size, without those that are 0. */
  SortedMap<Long, Long> bySize(List<Long> byItem) {
    SortedMap<Long, Long> bySize = new TreeMap<>();
    for (int i = 0; i < byItem.size(); i++) {
      if (byItem.get(i) != 0) {
        bySize.put((long) sizes[i], byItem.get(i));
      }
    }
    return bySize;
  }

  /** Pieces that are to be cut. */
  long pieces() {
    return Arrays.stream(demands).asLongStream().sum();
  }

  public int items() {
    return sizes.length;
  }

  /** A size, longest first. */
  public int size(int item) {
    return sizes[item];
  }

  int demand(int item) {
    return demands[item];
  }

  public int stocks() {
    return capacities.length;
  }

  int capacity(int stock) {
    return capacities[stock];
  }

  /** n_j. */
  long sticks(int stock) {
    return sticks[stock];
  }

  /** Index of a stock in the problem. */
  public int stockOfProblem(int stock) {
    return stocks[stock];
  }

  /** n. */
  long allSticks() {
    long sum = 0;
    for (long count : sticks) {
      sum += count;
    }
    return sum;
  }

  /** B; negative where the sticks are too short together. */
  long waste() {
    return waste;
  }

  /** The least that a stick measures in a solution. */
  int leastLength(int stock) {
    return (int) Math.max(0, capacities[stock] - waste);
  }

  int longest() {
    int longest = 0;
    for (int capacity : capacities) {
      longest = Math.max(longest, capacity);
    }
    return longest;
  }
}
