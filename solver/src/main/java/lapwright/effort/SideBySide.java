package lapwright.effort;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Work on several things at once, answers in the order of the things. */
public final class SideBySide {
  private SideBySide() {}

  public static <T, R> List<R> map(int threads, List<T> things, Function<T, R> work) {
    if (threads == 1 || things.size() < 2) {
      return things.stream().map(work).toList();
    }
    ExecutorService workers =
        Executors.newFixedThreadPool(
            Math.min(threads, things.size()),
            task -> {
              Thread thread = new Thread(task, "planning");
              thread.setDaemon(true);
              return thread;
            });
    try {
      List<Future<R>> futures = new ArrayList<>();
      for (T thing : things) {
        futures.add(workers.submit(() -> work.apply(thing)));
      }
      List<R> results = new ArrayList<>();
      for (Future<R> future : futures) {
        results.add(future.get());
      }
      return results;
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    } finally {
      workers.shutdownNow();
    }
  }
}
