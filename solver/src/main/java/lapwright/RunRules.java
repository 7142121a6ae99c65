package lapwright;

import java.util.List;
import lapwright.demand.RunDemand;
import lapwright.demand.RunJoints;
import lapwright.demand.StickDemand;
import lapwright.layout.LayoutException;
import lapwright.measure.Length;
import lapwright.problem.SpliceProblem;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Where;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.splice.SpliceQuestions;
import org.jspecify.annotations.Nullable;

/** Whether a run can be split at all so that its rules are kept, from what an order offers. */
public final class RunRules {
  /** The rule that is named where there is nothing to cut a run from. */
  public static final String NO_STOCK = "material";

  private RunRules() {}

  /** What stands against a run of the order; null when some split keeps its rules. */
  public static Shortage.@Nullable NoSplit against(MaterialOrder order, RunNeed need) {
    if (StickDemand.of(order.withPieces(List.of())).longestUsable().isZero()) {
      return Shortage.NoSplit.of(
          order,
          need,
          NO_STOCK,
          "there is no stock that the saw takes",
          "list stock lengths of the material",
          null);
    }
    try {
      RunDemand.of(order, one -> false, need::equals, supply -> true);
    } catch (LayoutException e) {
      return new NearestRule(order, need, e).tell();
    }
    if (need.run().rules().closing().othersWhole()
        && !SpliceQuestions.canSplit(alone(order, need))) {
      Length longest = need.run().rules().pieces().longest();
      List<Length> sticks = RunJoints.fullSticks(order);
      if (longest != null && sticks.stream().allMatch(stick -> stick.isLongerThan(longest))) {
        return Shortage.NoSplit.of(
            order,
            need,
            "full-sticks",
            "longest-piece is shorter than any full stick",
            "leave one of the two out, or make longest-piece {}",
            sticks.get(sticks.size() - 1));
      }
      return Shortage.NoSplit.of(
          order,
          need,
          "full-sticks",
          "no split of a line has whole sticks but for its closing piece",
          "leave full-sticks out, or allow a shorter closing piece or more joints",
          null);
    }
    if (!canStagger(order, need, need.run().rules().stagger())) {
      if (!need.settled().isEmpty()) {
        return Shortage.NoSplit.of(
            order,
            need,
            "stagger",
            "no split was found for line "
                + need.firstLine()
                + " that keeps its joints so far from those of the line on tickets beside it",
            "give the lines that are added another mark, or plan everything anew with"
                + " --save --replace",
            null);
      }
      JointRules rules = need.run().rules();
      ClosingPiece either =
          new ClosingPiece(
              Where.EITHER, rules.closing().othersWhole(), rules.closing().leaveLong());
      if (rules.closing().where() != Where.EITHER
          && canStagger(order, need.withRules(rules.with(either)), rules.stagger())) {
        return Shortage.NoSplit.of(
            order,
            need,
            "stagger",
            "closed at the same end, no two splits of it keep their joints that far apart",
            "write closing: either, so that they close at one end and the other in turns",
            null);
      }
      Length greatest = greatestStagger(order, need);
      return Shortage.NoSplit.of(
          order,
          need,
          "stagger",
          "no two splits of it were found that keep their joints that far apart",
          greatest.isZero()
              ? "leave stagger out, or allow more joints or places"
              : "make stagger at most {}, or allow more joints or places",
          greatest.isZero() ? null : greatest);
    }
    return null;
  }

  /**
   * The most pieces that a line of the run may have, over all its unbroken stretches.
   *
   * @throws LayoutException when no split keeps the rules
   */
  public static int mostPieces(MaterialOrder order, RunNeed need) {
    return RunJoints.mostPieces(order, need);
  }

  /** True when some split of one line keeps the run's rules, stagger aside. */
  static boolean hasSplit(MaterialOrder order, RunNeed need) {
    try {
      RunDemand.of(order.withRuns(List.of(need)), one -> false, run -> true, supply -> true);
      return true;
    } catch (LayoutException e) {
      return false;
    }
  }

  private static boolean canStagger(MaterialOrder order, RunNeed need, Length apart) {
    Run run = need.run();
    if (apart.isZero() || (need.lines() == 1 && need.settled().isEmpty())) {
      return true;
    }
    return SpliceQuestions.canStagger(alone(order, need.withRules(run.rules().staggered(apart))));
  }

  private static SpliceProblem alone(MaterialOrder order, RunNeed need) {
    MaterialOrder alone =
        new MaterialOrder(
            order.material(),
            order.saw(),
            order.onHandValued(),
            order.supplies(),
            List.of(),
            List.of(need));
    return RunDemand.of(alone).problem();
  }

  /** The greatest distance that some two splits keep, in steps of the run's pieces. */
  private static Length greatestStagger(MaterialOrder order, RunNeed need) {
    Length step = need.run().rules().pieces().step();
    long none = need.run().rules().stagger().units() / step.units() + 1;
    long some = 0;
    while (none - some > 1) {
      long middle = (some + none) / 2;
      if (canStagger(order, need, step.times(middle))) {
        some = middle;
      } else {
        none = middle;
      }
    }
    return step.times(some);
  }
}
