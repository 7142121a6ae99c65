package lapwright.shop;

import java.time.LocalDate;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A run that one job needs. Its lines are counted on from copy to copy. What is added to a run that
 * was placed before counts on from there.
 *
 * @param job name of the job
 * @param due the job's due day; null when not given
 * @param copies how many copies of the job need it
 * @param run for one copy
 * @param firstCopy number of the first of these copies, from 1
 * @param firstLine number of the first line, from 1
 */
public record RunNeed(
    String job, @Nullable LocalDate due, int copies, Run run, int firstCopy, int firstLine) {
  public RunNeed {
    Objects.requireNonNull(job);
    Objects.requireNonNull(run);
    if (copies < 1 || firstCopy < 1 || firstLine < 1) {
      throw new IllegalArgumentException("run " + run.mark() + " of " + job + ": no copy or line");
    }
  }

  /** For all copies, from the first line. */
  public RunNeed(String job, @Nullable LocalDate due, int copies, Run run) {
    this(job, due, copies, run, 1, 1);
  }

  public int lastCopy() {
    return Math.addExact(firstCopy, copies - 1);
  }

  /** Number of the last line. */
  public int lastLine() {
    return Math.addExact(firstLine, lines() - 1);
  }

  /** True when a line of this number is one of them. */
  public boolean hasLine(int line) {
    return firstLine <= line && line <= lastLine();
  }

  /** Which copy a line is for. */
  public int copyOf(int line) {
    return firstCopy + (line - firstLine) / run.qty();
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
            run.purpose()),
        firstCopy,
        firstLine);
  }
}
