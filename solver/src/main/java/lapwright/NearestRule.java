package lapwright;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import lapwright.layout.LayoutException;
import lapwright.measure.Length;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Pieces;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import org.jspecify.annotations.Nullable;

/**
 * The one rule of a run that, changed as little as possible, lets some split keep all of them. A
 * rule with a length is changed by whole steps of the run's pieces; the rules are tried one by one.
 */
final class NearestRule {
  private final MaterialOrder order;
  private final RunNeed need;
  private final JointRules rules;
  private final LayoutException failure;

  NearestRule(MaterialOrder order, RunNeed need, LayoutException failure) {
    this.order = order;
    this.need = need;
    this.rules = need.run().rules();
    this.failure = failure;
  }

  /**
   * A rule that may be changed.
   *
   * @param rule field of the run
   * @param reason why it fails
   * @param advice what to change, {@code {}} standing for the length
   * @param now its length; null when the rule is simply left out
   * @param upTo the length at which it asks for nothing any more
   * @param with the rules with another length
   */
  private record Candidate(
      String rule,
      String reason,
      String advice,
      @Nullable Length now,
      Length upTo,
      Function<Length, JointRules> with) {}

  Shortage.NoSplit tell() {
    for (Candidate candidate : candidates()) {
      if (splits(candidate.with().apply(candidate.upTo()))) {
        boolean same = candidate.rule().equals(failure.rule());
        return told(
            candidate.rule(),
            same ? String.valueOf(failure.getMessage()) : candidate.reason(),
            candidate.advice(),
            candidate.now() == null ? null : nearest(candidate, candidate.now()));
      }
    }
    return told(
        failure.rule(), String.valueOf(failure.getMessage()), failure.advice(), failure.length());
  }

  private List<Candidate> candidates() {
    Pieces pieces = rules.pieces();
    Length shortest = pieces.shortest();
    Length atEnd = pieces.shortestAtEnd();
    Length longest = pieces.longest();
    ClosingPiece closing = rules.closing();
    Length step = pieces.step();
    Run run = need.run();
    List<Candidate> all =
        List.of(
            new Candidate(
                "shortest-piece",
                "no split of a line leaves every piece that long",
                "allow pieces of {}",
                shortest,
                Length.ZERO,
                length -> rules.with(new Pieces(length, atEnd, longest, step))),
            new Candidate(
                "shortest-at-end",
                "no split of a line leaves its first and last piece that long",
                "allow pieces of {} at the ends",
                atEnd == null ? Length.ZERO : atEnd,
                Length.ZERO,
                length -> rules.with(new Pieces(shortest, length, longest, step))),
            new Candidate(
                "longest-piece",
                "pieces that short do not cover a line, joined where it may be",
                "allow pieces of {}",
                longest == null ? Length.ZERO : longest,
                run.length().plus(run.addAtStart()).plus(run.addAtEnd()).plus(closing.leaveLong()),
                length -> rules.with(new Pieces(shortest, atEnd, length, step))),
            new Candidate(
                "full-sticks",
                "no split of a line has whole sticks but for its closing piece",
                "leave full-sticks out, or add places where it may be joined",
                null,
                Length.ZERO,
                none -> rules.with(new ClosingPiece(closing.where(), false, closing.leaveLong()))),
            new Candidate(
                "leave-long",
                "the closing piece cannot be that much too long",
                "leave it no more than {} long",
                closing.leaveLong(),
                Length.ZERO,
                length ->
                    rules.with(new ClosingPiece(closing.where(), closing.othersWhole(), length))));
    Predicate<Candidate> isARule =
        candidate -> candidate.now() == null ? closing.othersWhole() : !candidate.now().isZero();
    return all.stream().filter(isARule).toList();
  }

  /** The length closest to {@code now} that will do, in steps; {@code upTo} does. */
  private Length nearest(Candidate candidate, Length now) {
    long step = rules.pieces().step().units();
    boolean down = candidate.upTo().isShorterThan(now);
    long fails = down ? Math.floorDiv(now.units(), step) + 1 : now.units() / step;
    long does = down ? 0 : -Math.floorDiv(-candidate.upTo().units(), step);
    while (Math.abs(fails - does) > 1) {
      long middle = fails + (does - fails) / 2;
      if (splits(candidate.with().apply(Length.ofUnits(Math.multiplyExact(middle, step))))) {
        does = middle;
      } else {
        fails = middle;
      }
    }
    return Length.ofUnits(Math.multiplyExact(does, step));
  }

  private boolean splits(JointRules changed) {
    return RunRules.hasSplit(order, need.withRules(changed));
  }

  private Shortage.NoSplit told(
      String rule, String reason, String advice, @Nullable Length length) {
    return Shortage.NoSplit.of(order, need, rule, reason, advice, length);
  }
}
