package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.demand.RunDemand;
import lapwright.effort.Effort;
import lapwright.layout.LayoutException;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.MaterialOrder;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * What choosing the joints was worth: against a man who lays full sticks, then a closing piece, and
 * cuts all that as well as it can be cut, offcuts and all; and what one more joint a line would
 * save.
 */
public final class JointChoice {
  private static final int WAYS = 2;

  private final Planner planner;

  public JointChoice(Planner planner) {
    this.planner = Objects.requireNonNull(planner);
  }

  /**
   * Another way to plan the runs.
   *
   * @param cost in the unit of the plan
   * @param proved true when no plan of that way costs less
   */
  public record OtherWay(long cost, boolean proved) {}

  /**
   * The answer for one material.
   *
   * @param plan the plan that is asked about
   * @param fullSticks laying full sticks, then a closing piece; null when the runs' rules do not
   *     allow it or no plan was found
   * @param oneMore one more joint a line; null when no plan was found
   */
  public record Answer(
      MaterialPlan plan, @Nullable OtherWay fullSticks, @Nullable OtherWay oneMore) {
    /** Saved against full sticks; never negative, 0 where there is nothing to compare. */
    public long saved() {
      return fullSticks == null ? 0 : Math.max(0, fullSticks.cost() - plan.cost());
    }

    /** True when the plan and every other way that there is are proved. */
    public boolean proved() {
      return plan.proof() == Proof.PROVED
          && (fullSticks == null || fullSticks.proved())
          && (oneMore == null || oneMore.proved());
    }

    /** What one more joint a line would save; never negative. */
    public long oneMoreWouldSave() {
      return oneMore == null ? 0 : Math.max(0, plan.cost() - oneMore.cost());
    }
  }

  /**
   * Compares each material of a plan that has runs.
   *
   * @param effort shared evenly; what one plan leaves of its share goes to the next
   */
  public static List<Answer> each(Planner planner, CheckedPlan plan, Effort effort) {
    List<MaterialPlan> withRuns =
        plan.plan().materials().stream().filter(each -> !each.order().runs().isEmpty()).toList();
    List<Answer> answers = new ArrayList<>();
    for (MaterialPlan material : withRuns) {
      int questions = WAYS * (withRuns.size() - answers.size());
      answers.add(new JointChoice(planner).ask(plan.plan().shop(), material, effort, questions));
    }
    return answers;
  }

  /** Compares a plan with both other ways. */
  public Answer ask(Shop shop, MaterialPlan plan, Effort effort) {
    return ask(shop, plan, effort, WAYS);
  }

  /**
   * @param questions how many plans still share the effort
   */
  private Answer ask(Shop shop, MaterialPlan plan, Effort effort, int questions) {
    MaterialOrder order = plan.order();
    return new Answer(
        plan,
        fullSticks(shop, order, share(effort, questions)),
        other(shop, order, JointChoice::oneMore, share(effort, questions - 1)));
  }

  private static Effort share(Effort effort, int questions) {
    long remaining = effort.remainingNanos();
    long end = remaining - remaining / (questions + 1);
    return effort.alsoStoppedBy(() -> effort.remainingNanos() < end).tellingInstead(progress -> {});
  }

  /**
   * Full sticks laid first, then a closing piece; null when the runs' rules do not allow it or no
   * plan was found.
   */
  public @Nullable OtherWay fullSticks(Shop shop, MaterialOrder order, Effort effort) {
    return other(shop, order, JointChoice::fullSticksFirst, effort);
  }

  private @Nullable OtherWay other(
      Shop shop, MaterialOrder order, UnaryOperator<RunNeed> change, Effort effort) {
    MaterialOrder changed;
    try {
      List<RunNeed> runs = new ArrayList<>();
      for (RunNeed need : order.runs()) {
        runs.add(atFarthest(order, change.apply(need)));
      }
      changed =
          new MaterialOrder(
              order.material(),
              order.saw(),
              order.onHandValued(),
              order.supplies(),
              order.needs(),
              runs);
      RunDemand.of(changed);
    } catch (LayoutException e) {
      return null;
    }
    PlanResult result = planner.plan(shop, List.of(changed), Map.of(), effort);
    if (!(result instanceof PlanResult.Planned planned)) {
      return null;
    }
    MaterialPlan other = planned.plan().plan().materials().get(0);
    return new OtherWay(other.cost(), other.proof() == Proof.PROVED);
  }

  private static RunNeed fullSticksFirst(RunNeed need) {
    JointRules rules = need.run().rules();
    ClosingPiece closing = rules.closing();
    return need.withRules(
        rules
            .with(new ClosingPiece(closing.where(), true, closing.leaveLong()))
            .staggered(Length.ZERO));
  }

  private static RunNeed oneMore(RunNeed need) {
    JointCount count = need.run().rules().count();
    JointCount more =
        count instanceof JointCount.AtMost atMost
            ? new JointCount.AtMost(atMost.joints() + 1)
            : new JointCount.BeyondFewest(((JointCount.BeyondFewest) count).extra() + 1);
    return need.withRules(need.run().rules().with(more));
  }

  /**
   * Where joints have given places no piece between is a whole stick, as a rule: there each piece
   * goes as far as the longest stick reaches.
   */
  private static RunNeed atFarthest(MaterialOrder order, RunNeed need) {
    JointRules rules = need.run().rules();
    if (rules.places().isAnywhere() || !rules.closing().othersWhole()) {
      return need;
    }
    ClosingPiece closing = rules.closing();
    List<Length> places =
        RunDemand.farthestPlaces(
            order,
            need.withRules(
                rules.with(new ClosingPiece(closing.where(), false, closing.leaveLong()))));
    JointRules fixed =
        rules
            .at(new JointPlaces.At(places))
            .with(new ClosingPiece(closing.where(), false, closing.leaveLong()))
            .with(new JointCount.AtMost(places.size()));
    return need.withRules(fixed);
  }
}
