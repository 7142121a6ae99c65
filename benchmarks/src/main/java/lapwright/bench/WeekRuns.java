package lapwright.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.bench.instance.Week;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.effort.Effort;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supply;

/** Plans generated weeks as the program does, from the shop's records to the checked plan. */
final class WeekRuns {
  private static final double NANOS = 1e9;
  private static final int WARM_UP_JOBS = 10;
  private static final long WARM_UP_SEED = 9_000_001;

  private final int threads;
  private final double limitSeconds;

  WeekRuns(int threads, double limitSeconds) {
    this.threads = threads;
    this.limitSeconds = limitSeconds;
  }

  /**
   * Plans the weeks.
   *
   * @param faults is told of every week that failed
   * @return a table, one row a number of jobs
   */
  List<String> lines(List<Integer> weeks, long seed, Consumer<String> faults) {
    plan(Week.of(WARM_UP_JOBS, WARM_UP_SEED));
    TextTable table =
        new TextTable(
            "jobs",
            "materials",
            "pieces",
            "types",
            "sticks",
            "cost",
            "bound",
            "proved",
            "claimed",
            "within 1 stick",
            "seconds",
            "of it check",
            "cpu s",
            "MB");
    for (int jobs : weeks) {
      table.add(row(jobs, seed, faults));
    }
    return table.lines();
  }

  private String[] row(int jobs, long seed, Consumer<String> faults) {
    ShopOrder week = Week.of(jobs, seed);
    List<MaterialOrder> orders = week.materialOrders(job -> true);
    PeakMemory.reset();
    Stopwatch watch = new Stopwatch();
    PlanResult result = null;
    try {
      result = plan(week);
    } catch (RuntimeException | OutOfMemoryError e) {
      // The other weeks are still worth measuring.
      faults.accept("WRONG: the week of " + jobs + " jobs failed: " + e);
    }
    double seconds = watch.wallSeconds();
    double cpuSeconds = watch.cpuSeconds();
    long megabytes = PeakMemory.megabytes();
    List<String> row = new ArrayList<>();
    row.add(String.valueOf(jobs));
    row.add(String.valueOf(orders.size()));
    row.add(String.valueOf(needs(orders).stream().mapToLong(Need::total).sum()));
    row.add(
        String.valueOf(
            orders.stream()
                .mapToLong(order -> order.needs().stream().map(Need::length).distinct().count())
                .sum()));
    if (result instanceof PlanResult.Planned planned) {
      List<MaterialPlan> plans = planned.plan().plan().materials();
      row.add(
          String.valueOf(
              plans.stream()
                  .flatMap(plan -> plan.purchases().stream())
                  .mapToLong(purchase -> purchase.packs())
                  .sum()));
      row.add(money(plans.stream().mapToLong(MaterialPlan::cost).sum()));
      row.add(money(plans.stream().mapToLong(MaterialPlan::lowerBound).sum()));
      row.add(count(plans, Proof.PROVED) + "/" + plans.size());
      row.add(String.valueOf(count(plans, Proof.CLAIMED)));
      row.add(plans.stream().filter(WeekRuns::isWithinAStick).count() + "/" + plans.size());
      row.add(RunLine.seconds(seconds));
      row.add(RunLine.seconds(secondsOfCheck(planned.plan())));
    } else {
      for (int missing = 0; missing < 6; missing++) {
        row.add("-");
      }
      row.add(result == null ? "failed" : "> limit");
      row.add("-");
    }
    row.add(RunLine.seconds(cpuSeconds));
    row.add(String.valueOf(megabytes));
    return row.toArray(String[]::new);
  }

  private PlanResult plan(ShopOrder week) {
    AtomicInteger names = new AtomicInteger();
    Effort effort =
        Effort.limited(
            System::nanoTime, (long) (limitSeconds * NANOS), () -> false, progress -> {});
    return new Planner(() -> "R" + names.incrementAndGet(), threads)
        .plan(week.shop(), week.materialOrders(job -> true), Map.of(), effort);
  }

  private static double secondsOfCheck(CheckedPlan plan) {
    Stopwatch watch = new Stopwatch();
    Objects.requireNonNull(PlanCheck.check(plan.plan()));
    return watch.wallSeconds();
  }

  private static List<Need> needs(List<MaterialOrder> orders) {
    return orders.stream().flatMap(order -> order.needs().stream()).toList();
  }

  private static long count(List<MaterialPlan> plans, Proof proof) {
    return plans.stream().filter(plan -> plan.proof() == proof).count();
  }

  /** Cost and bound differ by less than the cheapest stick. */
  private static boolean isWithinAStick(MaterialPlan plan) {
    long cheapest = Long.MAX_VALUE;
    for (Supply supply : plan.order().supplies()) {
      cheapest = Math.min(cheapest, stickPrice(plan.order(), supply));
    }
    return plan.cost() - plan.lowerBound() < cheapest;
  }

  /** What a stick costs, in 1/10,000; without end where it has no price. */
  static long stickPrice(MaterialOrder order, Supply supply) {
    return supply instanceof Supply.Offer offer && offer.price() != null
        ? offer.price().ofSticks(offer.length(), 1, order.material().weight()).tenThousandths()
        : Long.MAX_VALUE;
  }

  private static String money(long tenThousandths) {
    return String.format(Locale.ROOT, "%.2f", BigDecimal.valueOf(tenThousandths, 4));
  }
}
