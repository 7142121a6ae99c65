package lapwright.bench;

import java.util.List;
import lapwright.bench.instance.Instance;
import lapwright.bench.method.Answer;

/**
 * One method on one instance.
 *
 * @param wallSeconds as it was, not cut off at the limit
 * @param cpuSeconds of all threads of the process meanwhile
 * @param peakMegabytes greatest resident size of the process meanwhile; 0 where it cannot be told
 * @param faults what is wrong with the answer
 */
record Run(
    Instance instance,
    String method,
    Answer answer,
    double wallSeconds,
    double cpuSeconds,
    long peakMegabytes,
    double limitSeconds,
    List<String> faults) {
  Run {
    faults = List.copyOf(faults);
  }

  /** Solved within the limit. */
  boolean isSolved() {
    return answer.outcome().isSolved() && wallSeconds <= limitSeconds;
  }

  /** What counts in means: the time limit where it is not solved. */
  double countedSeconds() {
    return isSolved() ? wallSeconds : limitSeconds;
  }

  /** How far the cost is above the bound, in percent of the cost; 100 without a solution. */
  double gapPercent() {
    if (!answer.outcome().hasSolution()) {
      return 100;
    }
    return answer.outcome().isSolved() || answer.cost() == 0
        ? 0
        : 100.0 * (answer.cost() - answer.bound()) / answer.cost();
  }
}
