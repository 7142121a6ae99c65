package lapwright.bench.method;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.bench.method.Answer.Outcome;
import lapwright.check.CheckedPlan;
import lapwright.check.MaterialBound;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/**
 * Lapwright the whole way: the problem as an order of one material, planned, cut into tickets, and
 * its proof recomputed by the independent check. What it calls proved has passed that check; the
 * time includes it.
 */
final class LapwrightPlanner implements Method {
  private static final String WORD = "x";
  private static final int DECIMALS = 4;
  private static final Shop SHOP = new Shop(WORD, "USD", Shop.Units.MILLIMETRES, true);
  private static final Saw SHEAR = new Saw(WORD, Length.ZERO, Length.ZERO, Length.ZERO, null);

  @Override
  public String name() {
    return "lapwright-checked";
  }

  @Override
  public String description() {
    return "Lapwright from order to checked plan, its proof recomputed independently";
  }

  @Override
  public Answer solve(StickProblem problem, Effort effort, int threads) {
    PlainProblem.require(problem);
    MaterialOrder order = order(problem);
    PlanResult result =
        new Planner(() -> WORD, threads).plan(SHOP, List.of(order), Map.of(), effort);
    if (result instanceof PlanResult.Impossible) {
      return new Answer(Outcome.IMPOSSIBLE, List.of(), List.of(), -1, 0, "");
    }
    return result instanceof PlanResult.Planned planned
        ? answer(problem, order, planned.plan())
        : Answer.nothing(0, "interrupted");
  }

  private static MaterialOrder order(StickProblem problem) {
    Length keepNone = Length.ofUnits(Long.MAX_VALUE);
    Material material = new Material(WORD, WORD, SHEAR.id(), true, Length.ZERO, keepNone, null);
    List<Supply> supplies = new ArrayList<>();
    for (int j = 0; j < problem.stocks().size(); j++) {
      Stock stock = problem.stocks().get(j);
      long most = (long) stock.mostPacks() * stock.packSize();
      supplies.add(
          new Supply.Offer(
              "s" + j,
              Length.ofUnits(stock.capacity()),
              new Price(BigDecimal.valueOf(stock.packCost(), DECIMALS), Price.Per.PACK),
              stock.packSize(),
              stock.isLimited() ? Math.toIntExact(most) : Integer.MAX_VALUE,
              "",
              null,
              null));
    }
    List<Need> needs = new ArrayList<>();
    for (Item item : problem.items()) {
      Length length = Length.ofUnits(item.size());
      needs.add(new Need(WORD, null, 1, "", length, item.demand(), ""));
    }
    return new MaterialOrder(material, SHEAR, true, supplies, needs);
  }

  private static Answer answer(StickProblem problem, MaterialOrder order, CheckedPlan checked) {
    MaterialPlan plan = checked.plan().materials().get(0);
    MaterialBound bound = checked.bounds().get(0);
    Map<String, Integer> stockOf = new TreeMap<>();
    for (int j = 0; j < order.supplies().size(); j++) {
      stockOf.put(order.supplies().get(j).key(), j);
    }
    Map<Length, Integer> itemOf = new TreeMap<>();
    for (int i = 0; i < problem.items().size(); i++) {
      itemOf.put(Length.ofUnits(problem.items().get(i).size()), i);
    }
    List<PatternUse> patterns = new ArrayList<>();
    for (Pattern pattern : plan.patterns()) {
      Map<Integer, Integer> counts = new TreeMap<>();
      for (Cut cut : pattern.cuts()) {
        counts.merge(itemOf.getOrDefault(cut.length(), -1), cut.qty(), Integer::sum);
      }
      patterns.add(
          new PatternUse(
              stockOf.getOrDefault(pattern.supply(), -1),
              counts.entrySet().stream().map(e -> new Count(e.getKey(), e.getValue())).toList(),
              pattern.times()));
    }
    Integer[] packs = new Integer[order.supplies().size()];
    Arrays.fill(packs, 0);
    for (Purchase purchase : plan.purchases()) {
      packs[stockOf.getOrDefault(purchase.supply(), -1)] = purchase.packs();
    }
    Outcome outcome =
        switch (plan.proof()) {
          case PROVED -> bound.bound() == plan.cost() ? Outcome.PROVED : Outcome.OPEN;
          case CLAIMED -> Outcome.CLAIMED;
          case OPEN -> Outcome.OPEN;
        };
    return new Answer(outcome, patterns, List.of(packs), plan.cost(), bound.bound(), "");
  }
}
