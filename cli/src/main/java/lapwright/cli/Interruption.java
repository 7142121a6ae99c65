package lapwright.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * What Ctrl-C does while a plan is made: planning is told to stop, and the best plan so far is
 * printed as usual.
 *
 * <p>The virtual machine is going down meanwhile, so that {@code System.exit} on the main thread
 * would wait for ever for the hook that waits for the main thread: the hook itself halts, with the
 * status that the program has told. A program that does not come back in time is halted.
 */
final class Interruption {
  private static final int PATIENCE_SECONDS = 300;

  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile boolean wanted;
  private volatile int status = ExitStatus.INTERRUPTED;

  /** True once planning is to stop. */
  boolean isWanted() {
    return wanted;
  }

  /** The program has written all that it had to write. */
  void ended(int withStatus) {
    status = withStatus;
    ended.countDown();
  }

  /** From now on, until {@link #ended}, an interruption stops planning and not the program. */
  void catchFromProcess() {
    Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "interruption"));
  }

  /** As a test or the hook asks for it. */
  void want() {
    wanted = true;
  }

  private void stop() {
    if (ended.getCount() == 0) {
      return;
    }
    want();
    try {
      if (!ended.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        status = ExitStatus.INTERRUPTED;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Runtime.getRuntime().halt(status);
  }
}
