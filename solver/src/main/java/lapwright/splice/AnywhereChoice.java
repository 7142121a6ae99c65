package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapwright.problem.SpliceProblem.Splits.Anywhere;

/**
 * Splits with joints anywhere. Cheap ones are sought among those with whole sticks (or pieces of
 * the greatest length) and up to three other pieces, of which all but one are on the grid of steps;
 * the least weight is taken over all splits there are.
 *
 * <p>Least weight: pieces of class c, from listed length c up to the next, weigh W_c and reach at
 * most one unit less than the next. So the least weight of k pieces that add up to t is at least
 * the least sum of W_c whose reaches add up to t or more: a list of (reach, weight) for each k, the
 * dominated ones dropped, and the list coarsened from below where it grows too long.
 */
final class AnywhereChoice implements Choice {
  private static final int MOST_WHOLE_LENGTHS = 6;
  private static final int MOST_PLAIN = 24;
  private static final int MOST_STATES = 20_000;

  private final Anywhere rules;
  private final long longest;
  private final long[] wholes;
  private final GridPrices gridPrices;

  /**
   * @param longestUsable the longest piece that any stick gives
   * @param wholeLengths what a piece of a whole stick may be, the most useful first
   * @param gridPrices shared by choices of the same rules for pieces; see {@link GridPrices#key}
   */
  AnywhereChoice(
      Anywhere rules, long longestUsable, List<Long> wholeLengths, GridPrices gridPrices) {
    this.rules = rules;
    this.longest = Math.min(rules.longest(), longestUsable);
    this.gridPrices = gridPrices;
    List<Long> caps = new ArrayList<>();
    for (long whole : wholeLengths) {
      if (whole <= longest
          && whole >= Math.max(rules.shortest(), rules.shortestAtEnd())
          && caps.size() < MOST_WHOLE_LENGTHS
          && !caps.contains(whole)) {
        caps.add(whole);
      }
    }
    long onGrid = longest / rules.step() * rules.step();
    if (onGrid >= Math.max(rules.shortest(), rules.shortestAtEnd()) && !caps.contains(onGrid)) {
      caps.add(onGrid);
    }
    caps.sort(Collections.reverseOrder());
    this.wholes = caps.stream().mapToLong(Long::longValue).toArray();
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
      if (rest <= 3) {
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
          take(soFar + pair + prices.of(closing), chosen, one, others * step - one, closing);
        }
      }
    }

    private void take(double sum, List<Long> chosen, long... free) {
      if (sum < price - 1e-9) {
        price = sum;
        List<Long> all = new ArrayList<>(chosen);
        for (long length : free) {
          all.add(length);
        }
        all.sort(Collections.reverseOrder());
        lengths = List.copyOf(all);
      }
    }
  }

  @Override
  public long leastWeight(StepWeights weights, long cut) {
    long least = rules.least();
    List<long[]> kinds = new ArrayList<>();
    for (int c = weights.classOf(least); c < weights.classes(); c++) {
      if (c >= 0 && weights.length(c) > longest) {
        break;
      }
      long reach = c + 1 < weights.classes() ? weights.length(c + 1) - 1 : longest;
      kinds.add(new long[] {Math.min(reach, longest), c < 0 ? 0 : weights.weight(c)});
    }
    long best = Long.MAX_VALUE;
    List<long[]> states = List.of(new long[] {0, 0});
    for (int k = 1; k <= rules.mostPieces(); k++) {
      long needed = rules.sumOf(k);
      if (needed > longest * k) {
        states = next(states, kinds);
        continue;
      }
      long bySize = Math.multiplyExact(weights.perSize(), Math.addExact(needed, k * cut));
      states = next(states, kinds);
      for (long[] state : states) {
        if (state[0] >= needed) {
          best = Math.min(best, Math.addExact(state[1], bySize));
        }
      }
      if (k * least > needed) {
        break;
      }
    }
    return best;
  }

  private static List<long[]> next(List<long[]> states, List<long[]> kinds) {
    List<long[]> all = new ArrayList<>(states.size() * kinds.size());
    for (long[] state : states) {
      for (long[] kind : kinds) {
        all.add(new long[] {state[0] + kind[0], Math.addExact(state[1], kind[1])});
      }
    }
    // Ascending weight, then longest reach: a state is kept when it reaches farther than all
    // lighter ones.
    all.sort((a, b) -> a[1] != b[1] ? Long.compare(a[1], b[1]) : Long.compare(b[0], a[0]));
    List<long[]> kept = new ArrayList<>();
    long farthest = -1;
    for (long[] state : all) {
      if (state[0] > farthest) {
        farthest = state[0];
        kept.add(state);
      }
    }
    int room = Math.max(64, MOST_STATES / Math.max(1, kinds.size()));
    if (kept.size() <= room) {
      return kept;
    }
    List<long[]> coarse = new ArrayList<>();
    int chunk = (kept.size() + room - 1) / room;
    for (int i = 0; i < kept.size(); i += chunk) {
      int end = Math.min(kept.size(), i + chunk) - 1;
      coarse.add(new long[] {kept.get(end)[0], kept.get(i)[1]});
    }
    return coarse;
  }

  @Override
  public List<Long> lengths() {
    return List.of();
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
        found.add(split);
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
