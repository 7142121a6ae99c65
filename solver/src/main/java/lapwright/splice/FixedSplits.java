package lapwright.splice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.effort.Effort;
import lapwright.exact.StickSolver;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import org.jspecify.annotations.Nullable;

/**
 * A problem whose splits are chosen: what is left is cutting stock.
 *
 * @param splits by group
 * @param pieces lengths of the items, the plain ones first, then each length of the splits
 * @param wholes how many pieces of an item must be whole sticks, for those of which some must
 */
record FixedSplits(
    List<List<Split>> splits,
    List<Long> pieces,
    Map<Integer, Integer> wholes,
    StickProblem problem) {
  /** Null when a split does not keep the rule that all pieces but one are whole sticks. */
  static @Nullable FixedSplits of(SpliceProblem problem, List<List<Split>> splits) {
    Map<Long, Integer> chosen = new TreeMap<>(java.util.Comparator.reverseOrder());
    Map<Long, Integer> uncut = new TreeMap<>();
    for (int g = 0; g < splits.size(); g++) {
      Group group = problem.groups().get(g);
      for (Split split : splits.get(g)) {
        if (group.splits().closing() != Closing.ANY_CUT
            && problem.closing(group, split.lengths()) < 0) {
          return null;
        }
        for (long length : split.lengths()) {
          chosen.merge(length, split.lines(), Math::addExact);
        }
        for (long length : problem.wholes(group, split.lengths())) {
          uncut.merge(length, split.lines(), Math::addExact);
        }
      }
    }
    List<Item> items = new ArrayList<>(problem.plain());
    List<Long> pieces = new ArrayList<>();
    Map<Integer, Integer> wholes = new TreeMap<>();
    problem.plain().forEach(item -> pieces.add(item.size() - problem.cut()));
    chosen.forEach(
        (length, count) -> {
          if (uncut.containsKey(length)) {
            wholes.put(items.size(), uncut.get(length));
          }
          items.add(new Item(length + problem.cut(), count, length < problem.hold()));
          pieces.add(length);
        });
    return new FixedSplits(
        splits, pieces, wholes, new StickProblem(items, problem.stocks(), problem.keepFrom()));
  }

  /** A solution that costs less than {@code ceiling}, if little work finds one. */
  StickSolution draft(long ceiling, Effort effort) {
    StickSolution free = StickSolver.draft(problem, ceiling, effort);
    return wholes.isEmpty() || !free.status().hasSolution()
        ? free
        : new WholePieces(problem, wholes).keep(free, effort);
  }

  /**
   * The solution whose sticks hold these lengths, which are all that is to be cut.
   *
   * @param sticks in the problem's own stocks
   */
  StickSolution cut(List<ClassMaster.Cutting> sticks) {
    int[] left = problem.items().stream().mapToInt(Item::demand).toArray();
    Map<Long, List<Integer>> itemsOfLength = new HashMap<>();
    for (int i = 0; i < left.length; i++) {
      itemsOfLength.computeIfAbsent(pieces.get(i), key -> new ArrayList<>()).add(i);
    }
    List<PatternUse> uses = new ArrayList<>();
    for (ClassMaster.Cutting stick : sticks) {
      Map<Integer, Integer> counts = new TreeMap<>();
      for (long length : stick.lengths()) {
        int item =
            itemsOfLength.getOrDefault(length, List.of()).stream()
                .filter(i -> left[i] > 0)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no piece is " + length + " long"));
        left[item]--;
        counts.merge(item, 1, Integer::sum);
      }
      List<Count> held = new ArrayList<>();
      counts.forEach((item, count) -> held.add(new Count(item, count)));
      uses.add(new PatternUse(stick.stock(), held, 1));
    }
    return StickSolver.solve(problem, uses, Effort.unlimited().alsoStoppedBy(() -> true));
  }

  /** The best solution that can be found from one that is known. */
  StickSolution solve(StickSolution known, Effort effort) {
    StickSolution free = StickSolver.solve(problem, known.patterns(), effort);
    if (wholes.isEmpty() || !free.status().hasSolution()) {
      return free;
    }
    StickSolution kept = new WholePieces(problem, wholes).keep(free, effort);
    return kept.status().hasSolution() && kept.cost() < known.cost() ? kept : known;
  }

  /** The solution as neat as it gets without work on its cost. */
  StickSolution polished(StickSolution solution) {
    StickSolution neat =
        StickSolver.solve(
            problem, solution.patterns(), Effort.unlimited().alsoStoppedBy(() -> true));
    return neat.cost() == solution.cost() && new WholePieces(problem, wholes).isKeptBy(neat)
        ? neat
        : wholes.isEmpty() ? neat : solution;
  }
}
