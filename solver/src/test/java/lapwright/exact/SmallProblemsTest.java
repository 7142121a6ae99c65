package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Status;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Small problems with everything in them, against an independent solver and against themselves. */
class SmallProblemsTest {
  private static StickSolution solve(StickProblem problem) {
    StickSolution solution = StickSolver.solve(problem, List.of(), Effort.unlimited());
    SolutionCheck.check(problem, solution);
    return solution;
  }

  @Test
  void theCostIsThatOfAnIndependentSolver() {
    int solved = 0;
    for (int seed = 0; seed < 200; seed++) {
      StickProblem problem = RandomProblems.small(seed);
      StickSolution solution = solve(problem);
      long least = PatternOracle.leastCost(problem);
      if (least >= 0) {
        solved++;
      } else {
        // It gave up, or takes for impossible what may be possible: every way is gone through.
        least = EveryWay.leastCost(problem);
      }
      String name = "seed " + seed;
      assertEquals(least, solution.cost(), name);
      assertEquals(least < 0 ? Status.IMPOSSIBLE : Status.PROVED, solution.status(), name);
    }
    assertTrue(solved > 150, "solved only " + solved);
  }

  @Test
  void lengthsWithoutACommonDivisorCostWhatAnIndependentSolverFinds() {
    for (int seed = 0; seed < 60; seed++) {
      StickProblem problem = fine(RandomProblems.small(seed), new Random(seed));
      long least = PatternOracle.leastCost(problem);
      if (least >= 0) {
        assertEquals(least, solve(problem).cost(), "seed " + seed);
      }
    }
  }

  /** The same lengths give or take a little, on so fine a grid that no table has room for it. */
  private static StickProblem fine(StickProblem problem, Random random) {
    long unit = 20_000_000;
    List<Item> items = new ArrayList<>();
    for (Item item : problem.items()) {
      items.add(new Item(item.size() * unit - random.nextInt(1000), item.demand(), false));
    }
    List<Stock> stocks = new ArrayList<>();
    for (Stock stock : problem.stocks()) {
      long capacity = stock.capacity() * unit;
      stocks.add(
          new Stock(
              stock.length() * unit,
              capacity,
              capacity,
              false,
              0,
              stock.packCost(),
              stock.packCash(),
              stock.packSize(),
              stock.mostPacks()));
    }
    return new StickProblem(items, stocks, 0);
  }

  @Property(tries = 100, seed = "11")
  void theOrderOfItemsAndStocksDoesNotChangeTheCost(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    List<Item> items = new ArrayList<>(problem.items());
    List<Stock> stocks = new ArrayList<>(problem.stocks());
    Collections.shuffle(items, new Random(seed));
    Collections.shuffle(stocks, new Random(seed + 1));
    assertEquals(
        solve(problem).cost(), solve(new StickProblem(items, stocks, problem.keepFrom())).cost());
  }

  @Property(tries = 100, seed = "11")
  void scalingAllLengthsDoesNotChangeTheCost(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    long factor = 1 + new Random(seed).nextInt(30_000);
    List<Item> items =
        problem.items().stream()
            .map(i -> new Item(i.size() * factor, i.demand(), i.small()))
            .toList();
    List<Stock> stocks =
        problem.stocks().stream()
            .map(
                s ->
                    new Stock(
                        s.length() * factor,
                        s.capacity() * factor,
                        s.smallCapacity() * factor,
                        s.wholeUse(),
                        s.tail(),
                        s.packCost(),
                        s.packCash(),
                        s.packSize(),
                        s.mostPacks()))
            .toList();
    assertEquals(
        solve(problem).cost(),
        solve(new StickProblem(items, stocks, problem.keepFrom() * factor)).cost());
  }

  @Property(tries = 100, seed = "11")
  void moreStockNeverCostsMore(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    StickSolution before = solve(problem);
    List<Stock> stocks = new ArrayList<>(problem.stocks());
    stocks.addAll(RandomProblems.small(seed + 1).stocks());
    if (before.status().hasSolution() && problem.items().stream().noneMatch(Item::small)) {
      StickSolution after = solve(new StickProblem(problem.items(), stocks, 0));
      assertTrue(after.cost() <= before.cost());
    }
  }

  @Property(tries = 100, seed = "11")
  void fewerPiecesNeverCostMore(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    StickSolution before = solve(problem);
    if (before.status().hasSolution() && problem.items().size() > 1) {
      List<Item> fewer = new ArrayList<>(problem.items());
      fewer.remove(fewer.size() - 1);
      if (fewer.stream().noneMatch(Item::small)) {
        assertTrue(solve(new StickProblem(fewer, problem.stocks(), 0)).cost() <= before.cost());
      }
    }
  }

  @Property(tries = 100, seed = "11")
  void aStartIsNeverMadeWorse(@ForAll long seed) {
    StickProblem problem = RandomProblems.small(seed);
    StickSolution solution = solve(problem);
    if (solution.status().hasSolution()) {
      Effort none = Effort.limited(() -> 0, 0, () -> true, progress -> {});
      StickSolution again = StickSolver.solve(problem, solution.patterns(), none);
      SolutionCheck.check(problem, again);
      assertTrue(again.cost() <= solution.cost());
    }
  }
}
