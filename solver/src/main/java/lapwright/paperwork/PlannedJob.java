package lapwright.paperwork;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import org.jspecify.annotations.Nullable;

/**
 * A job that plans give pieces to.
 *
 * @param due null when not given
 * @param lastCopy how often it is built
 */
record PlannedJob(String job, @Nullable LocalDate due, int lastCopy) {
  /** First due first, then by name; without a due day last. */
  static List<PlannedJob> firstDueFirst(OrderPlan plan) {
    return firstDueFirst(plan.materials());
  }

  /** The same over the plans of several orders; the due day is that of the last. */
  static List<PlannedJob> firstDueFirst(List<MaterialPlan> plans) {
    Map<String, PlannedJob> byJob = new LinkedHashMap<>();
    for (MaterialPlan material : plans) {
      for (Need need : material.order().needs()) {
        byJob.merge(
            need.job(),
            new PlannedJob(need.job(), need.due(), need.lastCopy()),
            PlannedJob::followedBy);
      }
      for (RunNeed need : material.order().runs()) {
        byJob.merge(
            need.job(),
            new PlannedJob(need.job(), need.due(), need.copies()),
            PlannedJob::followedBy);
      }
    }
    return byJob.values().stream()
        .sorted(
            Comparator.comparing(
                    PlannedJob::due, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
                .thenComparing(PlannedJob::job))
        .toList();
  }

  private PlannedJob followedBy(PlannedJob next) {
    return new PlannedJob(job, next.due, Math.max(lastCopy, next.lastCopy));
  }
}
