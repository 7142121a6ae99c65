package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** What polishing keeps and what it makes neater. */
class PolishTest {

  @Property(tries = 500, seed = "11")
  void costsNoMoreIsNoLessNeatAndGivesAllPieces(@ForAll long seed) {
    Reduction reduction = Reduction.of(RandomProblems.small(seed));
    StickProblem problem = reduction.reduced();
    if (problem.stocks().isEmpty()) {
      return;
    }
    Layout layout =
        new GreedyFill(problem, GreedyFill.longestFirst(problem))
            .complete(new Layout.Builder(problem));
    if (layout == null) {
      return;
    }
    Layout polished = Polish.of(reduction, layout);
    assertTrue(polished.cost() <= layout.cost());
    if (polished.cost() == layout.cost()) {
      assertTrue(Neatness.of(reduction, polished).compareTo(Neatness.of(reduction, layout)) <= 0);
    }
    Layout.Builder again = new Layout.Builder(problem);
    polished.uses().forEach(use -> again.add(use.pattern(), use.times()));
    assertEquals(polished, again.buildIfComplete());
    assertEquals(polished, Polish.of(reduction, layout));
    assertEquals(polished, Polish.of(reduction, polished));
  }

  @Test
  void twoPatternsThatDivideEvenlyBecomeOne() {
    StickProblem problem =
        new StickProblem(
            List.of(new Item(5, 2, false), new Item(2, 4, false)), List.of(stick(11, 30)), 100);
    Reduction reduction = Reduction.of(problem);
    Layout polished = Polish.of(reduction, layout(reduction, use(0, 1, 3, 1), use(0, 1, 1, 1)));
    assertEquals(List.of(use(0, 1, 2, 2)), polished.uses());
  }

  @Test
  void aStickMovesToAnOffcutThatHoldsIt() {
    Stock offcut = new Stock(6, 6, 6, true, 0, 0, 0, 1, 1);
    StickProblem problem =
        new StickProblem(
            List.of(new Item(5, 1, false), new Item(3, 1, false)),
            List.of(stick(11, 30), offcut),
            100);
    Reduction reduction = Reduction.of(problem);
    int bought = reduction.reduced().stocks().get(0).packCost() > 0 ? 0 : 1;
    Layout polished =
        Polish.of(reduction, layout(reduction, use(bought, 1, 0, 1), use(bought, 0, 1, 1)));
    // Both pieces fit one bought stick, but one of them fits the offcut, which costs nothing.
    assertEquals(reduction.reduced().stocks().get(bought).packCost(), polished.cost());
  }

  private static Stock stick(long capacity, long cost) {
    return new Stock(capacity, capacity, capacity, true, 0, cost, cost, 1, Integer.MAX_VALUE);
  }

  private static Layout.Use use(int stock, int longer, int shorter, int times) {
    return new Layout.Use(Pattern.ofCounts(stock, new int[] {longer, shorter}), times);
  }

  private static Layout layout(Reduction reduction, Layout.Use... uses) {
    Layout.Builder builder = new Layout.Builder(reduction.reduced());
    for (Layout.Use use : uses) {
      builder.add(use.pattern(), use.times());
    }
    Layout layout = builder.buildIfComplete();
    if (layout == null) {
      throw new IllegalArgumentException("no solution");
    }
    return layout;
  }
}
