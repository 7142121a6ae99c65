package lapwright.problem;

import java.util.List;
import java.util.Optional;
import lapwright.problem.StickProblem.Item;

/**
 * Cutting stock from several lots of stocks: some things must each come whole from one lot, which
 * is to be chosen, while other pieces may each come from any.
 *
 * @param lots each with its stocks; the plain items of all are the same, in the same order: those
 *     that may come from any lot, each piece by itself; without groups
 * @param units what must come from one lot
 */
public record LotProblem(List<SpliceProblem> lots, List<Unit> units) {
  public LotProblem {
    lots = List.copyOf(lots);
    units = List.copyOf(units);
    for (SpliceProblem lot : lots) {
      if (!lot.plain().equals(lots.get(0).plain()) || !lot.groups().isEmpty()) {
        throw new IllegalArgumentException("lots with different pieces");
      }
    }
    for (Unit unit : units) {
      if (unit.fromLot().size() != lots.size()) {
        throw new IllegalArgumentException("a unit that does not know all lots");
      }
    }
  }

  /** The pieces that may come from any lot. */
  public List<Item> free() {
    return lots.get(0).plain();
  }

  /**
   * Items and groups that come from the stocks of one lot.
   *
   * @param fromLot for each lot its stocks with the items and groups of the unit; empty where the
   *     lot cannot serve it
   */
  public record Unit(List<Optional<SpliceProblem>> fromLot) {
    public Unit {
      fromLot = List.copyOf(fromLot);
    }
  }

  /**
   * What comes from which lot.
   *
   * @param lotOf for each unit its lot
   * @param free for each lot how many pieces of each item it gives
   */
  public record Sharing(List<Integer> lotOf, List<List<Integer>> free) {
    public Sharing {
      lotOf = List.copyOf(lotOf);
      free = free.stream().map(List::copyOf).toList();
    }
  }
}
