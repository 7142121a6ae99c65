package lapwright.refute;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.colgen.Pattern;
import lapwright.problem.Refutation;
import org.jspecify.annotations.Nullable;

/**
 * Makes a sieve in integers of a node's duals, and tells exactly what it leaves.
 *
 * <p>A decision that forbids patterns gets the multipliers that put them where they are dropped: w
 * for those that hold what they must not; for items that must be together -w for each of them and w
 * times their number for all at once, which takes w from a pattern for every item that it holds
 * without the others.
 */
final class SieveMaker {
  private static final double GREATEST = 1L << 36;

  private final Question question;
  private final List<Pattern> patterns;

  SieveMaker(Question question, List<Pattern> patterns) {
    this.question = question;
    this.patterns = patterns;
  }

  /**
   * A sieve and what it leaves of the listed patterns; {@code left} is null where it closes its
   * branch.
   */
  static final class Made {
    final Refutation.Sieve sieve;
    final boolean @Nullable [] left;

    Made(Refutation.Sieve sieve, boolean @Nullable [] left) {
      this.sieve = sieve;
      this.left = left;
    }

    Refutation with(@Nullable Refutation rest) {
      return new Refutation.Sieve(sieve.weights(), sieve.cuts(), sieve.decided(), rest);
    }
  }

  /**
   * Makes it.
   *
   * @param listed patterns that whoever checks the refutation still has
   * @param active those of them that no decision forbids
   */
  Made make(
      ListProgram.Solved solved,
      ListProgram program,
      List<Decision> decided,
      boolean[] listed,
      boolean[] active) {
    List<RoundingCut> cuts = program.cuts();
    double greatest = 1e-9;
    for (int i = 0; i < question.items(); i++) {
      greatest = Math.max(greatest, Math.abs(solved.itemDual(i)));
    }
    for (int c = 0; c < cuts.size(); c++) {
      greatest = Math.max(greatest, solved.cutDual(c));
    }
    double scale = GREATEST / greatest;
    long[] weights = new long[question.items()];
    long carried = 0;
    for (int i = 0; i < weights.length; i++) {
      weights[i] = Math.round(solved.itemDual(i) * scale);
      carried += weights[i] * question.demand(i);
    }
    long[] values = new long[patterns.size()];
    for (int at = 0; at < values.length; at++) {
      values[at] = listed[at] ? patterns.get(at).sum(weights) : 0;
    }
    List<Refutation.CutTimes> times = new ArrayList<>();
    for (int c = 0; c < cuts.size(); c++) {
      long u = Math.round(solved.cutDual(c) * scale);
      if (u > 0) {
        RoundingCut cut = cuts.get(c);
        times.add(cut.times(u, question));
        carried -= u * cut.most(question);
        byte[] coefficients = program.coefficients(c);
        for (int at = 0; at < values.length; at++) {
          values[at] -= u * coefficients[at];
        }
      }
    }
    long[] multipliers = new long[decided.size()];
    for (int e = 0; e < multipliers.length; e++) {
      Decision decision = decided.get(e);
      long w = Math.round(solved.decisionDual(decision) * scale);
      multipliers[e] = w;
      if (w > 0) {
        long signed = decision.atMost() ? -w : w;
        carried += signed * decision.times();
        for (int at = 0; at < values.length; at++) {
          values[at] += listed[at] && decision.holds(patterns.get(at)) ? signed : 0;
        }
      }
    }
    return finished(weights, times, multipliers, decided, carried, values, listed, active);
  }

  private Made finished(
      long[] weights,
      List<Refutation.CutTimes> times,
      long[] multipliers,
      List<Decision> decided,
      long carried,
      long[] values,
      boolean[] listed,
      boolean[] active) {
    long[] greatest = new long[question.stocks()];
    boolean[] any = new boolean[greatest.length];
    for (int at = 0; at < values.length; at++) {
      int stock = patterns.get(at).stock();
      if (active[at] && (!any[stock] || values[at] > greatest[stock])) {
        greatest[stock] = values[at];
        any[stock] = true;
      }
    }
    long reserve = -carried;
    boolean impossible = false;
    for (int j = 0; j < greatest.length; j++) {
      impossible |= !any[j];
      reserve += greatest[j] * question.sticks(j);
    }
    // What is forbidden is to be dropped, or to weigh no more than the rest where that suffices. A
    // stock without any pattern left closes the branch once all that it still lists weighs little.
    long[] least = new long[greatest.length];
    for (int j = 0; j < greatest.length; j++) {
      least[j] =
          !any[j]
              ? -Math.abs(reserve) - 1
              : impossible || reserve < 0 ? greatest[j] + 1 : greatest[j] - reserve;
    }
    for (int e = 0; e < multipliers.length; e++) {
      Decision decision = decided.get(e);
      long more = 0;
      for (int at = 0; at < values.length; at++) {
        if (listed[at] && decision.forbids(patterns.get(at), question)) {
          more = Math.max(more, values[at] - least[patterns.get(at).stock()] + 1);
        }
      }
      if (more > 0) {
        apply(decision, more, weights, values, listed);
        multipliers[e] += decision.isNever() ? more : more * decision.holding().kinds();
      }
    }
    SortedMap<Long, Long> bySize = new TreeMap<>();
    for (int i = 0; i < weights.length; i++) {
      if (weights[i] != 0) {
        bySize.put((long) question.size(i), weights[i]);
      }
    }
    List<Long> byDecision = new ArrayList<>();
    int last = multipliers.length;
    while (last > 0 && multipliers[last - 1] == 0) {
      last--;
    }
    for (int e = 0; e < last; e++) {
      byDecision.add(multipliers[e]);
    }
    return new Made(
        new Refutation.Sieve(bySize, times, byDecision, null), left(carried, values, listed));
  }

  /** Takes {@code w} or more from what the decision forbids; V stays as it is. */
  private void apply(Decision decision, long w, long[] weights, long[] values, boolean[] listed) {
    if (decision.isNever()) {
      for (int at = 0; at < values.length; at++) {
        values[at] -= listed[at] && decision.holds(patterns.get(at)) ? w : 0;
      }
      return;
    }
    Pattern holding = decision.holding();
    for (int k = 0; k < holding.kinds(); k++) {
      weights[holding.item(k)] -= w;
    }
    for (int at = 0; at < values.length; at++) {
      if (listed[at]) {
        int held = decision.held(patterns.get(at));
        values[at] -= held == holding.kinds() ? 0 : held * w;
      }
    }
  }

  /** What whoever checks it keeps; null when the sticks do not suffice. */
  private boolean @Nullable [] left(long carried, long[] values, boolean[] listed) {
    long[] greatest = new long[question.stocks()];
    boolean[] any = new boolean[greatest.length];
    for (int at = 0; at < values.length; at++) {
      int stock = patterns.get(at).stock();
      if (listed[at] && (!any[stock] || values[at] > greatest[stock])) {
        greatest[stock] = values[at];
        any[stock] = true;
      }
    }
    long reserve = -carried;
    for (int j = 0; j < greatest.length; j++) {
      if (!any[j]) {
        return null;
      }
      reserve += greatest[j] * question.sticks(j);
    }
    if (reserve < 0) {
      return null;
    }
    boolean[] left = new boolean[values.length];
    for (int at = 0; at < left.length; at++) {
      left[at] = listed[at] && greatest[patterns.get(at).stock()] - values[at] <= reserve;
    }
    return left;
  }
}
