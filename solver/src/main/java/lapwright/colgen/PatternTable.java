package lapwright.colgen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import lapwright.problem.StickProblem;

/**
 * Patterns of sticks, priced on one table that serves all stocks.
 *
 * <p>Items are split into stages of 1, 2, 4, ... copies. With T stages, C the greatest capacity, w
 * the weights and s the sizes of stages:
 *
 * <p>F(t, p) = max(F(t-1, p), F(t-1, p - s_t) + w_t): the most that stages up to t can weigh in
 * length p; H(t, p) the same for the stages from t on. The best pattern of stock j that holds stage
 * t weighs max over p of F(t-1, p) + w_t + H(t+1, C_j - s_t - p): one diverse pattern for every
 * item. Many diverse columns a call are what makes column generation short (da Silva and Schouery,
 * INFORMS J. Computing 2025, doi 10.1287/ijoc.2023.0399).
 *
 * <p>Small items come first, so that row Ts is the table of patterns of small items only; B(t, p),
 * the most with at least one other item, is made only where the plain table would break the rule
 * for small items.
 *
 * <p>Time O(T C), for the diverse patterns O(T C) for each of at most {@value #STOCKS_IN_DEPTH}
 * stocks; memory 4 T C bytes. Not thread-safe: it keeps its table from call to call.
 *
 * <p>The class is long because all its steps read and write the one table.
 */
public final class PatternTable implements PatternSource {
  /** Cells beyond which a table is too large. */
  static final long MOST_CELLS = 40_000_000;

  private static final int STOCKS_IN_DEPTH = 3;
  private final int[] sizes;
  private final boolean[] small;
  private final int smallCount;
  private final int[] capacities;
  private final int[] smallCapacities;
  private final boolean[] wholeUse;
  private final int greatestCapacity;

  private int[] stageItem = new int[0];
  private int[] stageCopies = new int[0];
  private int[] stageSize = new int[0];
  private int[] stageWeight = new int[0];
  private int stages;
  private int smallStages;
  private int[] largeItem = new int[0];
  private int larges;
  private int[][] forward = new int[0][];
  private long[][] backwardTakes = new long[0][];

  /** Made for a problem whose capacities are small enough for {@link #cells}. */
  public PatternTable(StickProblem problem) {
    int m = problem.items().size();
    sizes = new int[m];
    small = new boolean[m];
    int smalls = 0;
    for (int i = 0; i < m; i++) {
      sizes[i] = Math.toIntExact(problem.items().get(i).size());
      small[i] = problem.items().get(i).small();
      smalls += small[i] ? 1 : 0;
    }
    smallCount = smalls;
    int n = problem.stocks().size();
    capacities = new int[n];
    smallCapacities = new int[n];
    wholeUse = new boolean[n];
    int greatest = 0;
    for (int j = 0; j < n; j++) {
      StickProblem.Stock stock = problem.stocks().get(j);
      capacities[j] = (int) Math.max(0, stock.capacity());
      smallCapacities[j] = (int) Math.max(0, stock.smallCapacity());
      wholeUse[j] = stock.wholeUse();
      greatest = Math.max(greatest, capacities[j]);
    }
    greatestCapacity = greatest;
  }

  /** Cells that the table of a problem would have, at most. */
  static long cells(StickProblem problem) {
    long greatest =
        problem.stocks().stream().mapToLong(StickProblem.Stock::capacity).max().orElse(0);
    try {
      return Math.multiplyExact(stages(problem) + 1, greatest + 1);
    } catch (ArithmeticException e) {
      return Long.MAX_VALUE;
    }
  }

  /** Rows that the table of a problem would have, at most. */
  static long stages(StickProblem problem) {
    long greatest =
        problem.stocks().stream().mapToLong(StickProblem.Stock::capacity).max().orElse(0);
    long stages = 0;
    for (StickProblem.Item item : problem.items()) {
      long most = Math.min(item.demand(), Math.max(0, greatest) / item.size());
      stages += Long.SIZE - Long.numberOfLeadingZeros(most);
    }
    return stages;
  }

