package lapwright.bench;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import lapwright.bench.instance.Instance;
import lapwright.bench.instance.Known;
import lapwright.bench.method.Answer;
import lapwright.bench.method.Answer.Outcome;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;

/**
 * Recomputes an answer from the instance alone: every pattern proper, every demand met exactly,
 * packs enough and not more than there are, the cost their sum, the bound not above the cost nor
 * above any optimum that is known, and the optimum never beaten.
 */
final class AnswerCheck {
  private final StickProblem problem;
  private final Known known;
  private final Answer answer;
  private final List<String> faults = new ArrayList<>();

  private AnswerCheck(Instance instance, Answer answer) {
    this.problem = instance.problem();
    this.known = instance.known();
    this.answer = answer;
  }

  /** What is wrong with the answer; empty when nothing is. */
  static List<String> faults(Instance instance, Answer answer) {
    AnswerCheck check = new AnswerCheck(instance, answer);
    if (answer.outcome().hasSolution()) {
      check.patterns();
      check.packsAndCost();
    }
    check.bounds();
    return check.faults;
  }

  private void patterns() {
    long[] cut = new long[problem.items().size()];
    long[] sticks = new long[problem.stocks().size()];
    for (PatternUse use : answer.patterns()) {
      if (use.stock() < 0 || use.stock() >= sticks.length) {
        faults.add("a pattern of stock " + use.stock() + ", which does not exist");
        continue;
      }
      sticks[use.stock()] += use.times();
      Set<Integer> seen = new HashSet<>();
      for (Count count : use.counts()) {
        if (count.item() < 0 || count.item() >= cut.length || !seen.add(count.item())) {
          faults.add("a pattern names item " + count.item() + " wrongly or twice");
          return;
        }
        cut[count.item()] += (long) count.count() * use.times();
      }
      if (!isProper(use)) {
        faults.add("a pattern of stock " + use.stock() + " does not fit: " + use.counts());
      }
    }
    for (int i = 0; i < cut.length; i++) {
      Item item = problem.items().get(i);
      if (cut[i] != item.demand()) {
        faults.add(cut[i] + " pieces of size " + item.size() + " are cut, not " + item.demand());
      }
    }
    for (int j = 0; j < sticks.length && j < answer.packs().size(); j++) {
      long bought = (long) answer.packs().get(j) * problem.stocks().get(j).packSize();
      if (sticks[j] > bought) {
        faults.add(sticks[j] + " sticks of stock " + j + " are cut, " + bought + " bought");
      }
    }
  }

  private boolean isProper(PatternUse use) {
    Stock stock = problem.stocks().get(use.stock());
    BigInteger sum = BigInteger.ZERO;
    boolean holds = false;
    int pieces = 0;
    for (Count count : use.counts()) {
      Item item = problem.items().get(count.item());
      sum = sum.add(BigInteger.valueOf(item.size()).multiply(BigInteger.valueOf(count.count())));
      holds |= !item.small();
      pieces += count.count();
    }
    boolean whole =
        stock.wholeUse() && pieces == 1 && sum.equals(BigInteger.valueOf(stock.capacity()));
    return sum.compareTo(BigInteger.valueOf(stock.capacity())) <= 0
        && (holds || whole || sum.compareTo(BigInteger.valueOf(stock.smallCapacity())) <= 0);
  }

  private void packsAndCost() {
    if (answer.packs().size() != problem.stocks().size()) {
      faults.add(answer.packs().size() + " numbers of packs for " + problem.stocks().size());
      return;
    }
    BigInteger cost = BigInteger.ZERO;
    for (int j = 0; j < answer.packs().size(); j++) {
      Stock stock = problem.stocks().get(j);
      int packs = answer.packs().get(j);
      if (packs < 0 || packs > stock.mostPacks()) {
        faults.add(packs + " packs of stock " + j + ", of which there are " + stock.mostPacks());
      }
      cost = cost.add(BigInteger.valueOf(stock.packCost()).multiply(BigInteger.valueOf(packs)));
    }
    if (!cost.equals(BigInteger.valueOf(answer.cost()))) {
      faults.add("the packs cost " + cost + ", the answer says " + answer.cost());
    }
  }

  private void bounds() {
    boolean solved = answer.outcome().isSolved();
    if (answer.outcome().hasSolution() && answer.bound() > answer.cost()) {
      faults.add("bound " + answer.bound() + " above cost " + answer.cost());
    }
    if (answer.outcome() == Outcome.PROVED && answer.bound() != answer.cost()) {
      faults.add("proved with bound " + answer.bound() + " and cost " + answer.cost());
    }
    if (answer.outcome() == Outcome.IMPOSSIBLE && known.reached().isPresent()) {
      faults.add("called impossible, a solution of " + known.reached().getAsLong() + " is known");
    }
    known
        .optimum()
        .ifPresent(
            optimum -> {
              if (answer.outcome().hasSolution() && answer.cost() < optimum) {
                faults.add("cost " + answer.cost() + " beats the known optimum " + optimum);
              }
              if (solved && answer.cost() > optimum) {
                faults.add(
                    answer.outcome().word()
                        + " at "
                        + answer.cost()
                        + ", the optimum is "
                        + optimum);
              }
            });
    known
        .reached()
        .ifPresent(
            reached -> {
              if (answer.bound() > reached) {
                faults.add("bound " + answer.bound() + " above a known solution of " + reached);
              }
            });
  }
}
