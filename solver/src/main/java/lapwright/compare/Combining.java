package lapwright.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.effort.Questions;
import lapwright.effort.SideBySide;
import lapwright.plan.LengthPattern;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;

/**
 * Plans all jobs together and says what that saves against ordering job by job. The job by job plan
 * is the first plan of the whole, so the cost saved is never negative; cash may rise.
 *
 * <p>A thousand jobs are thousands of small problems. So the work on job by job is limited, over
 * all materials, by how often solvers ask whether to go on; what is beyond that is planned quickly
 * and not called proved. A clock would make the comparison depend on the machine.
 */
public final class Combining {
  private static final int QUESTIONS = 20_000;
  private static final int FEWEST_QUESTIONS = 200;

  private final Planner planner;
  private final int threads;
  private final Unanswered unanswered;

  public Combining(Planner planner, int threads) {
    this(planner, threads, new Unanswered());
  }

  /**
   * @param unanswered is told where a fault leaves out what job by job would cost
   */
  public Combining(Planner planner, int threads, Unanswered unanswered) {
    this.planner = Objects.requireNonNull(planner);
    this.threads = threads;
    this.unanswered = Objects.requireNonNull(unanswered);
  }

  /** Plans the orders job by job and together. */
  public CombinedResult plan(Shop shop, List<MaterialOrder> orders, Effort effort) {
    return plan(shop, orders, List.of(), effort);
  }

  /** The same with counted goods. */
  public CombinedResult plan(
      Shop shop, List<MaterialOrder> orders, List<ItemOrder> items, Effort effort) {
    Effort share = firstQuarterOf(effort);
    int questions = Math.max(FEWEST_QUESTIONS, QUESTIONS / Math.max(1, orders.size()));
    List<Optional<JobByJobPlan>> jobByJob =
        SideBySide.map(
            threads,
            orders,
            order ->
                unanswered.ask(
                    "what ordering job by job would cost (" + order.material().id() + ")",
                    Optional.empty(),
                    () -> Optional.of(jobByJob(shop, order, share, questions))));
    Map<String, List<LengthPattern>> startFrom = new HashMap<>();
    for (Optional<JobByJobPlan> plan : jobByJob) {
      plan.ifPresent(known -> startFrom.put(known.material(), known.patterns()));
    }
    PlanResult result = planner.plan(shop, orders, items, startFrom, effort);
    if (!(result instanceof PlanResult.Planned planned)
        || jobByJob.stream().anyMatch(Optional::isEmpty)) {
      return new CombinedResult(result, null);
    }
    List<MaterialSaving> savings = new ArrayList<>();
    List<MaterialPlan> together = planned.plan().plan().materials();
    for (int m = 0; m < together.size(); m++) {
      savings.add(saving(jobByJob.get(m).orElseThrow(), together.get(m)));
    }
    return new CombinedResult(
        result,
        new Saving(
            savings, planned.plan().plan().items().stream().map(ItemsJobByJob::saving).toList()));
  }

  private JobByJobPlan jobByJob(Shop shop, MaterialOrder order, Effort share, int questions) {
    Effort limited = share.alsoStoppedBy(new Questions(questions));
    return RunJobByJob.isFor(order)
        ? RunJobByJob.of(planner.forQuestions(), shop, order, limited)
        : JobByJobPlan.of(order, limited);
  }

  /** What is asked first must not take the time that the plan of the whole needs. */
  private static Effort firstQuarterOf(Effort effort) {
    return effort.share(4).tellingInstead(progress -> {});
  }

  private static MaterialSaving saving(JobByJobPlan jobByJob, MaterialPlan together) {
    boolean proved = together.proof() == Proof.PROVED;
    MaterialSaving.JobByJob total = jobByJob.total();
    if (total != null && total.cost() < together.cost()) {
      // Only where neither is proved, and the plan of the whole did not begin from the other.
      total = new MaterialSaving.JobByJob(together.cost(), together.cash(), false);
    }
    if (jobByJob.jobs().size() == 1) {
      return new MaterialSaving(
          together.material(),
          together.order().isPriced(),
          jobByJob.jobs(),
          together.cost(),
          together.cash(),
          proved,
          new MaterialSaving.JobByJob(together.cost(), together.cash(), proved),
          null);
    }
    return new MaterialSaving(
        together.material(),
        together.order().isPriced(),
        jobByJob.jobs(),
        together.cost(),
        together.cash(),
        proved,
        total,
        jobByJob.firstWithoutPlan());
  }
}