  @Override
  public Priced price(long[] weights, int[] limits, long[] thresholds, int most) {
    layOutStages(weights, limits, true);
    fillForward();
    int n = capacities.length;
    long[] greatest = new long[n];
    List<Candidate> found = new ArrayList<>();
    long[][] mixedTakes = new long[0][];
    int[] mixed = null;
    for (int j = 0; j < n; j++) {
      int[] counts = new int[sizes.length];
      int large = bestLarge(capacities[j], weights);
      greatest[j] = fill(capacities[j], large, weights, counts);
      if (smallCount > 0 && large < 0 && !isProper(j, counts)) {
        if (mixed == null) {
          mixedTakes = new long[stages][];
          mixed = fillMixed(mixedTakes);
        }
        greatest[j] = bestOfFour(j, weights, limits, mixed, mixedTakes, counts);
      }
      if (most > 0 && greatest[j] > thresholds[j]) {
        found.add(new Candidate(Pattern.ofCounts(j, counts), greatest[j] - thresholds[j]));
      }
    }
    Set<Pattern> patterns = new LinkedHashSet<>();
    if (!found.isEmpty()) {
      found.sort(Comparator.comparingLong(Candidate::surplus).reversed());
      for (Candidate candidate : found) {
        patterns.add(candidate.pattern());
      }
      if (most > patterns.size()) {
        addThroughEveryItem(found, weights, limits, thresholds, most, patterns);
      }
    }
    return new Priced(Arrays.stream(greatest).boxed().toList(), List.copyOf(patterns));
  }

  /** The large item that the heaviest filling of a length holds; -1 without one. */
  private int bestLarge(int length, long[] weights) {
    int[] all = forward[stages];
    long top = all[length];
    int best = -1;
    for (int k = 0; k < larges; k++) {
      int item = largeItem[k];
      if (sizes[item] <= length && all[length - sizes[item]] + weights[item] > top) {
        top = all[length - sizes[item]] + weights[item];
        best = item;
      }
    }
    return best;
  }

  /** Adds the heaviest filling with the large item, if there is one, and returns its weight. */
  private long fill(int length, int large, long[] weights, int[] counts) {
    if (large < 0) {
      walkBack(stages, length, counts);
      return forward[stages][length];
    }
    counts[large]++;
    walkBack(stages, length - sizes[large], counts);
    return forward[stages][length - sizes[large]] + weights[large];
  }

  /**
   * For the most promising stocks, the best pattern through each item, the best ones first: the
   * item beside the heaviest filling of the rest. Where that filling holds all copies of the item
   * already, the pattern is found on tables without it, if patterns are wanted still.
   */
  private void addThroughEveryItem(
      List<Candidate> byStock,
      long[] weights,
      int[] limits,
      long[] thresholds,
      int most,
      Set<Pattern> patterns) {
    List<Through> throughs = new ArrayList<>();
    int depth = Math.min(STOCKS_IN_DEPTH, byStock.size());
    for (int i = 0; i < sizes.length; i++) {
      for (int d = 0; d < depth && weights[i] > 0 && limits[i] > 0; d++) {
        int stock = byStock.get(d).pattern().stock();
        int rest = capacities[stock] - sizes[i];
        if (rest >= 0) {
          int large = isLarge(i) ? -1 : bestLarge(rest, weights);
          long beside =
              large < 0
                  ? forward[stages][rest]
                  : forward[stages][rest - sizes[large]] + weights[large];
          long surplus = weights[i] + beside - thresholds[stock];
          if (surplus > 0) {
            throughs.add(new Through(i, stock, large, surplus));
          }
        }
      }
    }
    throughs.sort(Comparator.comparingLong(Through::surplus).reversed());
    boolean[] isOpen = new boolean[sizes.length];
    boolean anyOpen = false;
    for (Through through : throughs) {
      if (patterns.size() >= most) {
        return;
      }
      int[] counts = new int[sizes.length];
      int item = through.item();
      fill(capacities[through.stock()] - sizes[item], through.large(), weights, counts);
      if (counts[item] == limits[item]) {
        isOpen[item] = true;
        anyOpen = true;
        continue;
      }
      counts[item]++;
      if (smallCount == 0 || isProper(through.stock(), counts)) {
        patterns.add(Pattern.ofCounts(through.stock(), counts));
      }
    }
    if (anyOpen) {
      layOutStages(weights, limits, false);
      fillForward();
      for (Candidate candidate : throughOpenItems(byStock, thresholds, isOpen)) {
        if (patterns.size() >= most) {
          return;
        }
        patterns.add(candidate.pattern());
      }
    }
  }

  private record Through(int item, int stock, int large, long surplus) {}

  private boolean isLarge(int item) {
    return !small[item] && 2L * sizes[item] > greatestCapacity;
  }

  private record Candidate(Pattern pattern, long surplus) {}

