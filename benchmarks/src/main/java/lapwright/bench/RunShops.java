package lapwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.bench.instance.RunShop;
import lapwright.compare.JointChoice;
import lapwright.effort.Effort;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import org.jspecify.annotations.Nullable;

/**
 * Plans generated shops of runs as the program does, from the shop's records to the checked plan,
 * and compares each with laying full sticks and a closing piece at the fewest joints, planned with
 * the same limit.
 */
final class RunShops {
  private static final double NANOS = 1e9;
  private static final RunShop.Kind WARM_UP = new RunShop.Kind(10, true, false, 1);
  private static final long WARM_UP_SEED = 9_000_001;

  private final double limitSeconds;
  private final boolean compared;

  /**
   * @param compared whether to plan full sticks too
   */
  RunShops(double limitSeconds, boolean compared) {
    this.limitSeconds = limitSeconds;
    this.compared = compared;
  }

  /** One shop, planned. */
  private record Planned(MaterialPlan plan, double seconds, double cpuSeconds, long fullSticks) {
    double gapPercent() {
      return 100.0 * (plan.cost() - plan.lowerBound()) / plan.cost();
    }

    /** How many of the cheapest stick the gap is worth, whole ones. */
    boolean isWithinAStick() {
      return plan.cost() - plan.lowerBound() < cheapestStick(plan.order());
    }

    double savingPercent() {
      return 100.0 * (fullSticks - plan.cost()) / fullSticks;
    }
  }

  private static long cheapestStick(MaterialOrder order) {
    return order.supplies().stream()
        .mapToLong(supply -> WeekRuns.stickPrice(order, supply))
        .min()
        .orElse(0);
  }

  /** The kinds of shops with so many lines. */
  static List<RunShop.Kind> kinds(int lines) {
    List<RunShop.Kind> kinds = new ArrayList<>();
    for (int extra = 0; extra <= 1; extra++) {
      for (boolean bearings : new boolean[] {true, false}) {
        for (boolean several : new boolean[] {true, false}) {
          kinds.add(new RunShop.Kind(lines, several, bearings, extra));
        }
      }
    }
    return kinds;
  }

  /**
   * Plans {@code count} shops of each kind.
   *
   * @param each is told a line for each shop
   * @param faults is told of every shop that failed
   * @return a table, one row a kind
   */
  List<String> lines(
      List<RunShop.Kind> kinds,
      long seed,
      int count,
      Consumer<String> each,
      Consumer<String> faults) {
    plan(RunShop.of(WARM_UP, WARM_UP_SEED).order(), 2);
    TextTable table =
        new TextTable(
            "kind",
            "lines",
            "proved",
            "within 1 stick",
            "gap mean",
            "gap worst",
            "seconds mean",
            "worst",
            "cpu s",
            "saving mean",
            "best",
            "least");
    for (RunShop.Kind kind : kinds) {
      List<Planned> planned = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        Planned one = planned(kind, seed + i, faults);
        if (one != null) {
          planned.add(one);
          each.accept(line(kind, seed + i, one));
        }
      }
      if (!planned.isEmpty()) {
        table.add(row(kind, planned));
      }
    }
    return table.lines();
  }

  private @Nullable Planned planned(RunShop.Kind kind, long seed, Consumer<String> faults) {
    Stopwatch watch = new Stopwatch();
    PlanResult result;
    try {
      result = plan(RunShop.of(kind, seed).order(), limitSeconds);
    } catch (RuntimeException | OutOfMemoryError e) {
      // The other shops are still worth measuring.
      faults.accept("WRONG: " + kind.name() + ", seed " + seed + " failed: " + e);
      return null;
    }
    double seconds = watch.wallSeconds();
    double cpuSeconds = watch.cpuSeconds();
    if (!(result instanceof PlanResult.Planned done)) {
      faults.accept("WRONG: " + kind.name() + ", seed " + seed + ": " + result);
      return null;
    }
    MaterialPlan plan = done.plan().plan().materials().get(0);
    return new Planned(plan, seconds, cpuSeconds, fullSticks(kind, seed, plan));
  }

  private long fullSticks(RunShop.Kind kind, long seed, MaterialPlan plan) {
    if (!compared) {
      return plan.cost();
    }
    JointChoice.OtherWay other =
        new JointChoice(planner())
            .fullSticks(
                RunShop.SHOP, RunShop.of(kind.atFewest(), seed).order(), effort(limitSeconds));
    return other == null ? plan.cost() : other.cost();
  }

  private static PlanResult plan(MaterialOrder order, double limit) {
    return planner().plan(RunShop.SHOP, List.of(order), Map.of(), effort(limit));
  }

  private static Planner planner() {
    AtomicInteger names = new AtomicInteger();
    return new Planner(() -> "R" + names.incrementAndGet(), 1);
  }

  private static Effort effort(double limit) {
    return Effort.limited(System::nanoTime, (long) (limit * NANOS), () -> false, progress -> {});
  }

  private static String line(RunShop.Kind kind, long seed, Planned one) {
    return String.format(
        Locale.ROOT,
        "%-26s %5d  seed %d  cost %d  bound %d  %s  gap %.3f %%  %.3f s, cpu %.3f s  saving %.2f %%",
        kind.name(),
        kind.lines(),
        seed,
        one.plan().cost(),
        one.plan().lowerBound(),
        one.plan().proof(),
        one.gapPercent(),
        one.seconds(),
        one.cpuSeconds(),
        one.savingPercent());
  }

  private static String[] row(RunShop.Kind kind, List<Planned> shops) {
    int n = shops.size();
    long proved = shops.stream().filter(one -> one.plan().proof() == Proof.PROVED).count();
    long close = shops.stream().filter(Planned::isWithinAStick).count();
    return new String[] {
      kind.name(),
      String.valueOf(kind.lines()),
      proved + "/" + n,
      close + "/" + n,
      percent(shops.stream().mapToDouble(Planned::gapPercent).average().orElse(0), 3),
      percent(shops.stream().mapToDouble(Planned::gapPercent).max().orElse(0), 3),
      RunLine.seconds(shops.stream().mapToDouble(Planned::seconds).average().orElse(0)),
      RunLine.seconds(shops.stream().mapToDouble(Planned::seconds).max().orElse(0)),
      RunLine.seconds(shops.stream().mapToDouble(Planned::cpuSeconds).average().orElse(0)),
      percent(shops.stream().mapToDouble(Planned::savingPercent).average().orElse(0), 2),
      percent(shops.stream().mapToDouble(Planned::savingPercent).max().orElse(0), 2),
      percent(shops.stream().mapToDouble(Planned::savingPercent).min().orElse(0), 2)
    };
  }

  private static String percent(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f %%", value);
  }
}
