package lapwright.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import lapwright.bench.instance.ClassSpec;
import lapwright.bench.instance.Instance;
import lapwright.bench.instance.InstanceClasses;
import lapwright.bench.method.Answer;
import lapwright.bench.method.Method;
import lapwright.effort.Effort;

/** Runs methods on instances, one after the other, and checks every answer. */
final class Campaign {
  private static final long WARM_UP_SEED = 9_000_001;
  private static final int WARM_UP_ROUNDS = 40;
  private static final List<String> WARM_UP =
      List.of(
          "uniform:n=60",
          "triplets:n=60",
          "hard-distinct:n=60",
          "several-lengths:k=3,pieces=200,types=30",
          "gau-waescher:m=20,mean=10,v1=10,v2=500");
  private static final double NANOS = 1e9;

  private final List<Method> methods;
  private final int threads;
  private final double limitSeconds;
  private final double warmUpSeconds;

  /**
   * @param limitSeconds for each method on each instance
   * @param warmUpSeconds for how long each method may solve other instances first, untimed
   */
  Campaign(List<Method> methods, int threads, double limitSeconds, double warmUpSeconds) {
    this.methods = List.copyOf(methods);
    this.threads = threads;
    this.limitSeconds = limitSeconds;
    this.warmUpSeconds = warmUpSeconds;
  }

  /**
   * Solves small instances that are never measured, so that Java has compiled what it will.
   *
   * @return the runs that went wrong; none, as a rule
   */
  List<Run> warmUp() {
    List<Run> wrong = new ArrayList<>();
    for (Method method : methods) {
      Effort effort = effort(warmUpSeconds);
      for (int round = 0; round < WARM_UP_ROUNDS && !effort.spent(); round++) {
        for (String text : WARM_UP) {
          ClassSpec spec = ClassSpec.parse(text);
          Instance instance = InstanceClasses.generate(spec, WARM_UP_SEED + round, 1).get(0);
          if (!effort.spent()) {
            Run run = measure(method, instance, effort);
            if (!run.faults().isEmpty()) {
              wrong.add(run);
            }
          }
        }
      }
    }
    return wrong;
  }

  /**
   * Runs every method on every instance.
   *
   * @param listener is told of each run as it ends
   */
  List<Run> run(List<Instance> instances, Consumer<Run> listener) {
    List<Run> runs = new ArrayList<>();
    for (Instance instance : instances) {
      List<Run> ofInstance = new ArrayList<>();
      for (Method method : methods) {
        Run run = withFaultsAgainst(ofInstance, measure(method, instance, effort(limitSeconds)));
        ofInstance.add(run);
        listener.accept(run);
      }
      runs.addAll(ofInstance);
    }
    return runs;
  }

  private Run measure(Method method, Instance instance, Effort effort) {
    PeakMemory.reset();
    Stopwatch watch = new Stopwatch();
    Answer answer;
    List<String> faults;
    try {
      answer = method.solve(instance.problem(), effort, threads);
      faults = List.of();
    } catch (RuntimeException | OutOfMemoryError e) {
      // A method that fails is a wrong answer, and the other instances are still worth measuring.
      answer = Answer.nothing(0, "failed");
      faults = List.of(e + " at " + Arrays.stream(e.getStackTrace()).limit(3).toList());
    }
    double wallSeconds = watch.wallSeconds();
    double cpuSeconds = watch.cpuSeconds();
    long peakMegabytes = PeakMemory.megabytes();
    return new Run(
        instance,
        method.name(),
        answer,
        wallSeconds,
        cpuSeconds,
        peakMegabytes,
        limitSeconds,
        faults.isEmpty() ? AnswerCheck.faults(instance, answer) : faults);
  }

  /** A bound above what another method found is wrong, whichever of the two it is. */
  private static Run withFaultsAgainst(List<Run> others, Run run) {
    List<String> faults = new ArrayList<>(run.faults());
    for (Run other : others) {
      if (bound(run) > cost(other) || bound(other) > cost(run)) {
        faults.add(
            "bound "
                + bound(run)
                + " and cost "
                + cost(run)
                + ", but "
                + other.method()
                + " has bound "
                + bound(other)
                + " and cost "
                + cost(other));
      }
    }
    return new Run(
        run.instance(),
        run.method(),
        run.answer(),
        run.wallSeconds(),
        run.cpuSeconds(),
        run.peakMegabytes(),
        run.limitSeconds(),
        faults);
  }

  private static long cost(Run run) {
    return run.answer().outcome().hasSolution() ? run.answer().cost() : Long.MAX_VALUE;
  }

  private static long bound(Run run) {
    return run.answer().outcome().isSolved() ? run.answer().cost() : run.answer().bound();
  }

  private static Effort effort(double seconds) {
    return Effort.limited(System::nanoTime, (long) (seconds * NANOS), () -> false, progress -> {});
  }
}
