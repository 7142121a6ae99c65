package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import lapwright.problem.SpliceProblem.Splits.Anywhere;

/**
 * Splits with joints anywhere. Cheap ones are sought among those with whole sticks (or pieces of
 * the greatest length, or where that leaves the others too little, of the least) and up to three
 * other pieces, of which all but one are on the grid of steps; the least weight is taken over all
 * splits there are.
 *
 * <p>Least weight: see {@link Reaches}.
 */
final class AnywhereChoice implements Choice {
  private static final int MOST_WHOLE_LENGTHS = 6;
  private static final int MOST_PLAIN = 24;
  private static final int MOST_FREE = 3;

  private final Anywhere rules;
  private final long longest;
  private final long[] wholes;
  private final long[] fullLengths;
  private final GridPrices gridPrices;
  private final Reaches reaches;

  /**
   * @param longestUsable the longest piece that any stick gives
   * @param wholeLengths what a piece of a whole stick may be, the most useful first
   * @param gridPrices shared by choices of the same rules for pieces; see {@link GridPrices#key}
   * @param reaches shared by choices of the same {@link #reachKey}
   */
  AnywhereChoice(
      Anywhere rules,
      long longestUsable,
      List<Long> wholeLengths,
      GridPrices gridPrices,
      Reaches reaches) {
    this.rules = rules;
    this.longest = Math.min(rules.longest(), longestUsable);
    this.gridPrices = gridPrices;
    this.reaches = reaches;
    this.fullLengths = wholeLengths.stream().mapToLong(Long::longValue).sorted().toArray();
    List<Long> caps = new ArrayList<>();
    for (long whole : wholeLengths) {
      if (whole <= longest
          && whole >= rules.leastAnywhere()
          && caps.size() < MOST_WHOLE_LENGTHS
          && !caps.contains(whole)) {
        caps.add(whole);
      }
    }
    long onGrid = longest / rules.step() * rules.step();
    if (onGrid >= rules.leastAnywhere() && !caps.contains(onGrid)) {
      caps.add(onGrid);
    }
    if (manyLieBetween()) {
      for (long least : new long[] {rules.shortest(), rules.shortestAtEnd()}) {
        long ceiling = onStepsFrom(least);
        if (ceiling <= longest && !caps.contains(ceiling)) {
          caps.add(ceiling);
        }
      }
    }
    caps.sort(Collections.reverseOrder());
    this.wholes = caps.stream().mapToLong(Long::longValue).toArray();
  }

  /**
   * True when pieces of the greatest length leave too little for the others, so that pieces of the
   * least length must be tried too: of those two kinds and one more piece a split can be made,
   * wherever there is one.
   */
  private boolean manyLieBetween() {
    int free = gridPrices.pairCells() > 0 ? MOST_FREE : MOST_FREE - 1;
    for (int k = free + 1; k <= rules.mostPieces(); k++) {
      if (rules.sumOf(k) - (k - free) * longest < free * onStepsFrom(rules.leastAnywhere())) {
        return true;
      }
    }
    return false;
  }

  private long onStepsFrom(long least) {
    return Math.floorDiv(least + rules.step() - 1, rules.step()) * rules.step();
  }

  /** What choices must have in common to share {@link Reaches}. */
  static Reaches.Key reachKey(Anywhere rules, long longestUsable) {
    return new Reaches.Key(rules.least(), Math.min(rules.longest(), longestUsable));
  }

  @Override
  public List<Long> cheapest(LengthPrices prices) {
    Best best = new Best(prices);
    List<Long> chosen = new ArrayList<>();
    for (int pieces = 1; pieces <= rules.mostPieces(); pieces++) {
      best.tryWholes(pieces, 0, 0, 0, chosen);
    }
    return best.lengths;
  }

  /** The search for one cheap split. */
  private final class Best {
    private final LengthPrices prices;
    private final double[] whole = new double[wholes.length];
    private double price = Double.POSITIVE_INFINITY;
    private List<Long> lengths = List.of();

    Best(LengthPrices prices) {
      this.prices = prices;
      gridPrices.take(prices);
      for (int w = 0; w < whole.length; w++) {
        whole[w] = prices.of(wholes[w]);
      }
    }

    void tryWholes(int pieces, int from, long sum, double soFar, List<Long> chosen) {
      int rest = pieces - chosen.size();
      long left = rules.sumOf(pieces) - sum;
      if (rest == 0 || left < 1 || left > (long) rest * longest) {
        return;
      }
      if (rest <= MOST_FREE) {
        complete(rest, left, soFar, chosen);
      }
      for (int w = from; w < wholes.length; w++) {
        chosen.add(wholes[w]);
        tryWholes(pieces, w, sum + wholes[w], soFar + whole[w], chosen);
        chosen.remove(chosen.size() - 1);
      }
    }

