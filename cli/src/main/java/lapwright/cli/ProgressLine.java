package lapwright.cli;

import java.io.PrintWriter;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import lapwright.effort.Progress;

/**
 * One line on a terminal that tells how far planning is, drawn over itself and wiped at the end.
 * Nothing is shown in the first second, nor ever where messages do not go to a terminal.
 *
 * <p>Thread-safe: workers tell of progress while the line is drawn.
 */
final class ProgressLine implements AutoCloseable {
  private static final long QUIET_NANOS = TimeUnit.SECONDS.toNanos(1);
  private static final long TICK_MILLIS = 250;
  private static final int WIDTH = 79;

  private final PrintWriter err;
  private final LongSupplier nanoClock;
  private final long startNanos;
  private final Set<String> subjects;
  private final BiFunction<Long, Long, String> costAndBound;
  private final BooleanSupplier stopping;
  private final Map<String, Progress> latest = new TreeMap<>();
  private final Thread ticker = new Thread(this::tick, "progress");
  private int shown;
  private boolean closed;

  /**
   * @param subjects ids of the materials that are planned; others are not counted
   * @param costAndBound the sums of cost and bound in words; empty when they do not add up
   * @param stopping true once the best plan so far is to be told
   */
  ProgressLine(
      PrintWriter err,
      LongSupplier nanoClock,
      Set<String> subjects,
      BiFunction<Long, Long, String> costAndBound,
      BooleanSupplier stopping) {
    this.err = err;
    this.nanoClock = nanoClock;
    this.startNanos = nanoClock.getAsLong();
    this.subjects = Set.copyOf(subjects);
    this.costAndBound = costAndBound;
    this.stopping = stopping;
  }

  /** Draws by itself from now on. */
  ProgressLine start() {
    ticker.setDaemon(true);
    ticker.start();
    return this;
  }

  /** Where the work on one material stands. */
  synchronized void tell(Progress progress) {
    if (subjects.contains(progress.subject())) {
      latest.put(progress.subject(), progress);
    }
  }

  /** Draws the line once, if it is time to. */
  synchronized void draw() {
    long elapsed = nanoClock.getAsLong() - startNanos;
    if (closed || elapsed < QUIET_NANOS) {
      return;
    }
    String text = text(TimeUnit.NANOSECONDS.toSeconds(elapsed));
    text = text.length() > WIDTH ? text.substring(0, WIDTH) : text;
    err.print("\r" + text + " ".repeat(Math.max(0, shown - text.length())));
    err.flush();
    shown = text.length();
  }

  private String text(long seconds) {
    long done = latest.values().stream().filter(Progress::done).count();
    long cost = 0;
    long bound = 0;
    boolean allHaveCost = latest.size() == subjects.size();
    for (Progress progress : latest.values()) {
      allHaveCost &= progress.cost() >= 0;
      cost += progress.cost();
      bound += progress.bound();
    }
    String sums = allHaveCost ? costAndBound.apply(cost, bound) : "";
    return (stopping.getAsBoolean() ? "Stopping" : "Planning")
        + ", %d s, %d of %d materials done".formatted(seconds, done, subjects.size())
        + (sums.isEmpty() ? "" : "; " + sums);
  }

  /** Wipes the line. */
  @Override
  public synchronized void close() {
    closed = true;
    ticker.interrupt();
    if (shown > 0) {
      err.print("\r" + " ".repeat(shown) + "\r");
      err.flush();
      shown = 0;
    }
  }

  private void tick() {
    try {
      while (true) {
        Thread.sleep(TICK_MILLIS);
        draw();
      }
    } catch (InterruptedException closing) {
      Thread.currentThread().interrupt();
    }
  }
}
