package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import org.jspecify.annotations.Nullable;

/**
 * Splits into whole sticks and one or two other pieces, where {@link WholeSticks} proves that some
 * optimal solution has no more of them: with one other piece the paths of a graph, with two a sum
 * that they share in any way, one of them on the grid of steps.
 *
 * <p>Time of a least weight O(classes log classes) for each choice of whole sticks.
 */
final class AllButTwoWhole implements Choice {
  private static final int MOST_RESTS = 60;

  private final Anywhere rules;
  private final long longest;
  private final GraphChoice one;
  private final List<Rest> rests;

  /** Whole sticks, and what two other pieces add up to. */
  private record Rest(List<Long> wholes, long sum) {}

  private AllButTwoWhole(Anywhere rules, long longest, GraphChoice one, List<Rest> rests) {
    this.rules = rules;
    this.longest = longest;
    this.one = one;
    this.rests = rests;
  }

  /** Null when there are too many to list. */
  static @Nullable AllButTwoWhole of(SpliceProblem problem, Anywhere rules) {
    GraphChoice one = WholeSticks.graph(problem, rules);
    if (one == null) {
      return null;
    }
    long longest = Math.min(rules.longest(), problem.longestUsable());
    long most = longest + WholeSticks.shortest(problem, rules);
    List<Rest> rests = new ArrayList<>();
    lay(rules, most, WholeSticks.lengths(problem, rules), 0, 0, new ArrayList<>(), rests);
    return rests.size() > MOST_RESTS ? null : new AllButTwoWhole(rules, longest, one, rests);
  }

  /**
   * Lays whole sticks, the longest first.
   *
   * @param most the other two pieces add up to less
   */
  private static void lay(
      Anywhere rules,
      long most,
      List<Long> wholes,
      int from,
      long laid,
      List<Long> chosen,
      List<Rest> rests) {
    long sum = rules.sumOf(chosen.size() + 2) - laid;
    if (rests.size() > MOST_RESTS || chosen.size() + 2 > rules.mostPieces()) {
      return;
    }
    if (sum < most && sum >= 2 * rules.shortestAtEnd()) {
      rests.add(new Rest(List.copyOf(chosen), sum));
    }
    for (int w = from; w < wholes.size(); w++) {
      chosen.add(wholes.get(w));
      lay(rules, most, wholes, w, laid + wholes.get(w), chosen, rests);
      chosen.remove(chosen.size() - 1);
    }
  }

  @Override
  public List<Long> cheapest(LengthPrices prices) {
    List<Long> best = one.cheapest(prices);
    double least = best.isEmpty() ? Double.POSITIVE_INFINITY : priceOf(best, prices);
    long step = rules.step();
    for (Rest rest : rests) {
      double wholes = priceOf(rest.wholes(), prices);
      long first = (Math.max(rules.shortestAtEnd(), rest.sum() - longest) + step - 1) / step * step;
      for (long a = first; a <= rest.sum() - first && a <= longest; a += step) {
        double sum = wholes + prices.of(a) + prices.of(rest.sum() - a);
        if (sum < least - 1e-9) {
          least = sum;
          best = split(rest, a);
        }
      }
    }
    return best;
  }

  private static double priceOf(List<Long> lengths, LengthPrices prices) {
    double sum = 0;
    for (long length : lengths) {
      sum += prices.of(length);
    }
    return sum;
  }

  private static List<Long> split(Rest rest, long a) {
    List<Long> split = new ArrayList<>(rest.wholes());
    split.add(a);
    split.add(rest.sum() - a);
    split.sort(Collections.reverseOrder());
    return split;
  }

  private boolean permits(Rest rest, long a) {
    long b = rest.sum() - a;
    return Math.min(a, b) >= rules.shortestAtEnd() && Math.max(a, b) <= longest;
  }

  @Override
  public long leastWeight(StepWeights weights, long cut) {
    long least = one.leastWeight(weights, cut);
    for (Rest rest : rests) {
      long wholes = weightOf(rest.wholes(), weights, cut);
      for (long a : reaches(weights)) {
        long reach = Math.min(a, rest.sum() - rules.shortestAtEnd());
        if (permits(rest, reach)) {
          least = Math.min(least, Math.addExact(wholes, weightOf(rest, reach, weights, cut)));
        }
      }
    }
    return least;
  }

  @Override
  public List<Long> lightest(StepWeights weights, long cut) {
    List<Long> lightest = one.lightest(weights, cut);
    long least = lightest.isEmpty() ? Long.MAX_VALUE : weightOf(lightest, weights, cut);
    long step = rules.step();
    for (Rest rest : rests) {
      long wholes = weightOf(rest.wholes(), weights, cut);
      for (long a : reaches(weights)) {
        long reach = Math.min(a, rest.sum() - rules.shortestAtEnd());
        // Either piece may be the one that is on the grid.
        long below = reach - Math.floorMod(reach, step);
        long other = reach - Math.floorMod(reach - rest.sum(), step);
        for (long piece : new long[] {below, other}) {
          if (permits(rest, piece)) {
            long weight = Math.addExact(wholes, weightOf(rest, piece, weights, cut));
            if (weight < least) {
              least = weight;
              lightest = split(rest, piece);
            }
          }
        }
      }
    }
    return lightest;
  }

  /** How far pieces of each weight reach. */
  private long[] reaches(StepWeights weights) {
    long[] reaches = new long[weights.classes() + 1];
    for (int c = 0; c < weights.classes(); c++) {
      reaches[c] = Math.min(longest, weights.length(c) - 1);
    }
    reaches[weights.classes()] = longest;
    return reaches;
  }

  private static long weightOf(List<Long> lengths, StepWeights weights, long cut) {
    long sum = 0;
    for (long length : lengths) {
      sum = Math.addExact(sum, weights.of(length, cut));
    }
    return sum;
  }

  private static long weightOf(Rest rest, long a, StepWeights weights, long cut) {
    return Math.addExact(weights.of(a, cut), weights.of(rest.sum() - a, cut));
  }

  @Override
  public List<Long> lengths() {
    return one.lengths();
  }

  @Override
  public boolean hasAnyLength() {
    return true;
  }

  /** One of each choice of whole sticks, its two other pieces as unequal as may be. */
  @Override
  public List<List<Long>> plainOnes() {
    List<List<Long>> plain = new ArrayList<>();
    long step = rules.step();
    for (Rest rest : rests) {
      long greatest = Math.min(longest, rest.sum() - rules.shortestAtEnd());
      for (long a : new long[] {greatest - greatest % step, rest.sum() / 2 / step * step}) {
        if (permits(rest, a)) {
          plain.add(split(rest, a));
        }
      }
    }
    return plain;
  }
}