    private void complete(int rest, long left, double soFar, List<Long> chosen) {
      long step = rules.step();
      long closingLeast = rules.shortestAtEnd();
      if (rest == 1) {
        if (left >= closingLeast && left <= longest) {
          take(soFar + prices.of(left), chosen, left);
        }
        return;
      }
      if (rest == 2) {
        int first = Math.toIntExact((closingLeast + step - 1) / step);
        for (int i = Math.max(first, (int) Math.max(0, (left - longest + step - 1) / step));
            i < gridPrices.cells() && left - i * step >= closingLeast;
            i++) {
          double sum = soFar + gridPrices.one(i) + prices.of(left - i * step);
          take(sum, chosen, i * step, left - i * step);
        }
        return;
      }
      long remainder = left % step;
      int cells = Math.toIntExact(left / step);
      for (int m = 0; m < gridPrices.cells() && m <= cells; m++) {
        long closing = m * step + remainder;
        int others = cells - m;
        if (closing < closingLeast || closing > longest || others >= gridPrices.pairCells()) {
          continue;
        }
        double pair = gridPrices.two(others);
        if (soFar + pair < price) {
          long one = gridPrices.firstOfTwo(others) * step;
          long other = others * step - one;
          take(soFar + pair + prices.of(closing), chosen, one, other, closing);
        }
      }
    }

    private void take(double sum, List<Long> chosen, long... free) {
      if (sum < price - 1e-9) {
        List<Long> all = new ArrayList<>(chosen);
        for (long length : free) {
          all.add(length);
        }
        all.sort(Collections.reverseOrder());
        if (rules.permits(all)) {
          price = sum;
          lengths = List.copyOf(all);
        }
      }
    }
  }

  @Override
  public long leastWeight(StepWeights weights, long cut) {
    long best = Long.MAX_VALUE;
    for (int k = 1; k <= rules.mostPieces() && k * rules.least() <= rules.sumOf(k); k++) {
      long byClass = reaches.least(weights, k, rules.sumOf(k));
      if (byClass != Long.MAX_VALUE) {
        best = Math.min(best, Math.addExact(byClass, bySize(weights, k, cut)));
      }
    }
    return best;
  }

  private long bySize(StepWeights weights, int pieces, long cut) {
    return Math.multiplyExact(weights.perSize(), Math.addExact(rules.sumOf(pieces), pieces * cut));
  }

  @Override
  public List<Long> lightest(StepWeights weights, long cut) {
    List<Long> lightest = List.of();
    long least = Long.MAX_VALUE;
    for (int k = 1; k <= rules.mostPieces() && k * rules.least() <= rules.sumOf(k); k++) {
      long byClass = reaches.least(weights, k, rules.sumOf(k));
      if (byClass != Long.MAX_VALUE && byClass + bySize(weights, k, cut) < least) {
        List<Long> split = within(reaches.reaches(weights, k, rules.sumOf(k)));
        if (!split.isEmpty()) {
          least = byClass + bySize(weights, k, cut);
          lightest = split;
        }
      }
    }
    return lightest;
  }

  /**
   * A permitted split whose pieces are no longer than some lengths, together at least as long as it
   * takes; empty when the steps of the pieces leave none.
   */
  private List<Long> within(long[] most) {
    Arrays.sort(most);
    int n = most.length;
    long[] split = most.clone();
    long excess = -rules.sumOf(n);
    for (int i = 0; i < n; i++) {
      if (i > 0 && Arrays.binarySearch(fullLengths, split[i]) < 0) {
        split[i] -= split[i] % rules.step();
      }
      excess += split[i];
    }
    // The first is the closing piece, which need not be in steps; others give what it cannot.
    long room = Math.max(0, split[0] - leastOf(n));
    for (int i = 1; i < n && excess > room; i++) {
      long step = rules.step();
      long given = Math.min(excess - room, split[i] - leastOf(n));
      given = Math.floorDiv(given + step - 1, step) * step;
      long left = split[i] - given;
      left -= left % step;
      if (given > 0 && left >= leastOf(n)) {
        excess -= split[i] - left;
        split[i] = left;
      }
    }
    split[0] -= excess;
    if (excess > room || split[0] > longest) {
      return List.of();
    }
    List<Long> lengths = new ArrayList<>();
    for (long length : split) {
      lengths.add(length);
    }
    lengths.sort(Collections.reverseOrder());
    return rules.permits(lengths) ? lengths : List.of();
  }

  private long leastOf(int pieces) {
    return pieces == 1 ? rules.shortestAtEnd() : rules.leastAnywhere();
  }

  @Override
  public List<Long> lengths() {
    return List.of();
  }

  @Override
  public boolean hasAnyLength() {
    return true;
  }

  @Override
  public List<List<Long>> plainOnes() {
    List<List<Long>> found = new ArrayList<>();
    for (int pieces = 1; pieces <= rules.mostPieces(); pieces++) {
      layWholes(pieces, 0, rules.sumOf(pieces), new ArrayList<>(), found);
    }
    return found;
  }

  private void layWholes(int pieces, int from, long left, List<Long> laid, List<List<Long>> found) {
    if (found.size() >= MOST_PLAIN || left < rules.shortestAtEnd()) {
      return;
    }
    if (laid.size() == pieces - 1) {
      if (left <= longest) {
        List<Long> split = new ArrayList<>(laid);
        split.add(left);
        if (rules.permits(split)) {
          found.add(split);
        }
      }
      return;
    }
    for (int w = from; w < wholes.length; w++) {
      laid.add(wholes[w]);
      layWholes(pieces, w, left - wholes[w], laid, found);
      laid.remove(laid.size() - 1);
    }
  }
}
