package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.effort.Effort;
import lapwright.exact.StickSolver;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickSolution;

/**
 * A problem whose splits are chosen: what is left is cutting stock.
 *
 * @param splits by group
 * @param pieces lengths of the items, the plain ones first, then each length of the splits
 */
record FixedSplits(List<List<Split>> splits, List<Long> pieces, StickProblem problem) {
  static FixedSplits of(SpliceProblem problem, List<List<Split>> splits) {
    Map<Long, Integer> chosen = new TreeMap<>(java.util.Comparator.reverseOrder());
    for (List<Split> group : splits) {
      for (Split split : group) {
        for (long length : split.lengths()) {
          chosen.merge(length, split.lines(), Math::addExact);
        }
      }
    }
    List<Item> items = new ArrayList<>(problem.plain());
    List<Long> pieces = new ArrayList<>();
    problem.plain().forEach(item -> pieces.add(item.size() - problem.cut()));
    chosen.forEach(
        (length, count) -> {
          items.add(new Item(length + problem.cut(), count, length < problem.hold()));
          pieces.add(length);
        });
    return new FixedSplits(
        splits, pieces, new StickProblem(items, problem.stocks(), problem.keepFrom()));
  }

  /** A solution that costs less than {@code ceiling}, if little work finds one. */
  StickSolution draft(long ceiling, Effort effort) {
    return StickSolver.draft(problem, ceiling, effort);
  }

  /** The best solution that can be found from one that is known. */
  StickSolution solve(StickSolution known, Effort effort) {
    return StickSolver.solve(problem, known.patterns(), effort);
  }

  /** The solution as neat as it gets without work on its cost. */
  StickSolution polished(StickSolution solution) {
    return StickSolver.solve(
        problem, solution.patterns(), Effort.unlimited().alsoStoppedBy(() -> true));
  }
}
