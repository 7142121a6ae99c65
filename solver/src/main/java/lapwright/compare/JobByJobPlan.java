package lapwright.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.demand.StickDemand;
import lapwright.effort.Effort;
import lapwright.plan.LengthPattern;
import lapwright.problem.StickSolution;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import org.jspecify.annotations.Nullable;

/**
 * One material, its jobs planned one after the other, each from what the ones before left, put
 * together into whole sticks: an offcut that a later job cuts again is one stick with more pieces.
 *
 * @param jobs in the order in which they are planned
 * @param patterns the sticks of all jobs; empty when some job has no plan, or one job is all
 * @param total cost, cash and proof; null when some job has no plan, or one job is all
 * @param firstWithoutPlan the first job for which no plan was found from what the ones before left;
 *     null when there is none
 */
record JobByJobPlan(
    String material,
    List<String> jobs,
    List<LengthPattern> patterns,
    MaterialSaving.@Nullable JobByJob total,
    @Nullable String firstWithoutPlan) {

  static JobByJobPlan of(MaterialOrder order, Effort effort) {
    StickDemand whole = StickDemand.of(order);
    Map<String, SortedMap<Integer, Integer>> demandOfJob = new LinkedHashMap<>();
    for (Need need : order.needs()) {
      demandOfJob
          .computeIfAbsent(need.job(), job -> new TreeMap<>())
          .merge(whole.item(need), need.total(), Math::addExact);
    }
    List<String> jobs = List.copyOf(demandOfJob.keySet());
    String material = order.material().id();
    if (jobs.size() == 1) {
      return new JobByJobPlan(material, jobs, List.of(), null, null);
    }
    WhatIsLeft left = new WhatIsLeft(whole.problem(), order.saw().kerf().units());
    boolean proved = true;
    for (String job : jobs) {
      StickSolution solution = left.plan(Objects.requireNonNull(demandOfJob.get(job)), effort);
      if (!solution.status().hasSolution()) {
        return new JobByJobPlan(material, jobs, List.of(), null, job);
      }
      proved &= solution.status() == StickSolution.Status.PROVED;
    }
    List<LengthPattern> patterns = whole.patterns(left.sticks());
    return new JobByJobPlan(
        material,
        jobs,
        patterns,
        new MaterialSaving.JobByJob(whole.cost(patterns), whole.cash(patterns), proved),
        null);
  }
}
