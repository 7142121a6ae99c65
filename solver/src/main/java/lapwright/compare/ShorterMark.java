package lapwright.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.shop.Need;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * A mark that would cost less if it were a little shorter, all else as it is; confirmed by a plan
 * that costs less than any plan with the mark as it is.
 *
 * @param now the plan with the mark as it is
 * @param need the mark
 * @param shorter the longest tried length that saves as much as the shortest does
 * @param then the plan with it
 */
public record ShorterMark(MaterialPlan now, Need need, Length shorter, MaterialPlan then) {
  /** Plans of one material, few enough that nobody waits. */
  private static final int MOST_PLANS = 8;

  public ShorterMark {
    Objects.requireNonNull(need);
    if (!shorter.isShorterThan(need.length()) || then.cost() >= now.lowerBound()) {
      throw new IllegalArgumentException("nothing is saved by a shorter " + need.mark());
    }
  }

  /** What it saves at least: in the unit of the plans' cost. */
  public long saves() {
    return now.lowerBound() - then.cost();
  }

  /**
   * Sticks fewer that are bought or taken from those on hand; fewer than 0 where more short ones.
   */
  public int sticksFewer() {
    return OtherMark.sticks(now) - OtherMark.sticks(then);
  }

  /** False for materials with runs or with one lot a job. */
  public static boolean isAskedOf(MaterialPlan plan) {
    return OtherMark.isFor(plan);
  }

  /**
   * The marks of a plan that would save something, what saves most first. Marks of materials with
   * runs, or with one lot a job, are not asked.
   *
   * @param step lengths are tried in whole steps
   * @param steps so many at most
   */
  public static List<ShorterMark> of(
      Planner planner, Shop shop, MaterialPlan plan, Length step, int steps, Effort effort) {
    if (!OtherMark.isFor(plan) || plan.lowerBound() == 0) {
      return List.of();
    }
    Asking asking = new Asking(planner, shop, plan, step, effort);
    List<ShorterMark> found = new ArrayList<>();
    for (Candidate candidate : asking.candidates(steps)) {
      if (asking.plansLeft == 0 || effort.spent()) {
        break;
      }
      MaterialPlan most = asking.planned(candidate.need(), steps);
      if (most != null && most.cost() < plan.lowerBound()) {
        found.add(asking.least(candidate.need(), steps, most));
      }
    }
    found.sort(
        Comparator.comparingLong(ShorterMark::saves)
            .reversed()
            .thenComparing(each -> each.need().job())
            .thenComparing(each -> each.need().mark()));
    return found;
  }

  /**
   * A mark that may save something.
   *
   * @param most by the weights, no more than this is saved
   */
  private record Candidate(Need need, long most) {}

  private static final class Asking {
    private final Planner planner;
    private final Shop shop;
    private final MaterialPlan plan;
    private final Length step;
    private final Effort effort;
    private int plansLeft = MOST_PLANS;

    Asking(Planner planner, Shop shop, MaterialPlan plan, Length step, Effort effort) {
      this.planner = planner;
      this.shop = shop;
      this.plan = plan;
      this.step = step;
      this.effort = effort;
    }

    /** What may save most first. */
    List<Candidate> candidates(int steps) {
      List<Candidate> candidates = new ArrayList<>();
      for (Need need : plan.order().needs()) {
        if (effort.spent()) {
          break;
        }
        Length least = shorter(need, steps);
        if (isLongEnough(need, least)) {
          long most = plan.lowerBound() - new OtherMark(plan, need, least).atLeast();
          if (most > 0) {
            candidates.add(new Candidate(need, most));
          }
        }
      }
      candidates.sort(
          Comparator.comparingLong(Candidate::most)
              .reversed()
              .thenComparing(each -> each.need().job())
              .thenComparing(each -> each.need().mark()));
      return candidates;
    }

    /** A piece that the saw could not hold or cut would ask for more, not less. */
    private boolean isLongEnough(Need need, Length length) {
      return length.minus(need.rules().mayBeShort()).minus(need.rules().skew()).units() > 0
          && !length
              .minus(need.rules().mayBeShort())
              .isShorterThan(plan.order().saw().shortestCut());
    }

    private Length shorter(Need need, int steps) {
      return need.length().minus(step.times(steps));
    }

    @Nullable MaterialPlan planned(Need need, int steps) {
      plansLeft--;
      return new OtherMark(plan, need, shorter(need, steps)).planned(planner, shop, effort);
    }

    /** The fewest steps that still save as much, by halving: a shorter piece never costs more. */
    ShorterMark least(Need need, int steps, MaterialPlan most) {
      int tooFew = 0;
      int enough = steps;
      MaterialPlan with = most;
      while (enough - tooFew > 1 && plansLeft > 0) {
        int middle = (tooFew + enough) / 2;
        boolean cannot = new OtherMark(plan, need, shorter(need, middle)).atLeast() > most.cost();
        MaterialPlan then = cannot ? null : planned(need, middle);
        if (then != null && then.cost() <= most.cost()) {
          enough = middle;
          with = then;
        } else {
          tooFew = middle;
        }
      }
      return new ShorterMark(plan, need, shorter(need, enough), with);
    }
  }
}
