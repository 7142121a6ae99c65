package lapwright.colgen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Patterns of sticks, priced on lists of undominated (length, weight) pairs: for lengths that share
 * no useful divisor, where a table would have millions of columns.
 *
 * <p>Items come by falling weight per length; after each, a pair is kept only if no shorter one
 * weighs as much (G. Nemhauser and Z. Ullmann, Management Science 15, 1969), and only if filling
 * its rest at the best rate to come would exceed the threshold of some stock. One list serves all
 * stocks. Where more than {@value #MOST_PAIRS} pairs survive, the least promising are dropped, and
 * what they might have become counts as the greatest weight.
 *
 * <p>Time O(stages x pairs), independent of the grid of lengths. Not thread-safe.
 *
 * <p>The class is long because all its steps read and write the same lists.
 */
public final class PatternLists implements PatternSource {
  private static final int MOST_PAIRS = 60_000;

  private final List<Item> items;
  private final List<Stock> stocks;
  private final Integer[] byCapacity;
  private final boolean anySmall;

  /** How a pair came about: the stage that was added, and the node before it. */
  private int[] nodeBefore = new int[1024];

  private int[] nodeStage = new int[1024];
  private int nodes;

  private int[] stageItem = new int[0];
  private int[] stageCopies = new int[0];
  private long[] capacities = new long[0];
  private double[] needed = new double[0];

  public PatternLists(StickProblem problem) {
    items = problem.items();
    stocks = problem.stocks();
    byCapacity = new Integer[stocks.size()];
    Arrays.setAll(byCapacity, j -> j);
    Arrays.sort(byCapacity, Comparator.comparingLong(j -> stocks.get(j).capacity()));
    anySmall = items.stream().anyMatch(Item::small);
  }

  /** Pairs by rising length, and so by rising weight. */
  private static final class Pairs {
    long[] lengths = new long[16];
    long[] weights = new long[16];
    int[] nodes = new int[16];
    int count;

    void add(long length, long weight, int node) {
      if (count == lengths.length) {
        lengths = Arrays.copyOf(lengths, 2 * count);
        weights = Arrays.copyOf(weights, 2 * count);
        nodes = Arrays.copyOf(nodes, 2 * count);
      }
      lengths[count] = length;
      weights[count] = weight;
      nodes[count++] = node;
    }

    /** Place of the heaviest pair no longer than that; -1 when there is none. */
    int heaviestWithin(long length) {
      int low = 0;
      int high = count;
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (lengths[middle] <= length) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      return low - 1;
    }
  }

  @Override
  public Priced price(long[] weights, int[] limits, long[] thresholds, int most) {
    long greatestCapacity = stocks.get(byCapacity[byCapacity.length - 1]).capacity();
    int stages = layOutStages(weights, limits, greatestCapacity);
    long[] dropped = new long[stocks.size()];
    nodes = 0;
    Pairs mixed = new Pairs();
    Pairs smallOnly = new Pairs();
    (anySmall ? smallOnly : mixed).add(0, 0, -1);
    for (int t = 0; t < stages; t++) {
      Item item = items.get(stageItem[t]);
      long size = item.size() * stageCopies[t];
      long weight = weights[stageItem[t]] * stageCopies[t];
      int next = t + 1;
      double rate =
          next < stages ? (double) weights[stageItem[next]] / items.get(stageItem[next]).size() : 0;
      prepare(rate, thresholds);
      if (item.small()) {
        mixed = merged(mixed, mixed, t, size, weight, rate, dropped);
        smallOnly = merged(smallOnly, smallOnly, t, size, weight, rate, dropped);
      } else {
        Pairs grown = merged(mixed, mixed, t, size, weight, rate, dropped);
        mixed =
            smallOnly.count == 0 ? grown : merged(grown, smallOnly, t, size, weight, rate, dropped);
      }
    }
    return collect(weights, limits, thresholds, most, mixed, smallOnly, dropped);
  }

  private int layOutStages(long[] weights, int[] limits, long greatestCapacity) {
    List<Integer> order = new ArrayList<>();
    int room = 0;
    for (int i = 0; i < items.size(); i++) {
      if (weights[i] > 0 && limits[i] > 0 && items.get(i).size() <= greatestCapacity) {
        order.add(i);
        room += 64 - Long.numberOfLeadingZeros(greatestCapacity / items.get(i).size());
      }
    }
    order.sort(
        Comparator.<Integer>comparingDouble(i -> -(double) weights[i] / items.get(i).size())
            .thenComparingInt(i -> i));
    if (stageItem.length < room) {
      stageItem = new int[room];
      stageCopies = new int[room];
    }
    int stages = 0;
    for (int i : order) {
      long left = Math.min(limits[i], greatestCapacity / items.get(i).size());
      for (long copies = 1; left > 0; copies *= 2) {
        long taken = Math.min(copies, left);
        stageItem[stages] = i;
        stageCopies[stages++] = (int) taken;
        left -= taken;
      }
    }
    return stages;
  }

  /** For each stock and the longer ones: what weight - rate x length must exceed to matter. */
  private void prepare(double rate, long[] thresholds) {
    int n = byCapacity.length;
    if (needed.length < n) {
      needed = new double[n];
      capacities = new long[n];
    }
    double least = Double.POSITIVE_INFINITY;
    for (int k = n - 1; k >= 0; k--) {
      Stock stock = stocks.get(byCapacity[k]);
      least = Math.min(least, thresholds[byCapacity[k]] - rate * stock.capacity());
      needed[k] = least;
      capacities[k] = stock.capacity();
    }
  }

  /** {@code kept}, and {@code grown} with a stage more, without what cannot matter. */
  private Pairs merged(
      Pairs kept, Pairs grown, int stage, long size, long weight, double rate, long[] dropped) {
    Pairs result = new Pairs();
    int a = 0;
    int b = 0;
    int k = 0;
    long heaviest = -1;
    int n = byCapacity.length;
    while (a < kept.count || b < grown.count) {
      boolean takeKept =
          b >= grown.count || (a < kept.count && kept.lengths[a] <= grown.lengths[b] + size);
      long length = takeKept ? kept.lengths[a] : grown.lengths[b] + size;
      long total = takeKept ? kept.weights[a] : grown.weights[b] + weight;
      while (k < n && capacities[k] < length) {
        k++;
      }
      if (k == n) {
        break;
      }
      if (total > heaviest && total - rate * length > needed[k] - 1) {
        heaviest = total;
        int node = takeKept ? kept.nodes[a] : newNode(grown.nodes[b], stage);
        result.add(length, total, node);
      }
      if (takeKept) {
        a++;
      } else {
        b++;
      }
    }
    return result.count > MOST_PAIRS ? thinned(result, rate, dropped) : result;
  }

  private int newNode(int before, int stage) {
    if (nodes == nodeBefore.length) {
      nodeBefore = Arrays.copyOf(nodeBefore, 2 * nodes);
      nodeStage = Arrays.copyOf(nodeStage, 2 * nodes);
    }
    nodeBefore[nodes] = before;
    nodeStage[nodes] = stage;
    return nodes++;
  }

  /** The half that promises most; what the others might become is noted. */
  private Pairs thinned(Pairs pairs, double rate, long[] dropped) {
    double[] keys = new double[pairs.count];
    for (int p = 0; p < pairs.count; p++) {
      keys[p] = pairs.weights[p] - rate * pairs.lengths[p];
    }
    double[] sorted = keys.clone();
    Arrays.sort(sorted);
    double least = sorted[pairs.count / 2];
    Pairs kept = new Pairs();
    for (int p = 0; p < pairs.count; p++) {
      if (keys[p] > least) {
        kept.add(pairs.lengths[p], pairs.weights[p], pairs.nodes[p]);
      }
    }
    for (int j = 0; j < dropped.length; j++) {
      double most = Math.ceil(least + rate * stocks.get(j).capacity()) + 1;
      dropped[j] = Math.max(dropped[j], (long) most);
    }
    return kept;
  }

  private record Candidate(Pattern pattern, long surplus) {}

  private Priced collect(
      long[] weights,
      int[] limits,
      long[] thresholds,
      int most,
      Pairs mixed,
      Pairs smallOnly,
      long[] dropped) {
    List<Long> greatest = new ArrayList<>();
    List<Candidate> best = new ArrayList<>();
    for (int j = 0; j < stocks.size(); j++) {
      Stock stock = stocks.get(j);
      long top = 0;
      int node = -1;
      int place = mixed.heaviestWithin(stock.capacity());
      if (place >= 0 && mixed.weights[place] > top) {
        top = mixed.weights[place];
        node = mixed.nodes[place];
      }
      place = smallOnly.heaviestWithin(stock.smallCapacity());
      if (place >= 0 && smallOnly.weights[place] > top) {
        top = smallOnly.weights[place];
        node = smallOnly.nodes[place];
      }
      int whole = wholeItem(stock, limits);
      int[] counts = countsOf(node);
      if (whole >= 0 && weights[whole] > top) {
        top = weights[whole];
        counts = new int[items.size()];
        counts[whole] = 1;
      }
      if (most > 0 && top > thresholds[j]) {
        best.add(new Candidate(Pattern.ofCounts(j, counts), top - thresholds[j]));
      }
      long unseen = Math.max(0, Math.min(thresholds[j], byRate(stock, weights, limits)));
      greatest.add(Math.max(Math.max(top, dropped[j]), unseen));
    }
    best.sort(Comparator.comparingLong(Candidate::surplus).reversed());
    Set<Pattern> patterns = new LinkedHashSet<>();
    best.forEach(candidate -> patterns.add(candidate.pattern()));
    for (int c = 0; c < best.size() && patterns.size() < most; c++) {
      addDiverse(best.get(c).pattern().stock(), thresholds, most, mixed, patterns);
    }
    return new Priced(greatest, List.copyOf(patterns));
  }

  /** What a stick full of its best item would weigh. */
  private long byRate(Stock stock, long[] weights, int[] limits) {
    double best = 0;
    for (int i = 0; i < items.size(); i++) {
      if (limits[i] > 0 && items.get(i).size() <= stock.capacity()) {
        best = Math.max(best, (double) weights[i] / items.get(i).size());
      }
    }
    return best == 0 ? 0 : (long) Math.ceil(best * stock.capacity()) + 1;
  }

  /** Heaviest first, each with an item that few of those before it hold. */
  private void addDiverse(
      int stock, long[] thresholds, int most, Pairs mixed, Set<Pattern> patterns) {
    int[] seen = new int[items.size()];
    for (int p = mixed.heaviestWithin(stocks.get(stock).capacity()); p >= 0; p--) {
      if (mixed.weights[p] <= thresholds[stock] || patterns.size() >= most) {
        return;
      }
      int[] counts = countsOf(mixed.nodes[p]);
      boolean isNew = false;
      for (int i = 0; i < counts.length; i++) {
        isNew |= counts[i] > 0 && seen[i] < 2;
      }
      if (isNew) {
        for (int i = 0; i < counts.length; i++) {
          seen[i] += counts[i] > 0 ? 1 : 0;
        }
        patterns.add(Pattern.ofCounts(stock, counts));
      }
    }
  }

  private int wholeItem(Stock stock, int[] limits) {
    if (stock.wholeUse() && anySmall) {
      for (int i = 0; i < items.size(); i++) {
        if (items.get(i).small() && items.get(i).size() == stock.capacity() && limits[i] > 0) {
          return i;
        }
      }
    }
    return -1;
  }

  private int[] countsOf(int node) {
    int[] counts = new int[items.size()];
    for (int at = node; at >= 0; at = nodeBefore[at]) {
      counts[stageItem[nodeStage[at]]] += stageCopies[nodeStage[at]];
    }
    return counts;
  }
}
