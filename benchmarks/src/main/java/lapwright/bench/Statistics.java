package lapwright.bench;

import java.util.Arrays;
import java.util.List;
import lapwright.bench.method.Answer.Outcome;

/**
 * Of one method on one class.
 *
 * @param solved proved and claimed
 * @param mean seconds, an unsolved instance counting with the limit; so are the others
 * @param percentile95 by nearest rank
 */
record Statistics(
    int instances,
    int solved,
    int claimed,
    double mean,
    double median,
    double percentile95,
    double maximum,
    double meanCpu,
    double worstGapPercent,
    long peakMegabytes) {

  static Statistics of(List<Run> runs) {
    if (runs.isEmpty()) {
      throw new IllegalArgumentException("no runs");
    }
    double[] seconds = runs.stream().mapToDouble(Run::countedSeconds).sorted().toArray();
    int solved = (int) runs.stream().filter(Run::isSolved).count();
    int claimed =
        (int)
            runs.stream()
                .filter(run -> run.isSolved() && run.answer().outcome() == Outcome.CLAIMED)
                .count();
    return new Statistics(
        runs.size(),
        solved,
        claimed,
        Arrays.stream(seconds).average().orElse(0),
        median(seconds),
        seconds[(int) Math.ceil(0.95 * seconds.length) - 1],
        seconds[seconds.length - 1],
        runs.stream().mapToDouble(Run::cpuSeconds).average().orElse(0),
        runs.stream().mapToDouble(Run::gapPercent).max().orElse(0),
        runs.stream().mapToLong(Run::peakMegabytes).max().orElse(0));
  }

  boolean isAllSolved() {
    return solved == instances;
  }

  private static double median(double[] sorted) {
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
