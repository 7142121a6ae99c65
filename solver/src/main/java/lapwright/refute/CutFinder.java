package lapwright.refute;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapwright.colgen.Pattern;

/**
 * Finds cuts by rounding that a fractional solution violates: over every three items that meet in
 * its patterns pair by pair. Time O(sum of squared degrees) of the graph of pairs that meet.
 */
final class CutFinder {
  private static final double LEAST_VIOLATION = 0.02;

  private final Question question;

  CutFinder(Question question) {
    this.question = question;
  }

  private record Found(RoundingCut cut, double violation, int serial) {}

  /**
   * The most violated cuts, about {@code most}, none of three items that share two with a better
   * one more often than a few times.
   *
   * @param patterns of the solution, with their values
   */
  List<RoundingCut> violated(List<Pattern> patterns, double[] values, int most) {
    int m = question.items();
    Map<Long, Double> triples = new HashMap<>();
    double[][] together = new double[m][];
    for (int at = 0; at < values.length; at++) {
      Pattern pattern = patterns.get(at);
      for (int a = 0; a < pattern.kinds(); a++) {
        int i = pattern.item(a);
        for (int b = a + 1; b < pattern.kinds(); b++) {
          int j = pattern.item(b);
          if (together[i] == null) {
            together[i] = new double[m];
          }
          together[i][j] += values[at];
          for (int c = b + 1; c < pattern.kinds(); c++) {
            triples.merge(key(i, j, pattern.item(c)), values[at], Double::sum);
          }
        }
      }
    }
    List<Found> found = new ArrayList<>();
    for (int i = 0; i < m; i++) {
      if (together[i] == null || question.demand(i) != 1) {
        continue;
      }
      for (int j = i + 1; j < m; j++) {
        if (together[i][j] <= 0 || question.demand(j) != 1) {
          continue;
        }
        for (int k = j + 1; k < m; k++) {
          if (question.demand(k) != 1) {
            continue;
          }
          double other = together[j] == null ? 0 : together[j][k];
          double pairs = together[i][j] + together[i][k] + other;
          if (pairs > 1 + LEAST_VIOLATION) {
            double violation = pairs - 2 * triples.getOrDefault(key(i, j, k), 0.0) - 1;
            if (violation > LEAST_VIOLATION) {
              found.add(new Found(RoundingCut.halves(i, j, k), violation, found.size()));
            }
          }
        }
      }
    }
    found.sort(
        Comparator.comparingDouble(Found::violation).reversed().thenComparingInt(Found::serial));
    return found.stream().limit(most).map(Found::cut).toList();
  }

  private long key(int i, int j, int k) {
    long m = question.items();
    return (i * m + j) * m + k;
  }
}
