package lapwright.exact;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.effort.Effort;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.problem.StickSolution.Status;

/** First fit, longest items first, free stocks before those that cost, with a trivial bound. */
public final class StickSolver {
  private StickSolver() {}

  /**
   * Solves.
   *
   * @param start a first solution; empty without one
   */
  public static StickSolution solve(StickProblem problem, List<PatternUse> start, Effort effort) {
    int n = problem.items().size();
    int[] left = new int[n];
    List<Integer> bySize = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      left[i] = problem.items().get(i).demand();
      bySize.add(i);
    }
    bySize.sort(
        (a, b) -> Long.compare(problem.items().get(b).size(), problem.items().get(a).size()));
    List<Integer> byCost = new ArrayList<>();
    for (int j = 0; j < problem.stocks().size(); j++) {
      byCost.add(j);
    }
    byCost.sort((a, b) -> Double.compare(price(problem, a), price(problem, b)));
    int[] used = new int[problem.stocks().size()];
    Map<String, PatternUse> patterns = new LinkedHashMap<>();
    for (int j : byCost) {
      StickProblem.Stock stock = problem.stocks().get(j);
      long most = (long) stock.mostPacks() * stock.packSize();
      while (used[j] < most) {
        List<Count> counts = fill(problem, stock, left, bySize);
        if (counts.isEmpty()) {
          break;
        }
        counts.forEach(count -> left[count.item()] -= count.count());
        used[j]++;
        patterns.merge(
            j + ":" + counts,
            new PatternUse(j, counts, 1),
            (a, b) -> new PatternUse(a.stock(), a.counts(), a.times() + 1));
      }
    }
    for (int rest : left) {
      if (rest > 0) {
        return new StickSolution(Status.NOTHING_FOUND, List.of(), List.of(), -1, 0, null);
      }
    }
    long cost = 0;
    List<Integer> packs = new ArrayList<>();
    for (int j = 0; j < used.length; j++) {
      StickProblem.Stock stock = problem.stocks().get(j);
      packs.add((used[j] + stock.packSize() - 1) / stock.packSize());
      cost += packs.get(j) * stock.packCost();
    }
    return new StickSolution(
        cost == 0 ? Status.PROVED : Status.OPEN,
        List.copyOf(patterns.values()),
        packs,
        cost,
        0,
        new StickCertificate.Weights(1, Collections.nCopies(n, 0L)));
  }

  private static double price(StickProblem problem, int stock) {
    StickProblem.Stock s = problem.stocks().get(stock);
    return (double) s.packCost() / s.packSize() / Math.max(1, s.length());
  }

  private static List<Count> fill(
      StickProblem problem, StickProblem.Stock stock, int[] left, List<Integer> bySize) {
    long rest = stock.capacity();
    List<Count> counts = new ArrayList<>();
    boolean held = false;
    for (int i : bySize) {
      StickProblem.Item item = problem.items().get(i);
      long room = item.small() && !held ? rest - (stock.capacity() - stock.smallCapacity()) : rest;
      if (counts.isEmpty() && left[i] > 0 && stock.wholeUse() && item.size() == stock.capacity()) {
        return List.of(new Count(i, 1));
      }
      int count = (int) Math.min(left[i], Math.max(0, room) / item.size());
      if (count > 0) {
        held |= !item.small();
        rest -= count * item.size();
        counts.add(new Count(i, count));
      }
    }
    return counts;
  }
}
