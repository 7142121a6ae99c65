package lapwright.exact;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Completes a solution of which few pieces are left, at no more than a given cost: depth-first, a
 * stick at a time, each around the longest piece that is left (bin completion: R. Korf, AAAI 2002).
 *
 * <p>What may be lost on the way is counted by weights: with N_j no less than the greatest weight
 * of a pattern of stock j and r_j = D P_j - k_j N_j,
 *
 * <p>D cost = sum_i d_i W_i + sum_j r_j y_j + sum of (N_j - W a) over all sticks of the packs y,
 *
 * <p>an unused stick with its empty pattern. The first two terms are least at the limits of y. What
 * the cost allows above that is all that patterns, packs away from their cheaper limit and unused
 * sticks may lose together: where it is little, few patterns fit. They are listed with a table of
 * what the rest of a stick can weigh, its lengths rounded to a grid in favour of more weight.
 */
final class ExactFinish {
  private static final long POSITIONS = 16_384;
  private static final int MOST_STEPS = 100_000;
  private static final int MOST_SUMS = 3_000;
  private static final int MOST_A_NODE = 30;
  private static final int CHOICES_A_NODE = 40;

  private final StickProblem problem;
  private final List<Item> items;
  private final PackLimits limits;
  private final long scale;
  private final long[] weights;
  private final long[] greatest;
  private final long[] dearer;
  private final long grid;

  /** The sums of N of a few sticks, rising, and the least that more sticks than these have. */
  private final long[] sums;

  private final long moreThanSums;

  /** State of a search. */
  private int[] left = new int[0];

  private int[] kinds = new int[0];
  private long[][] table = new long[0][];
  private final int[] packs;
  private final long[] open;
  private final List<Pattern> chosen = new ArrayList<>();
  private Layout.Builder begun;
  private long goal;
  private int steps;

  /**
   * @param bounded weights and what no pattern weighs more than, within the limits
   */
  ExactFinish(StickProblem problem, PackLimits limits, Relaxation.Bounded bounded) {
    this.problem = problem;
    this.limits = limits;
    scale = bounded.certificate().scale();
    items = problem.items();
    weights = bounded.certificate().weights().stream().mapToLong(w -> w).toArray();
    greatest = bounded.greatest().stream().mapToLong(n -> n).toArray();
    int n = problem.stocks().size();
    dearer = new long[n];
    packs = new int[n];
    open = new long[n];
    long longest = 1;
    for (int j = 0; j < n; j++) {
      Stock stock = problem.stocks().get(j);
      dearer[j] =
          Math.subtractExact(
              Math.multiplyExact(scale, stock.packCost()),
              Math.multiplyExact(greatest[j], stock.packSize()));
      longest = Math.max(longest, stock.capacity());
    }
    grid = longest / POSITIONS + 1;
    begun = new Layout.Builder(problem);
    long[] kinds = Arrays.stream(greatest).filter(sum -> sum > 0).distinct().sorted().toArray();
    NavigableSet<Long> all = new TreeSet<>(List.of(0L));
    int sticks = 0;
    while (kinds.length > 0 && (long) all.size() * kinds.length <= MOST_SUMS && sticks < 3) {
      NavigableSet<Long> longer = new TreeSet<>(all);
      for (long one : kinds) {
        all.forEach(sum -> longer.add(sum + one));
      }
      all = longer;
      sticks++;
    }
    sums = all.stream().mapToLong(sum -> sum).toArray();
    moreThanSums = kinds.length == 0 ? 0 : (sticks + 1) * kinds[0];
  }

  /**
   * A complete solution that costs no more than the goal; null when none is found within a fixed
   * amount of work.
   */
  @Nullable Layout finish(Layout.Builder from, long atMost) {
    begun = from;
    goal = atMost;
    left = from.left();
    Long budget = budget();
    if (budget == null || budget < 0) {
      return null;
    }
    kinds = kindsLeft();
    fillTable();
    steps = 0;
    chosen.clear();
    long carried = 0;
    for (int kind : kinds) {
      carried += weights[kind] * left[kind];
    }
    return extend(budget, carried);
  }

  /** What may still be lost at that cost; as much as there is where weights tell nothing. */
  long budget(Layout.Builder from, long atMost) {
    begun = from;
    goal = atMost;
    left = from.left();
    Long budget = budget();
    return budget == null ? Long.MAX_VALUE : budget;
  }

  /** What a loss is worth in cost. */
  double cost(long lost) {
    return (double) lost / scale;
  }

  /** By how much a pattern misses the greatest weight of its stock. */
  long lost(Pattern pattern) {
    return greatest[pattern.stock()] - pattern.sum(weights);
  }

  private int[] kindsLeft() {
    int count = 0;
    int[] all = new int[left.length];
    for (int i = 0; i < left.length; i++) {
      if (left[i] > 0) {
        all[count++] = i;
      }
    }
    return Arrays.copyOf(all, count);
  }

  /** What may still be lost; null when no weights hold here, or supply is short. */
  private @Nullable Long budget() {
    BigInteger rest = product(scale, goal);
    for (int i = 0; i < weights.length; i++) {
      rest = rest.subtract(product(weights[i], left[i]));
    }
    long[] used = begun.sticks();
    for (int j = 0; j < dearer.length; j++) {
      Stock stock = problem.stocks().get(j);
      long needed = Numbers.ceilDiv(used[j], stock.packSize());
      if (needed > limits.most(j) || (dearer[j] < 0 && !limits.isLimited(j))) {
        return null;
      }
      packs[j] = (int) Math.max(limits.least(j), needed);
      open[j] = (long) packs[j] * stock.packSize() - used[j];
      int toPay = dearer[j] < 0 ? limits.most(j) : packs[j];
      rest = rest.subtract(product(dearer[j], toPay)).subtract(product(greatest[j], used[j]));
    }
    return rest.bitLength() > 61 ? null : rest.longValueExact();
  }

