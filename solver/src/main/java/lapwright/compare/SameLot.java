package lapwright.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.demand.RunJoints;
import lapwright.effort.Effort;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.shop.MaterialOrder;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/**
 * What is added to jobs, or to runs, whose material must be of one lot, once tickets of placed
 * orders cut it for them: it should come from what is left of that lot; if that does not suffice,
 * from the same maker, who may still have it; from another lot only where there is nothing else.
 * What else is added of that material comes from there too.
 */
public final class SameLot {
  private final Map<String, List<MaterialPlan>> placed = new HashMap<>();

  /**
   * @param orders in the order in which they were placed
   */
  public SameLot(List<OrderPlan> orders) {
    for (OrderPlan order : orders) {
      for (MaterialPlan plan : order.materials()) {
        placed.computeIfAbsent(plan.material(), id -> new ArrayList<>()).add(plan);
      }
    }
  }

  /** How what a job gets now stands to what it was cut from before. */
  public enum Standing {
    /** Of the same maker, with another delivery. */
    ANOTHER_DELIVERY,
    /** Of another maker, or of a lot that lay in the shop. */
    ANOTHER_LOT
  }

  /**
   * A job or run that gets more of a material than the lot gives that it was cut from.
   *
   * @param run mark of the run; empty for a job
   */
  public record Mixed(String material, String job, String run, Standing standing) {}

  /**
   * What must be of one lot.
   *
   * @param run mark of the run; empty for a job
   */
  private record Unit(String job, String run) {}

  /** The orders, each limited to the lots of its jobs or runs as far as these give a plan. */
  public List<MaterialOrder> limited(
      Planner planner, Shop shop, List<MaterialOrder> later, Effort effort) {
    List<MaterialOrder> chosen = new ArrayList<>();
    for (MaterialOrder order : later) {
      Set<String> lots = new TreeSet<>();
      Map<Unit, Set<String>> before = before(order);
      before.values().forEach(lots::addAll);
      chosen.add(lots.isEmpty() ? order : limited(planner, shop, order, lots, effort));
    }
    return chosen;
  }

  private static MaterialOrder limited(
      Planner planner, Shop shop, MaterialOrder order, Set<String> lots, Effort effort) {
    Set<String> makers = new TreeSet<>(lots);
    for (Supply supply : order.supplies()) {
      if (lots.contains(StockLeft.lotOnceBought(supply))) {
        makers.add(supply.lotKey());
      }
    }
    for (Set<String> permitted : List.of(lots, makers)) {
      MaterialOrder limited = buyingNothingElse(order, permitted);
      if (planner.forQuestions().plan(shop, List.of(limited), Map.of(), effort)
              instanceof PlanResult.Planned
          && hasNoMoreJoints(limited, order)) {
        return limited;
      }
    }
    return order;
  }

  /** Where only short offcuts are left, the fewest joints that they allow are too many. */
  private static boolean hasNoMoreJoints(MaterialOrder limited, MaterialOrder order) {
    return order.runs().stream()
        .allMatch(need -> RunJoints.mostJoints(limited, need) <= RunJoints.mostJoints(order, need));
  }

  /** The offers stay named, so that cost remains money, but cannot be had. */
  private static MaterialOrder buyingNothingElse(MaterialOrder order, Set<String> permitted) {
    List<Supply> supplies = new ArrayList<>();
    for (Supply supply : order.supplies()) {
      if (permitted.contains(supply.lotKey())) {
        supplies.add(supply);
      } else if (supply instanceof Supply.Offer offer) {
        supplies.add(
            new Supply.Offer(
                offer.supplier(),
                offer.length(),
                offer.price(),
                offer.soldIn(),
                0,
                offer.code(),
                offer.quoted(),
                offer.goodUntil()));
      }
    }
    return order.withSupplies(supplies);
  }

  /** The jobs and runs of a later plan that mix lots with what was cut for them before. */
  public List<Mixed> mixed(OrderPlan later) {
    List<Mixed> mixed = new ArrayList<>();
    for (MaterialPlan plan : later.materials()) {
      Map<Unit, Set<String>> before = before(plan.order());
      lotsOf(List.of(plan), Supply::lotKey)
          .forEach(
              (unit, now) -> {
                Set<String> lots = before.getOrDefault(unit, Set.of());
                Set<String> others = new TreeSet<>(now);
                others.removeAll(lots);
                if (lots.isEmpty() || others.isEmpty()) {
                  return;
                }
                boolean sameMaker =
                    plan.order().supplies().stream()
                        .filter(supply -> others.contains(supply.lotKey()))
                        .allMatch(supply -> lots.contains(StockLeft.lotOnceBought(supply)));
                mixed.add(
                    new Mixed(
                        plan.material(),
                        unit.job(),
                        unit.run(),
                        sameMaker ? Standing.ANOTHER_DELIVERY : Standing.ANOTHER_LOT));
              });
    }
    return mixed;
  }

  /** What placed tickets cut each job or run of an order from, where its lots must not mix. */
  private Map<Unit, Set<String>> before(MaterialOrder order) {
    OneLotPer per = order.material().oneLotPer();
    if (per == OneLotPer.NONE) {
      return Map.of();
    }
    Map<Unit, Set<String>> lots =
        lotsOf(placed.getOrDefault(order.material().id(), List.of()), StockLeft::lotOnceBought);
    Set<Unit> units = new LinkedHashSet<>();
    if (per == OneLotPer.JOB) {
      order.needs().forEach(need -> units.add(new Unit(need.job(), "")));
    }
    for (RunNeed need : order.runs()) {
      units.add(new Unit(need.job(), per == OneLotPer.JOB ? "" : need.run().mark()));
    }
    lots.keySet().retainAll(units);
    return lots;
  }

  private static Map<Unit, Set<String>> lotsOf(
      List<MaterialPlan> plans, Function<Supply, String> lotOf) {
    Map<Unit, Set<String>> lots = new LinkedHashMap<>();
    for (MaterialPlan plan : plans) {
      Map<String, Supply> supplies = new HashMap<>();
      plan.order().supplies().forEach(supply -> supplies.put(supply.key(), supply));
      Map<Unit, String> runOfPiece = new HashMap<>();
      for (RunLine line : plan.runs()) {
        for (RunLine.RunPiece piece : line.pieces()) {
          runOfPiece.put(new Unit(line.job(), line.pieceMark(piece)), line.mark());
        }
      }
      boolean perJob = plan.order().material().oneLotPer() == OneLotPer.JOB;
      for (Pattern pattern : plan.patterns()) {
        Supply supply = supplies.get(pattern.supply());
        for (Cut cut : pattern.cuts()) {
          String run = perJob ? "" : runOfPiece.get(new Unit(cut.job(), cut.mark()));
          if (supply != null && run != null) {
            lots.computeIfAbsent(new Unit(cut.job(), run), unit -> new TreeSet<>())
                .add(lotOf.apply(supply));
          }
        }
      }
    }
    return lots;
  }
}
