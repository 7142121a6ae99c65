package lapwright.paperwork;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.Need;

/** One need of each job, which tells the job's due day and how many copies there are. */
final class OneNeedAJob {
  private OneNeedAJob() {}

  /** First due first, then by name; without a due day last. */
  static List<Need> firstDueFirst(OrderPlan plan) {
    return firstDueFirst(plan.materials());
  }

  /** The same over the plans of several orders; the due day is that of the last. */
  static List<Need> firstDueFirst(List<MaterialPlan> plans) {
    Map<String, Need> byJob = new LinkedHashMap<>();
    for (MaterialPlan material : plans) {
      material
          .order()
          .needs()
          .forEach(
              need ->
                  byJob.merge(
                      need.job(),
                      need,
                      (first, next) ->
                          next.lastCopy() < first.lastCopy() ? withDay(first, next) : next));
    }
    return byJob.values().stream()
        .sorted(
            Comparator.comparing(
                    Need::due, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
                .thenComparing(Need::job))
        .toList();
  }

  private static Need withDay(Need need, Need other) {
    return new Need(
        need.job(),
        other.due(),
        need.copies(),
        need.mark(),
        need.length(),
        need.qty(),
        need.purpose(),
        need.rules(),
        need.firstCopy());
  }
}