  private static BigInteger product(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }

  /** table[t][p]: no less than what kinds from t on can weigh in length p of the grid. */
  private void fillTable() {
    int positions = 0;
    for (Stock stock : problem.stocks()) {
      positions = Math.max(positions, (int) (Math.max(0, stock.capacity()) / grid) + 1);
    }
    if (table.length <= kinds.length || table[0].length < positions) {
      table = new long[kinds.length + 1][positions];
    }
    Arrays.fill(table[kinds.length], 0);
    for (int t = kinds.length - 1; t >= 0; t--) {
      long[] row = table[t];
      System.arraycopy(table[t + 1], 0, row, 0, positions);
      int size = (int) (items.get(kinds[t]).size() / grid);
      long weight = weights[kinds[t]];
      int copies = Math.min(left[kinds[t]], positions / Math.max(1, size));
      for (int copy = 0; copy < copies; copy++) {
        for (int p = positions - 1; p >= size; p--) {
          row[p] = Math.max(row[p], row[p - size] + weight);
        }
      }
    }
  }

  private record Choice(Pattern pattern, long lost) {}

  /**
   * Goes on from here.
   *
   * @param carried what the pieces that are left weigh
   */
  private @Nullable Layout extend(long budget, long carried) {
    int first = firstLeft();
    if (first < 0) {
      return built();
    }
    if (!mayComeOut(carried, budget)) {
      return null;
    }
    List<Choice> choices = new ArrayList<>();
    for (int j = 0; j < dearer.length; j++) {
      long opening = opening(j);
      if (opening <= budget) {
        addChoices(j, first, budget - opening, opening, choices);
      }
    }
    choices.sort(Comparator.comparingLong(Choice::lost));
    for (int c = 0; c < choices.size() && c < CHOICES_A_NODE; c++) {
      if (steps > MOST_STEPS) {
        return null;
      }
      Choice choice = choices.get(c);
      int stock = choice.pattern().stock();
      int packSize = problem.stocks().get(stock).packSize();
      boolean opens = open[stock] == 0;
      if (opens) {
        packs[stock]++;
        open[stock] = packSize;
      }
      open[stock]--;
      choice.pattern().addTo(left, -1);
      chosen.add(choice.pattern());
      Layout found = extend(budget - choice.lost(), carried - choice.pattern().sum(weights));
      if (found != null) {
        return found;
      }
      chosen.remove(chosen.size() - 1);
      choice.pattern().addTo(left, 1);
      open[stock]++;
      if (opens) {
        packs[stock]--;
        open[stock] = 0;
      }
    }
    return null;
  }

  /** False when no sticks have the room: few sticks come to few sums. */
  private boolean mayComeOut(long carried, long budget) {
    if (carried + budget >= moreThanSums) {
      return true;
    }
    int at = Arrays.binarySearch(sums, carried);
    at = at < 0 ? -at - 1 : at;
    return at < sums.length && sums[at] <= carried + budget;
  }

  /** Place among the kinds of the longest piece that is left; -1 when none is. */
  private int firstLeft() {
    for (int t = 0; t < kinds.length; t++) {
      if (left[kinds[t]] > 0) {
        return t;
      }
    }
    return -1;
  }

  /** What the next stick of a stock loses before anything is cut from it. */
  private long opening(int stock) {
    if (open[stock] > 0) {
      return 0;
    }
    return packs[stock] >= limits.most(stock) ? Long.MAX_VALUE : Math.max(0, dearer[stock]);
  }

  private void addChoices(int stock, int first, long budget, long opening, List<Choice> choices) {
    long room = problem.stocks().get(stock).capacity() - items.get(kinds[first]).size();
    if (room >= 0) {
      int[] counts = new int[items.size()];
      counts[kinds[first]]++;
      left[kinds[first]]--;
      long missing = greatest[stock] - budget - weights[kinds[first]];
      list(stock, first, room, missing, opening + budget, counts, choices, choices.size());
      left[kinds[first]]++;
    }
  }

  /** Lists patterns of kinds from t on that add the missing weight; false when there are many. */
  private boolean list(
      int stock,
      int t,
      long room,
      long missing,
      long budget,
      int[] counts,
      List<Choice> choices,
      int before) {
    steps++;
    if (table[t][(int) (room / grid)] < missing) {
      return true;
    }
    if (t == kinds.length) {
      Pattern pattern = Pattern.ofCounts(stock, counts);
      if (Layout.isProper(problem, pattern)) {
        choices.add(new Choice(pattern, budget + missing));
      }
      return choices.size() - before < MOST_A_NODE && steps <= MOST_STEPS;
    }
    int item = kinds[t];
    long size = items.get(item).size();
    int copies = (int) Math.min(left[item], room / size);
    boolean goesOn = true;
    for (int count = copies; count >= 0 && goesOn; count--) {
      counts[item] += count;
      goesOn =
          list(
              stock,
              t + 1,
              room - count * size,
              missing - count * weights[item],
              budget,
              counts,
              choices,
              before);
      counts[item] -= count;
    }
    return goesOn;
  }

  private @Nullable Layout built() {
    Layout.Builder builder = new Layout.Builder(problem, begun);
    chosen.forEach(pattern -> builder.add(pattern, 1));
    Layout layout = builder.buildIfComplete();
    return layout == null || layout.cost() > goal ? null : layout;
  }
}
