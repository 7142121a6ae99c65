package lapwright.layout;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointRules;
import lapwright.shop.Run;

/**
 * Where a run is interrupted so that it can expand.
 *
 * <p>As many gaps as the guide specification UFGS 07 60 00 asks for: one every interval, and one
 * more where the last leg exceeds half an interval. They stand evenly; where joints have given
 * places, at those places, more gaps than that where the places ask for them.
 */
public final class ExpansionGaps {
  private ExpansionGaps() {}

  /** How many gaps a length needs; none when it is no longer than the interval. */
  public static int count(Length length, Length interval) {
    if (!length.isLongerThan(interval)) {
      return 0;
    }
    long every = interval.units();
    long gaps = (length.units() - 1) / every;
    long lastLeg = length.units() - gaps * every;
    return Math.toIntExact(2 * lastLeg > every ? gaps + 1 : gaps);
  }

  /**
   * Positions of the gaps' middles from the start of the covered length.
   *
   * @throws LayoutException when the permitted places are too far apart
   */
  public static List<Length> of(Run run) {
    JointRules rules = run.rules();
    JointRules.Expansion expansion = rules.expansion();
    if (expansion == null) {
      return List.of();
    }
    int gaps = count(run.length(), expansion.longestUnbroken());
    if (gaps == 0) {
      return List.of();
    }
    if (!rules.places().isAnywhere()) {
      return atPlaces(run, expansion, gaps);
    }
    long step = rules.pieces().step().units();
    List<Length> even = new ArrayList<>();
    for (int i = 1; i <= gaps; i++) {
      long exact = Math.multiplyExact(run.length().units(), i) / (gaps + 1);
      even.add(Length.ofUnits(Math.max(1, exact / step * step)));
    }
    return even;
  }

  private static List<Length> atPlaces(Run run, JointRules.Expansion expansion, int fewest) {
    List<Length> places = run.rules().places().within(run.length());
    long most = expansion.longestUnbroken().units();
    long widest = widest(places, run.length().units());
    if (widest > most) {
      throw new LayoutException(
          "longest-unbroken",
          "places where it may be joined are farther apart than the longest unbroken stretch",
          "make longest-unbroken at least {}, or add places between",
          Length.ofUnits(widest));
    }
    // The fewest gaps from as many as the rule asks for, each as near to its even place as it can
    // be.
    for (int gaps = Math.min(fewest, places.size()); ; gaps++) {
      List<Length> chosen = nearest(places, run.length().units(), gaps, most);
      if (!chosen.isEmpty()) {
        return chosen;
      }
    }
  }

  private static long widest(List<Length> places, long length) {
    long before = 0;
    long widest = 0;
    for (Length place : places) {
      widest = Math.max(widest, place.units() - before);
      before = place.units();
    }
    return Math.max(widest, length - before);
  }

  /** The places with the least sum of distances from even ones; empty when there are none. */
  private static List<Length> nearest(List<Length> places, long length, int gaps, long most) {
    int n = places.size();
    long[][] best = new long[gaps + 1][n + 1];
    int[][] before = new int[gaps + 1][n + 1];
    for (long[] row : best) {
      java.util.Arrays.fill(row, Long.MAX_VALUE);
    }
    best[0][0] = 0;
    for (int g = 1; g <= gaps; g++) {
      long even = Math.multiplyExact(length, g) / (gaps + 1);
      for (int p = g; p <= n; p++) {
        long at = places.get(p - 1).units();
        for (int q = g - 1; q < p; q++) {
          long from = q == 0 ? 0 : places.get(q - 1).units();
          if (best[g - 1][q] != Long.MAX_VALUE && at - from <= most) {
            long sum = best[g - 1][q] + Math.abs(at - even);
            if (sum < best[g][p]) {
              best[g][p] = sum;
              before[g][p] = q;
            }
          }
        }
      }
    }
    int last = 0;
    for (int p = gaps; p <= n; p++) {
      if (length - (p == 0 ? 0 : places.get(p - 1).units()) <= most
          && best[gaps][p] != Long.MAX_VALUE
          && (last == 0 || best[gaps][p] < best[gaps][last])) {
        last = p;
      }
    }
    List<Length> chosen = new ArrayList<>();
    for (int g = gaps; g > 0 && last > 0; g--) {
      chosen.add(0, places.get(last - 1));
      last = before[g][last];
    }
    return chosen;
  }
}
