package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.ItemBuying;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.Shortage;
import lapwright.effort.Effort;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/** What one more of a piece, or one more line of a run, would cost: planned, not estimated. */
public final class OneMore {
  private final Planner planner;
  private final Unanswered unanswered;

  /**
   * @param unanswered is told where a fault leaves out an answer
   */
  public OneMore(Planner planner, Unanswered unanswered) {
    this.planner = Objects.requireNonNull(planner);
    this.unanswered = Objects.requireNonNull(unanswered);
  }

  /**
   * Both plans of one material, without and with one more.
   *
   * @param priced true when the costs are in 1/10,000 of the currency, else in units of length
   * @param cost without one more
   * @param with null when there is no plan with one more
   * @param shortage why there is none; null when it was only that the time was over, or a fault
   */
  public record Answer(
      boolean priced, long cost, Proof proof, @Nullable With with, @Nullable Shortage shortage) {
    public Answer {
      Objects.requireNonNull(proof);
    }

    /** What one more costs; negative only where the plan without it is not proved. */
    public long difference() {
      return Math.subtractExact(Objects.requireNonNull(with).cost(), cost);
    }
  }

  /** The plan with one more. */
  public record With(long cost, Proof proof) {
    public With {
      Objects.requireNonNull(proof);
    }
  }

  /** Plans one more of a need of the plan. */
  public Answer ask(Shop shop, MaterialPlan plan, Need need, Effort effort) {
    MaterialOrder order = plan.order();
    List<Need> needs = new ArrayList<>(order.needs());
    needs.add(
        new Need(
            need.job(),
            need.due(),
            1,
            need.mark(),
            need.length(),
            1,
            need.purpose(),
            need.rules()));
    return ask(shop, plan, with(order, needs, order.runs()), effort);
  }

  /** Plans one more line of a run of the plan, in every copy of its job. */
  public Answer ask(Shop shop, MaterialPlan plan, RunNeed need, Effort effort) {
    MaterialOrder order = plan.order();
    List<RunNeed> runs = new ArrayList<>();
    for (RunNeed each : order.runs()) {
      runs.add(each.equals(need) ? oneMoreLine(each) : each);
    }
    return ask(shop, plan, with(order, order.needs(), runs), effort);
  }

  /** An item with one more piece of it, bought as well as it can be. */
  public static ItemPlan ofItem(ItemPlan plan) {
    List<ItemOrder.Need> needs = new ArrayList<>(plan.order().needs());
    needs.add(new ItemOrder.Need("", null, 1, 1, 1));
    return ItemBuying.buy(new ItemOrder(plan.order().stock(), plan.order().leftOver(), needs));
  }

  private static RunNeed oneMoreLine(RunNeed need) {
    return new RunNeed(
        need.job(),
        need.due(),
        need.copies(),
        need.run().withQty(need.run().qty() + 1),
        need.firstCopy(),
        need.firstLine(),
        need.settled());
  }

  private static MaterialOrder with(MaterialOrder order, List<Need> needs, List<RunNeed> runs) {
    return new MaterialOrder(
        order.material(), order.saw(), order.onHandValued(), order.supplies(), needs, runs);
  }

  private Answer ask(Shop shop, MaterialPlan plan, MaterialOrder more, Effort effort) {
    PlanResult result =
        unanswered.ask(
            "what one more would cost",
            new PlanResult.Interrupted(List.of(more.material().id())),
            () -> planner.forQuestions().plan(shop, List.of(more), Map.of(), effort));
    With with = null;
    Shortage shortage = null;
    if (result instanceof PlanResult.Planned planned) {
      MaterialPlan then = planned.plan().plan().materials().get(0);
      with = new With(then.cost(), then.proof());
    } else if (result instanceof PlanResult.Impossible impossible) {
      shortage = impossible.shortages().get(0);
    }
    return new Answer(plan.order().isPriced(), plan.cost(), plan.proof(), with, shortage);
  }
}
