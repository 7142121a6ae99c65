package lapwright;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import lapwright.allot.Allotment;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.effort.Effort;
import lapwright.effort.SideBySide;
import lapwright.plan.LengthPattern;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;

/**
 * Plans what to buy and how to cut, all materials side by side.
 *
 * <p>Thread-safe if the names handed in are. The plan does not depend on the number of threads: it
 * is the same, byte for byte, as long as no limit cuts the work short.
 */
public final class Planner {
  private final OffcutNames offcutNames;
  private final int threads;
  private final int lastTicket;
  private final List<String> onlySuppliers;

  /**
   * @param offcutNames asked once for each offcut that a plan keeps, in the order of its tickets
   * @param threads materials worked on at once, at least 1
   */
  public Planner(OffcutNames offcutNames, int threads) {
    this(offcutNames, threads, 0, List.of());
  }

  private Planner(
      OffcutNames offcutNames, int threads, int lastTicket, List<String> onlySuppliers) {
    this.offcutNames = Objects.requireNonNull(offcutNames);
    this.threads = threads;
    this.lastTicket = lastTicket;
    this.onlySuppliers = List.copyOf(onlySuppliers);
    if (threads < 1) {
      throw new IllegalArgumentException(threads + " threads");
    }
  }

  /** The same, whose tickets are counted on after {@code number}. */
  public Planner continuingAfterTicket(int number) {
    return new Planner(offcutNames, threads, number, onlySuppliers);
  }

  /** The same, whose plans remember that only these suppliers were asked; all when empty. */
  public Planner buyingOnlyFrom(List<String> suppliers) {
    return new Planner(offcutNames, threads, lastTicket, suppliers);
  }

  /**
   * The same for questions whose plans nobody cuts: one material at once, so that many can be asked
   * side by side, and offcuts get names that are not used up. It is thread-safe in any case.
   */
  public Planner forQuestions() {
    AtomicInteger names = new AtomicInteger();
    return new Planner(() -> "(asked " + names.incrementAndGet() + ")", 1, 0, List.of());
  }

  /** Materials worked on at once. */
  public int threads() {
    return threads;
  }

  /**
   * Plans all materials, or none of them.
   *
   * @param orders one a material, in the order in which the plan lists them
   * @param startFrom patterns of a plan that is known already, by material; the new plan never
   *     costs more than it. May be empty. See {@link LengthPattern#of}
   * @param effort shared by all materials; its listener is told of each material by its id
   * @throws BrokenPlanException if a plan does not pass the check: a defect of this program
   */
  public PlanResult plan(
      Shop shop,
      List<MaterialOrder> orders,
      Map<String, List<LengthPattern>> startFrom,
      Effort effort) {
    return plan(shop, orders, List.of(), startFrom, effort);
  }

  /**
   * The same with counted goods. An item that cannot be had stops no plan: it is told as missing.
   *
   * @param items one order an item, by name
   */
  public PlanResult plan(
      Shop shop,
      List<MaterialOrder> orders,
      List<ItemOrder> items,
      Map<String, List<LengthPattern>> startFrom,
      Effort effort) {
    List<MaterialAnswer> answers =
        SideBySide.map(
            threads,
            orders,
            order ->
                RunSolving.isFor(order)
                    ? RunSolving.solve(order, effort)
                    : MaterialSolving.solve(
                        order, startFrom.getOrDefault(order.material().id(), List.of()), effort));
    List<Shortage> shortages = new ArrayList<>();
    List<String> unfinished = new ArrayList<>();
    for (MaterialAnswer answer : answers) {
      if (answer instanceof MaterialAnswer.Lacking lack) {
        shortages.add(lack.shortage());
      } else if (answer instanceof MaterialAnswer.Nothing nothing) {
        unfinished.add(nothing.material());
      }
    }
    if (!shortages.isEmpty()) {
      return new PlanResult.Impossible(shortages);
    }
    if (!unfinished.isEmpty()) {
      return new PlanResult.Interrupted(unfinished);
    }
    return new PlanResult.Planned(
        checked(
            new OrderPlan(
                shop,
                withTickets(answers),
                items.stream().map(ItemBuying::buy).toList(),
                null,
                onlySuppliers)));
  }

  /**
   * What no plan of a material costs less than, found in moments and followed by the check.
   *
   * @param atMost no more than that is asked for
   * @return 0 where nothing is known, {@link Long#MAX_VALUE} where there is no plan at all
   */
  public long atLeast(MaterialOrder order, long atMost, Effort effort) {
    return QuickBound.of(order, atMost, effort.tellingInstead(progress -> {}));
  }

  private List<MaterialPlan> withTickets(List<MaterialAnswer> answers) {
    AtomicInteger ticket = new AtomicInteger(lastTicket);
    Supplier<String> ticketNames = () -> Integer.toString(ticket.incrementAndGet());
    List<MaterialPlan> plans = new ArrayList<>();
    for (MaterialAnswer answer : answers) {
      if (answer instanceof MaterialAnswer.SolvedRuns runs) {
        plans.add(runs.withTickets(ticketNames, offcutNames::next));
        continue;
      }
      MaterialAnswer.Solved solved = (MaterialAnswer.Solved) answer;
      List<Pattern> tickets =
          Allotment.tickets(
              solved.demand().order(),
              solved.patterns(),
              solved.demand()::planned,
              ticketNames,
              offcutNames::next);
      plans.add(solved.withTickets(tickets));
    }
    return plans;
  }

  private static CheckedPlan checked(OrderPlan plan) {
    Verdict verdict = PlanCheck.check(plan);
    if (verdict instanceof Verdict.Sound sound) {
      return sound.plan();
    }
    throw new BrokenPlanException(((Verdict.Broken) verdict).faults());
  }
}
