package lapwright.paperwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.ItemOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import org.jspecify.annotations.Nullable;

/**
 * A job that is planned.
 *
 * @param due its due day; null when not given
 * @param copies how many of it
 */
record PlannedJob(String job, @Nullable LocalDate due, int copies) {
  PlannedJob {
    Objects.requireNonNull(job);
  }

  /** First due first, then by name; without a due day last. */
  static List<PlannedJob> firstDueFirst(OrderPlan plan) {
    return firstDueFirst(List.of(plan));
  }

  /** The same over several orders; the due day is that of the last. */
  static List<PlannedJob> firstDueFirst(List<OrderPlan> orders) {
    Map<String, PlannedJob> byName = new TreeMap<>();
    for (OrderPlan order : orders) {
      for (PlannedJob job : named(order)) {
        byName.merge(
            job.job(),
            job,
            (before, now) ->
                new PlannedJob(now.job(), now.due(), Math.max(before.copies(), now.copies())));
      }
    }
    return byName.values().stream()
        .sorted(
            Comparator.comparing(
                    PlannedJob::due, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
                .thenComparing(PlannedJob::job))
        .toList();
  }

  private static List<PlannedJob> named(OrderPlan order) {
    List<PlannedJob> jobs = new ArrayList<>();
    for (MaterialPlan material : order.materials()) {
      for (Need need : material.order().needs()) {
        jobs.add(new PlannedJob(need.job(), need.due(), need.lastCopy()));
      }
      for (RunNeed run : material.order().runs()) {
        jobs.add(new PlannedJob(run.job(), run.due(), run.lastCopy()));
      }
    }
    for (ItemPlan item : order.items()) {
      for (ItemOrder.Need need : item.order().needs()) {
        jobs.add(new PlannedJob(need.job(), need.due(), need.lastCopy()));
      }
    }
    return jobs;
  }
}
