package lapwright.demand;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import lapwright.RandomOrders;
import lapwright.SawWalk;
import lapwright.allot.Allotment;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.LengthPattern;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Supply;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/** The integer problem says of every stick just what the saw does to it. */
final class SticksAsIntegersTest {
  @Provide
  Arbitrary<MaterialOrder> orders() {
    return Arbitraries.randomValue(random -> RandomOrders.small(random).make());
  }

  @Property(tries = 500, seed = "5", shrinking = ShrinkingMode.OFF)
  void properPatternsAreThoseThatCanBeCut(@ForAll("orders") MaterialOrder order) {
    StickDemand demand = StickDemand.of(order);
    StickProblem problem = demand.problem();
    List<Length> lengths = new ArrayList<>();
    for (int i = 0; i < problem.items().size(); i++) {
      lengths.add(demand.length(i));
    }
    for (int j = 0; j < demand.supplies().size(); j++) {
      Supply supply = demand.supplies().get(j);
      Stock stock = problem.stocks().get(j);
      int[] counts = new int[lengths.size()];
      while (next(counts, problem)) {
        OptionalLong offcut = SawWalk.along(order, supply, lengths, counts);
        assertEquals(offcut.isPresent(), isProper(problem, stock, counts), supply.toString());
        if (offcut.isPresent()) {
          assertAccountOfOneStick(demand, j, counts, offcut.getAsLong());
        }
      }
    }
  }

  private static void assertAccountOfOneStick(
      StickDemand demand, int stock, int[] counts, long offcut) {
    List<Count> list = new ArrayList<>();
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] > 0) {
        list.add(new Count(i, counts[i]));
      }
    }
    List<LengthPattern> patterns = demand.patterns(List.of(new PatternUse(stock, list, 1)));
    assertEquals(offcut, patterns.get(0).offcut().units());
    Account account =
        demand.account(
            Allotment.tickets(demand.order(), patterns, Allotment.Uncut.NONE, () -> "t", () -> "o"),
            demand.purchases(patterns));
    assertEquals(
        account.drawn(),
        account
            .finished()
            .plus(account.laps())
            .plus(account.kerf())
            .plus(account.endTrim())
            .plus(account.offcutsKept())
            .plus(account.scrap()));
    assertEquals(offcut, account.offcutsKept().plus(account.scrap()).units());
    long packs = demand.problem().stocks().get(stock).packSize();
    if (demand.supplies().get(stock) instanceof Supply.Offer offer) {
      assertEquals(
          offer.length().times(packs),
          account.drawn().plus(account.surplus()).plus(account.shortAllowance()));
    }
  }

  private static boolean isProper(StickProblem problem, Stock stock, int[] counts) {
    long sizes = 0;
    boolean allSmall = true;
    int pieces = 0;
    for (int i = 0; i < counts.length; i++) {
      Item item = problem.items().get(i);
      sizes += counts[i] * item.size();
      pieces += counts[i];
      allSmall &= counts[i] == 0 || item.small();
    }
    return sizes <= stock.capacity()
        && (!allSmall
            || sizes <= stock.smallCapacity()
            || (pieces == 1 && stock.wholeUse() && sizes == stock.capacity()));
  }

  private static boolean next(int[] counts, StickProblem problem) {
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] < problem.items().get(i).demand()) {
        counts[i]++;
        return true;
      }
      counts[i] = 0;
    }
    return false;
  }
}
