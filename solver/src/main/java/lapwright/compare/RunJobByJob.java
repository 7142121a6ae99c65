package lapwright.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/**
 * As {@link JobByJobPlan}, of a material with runs or with lots that must not mix: each job is
 * planned by itself from what the ones before left, surplus sticks and kept offcuts among it.
 */
final class RunJobByJob {
  private final MaterialOrder order;
  private final List<Supply> left;
  private int names;

  private RunJobByJob(MaterialOrder order) {
    this.order = order;
    this.left = new ArrayList<>(order.supplies());
  }

  static boolean isFor(MaterialOrder order) {
    return !order.runs().isEmpty() || order.material().oneLotPer() != OneLotPer.NONE;
  }

  static JobByJobPlan of(Planner planner, Shop shop, MaterialOrder order, Effort effort) {
    return new RunJobByJob(order).plan(planner, shop, effort);
  }

  private JobByJobPlan plan(Planner planner, Shop shop, Effort effort) {
    Set<String> names = new LinkedHashSet<>();
    order.needs().forEach(need -> names.add(need.job()));
    order.runs().stream().map(RunNeed::job).forEach(names::add);
    List<String> jobs = List.copyOf(names);
    String material = order.material().id();
    if (jobs.size() == 1) {
      return new JobByJobPlan(material, jobs, List.of(), null, null);
    }
    long cost = 0;
    long cash = 0;
    boolean proved = true;
    for (String job : jobs) {
      MaterialOrder alone =
          new MaterialOrder(
              order.material(),
              order.saw(),
              order.onHandValued(),
              left,
              order.needs().stream().filter(need -> need.job().equals(job)).toList(),
              order.runs().stream().filter(need -> need.job().equals(job)).toList());
      PlanResult result = planner.plan(shop, List.of(alone), Map.of(), effort);
      if (!(result instanceof PlanResult.Planned planned)) {
        return new JobByJobPlan(material, jobs, List.of(), null, job);
      }
      MaterialPlan plan = planned.plan().plan().materials().get(0);
      cost = Math.addExact(cost, plan.cost());
      cash = Math.addExact(cash, plan.cash());
      proved &= plan.proof() == Proof.PROVED;
      take(plan);
    }
    return new JobByJobPlan(
        material, jobs, List.of(), new MaterialSaving.JobByJob(cost, cash, proved), null);
  }

  /** Takes from the supplies what a plan uses, and adds what it leaves. */
  private void take(MaterialPlan plan) {
    Map<String, Integer> used = new LinkedHashMap<>();
    plan.patterns().forEach(pattern -> used.merge(pattern.supply(), pattern.times(), Integer::sum));
    Map<String, Integer> packs = new LinkedHashMap<>();
    for (Purchase purchase : plan.purchases()) {
      packs.put(purchase.supply(), purchase.packs());
    }
    List<Supply> before = List.copyOf(left);
    left.clear();
    List<Supply> added = new ArrayList<>();
    for (Supply supply : before) {
      int sticks = used.getOrDefault(supply.key(), 0);
      if (supply instanceof Supply.Offer offer) {
        int bought = packs.getOrDefault(offer.key(), 0);
        left.add(fewer(offer, bought));
        for (int i = sticks; i < bought * offer.soldIn(); i++) {
          Length counted = offer.length().minus(order.material().shortBy());
          added.add(offcut(counted, Ends.MILL, offer));
        }
      } else if (supply instanceof Supply.OnHand onHand) {
        if (sticks < onHand.qty()) {
          left.add(
              new Supply.OnHand(
                  onHand.length(), onHand.qty() - sticks, onHand.place(), onHand.lot()));
        }
      } else if (sticks == 0) {
        left.add(supply);
      }
    }
    for (Pattern pattern : plan.patterns()) {
      for (int i = 0; i < pattern.offcutNames().size(); i++) {
        before.stream()
            .filter(supply -> supply.key().equals(pattern.supply()))
            .forEach(
                supply ->
                    added.add(
                        offcut(
                            pattern.offcut(),
                            supply.ends() == Ends.SAWN ? Ends.SAWN : Ends.ONE_MILL,
                            supply)));
      }
    }
    left.addAll(added);
  }

  private static Supply.Offer fewer(Supply.Offer offer, int packs) {
    return offer.atMostSticks() == Integer.MAX_VALUE
        ? offer
        : new Supply.Offer(
            offer.supplier(),
            offer.length(),
            offer.price(),
            offer.soldIn(),
            offer.atMostSticks() - packs * offer.soldIn(),
            offer.code(),
            offer.quoted(),
            offer.goodUntil());
  }

  private Supply.RackOffcut offcut(Length length, Ends ends, Supply from) {
    names++;
    return new Supply.RackOffcut("left-" + names, length, ends, "", from.lotKey());
  }
}
