package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.demand.RunDemand;
import lapwright.demand.RunJoints;
import lapwright.effort.Effort;
import lapwright.layout.FullSticks;
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
  private final Unanswered unanswered;

  public JointChoice(Planner planner) {
    this(planner, new Unanswered());
  }

  private JointChoice(Planner planner, Unanswered unanswered) {
    this.planner = Objects.requireNonNull(planner);
    this.unanswered = unanswered;
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
   * @param unanswered is told of ways that a fault leaves out
   * @param effort shared evenly; what one plan leaves of its share goes to the next
   */
  public static List<Answer> each(
      Planner planner, CheckedPlan plan, Unanswered unanswered, Effort effort) {
    List<MaterialPlan> withRuns =
        plan.plan().materials().stream().filter(each -> !each.order().runs().isEmpty()).toList();
    List<Answer> answers = new ArrayList<>();
    for (MaterialPlan material : withRuns) {
      int questions = WAYS * (withRuns.size() - answers.size());
      answers.add(
          new JointChoice(planner, unanswered)
              .ask(plan.plan().shop(), material, effort, questions));
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
        unanswered.askOrNull(
            "what full sticks, then a closing piece, would cost (" + order.material().id() + ")",
            () -> fullSticks(shop, order, share(effort, questions))),
        unanswered.askOrNull(
            "what one more joint a line would save (" + order.material().id() + ")",
            () -> oneMore(shop, order, share(effort, questions - 1))));
  }

  private static Effort share(Effort effort, int questions) {
    return effort.share(questions + 1L).tellingInstead(progress -> {});
  }

  /**
   * Full sticks laid first, then a closing piece; null when the runs' rules do not allow it or no
   * plan was found. Where there are several lengths of full sticks, each job is laid in the one
   * that serves it best by itself, but for runs that this would give more joints than they may
   * have.
   */
  public @Nullable OtherWay fullSticks(Shop shop, MaterialOrder order, Effort effort) {
    List<Length> sticks = RunJoints.fullSticks(order);
    List<String> jobs = order.runs().stream().map(RunNeed::job).distinct().toList();
    int questions = sticks.size() * jobs.size() + 1;
    List<RunNeed> runs = new ArrayList<>();
    for (String job : jobs) {
      List<RunNeed> best = null;
      long least = Long.MAX_VALUE;
      for (Length stick : sticks) {
        List<RunNeed> laid = laid(order, job, stick, sticks);
        if (laid == null) {
          continue;
        }
        OtherWay alone =
            sticks.size() == 1
                ? new OtherWay(0, true)
                : plan(
                    shop, order.withPieces(List.of()).withRuns(laid), share(effort, questions--));
        if (alone != null && alone.cost() < least) {
          least = alone.cost();
          best = laid;
        }
      }
      if (best == null) {
        return null;
      }
      runs.addAll(best);
    }
    return plan(shop, order.withRuns(runs), effort);
  }

  /**
   * A job's runs, joined where full sticks end; null when their rules do not allow it.
   *
   * @param sticks what may be laid instead where that stick would take more joints than the run may
   *     have, the longest first
   */
  private static @Nullable List<RunNeed> laid(
      MaterialOrder order, String job, Length stick, List<Length> sticks) {
    List<RunNeed> laid = new ArrayList<>();
    for (RunNeed need : order.runs()) {
      if (need.job().equals(job)) {
        JointRules rules = need.run().rules().staggered(Length.ZERO);
        List<Length> places;
        try {
          places =
              rules.places().isAnywhere()
                  ? joints(order, need, stick, sticks)
                  : RunJoints.farthestPlaces(order, need.withRules(rules));
        } catch (LayoutException e) {
          return null;
        }
        boolean within =
            places.stream()
                .allMatch(place -> place.units() > 0 && place.isShorterThan(need.run().length()));
        if (!within) {
          return null;
        }
        laid.add(
            need.withRules(
                rules
                    .at(new JointPlaces.At(places))
                    .with(
                        new ClosingPiece(
                            rules.closing().where(), false, rules.closing().leaveLong()))
                    .with(new JointCount.AtMost(places.size()))));
      }
    }
    return laid;
  }

  /** Where full sticks of that length end, else those of the first that take no more joints. */
  private static List<Length> joints(
      MaterialOrder order, RunNeed need, Length stick, List<Length> sticks) {
    int most = RunJoints.mostPieces(order, need) - 1;
    List<Length> places = FullSticks.joints(need.run(), stick);
    for (int s = 0; s < sticks.size() && places.size() > most; s++) {
      places = FullSticks.joints(need.run(), sticks.get(s));
    }
    return places;
  }

  private @Nullable OtherWay oneMore(Shop shop, MaterialOrder order, Effort effort) {
    return plan(
        shop, order.withRuns(order.runs().stream().map(JointChoice::oneMore).toList()), effort);
  }

  private @Nullable OtherWay plan(Shop shop, MaterialOrder order, Effort effort) {
    try {
      RunDemand.of(order);
    } catch (LayoutException e) {
      return null;
    }
    PlanResult result = planner.forQuestions().plan(shop, List.of(order), Map.of(), effort);
    if (!(result instanceof PlanResult.Planned planned)) {
      return null;
    }
    MaterialPlan other = planned.plan().plan().materials().get(0);
    return new OtherWay(other.cost(), other.proof() == Proof.PROVED);
  }

  private static RunNeed oneMore(RunNeed need) {
    JointCount count = need.run().rules().count();
    JointCount more =
        count instanceof JointCount.AtMost atMost
            ? new JointCount.AtMost(atMost.joints() + 1)
            : new JointCount.BeyondFewest(((JointCount.BeyondFewest) count).extra() + 1);
    return need.withRules(need.run().rules().with(more));
  }
}
