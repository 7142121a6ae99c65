package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.LotProblem;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * A problem with lots, made ready: in each lot equal stocks are one, and each unit knows how its
 * lines may be split there. Costs are divided by their common divisor. Immutable.
 */
final class LotParts {
  private final LotProblem raw;
  private final long costUnit;
  private final List<Merged> merged = new ArrayList<>();
  private final List<List<Optional<Part>>> parts = new ArrayList<>();

  /** A unit in a lot that can serve it. */
  record Part(SpliceProblem problem, List<Choice> choices) {
    Part {
      choices = List.copyOf(choices);
    }

    int lines() {
      return problem.groups().stream().mapToInt(SpliceProblem.Group::lines).sum();
    }
  }

  LotParts(LotProblem raw) {
    this.raw = raw;
    long unit = 0;
    for (SpliceProblem lot : raw.lots()) {
      for (Stock stock : lot.stocks()) {
        unit = Knapsack.gcd(unit, stock.packCost());
      }
    }
    costUnit = Math.max(1, unit);
    for (SpliceProblem lot : raw.lots()) {
      merged.add(Merged.of(lot, costUnit));
    }
    for (LotProblem.Unit each : raw.units()) {
      List<Optional<Part>> ofUnit = new ArrayList<>();
      for (int l = 0; l < raw.lots().size(); l++) {
        List<Stock> stocks = lot(l).stocks();
        ofUnit.add(
            each.fromLot()
                .get(l)
                .map(problem -> problem.withStocks(stocks))
                .map(problem -> new Part(problem, Choices.of(problem))));
      }
      parts.add(ofUnit);
    }
  }

  /** What costs were divided by. */
  long costUnit() {
    return costUnit;
  }

  int lots() {
    return merged.size();
  }

  int units() {
    return parts.size();
  }

  /** The stocks of a lot, and the free pieces. */
  SpliceProblem lot(int lot) {
    return merged.get(lot).problem();
  }

  Merged merged(int lot) {
    return merged.get(lot);
  }

  List<Item> free() {
    return raw.free();
  }

  long cut() {
    return raw.lots().get(0).cut();
  }

  /** True when a lot has a stick that gives a free piece. */
  boolean gives(int lot, int item) {
    return free().get(item).size() - cut() <= lot(lot).longestUsable();
  }

  /** A unit in a lot; empty where that lot cannot serve it. */
  Optional<Part> part(int unit, int lot) {
    return parts.get(unit).get(lot);
  }

  /** All that can be had of each lot. */
  List<PackLimits> all() {
    return merged.stream().map(lot -> PackLimits.of(lot.sticks())).toList();
  }

  ReachableCosts reachable() {
    List<Stock> stocks = new ArrayList<>();
    merged.forEach(lot -> stocks.addAll(lot.problem().stocks()));
    return new ReachableCosts(new StickProblem(List.of(), stocks, 0));
  }

  /** Where classes of lengths begin in a lot, about so many. */
  SortedSet<Long> starts(int lot, int most) {
    List<Item> plain = new ArrayList<>(free());
    List<Choice> choices = new ArrayList<>();
    List<SpliceProblem.Group> groups = new ArrayList<>();
    for (List<Optional<Part>> ofUnit : parts) {
      ofUnit
          .get(lot)
          .ifPresent(
              part -> {
                plain.addAll(part.problem().plain());
                choices.addAll(part.choices());
                groups.addAll(part.problem().groups());
              });
    }
    SpliceProblem all = lot(lot);
    SpliceProblem together =
        new SpliceProblem(
            plain, all.stocks(), all.cut(), all.hold(), all.keepFrom(), List.copyOf(groups));
    return all.stocks().isEmpty()
        ? new TreeSet<>()
        : ClassStarts.of(together, choices, most, Choices.step(together));
  }
}
