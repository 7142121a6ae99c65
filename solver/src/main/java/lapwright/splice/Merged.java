package lapwright.splice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/**
 * A problem in which stocks that are equal in all that decides cost are one, and the way back for
 * its certificates. Costs are divided by their common divisor.
 *
 * @param problem with merged stocks
 * @param raw for each merged stock the indices of the problem's own
 * @param costUnit what the costs were divided by
 */
record Merged(SpliceProblem problem, List<List<Integer>> raw, long costUnit) {
  static Merged of(SpliceProblem problem) {
    long unit = 0;
    for (Stock stock : problem.stocks()) {
      unit = Knapsack.gcd(unit, stock.packCost());
    }
    return of(problem, Math.max(1, unit));
  }

  /**
   * The same with a given divisor of all costs.
   *
   * @param unit positive
   */
  static Merged of(SpliceProblem problem, long unit) {
    Map<Stock, List<Integer>> byLook = new LinkedHashMap<>();
    for (int j = 0; j < problem.stocks().size(); j++) {
      Stock stock = problem.stocks().get(j);
      if (stock.mostPacks() > 0 && stock.capacity() > 0) {
        Stock look =
            new Stock(
                0,
                stock.capacity(),
                stock.smallCapacity(),
                stock.wholeUse(),
                0,
                stock.packCost() / unit,
                0,
                stock.packSize(),
                1);
        byLook.computeIfAbsent(look, key -> new ArrayList<>()).add(j);
      }
    }
    List<Stock> stocks = new ArrayList<>();
    byLook.forEach(
        (look, members) -> {
          long most = 0;
          boolean limited = true;
          for (int member : members) {
            most += problem.stocks().get(member).mostPacks();
            limited &= problem.stocks().get(member).isLimited();
          }
          stocks.add(
              new Stock(
                  0,
                  look.capacity(),
                  look.smallCapacity(),
                  look.wholeUse(),
                  0,
                  look.packCost(),
                  0,
                  look.packSize(),
                  limited ? (int) Math.min(most, Integer.MAX_VALUE - 1) : Integer.MAX_VALUE));
        });
    return new Merged(
        problem.withStocks(stocks), byLook.values().stream().map(List::copyOf).toList(), unit);
  }

  /** The merged stock that holds a stock of the problem's own. */
  int number(int stock) {
    for (int j = 0; j < raw.size(); j++) {
      if (raw.get(j).contains(stock)) {
        return j;
      }
    }
    throw new IllegalArgumentException("stock " + stock + " is of no use");
  }

  /** Sticks of merged stocks as sticks of the problem's own. */
  List<ClassMaster.Cutting> own(SpliceProblem given, List<ClassMaster.Cutting> sticks) {
    int[] taken = new int[given.stocks().size()];
    List<ClassMaster.Cutting> own = new ArrayList<>();
    for (ClassMaster.Cutting stick : sticks) {
      for (int member : raw.get(stick.stock())) {
        Stock stock = given.stocks().get(member);
        if (taken[member] < (long) stock.mostPacks() * stock.packSize()) {
          taken[member]++;
          own.add(new ClassMaster.Cutting(member, stick.lengths()));
          break;
        }
      }
    }
    return own;
  }

  /** The merged stocks as a problem without items. */
  StickProblem sticks() {
    return new StickProblem(List.of(), problem.stocks(), 0);
  }

  /** A certificate in terms of the problem's own stocks and costs. */
  SpliceCertificate expand(SpliceCertificate certificate) {
    if (certificate instanceof SpliceCertificate.PackSplit split) {
      List<Integer> stocks = new ArrayList<>();
      split.stocks().forEach(stock -> stocks.addAll(raw.get(stock)));
      stocks.sort(null);
      return new SpliceCertificate.PackSplit(
          stocks, split.packs(), expand(split.fewer()), expand(split.more()));
    }
    SpliceCertificate.Weights leaf = (SpliceCertificate.Weights) certificate;
    long divisor = Knapsack.gcd(leaf.scale(), costUnit);
    long factor = costUnit / divisor;
    SortedMap<Long, Long> weights = new TreeMap<>();
    leaf.weights()
        .forEach((length, weight) -> weights.put(length, Math.multiplyExact(weight, factor)));
    return new SpliceCertificate.Weights(
        leaf.scale() / divisor, weights, Math.multiplyExact(leaf.perSize(), factor));
  }
}
