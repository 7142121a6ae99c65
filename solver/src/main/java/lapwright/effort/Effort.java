package lapwright.effort;

import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * How long work may take, handed down from the program that has a clock and a stop signal.
 *
 * <p>Thread-safe if the clock, the stop signal and the listener are. Workers ask {@link #spent}
 * often and return the best that they have when it turns true; it never turns false again by
 * itself.
 */
public final class Effort {
  private final LongSupplier nanoClock;
  private final long deadlineNanos;
  private final boolean limited;
  private final BooleanSupplier stopSignal;
  private final Consumer<Progress> listener;

  private Effort(
      LongSupplier nanoClock,
      long deadlineNanos,
      boolean limited,
      BooleanSupplier stopSignal,
      Consumer<Progress> listener) {
    this.nanoClock = nanoClock;
    this.deadlineNanos = deadlineNanos;
    this.limited = limited;
    this.stopSignal = stopSignal;
    this.listener = listener;
  }

  /**
   * Work until done: no limit, no stop signal, nobody listening. The same input gives the same
   * result.
   */
  public static Effort unlimited() {
    return new Effort(() -> 0, 0, false, () -> false, progress -> {});
  }

  /**
   * Work for at most {@code limitNanos} from now.
   *
   * @param nanoClock a monotonic clock in nanoseconds, such as {@code System::nanoTime}
   * @param limitNanos nanoseconds, at least 0
   * @param stopSignal true once work is to stop early
   * @param listener is told of progress, from any thread
   */
  public static Effort limited(
      LongSupplier nanoClock,
      long limitNanos,
      BooleanSupplier stopSignal,
      Consumer<Progress> listener) {
    Objects.requireNonNull(nanoClock);
    if (limitNanos < 0) {
      throw new IllegalArgumentException("limit of " + limitNanos + " ns is negative");
    }
    return new Effort(
        nanoClock, Math.addExact(nanoClock.getAsLong(), limitNanos), true, stopSignal, listener);
  }

  /** True once the limit is reached or the stop signal was given. */
  public boolean spent() {
    return stopSignal.getAsBoolean() || (limited && nanoClock.getAsLong() - deadlineNanos >= 0);
  }

  /** Nanoseconds that are left, 0 when spent, {@link Long#MAX_VALUE} without a limit. */
  public long remainingNanos() {
    if (stopSignal.getAsBoolean()) {
      return 0;
    }
    return limited ? Math.max(0, deadlineNanos - nanoClock.getAsLong()) : Long.MAX_VALUE;
  }

  /** The same effort, stopped once less than so many nanoseconds of it are left. */
  public Effort leaving(long nanos) {
    return alsoStoppedBy(() -> remainingNanos() < nanos);
  }

  /** The same effort, stopped once one of so many equal parts of what is left is used. */
  public Effort share(long parts) {
    long remaining = remainingNanos();
    return leaving(remaining - remaining / parts);
  }

  /** The same effort, stopped by {@code alsoStopWhen} as well. */
  public Effort alsoStoppedBy(BooleanSupplier alsoStopWhen) {
    return new Effort(
        nanoClock,
        deadlineNanos,
        limited,
        () -> stopSignal.getAsBoolean() || alsoStopWhen.getAsBoolean(),
        listener);
  }

  /** The same effort, ended after {@code nanos} from now at the latest; unlimited stays so. */
  public Effort atMost(long nanos) {
    return limited && remainingNanos() > nanos
        ? new Effort(
            nanoClock, Math.addExact(nanoClock.getAsLong(), nanos), true, stopSignal, listener)
        : this;
  }

  /** The same effort, its progress told to another listener. */
  public Effort tellingInstead(Consumer<Progress> otherListener) {
    return new Effort(nanoClock, deadlineNanos, limited, stopSignal, otherListener);
  }

  /** Tells the listener. */
  public void report(Progress progress) {
    listener.accept(progress);
  }
}