  /**
   * Splits items into stages.
   *
   * @param largeBeside true when items of which no two fit together stay out of the table
   */
  private void layOutStages(long[] weights, int[] limits, boolean largeBeside) {
    int room = 0;
    for (int i = 0; i < sizes.length; i++) {
      if (sizes[i] <= greatestCapacity) {
        room += 32 - Integer.numberOfLeadingZeros(Math.min(limits[i], greatestCapacity / sizes[i]));
      }
    }
    if (stageItem.length < room) {
      stageItem = new int[room];
      stageCopies = new int[room];
      stageSize = new int[room];
      stageWeight = new int[room];
    }
    if (largeItem.length < sizes.length) {
      largeItem = new int[sizes.length];
    }
    larges = 0;
    stages = 0;
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i < sizes.length; i++) {
        if (small[i] != (pass == 0) || weights[i] < 1 || sizes[i] > greatestCapacity) {
          continue;
        }
        int left = Math.min(limits[i], greatestCapacity / sizes[i]);
        if (largeBeside && isLarge(i)) {
          if (left > 0) {
            largeItem[larges++] = i;
          }
          continue;
        }
        for (int copies = 1; left > 0; copies *= 2) {
          int taken = Math.min(copies, left);
          stageItem[stages] = i;
          stageCopies[stages] = taken;
          stageSize[stages] = taken * sizes[i];
          stageWeight[stages++] = Math.toIntExact(taken * weights[i]);
          left -= taken;
        }
      }
      if (pass == 0) {
        smallStages = stages;
      }
    }
  }

  private void fillForward() {
    if (forward.length <= stages) {
      forward = Arrays.copyOf(forward, stages + 1);
    }
    for (int t = 0; t <= stages; t++) {
      if (forward[t] == null) {
        forward[t] = new int[greatestCapacity + 1];
      }
    }
    Arrays.fill(forward[0], 0);
    for (int t = 0; t < stages; t++) {
      int[] before = forward[t];
      int[] after = forward[t + 1];
      int size = stageSize[t];
      int weight = stageWeight[t];
      System.arraycopy(before, 0, after, 0, size);
      // Shifted first, and the maximum without a branch: so the compiler makes vectors of it.
      System.arraycopy(before, 0, after, size, greatestCapacity + 1 - size);
      for (int p = size; p <= greatestCapacity; p++) {
        int less = before[p] - after[p] - weight;
        after[p] = before[p] - (less & less >> 31);
      }
      if (after[greatestCapacity] < 0) {
        throw new ArithmeticException("weights too great for the pattern table");
      }
    }
  }

  /** Adds the items of the best pattern of the first {@code t} stages in length {@code p}. */
  private void walkBack(int t, int p, int[] counts) {
    int at = t;
    int length = p;
    while (forward[at][length] > 0) {
      int weight = forward[at][length];
      int without = 0;
      while (at - without > 1) {
        int middle = (without + at) >>> 1;
        if (forward[middle][length] == weight) {
          at = middle;
        } else {
          without = middle;
        }
      }
      at--;
      counts[stageItem[at]] += stageCopies[at];
      length -= stageSize[at];
    }
  }

  /** B(T, .), with a bit for every stage and length where the stage was taken last. */
  private int[] fillMixed(long[][] takes) {
    int[] mixed = new int[greatestCapacity + 1];
    Arrays.fill(mixed, -1);
    for (int t = smallStages; t < stages; t++) {
      long[] took = new long[greatestCapacity / 64 + 1];
      for (int p = stageSize[t]; p <= greatestCapacity; p++) {
        int with = forward[t][p - stageSize[t]] + stageWeight[t];
        if (with > mixed[p]) {
          mixed[p] = with;
          took[p >> 6] |= 1L << p;
        }
      }
      takes[t] = took;
    }
    return mixed;
  }

  /** The best proper pattern where small items matter; its counts replace {@code counts}. */
  private long bestOfFour(
      int j, long[] weights, int[] limits, int[] mixed, long[][] mixedTakes, int[] counts) {
    Arrays.fill(counts, 0);
    long smallOnly = forward[smallStages][smallCapacities[j]];
    long withOther = mixed[capacities[j]];
    int large = -1;
    for (int k = 0; k < larges; k++) {
      int item = largeItem[k];
      int rest = capacities[j] - sizes[item];
      if (rest >= 0 && forward[stages][rest] + weights[item] > withOther) {
        withOther = forward[stages][rest] + weights[item];
        large = item;
      }
    }
    int whole = -1;
    if (wholeUse[j]) {
      for (int i = 0; i < sizes.length; i++) {
        if (small[i] && sizes[i] == capacities[j] && limits[i] > 0 && weights[i] > 0) {
          whole = i;
        }
      }
    }
    if (whole >= 0 && weights[whole] >= Math.max(smallOnly, withOther)) {
      counts[whole] = 1;
      return weights[whole];
    }
    if (withOther > smallOnly && large >= 0) {
      return fill(capacities[j], large, weights, counts);
    }
    if (withOther > smallOnly) {
      int length = capacities[j];
      for (int t = stages - 1; t >= smallStages; t--) {
        if ((mixedTakes[t][length >> 6] >>> length & 1) != 0) {
          counts[stageItem[t]] += stageCopies[t];
          walkBack(t, length - stageSize[t], counts);
          break;
        }
      }
      return withOther;
    }
    walkBack(smallStages, smallCapacities[j], counts);
    return smallOnly;
  }

  private boolean isProper(int stock, int[] counts) {
    long total = 0;
    int pieces = 0;
    boolean other = false;
    for (int i = 0; i < counts.length; i++) {
      total += (long) counts[i] * sizes[i];
      pieces += counts[i];
      other |= counts[i] > 0 && !small[i];
    }
    return other
        || total <= smallCapacities[stock]
        || (wholeUse[stock] && pieces == 1 && total == capacities[stock]);
  }

  /** For the most promising stocks, the best pattern through each open item. */
  private List<Candidate> throughOpenItems(
      List<Candidate> byStock, long[] thresholds, boolean[] isOpen) {
    int depth = Math.min(STOCKS_IN_DEPTH, byStock.size());
    int[] bestStage = new int[sizes.length * depth];
    int[] bestLength = new int[sizes.length * depth];
    long[] best = new long[sizes.length * depth];
    if (backwardTakes.length < stages) {
      backwardTakes = new long[stages][];
    }
    int words = greatestCapacity / 64 + 1;
    int[] backward = new int[greatestCapacity + 1];
    for (int t = stages - 1; t >= 0; t--) {
      for (int d = 0; d < depth; d++) {
        int stock = byStock.get(d).pattern().stock();
        int rest = capacities[stock] - stageSize[t];
        if (rest < 0 || !isOpen[stageItem[t]]) {
          continue;
        }
        int at = stageItem[t] * depth + d;
        int top = bestSum(forward[t], backward, rest);
        long surplus = (long) (top + stageWeight[t]) - thresholds[stock];
        if (surplus > best[at]) {
          best[at] = surplus;
          bestStage[at] = t;
          bestLength[at] = placeOf(top, forward[t], backward, rest);
        }
      }
      long[] took = backwardTakes[t];
      if (took == null || took.length != words) {
        took = new long[words];
        backwardTakes[t] = took;
      } else {
        Arrays.fill(took, 0);
      }
      int size = stageSize[t];
      int weight = stageWeight[t];
      for (int p = greatestCapacity; p >= size; p--) {
        int with = backward[p - size] + weight;
        if (with > backward[p]) {
          backward[p] = with;
          took[p >> 6] |= 1L << p;
        }
      }
    }
    List<Candidate> candidates = new ArrayList<>();
    for (int at = 0; at < best.length; at++) {
      if (best[at] > 0) {
        int stock = byStock.get(at % depth).pattern().stock();
        int[] counts = new int[sizes.length];
        int t = bestStage[at];
        counts[stageItem[t]] += stageCopies[t];
        walkBack(t, bestLength[at], counts);
        int length = capacities[stock] - stageSize[t] - bestLength[at];
        for (int u = t + 1; u < stages; u++) {
          if ((backwardTakes[u][length >> 6] >>> length & 1) != 0) {
            counts[stageItem[u]] += stageCopies[u];
            length -= stageSize[u];
          }
        }
        if (smallCount == 0 || isProper(stock, counts)) {
          candidates.add(new Candidate(Pattern.ofCounts(stock, counts), best[at]));
        }
      }
    }
    candidates.sort(Comparator.comparingLong(Candidate::surplus).reversed());
    return candidates;
  }

  private static int bestSum(int[] forward, int[] backward, int rest) {
    int top = 0;
    for (int p = 0; p <= rest; p++) {
      top = Math.max(top, forward[p] + backward[rest - p]);
    }
    return top;
  }

  private static int placeOf(int top, int[] forward, int[] backward, int rest) {
    for (int p = 0; p <= rest; p++) {
      if (forward[p] + backward[rest - p] == top) {
        return p;
      }
    }
    throw new IllegalStateException("no place for " + top);
  }
}
