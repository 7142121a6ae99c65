package lapwright.lots;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.effort.Effort;
import lapwright.plan.Certificate;
import lapwright.splice.SpliceQuestions;

/**
 * A bound for orders in which everything belongs to a unit, by a tree of decisions about lots: a
 * leaf where everything is cut from all lots that are left to anybody, or one where each lot is
 * bounded by itself. Where all is decided and the bounds do not tell, the choice is solved; it may
 * be the better one.
 */
final class DecisionTree {
  private static final int MOST_LEAVES = 2_000;
  private static final int CLOSE = 20;

  private final LotOrder order;
  private final LotSolutions solutions;
  private final BestChoice best;
  private final Effort effort;
  private final Map<Set<String>, LotBound> pooled = new HashMap<>();
  private int leaves;

  DecisionTree(LotOrder order, LotSolutions solutions, BestChoice best, Effort effort) {
    this.order = order;
    this.solutions = solutions;
    this.best = best;
    this.effort = effort;
  }

  LotBound bound() {
    Map<LotUnit, Set<String>> allowed = new LinkedHashMap<>();
    for (LotUnit unit : order.units()) {
      // A lot that is too short for it, by length alone, is none for it.
      Set<String> longEnough = new TreeSet<>(order.lots());
      longEnough.removeIf(lot -> solutions.isTooFew(new LotShare(lot, Set.of(unit))));
      allowed.put(unit, longEnough);
    }
    return branch(allowed);
  }

  private LotBound branch(Map<LotUnit, Set<String>> allowed) {
    LotBound here = leaf(allowed);
    if (here.least() >= best.cost() || leaves >= MOST_LEAVES || effort.spent()) {
      return here;
    }
    for (LotUnit unit : order.units()) {
      Set<String> open = Objects.requireNonNull(allowed.get(unit));
      if (open.size() > 1) {
        String lot = open.iterator().next();
        Map<LotUnit, Set<String>> within = new LinkedHashMap<>(allowed);
        within.put(unit, new TreeSet<>(Set.of(lot)));
        Set<String> others = new TreeSet<>(open);
        others.remove(lot);
        Map<LotUnit, Set<String>> outside = new LinkedHashMap<>(allowed);
        outside.put(unit, others);
        LotBound one = branch(within);
        LotBound other = branch(outside);
        return new LotBound(
            Math.min(one.least(), other.least()),
            new Certificate.LotSplit(
                unit.job(), unit.mark(), List.of(lot), one.certificate(), other.certificate()));
      }
    }
    return decided(allowed);
  }

  /** A leaf in which every unit has its lot: solved, since its bound alone does not close it. */
  private LotBound decided(Map<LotUnit, Set<String>> allowed) {
    Map<LotUnit, String> lotOf = new LinkedHashMap<>();
    allowed.forEach((unit, open) -> lotOf.put(unit, open.iterator().next()));
    best.offer(LotChoice.shares(order.lots(), lotOf));
    return leaf(allowed);
  }

  /** The better of two bounds: lots pooled, or each lot with what is decided for it. */
  private LotBound leaf(Map<LotUnit, Set<String>> allowed) {
    leaves++;
    Set<String> used = new TreeSet<>();
    allowed.values().forEach(used::addAll);
    LotBound together =
        pooled.computeIfAbsent(
            used, lots -> solutions.bound(order.pooled(lots::contains), lots, best.cost(), true));
    if (together.least() >= best.cost()) {
      return together;
    }
    Map<String, Set<LotUnit>> decided = new TreeMap<>();
    allowed.forEach(
        (unit, open) -> {
          if (open.size() == 1) {
            decided.computeIfAbsent(open.iterator().next(), lot -> new LinkedHashSet<>()).add(unit);
          }
        });
    LotBound apart =
        byLot(
            decided.entrySet().stream().map(e -> new LotShare(e.getKey(), e.getValue())).toList());
    return apart.least() > together.least() ? apart : together;
  }

  /** Each lot by itself; with more work where that may reach what is known. */
  private LotBound byLot(List<LotShare> shares) {
    long known = best.cost();
    long sum = 0;
    for (LotShare share : shares) {
      LotBound alone = solutions.bound(share, known);
      if (alone.least() == SpliceQuestions.Bound.IMPOSSIBLE) {
        return new LotBound(LotBound.NO_PLAN, byLot(share.lot(), alone.certificate()));
      }
      sum = Math.addExact(sum, alone.least());
    }
    for (LotShare share : shares) {
      if (sum < known && known - sum <= known / CLOSE) {
        long before = solutions.bound(share, known).least();
        sum += solutions.raised(share, before + known - sum) - before;
      }
    }
    SortedMap<String, Certificate> certificates = new TreeMap<>();
    shares.forEach(
        share -> certificates.put(share.lot(), solutions.bound(share, known).certificate()));
    return new LotBound(sum, new Certificate.ByLot(certificates));
  }

  private static Certificate byLot(String lot, Certificate certificate) {
    SortedMap<String, Certificate> one = new TreeMap<>();
    one.put(lot, certificate);
    return new Certificate.ByLot(one);
  }
}
