package lapwright.lots;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.effort.Effort;
import lapwright.problem.SpliceSolution;
import lapwright.splice.SpliceQuestions;
import org.jspecify.annotations.Nullable;

/**
 * The best choice of lots so far. What a choice costs is the sum over the lots of what cutting
 * their shares costs; it is solved only if its bound leaves open that it is better.
 */
final class BestChoice {
  private final LotOrder order;
  private final LotSolutions solutions;
  private @Nullable LotChoice best;

  BestChoice(LotOrder order, LotSolutions solutions) {
    this.order = order;
    this.solutions = solutions;
  }

  @Nullable LotChoice best() {
    return best;
  }

  /** The cost of the best choice; {@link Long#MAX_VALUE} before there is one. */
  long cost() {
    return best == null ? Long.MAX_VALUE : best.cost();
  }

  /** Takes a choice if it is better. */
  boolean offer(List<LotShare> shares) {
    if (best != null && bound(shares) >= cost()) {
      return false;
    }
    long cost = 0;
    for (LotShare share : shares) {
      SpliceSolution solution = solutions.of(share);
      if (!solution.status().hasSolution()) {
        return false;
      }
      cost = Math.addExact(cost, solution.cost());
    }
    if (cost >= cost()) {
      return false;
    }
    best = new LotChoice(shares, cost);
    return true;
  }

  private long bound(List<LotShare> shares) {
    long sum = 0;
    for (LotShare share : shares) {
      long least = solutions.bound(share, cost()).least();
      if (least == SpliceQuestions.Bound.IMPOSSIBLE) {
        return least;
      }
      sum = Math.addExact(sum, least);
    }
    return sum;
  }

  /**
   * Gives every unit to one lot as far as it can serve it, by turns; then single units change their
   * lot as long as that helps.
   */
  void search(Effort effort) {
    for (String lot : order.lots()) {
      offer(LotChoice.shares(order.lots(), mostly(lot)));
    }
    boolean improved = best != null;
    while (improved && !effort.spent()) {
      improved = false;
      for (LotUnit unit : order.units()) {
        for (String lot : order.lots()) {
          Map<LotUnit, String> moved = lotOf();
          if (!lot.equals(moved.put(unit, lot))) {
            improved |= offer(LotChoice.shares(order.lots(), moved));
          }
        }
      }
    }
  }

  private Map<LotUnit, String> lotOf() {
    Map<LotUnit, String> lotOf = new LinkedHashMap<>();
    for (LotUnit unit : order.units()) {
      for (LotShare share : Objects.requireNonNull(best).shares()) {
        if (share.units().contains(unit)) {
          lotOf.put(unit, share.lot());
        }
      }
    }
    return lotOf;
  }

  /** Everything to one lot; what it cannot serve alone to the first that can. */
  Map<LotUnit, String> mostly(String lot) {
    Map<LotUnit, String> lotOf = new LinkedHashMap<>();
    for (LotUnit unit : order.units()) {
      lotOf.put(unit, lot);
      List<String> candidates = new ArrayList<>(List.of(lot));
      candidates.addAll(order.lots());
      for (String candidate : candidates) {
        if (canServe(candidate, unit)) {
          lotOf.put(unit, candidate);
          break;
        }
      }
    }
    return lotOf;
  }

  private boolean canServe(String lot, LotUnit unit) {
    LotShare alone = new LotShare(lot, java.util.Set.of(unit));
    return !solutions.isTooFew(alone) && solutions.of(alone).status().hasSolution();
  }
}
