package lapwright.paperwork;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.Need;

/** One need of each job of a plan, which tells the job's due day and copies. */
final class OneNeedAJob {
  private OneNeedAJob() {}

  /** First due first, then by name; without a due day last. */
  static List<Need> firstDueFirst(OrderPlan plan) {
    Map<String, Need> byJob = new LinkedHashMap<>();
    for (MaterialPlan material : plan.materials()) {
      material.order().needs().forEach(need -> byJob.putIfAbsent(need.job(), need));
    }
    return byJob.values().stream()
        .sorted(
            Comparator.comparing(
                    Need::due, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
                .thenComparing(Need::job))
        .toList();
  }
}
