package lapwright.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CertifiedBound;
import lapwright.effort.Effort;
import lapwright.effort.Questions;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The order of a plan with one of its marks shorter, or without it: what that costs at least, by
 * the weights of the plan's own certificate, and what it costs, by a plan. The first is quick and
 * tells which marks are worth the second.
 *
 * <p>A piece that becomes shorter keeps its weight. What proves the bound of the order then proves
 * one of the other order too, lower by as much as the shorter piece lets a stick carry more.
 *
 * @param plan without runs
 * @param mark one of the needs of its order
 * @param length of the mark in the other order; null where it is left out
 */
record OtherMark(MaterialPlan plan, Need mark, @Nullable Length length) {
  /**
   * Each of the few plans is small and ends by itself, as a rule; these end the others, the second
   * one where an engine asks nothing for long.
   */
  private static final int QUESTIONS = 2_000;

  private static final long MOST_NANOS = 1_000_000_000;

  /** Certificates about lots speak of decisions that another order need not know. */
  static boolean isFor(MaterialPlan plan) {
    MaterialOrder order = plan.order();
    return order.runs().isEmpty()
        && !order.fromStockOnly()
        && order.material().oneLotPer() == OneLotPer.NONE;
  }

  MaterialOrder order() {
    List<Need> needs = new ArrayList<>();
    for (Need need : plan.order().needs()) {
      if (!need.equals(mark)) {
        needs.add(need);
      } else if (length != null) {
        needs.add(need.withLength(length));
      }
    }
    return plan.order().withPieces(needs);
  }

  /** No plan of the other order costs less. */
  long atLeast() {
    return CertifiedBound.of(order(), moved(plan.certificate()), plan.cost());
  }

  /** The plan of the other order; null when none was found. */
  @Nullable MaterialPlan planned(Planner planner, Shop shop, Effort effort) {
    Effort share =
        effort
            .atMost(MOST_NANOS)
            .alsoStoppedBy(new Questions(QUESTIONS))
            .tellingInstead(progress -> {});
    PlanResult result = planner.forQuestions().plan(shop, List.of(order()), Map.of(), share);
    return result instanceof PlanResult.Planned planned
        ? planned.plan().plan().materials().get(0)
        : null;
  }

  /** Whole sticks that are bought or taken from those on hand. */
  static int sticks(MaterialPlan plan) {
    int sticks = 0;
    for (Supply supply : plan.order().supplies()) {
      if (supply instanceof Supply.Offer offer) {
        for (Purchase purchase : plan.purchases()) {
          if (purchase.supply().equals(offer.key())) {
            sticks += Math.multiplyExact(purchase.packs(), offer.soldIn());
          }
        }
      } else if (supply instanceof Supply.OnHand) {
        for (Pattern pattern : plan.patterns()) {
          if (pattern.supply().equals(supply.key())) {
            sticks += pattern.times();
          }
        }
      }
    }
    return sticks;
  }

  private Certificate moved(Certificate certificate) {
    if (certificate instanceof Certificate.PackSplit split) {
      return new Certificate.PackSplit(
          split.supplies(), split.packs(), moved(split.fewer()), moved(split.more()));
    }
    return certificate instanceof Certificate.Weights weights
        ? new Certificate.Weights(weights.scale(), moved(weights.weights()))
        : certificate;
  }

  private SortedMap<Length, Long> moved(SortedMap<Length, Long> weights) {
    Length kerf = plan.order().saw().kerf();
    SortedMap<Length, Long> moved = new TreeMap<>(weights);
    long weight = weights.getOrDefault(mark.planned(kerf), 0L);
    Set<Length> needed = new HashSet<>();
    plan.order().needs().stream()
        .filter(need -> !need.equals(mark))
        .forEach(need -> needed.add(need.planned(kerf)));
    if (!needed.contains(mark.planned(kerf))) {
      moved.remove(mark.planned(kerf));
    }
    if (length != null && weight > 0) {
      moved.merge(mark.withLength(length).planned(kerf), weight, Math::max);
    }
    return moved;
  }
}
