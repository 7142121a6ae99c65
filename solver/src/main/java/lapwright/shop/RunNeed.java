package lapwright.shop;

import java.time.LocalDate;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A run that one job needs.
 *
 * @param job name of the job
 * @param due the job's due day; null when not given
 * @param copies how many times the job is built
 * @param run for one copy
 */
public record RunNeed(String job, @Nullable LocalDate due, int copies, Run run) {
  public RunNeed {
    Objects.requireNonNull(job);
    Objects.requireNonNull(run);
    if (copies < 1) {
      throw new IllegalArgumentException("run " + run.mark() + " of " + job + ": no copy");
    }
  }

  /** Lines over all copies of the job. */
  public int lines() {
    return Math.multiplyExact(run.qty(), copies);
  }

  /** The name of a piece of a line, both counted from 1. */
  public String pieceMark(int line, int piece) {
    return run.mark() + "/" + line + "." + piece;
  }

  /** The same under other rules for its joints. */
  public RunNeed withRules(JointRules rules) {
    return new RunNeed(
        job,
        due,
        copies,
        new Run(
            run.material(),
            run.mark(),
            run.length(),
            run.qty(),
            run.addAtStart(),
            run.addAtEnd(),
            rules,
            run.purpose()));
  }
}
