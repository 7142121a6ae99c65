package lapwright.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.Need;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * A mark that alone costs two sticks or more, and at least twice as many as its pieces would fill
 * end to end: without it the order takes so many sticks fewer, at the least cost either way. A pack
 * that is bought for a few pieces is such, and a pair of pieces that misses its stick by a cut.
 * Where pieces merely fill their sticks badly, the account of waste says so.
 *
 * @param now the plan with the mark, proved
 * @param need the mark
 * @param without the plan without it, proved; null where it is the only mark of its material
 * @param fills sticks of the longest stock that its pieces would fill, end to end, rounded up
 */
public record CostlyMark(MaterialPlan now, Need need, @Nullable MaterialPlan without, int fills) {
  private static final int FEWEST = 2;
  private static final int MOST_PLANS = 2;

  public CostlyMark {
    Objects.requireNonNull(now);
    Objects.requireNonNull(need);
  }

  /** Sticks that would not be taken without it. */
  public int sticks() {
    return OtherMark.sticks(now) - (without == null ? 0 : OtherMark.sticks(without));
  }

  /** What would not be spent without it: in the unit of the plans' cost. */
  public long costs() {
    return now.cost() - (without == null ? 0 : without.cost());
  }

  private boolean isCostly() {
    return sticks() >= leastFor(fills) && costs() > 0;
  }

  private static int leastFor(int fills) {
    return Math.max(FEWEST, Math.multiplyExact(2, fills));
  }

  /**
   * A mark of a plan that is so, first asked of those that cost most beyond their length. Nothing
   * of a plan that is not proved, and nothing of materials with runs or with one lot a job.
   */
  public static Optional<CostlyMark> of(
      Planner planner, Shop shop, MaterialPlan plan, Effort effort) {
    if (!OtherMark.isFor(plan) || plan.proof() != Proof.PROVED) {
      return Optional.empty();
    }
    int plans = 0;
    for (Candidate candidate : candidates(plan, effort)) {
      if (plans++ == MOST_PLANS || effort.spent()) {
        break;
      }
      Need need = candidate.need();
      MaterialPlan without = null;
      if (plan.order().needs().size() > 1) {
        without = new OtherMark(plan, need, null).planned(planner, shop, effort);
        if (without == null || without.proof() != Proof.PROVED) {
          continue;
        }
      }
      CostlyMark mark = new CostlyMark(plan, need, without, candidate.fills());
      if (mark.isCostly()) {
        return Optional.of(mark);
      }
    }
    return Optional.empty();
  }

  /**
   * A mark that may be so.
   *
   * @param beyond what it costs at most, by the weights, more than the sticks that it fills
   */
  private record Candidate(Need need, int fills, long beyond) {}

  private static List<Candidate> candidates(MaterialPlan plan, Effort effort) {
    Length longest = Length.ZERO;
    for (Supply supply : plan.order().supplies()) {
      if (!(supply instanceof Supply.RackOffcut) && supply.length().isLongerThan(longest)) {
        longest = supply.length();
      }
    }
    int taken = OtherMark.sticks(plan);
    List<Candidate> candidates = new ArrayList<>();
    if (longest.isZero() || taken < FEWEST) {
      return candidates;
    }
    long ofAStick = plan.cost() / taken;
    for (Need need : plan.order().needs()) {
      if (effort.spent()) {
        break;
      }
      long length = need.length().times(need.total()).units();
      int fills = Math.toIntExact((length + longest.units() - 1) / longest.units());
      // Sticks that cost much less than the average are no loss to speak of.
      long least = Math.multiplyExact(ofAStick, leastFor(fills)) / 4 * 3;
      long most =
          plan.order().needs().size() == 1
              ? plan.cost()
              : plan.cost() - new OtherMark(plan, need, null).atLeast();
      if (leastFor(fills) <= taken && most >= least) {
        candidates.add(new Candidate(need, fills, most - Math.multiplyExact(ofAStick, fills)));
      }
    }
    candidates.sort(
        Comparator.comparingLong(Candidate::beyond)
            .reversed()
            .thenComparing(each -> each.need().job())
            .thenComparing(each -> each.need().mark()));
    return candidates;
  }
}
