package lapwright.shop;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import lapwright.measure.Length;
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
 * @param settled joints of the lines of the same copy that were placed before and stand beside the
 *     first one, the nearest line first, each from the start of the covered length; the first one's
 *     joints must be staggered against those of the nearest. Two at most; empty where nothing is
 *     staggered, or nothing stands there
 */
public record RunNeed(
    String job,
    @Nullable LocalDate due,
    int copies,
    Run run,
    int firstCopy,
    int firstLine,
    List<List<Length>> settled) {
  /** Splits of staggered lines take turns, so that two lines tell all that there are. */
  private static final int MOST_SETTLED = 2;

  public RunNeed {
    Objects.requireNonNull(job);
    Objects.requireNonNull(run);
    settled = settled.stream().map(List::copyOf).toList();
    if (settled.size() > MOST_SETTLED || (copies > 1 && !settled.isEmpty())) {
      throw new IllegalArgumentException(
          settled.size() + " lines beside " + copies + " copies of run " + run.mark());
    }
    if (copies < 1 || firstCopy < 1 || firstLine < 1) {
      throw new IllegalArgumentException("run " + run.mark() + " of " + job + ": no copy or line");
    }
  }

  /** For all copies, from the first line. */
  public RunNeed(String job, @Nullable LocalDate due, int copies, Run run) {
    this(job, due, copies, run, 1, 1);
  }

  /** With nothing settled. */
  public RunNeed(
      String job, @Nullable LocalDate due, int copies, Run run, int firstCopy, int firstLine) {
    this(job, due, copies, run, firstCopy, firstLine, List.of());
  }

  /** The same beside lines that are settled. */
  public RunNeed beside(List<List<Length>> lines) {
    return new RunNeed(job, due, copies, run, firstCopy, firstLine, lines);
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
        firstLine,
        settled);
  }
}
