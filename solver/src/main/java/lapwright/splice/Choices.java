package lapwright.splice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits;
import lapwright.problem.StickProblem.Stock;

/**
 * The ways in which the lines of each group may be split: paths of a graph where joints have given
 * places or whole sticks lose nothing, else lengths of any kind.
 */
final class Choices {
  private static final int FEW_WHOLES = 3;

  private Choices() {}

  /** By group. */
  static List<Choice> of(SpliceProblem problem) {
    List<Choice> choices = new ArrayList<>();
    Map<GridPrices.Key, GridPrices> grids = new HashMap<>();
    Map<Reaches.Key, Reaches> reaches = new HashMap<>();
    List<Long> wholes = wholes(problem);
    for (Group group : problem.groups()) {
      if (group.splits() instanceof Splits.Graph graph) {
        choices.add(new GraphChoice(graph));
        continue;
      }
      Splits.Anywhere rules = (Splits.Anywhere) group.splits();
      int others = rules.othersWhole() ? 1 : WholeSticks.others(problem, group);
      Choice whole =
          switch (others) {
            case 1 -> WholeSticks.graph(problem, rules);
            case 2 -> AllButTwoWhole.of(problem, rules);
            default -> null;
          };
      if (whole != null) {
        choices.add(whole);
        continue;
      }
      GridPrices.Key key = GridPrices.key(rules, problem.longestUsable());
      AnywhereChoice anywhere =
          new AnywhereChoice(
              rules,
              problem.longestUsable(),
              wholes,
              grids.computeIfAbsent(key, GridPrices::new),
              reaches.computeIfAbsent(
                  AnywhereChoice.reachKey(rules, problem.longestUsable()), Reaches::new));
      choices.add(
          rules.othersWhole()
              ? new FewWholes(fewWholes(problem, rules, wholes), anywhere)
              : anywhere);
    }
    return choices;
  }

  /** Splits of as many lengths of whole sticks as can be listed. */
  private static GraphChoice fewWholes(
      SpliceProblem problem, Splits.Anywhere rules, List<Long> wholes) {
    List<Long> fitting =
        wholes.stream()
            .filter(whole -> whole >= rules.shortest() && whole <= rules.longest())
            .toList();
    for (int few = Math.min(FEW_WHOLES, fitting.size()); few > 0; few--) {
      List<Long> longestFirst = new ArrayList<>(fitting.subList(0, few));
      longestFirst.sort(Comparator.reverseOrder());
      GraphChoice some = WholeSticks.graph(problem, rules, longestFirst);
      if (some != null) {
        return some;
      }
    }
    return new GraphChoice(2, List.of());
  }

  /** A split of about the least size for each group; empty where none is permitted. */
  static List<List<Long>> leastSizes(SpliceProblem problem, List<Choice> choices) {
    LengthPrices bySize = bySize(problem);
    return choices.stream().map(choice -> choice.cheapest(bySize)).toList();
  }

  /** Every length that a stick gives costs what it measures. */
  static LengthPrices bySize(SpliceProblem problem) {
    return length -> length <= problem.longestUsable() ? length : Double.POSITIVE_INFINITY;
  }

  /** The common step of pieces with joints anywhere; 0 when there are none. */
  static long step(SpliceProblem problem) {
    long step = 0;
    for (Group group : problem.groups()) {
      if (group.splits() instanceof Splits.Anywhere rules) {
        step = Knapsack.gcd(step, rules.step());
      }
    }
    return step;
  }

  /** What a whole stick gives, the unlimited stocks first, the longest of each kind first. */
  private static List<Long> wholes(SpliceProblem problem) {
    List<Stock> stocks = new ArrayList<>(problem.stocks());
    stocks.sort(Comparator.comparing(Stock::isLimited).thenComparing(stock -> -stock.capacity()));
    return stocks.stream().map(stock -> stock.capacity() - problem.cut()).distinct().toList();
  }
}
