package lapwright.paperwork;

import java.util.List;
import java.util.Objects;
import lapwright.check.CheckedPlan;
import lapwright.measure.Length;
import lapwright.paperwork.LayoutPaper.RunLayout;
import lapwright.plan.Account;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.JointRules;
import lapwright.shop.Run;
import org.jspecify.annotations.Nullable;

/**
 * One run that was asked for on the spot: how it is laid, which sticks it takes, what is left.
 *
 * @param layout of its lines
 * @param tickets a stick each
 * @param account where the sticks go
 * @param proof that no plan takes less stock
 * @param bound no plan takes less
 * @param reach how far as many pieces of the longest stick reach; null where that says nothing
 */
public record SpotPaper(
    RunLayout layout,
    TicketPaper tickets,
    Account account,
    Length bought,
    Proof proof,
    Length bound,
    @Nullable Reach reach) {
  public SpotPaper {
    Objects.requireNonNull(layout);
    Objects.requireNonNull(tickets);
    Objects.requireNonNull(account);
    Objects.requireNonNull(proof);
  }

  /**
   * Lengths at which a line takes another piece.
   *
   * @param pieces of each line
   * @param most so many pieces cover at most this
   * @param before one piece less covers at most this; 0 for one piece
   */
  public record Reach(int pieces, Length most, Length before) {}

  /** The paper of a plan of one run without a price. */
  public static SpotPaper of(CheckedPlan plan) {
    MaterialPlan material = plan.plan().materials().get(0);
    if (plan.plan().materials().size() != 1 || material.order().runs().size() != 1) {
      throw new IllegalArgumentException("not one run");
    }
    RunLayout layout = LayoutPaper.of(List.of(plan)).runs().get(0);
    WastePaper waste = WastePaper.of(plan);
    return new SpotPaper(
        layout,
        TicketPaper.of(plan),
        waste.total(),
        waste.bought(),
        material.proof(),
        Length.ofUnits(material.lowerBound()),
        reach(material, layout));
  }

  /** Told where pieces meet anywhere, as few as there can be, and nothing else rules them. */
  private static @Nullable Reach reach(MaterialPlan plan, RunLayout layout) {
    Run run = layout.run();
    JointRules rules = run.rules();
    if (!rules.places().isAnywhere()
        || !rules.count().equals(JointRules.JointCount.FEWEST)
        || rules.expansion() != null) {
      return null;
    }
    Length longest =
        plan.order().supplies().stream()
            .map(supply -> StickCount.longestPiece(plan.order(), supply))
            .max(Length::compareTo)
            .orElseThrow();
    Length asked = rules.pieces().longest();
    longest = asked != null && asked.isShorterThan(longest) ? asked : longest;
    Length added = run.addAtStart().plus(run.addAtEnd()).plus(rules.closing().leaveLong());
    int pieces = layout.groups().get(0).pieces().size();
    return new Reach(
        pieces,
        reach(pieces, longest, rules.joint()).minus(added),
        pieces == 1 ? Length.ZERO : reach(pieces - 1, longest, rules.joint()).minus(added));
  }

  /** What whole pieces cover: each joint takes its lap, or adds its gap. */
  private static Length reach(int pieces, Length longest, JointRules.Joint joint) {
    Length joined =
        joint instanceof JointRules.Joint.Lap lap
            ? lap.lap()
            : Length.ZERO.minus(((JointRules.Joint.Butt) joint).gap());
    return longest.times(pieces).minus(joined.times(pieces - 1L));
  }
}
