package lapwright.bench.method;

import java.util.ArrayList;
import java.util.List;
import lapwright.bench.method.Answer.Outcome;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.PatternUse;

/** Makes answers out of patterns: whole packs, their cost, and whether the bound is reached. */
final class Answers {
  private Answers() {}

  /**
   * An answer whose packs are as few as the sticks need.
   *
   * @param sticks used of each stock
   * @param ifReached what it is when cost equals the bound; open otherwise
   */
  static Answer of(
      StickProblem problem,
      List<PatternUse> patterns,
      long[] sticks,
      long bound,
      Outcome ifReached) {
    List<Integer> packs = new ArrayList<>();
    long cost = 0;
    for (int j = 0; j < sticks.length; j++) {
      Stock stock = problem.stocks().get(j);
      int needed = Math.toIntExact((sticks[j] + stock.packSize() - 1) / stock.packSize());
      packs.add(needed);
      cost = Math.addExact(cost, Math.multiplyExact(stock.packCost(), (long) needed));
    }
    Outcome outcome = cost == bound ? ifReached : Outcome.OPEN;
    return new Answer(outcome, patterns, packs, cost, bound, "");
  }
}
