package lapwright;

import java.util.ArrayList;
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
import java.util.function.Predicate;
import lapwright.MaterialAnswer.SolvedRuns.Part;
import lapwright.demand.RunDemand;
import lapwright.demand.RunLayouts;
import lapwright.effort.Effort;
import lapwright.plan.Certificate;
import lapwright.plan.Proof;
import lapwright.problem.SpliceSolution;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;
import lapwright.splice.SpliceSolver;
import org.jspecify.annotations.Nullable;

/**
 * Chooses a lot for every job (or run) of a material whose lots must not mix, together with the
 * cutting.
 *
 * <p>What a choice costs is the sum over the lots of what cutting its jobs from it costs. The first
 * choices give everything to one lot as far as it can; then single jobs change their lot as long as
 * that helps. The bound is a tree of decisions about lots: a leaf where everything is cut from all
 * lots that are left to anybody, or one where each lot is bounded by itself.
 *
 * <p>Where lots must not mix within a run, plain pieces are free in the bound; in the plan the
 * equal pieces of one job come from one lot.
 */
final class LotSolving {
  private static final int MOST_LEAVES = 48;

  private final MaterialOrder order;
  private final Effort effort;
  private final List<Unit> units = new ArrayList<>();
  private final List<String> lots;
  private final Map<LotShare, SpliceSolution> solved = new HashMap<>();
  private int leaves;

  /**
   * What must come from one lot.
   *
   * @param mark empty for a job or for plain pieces
   * @param plain a need of plain pieces that is a unit of its own; null for a job or run
   */
  private record Unit(String job, String mark, @Nullable Need plain) {
    boolean holds(Need need) {
      return plain == null ? mark.isEmpty() && need.job().equals(job) : plain.equals(need);
    }

    boolean holds(RunNeed need) {
      return plain == null
          && need.job().equals(job)
          && (mark.isEmpty() || need.run().mark().equals(mark));
    }
  }

  private record LotShare(String lot, Set<Unit> units) {}

  /** A choice of lots, with what it costs. */
  private record Choice(Map<Unit, String> lotOf, long cost) {}

  LotSolving(MaterialOrder order, Effort effort) {
    this.order = order;
    this.effort = effort;
    boolean perJob = order.material().oneLotPer() == OneLotPer.JOB;
    Set<Unit> all = new LinkedHashSet<>();
    for (Need need : order.needs()) {
      all.add(new Unit(need.job(), "", perJob ? null : need));
    }
    for (RunNeed need : order.runs()) {
      all.add(new Unit(need.job(), perJob ? "" : need.run().mark(), null));
    }
    units.addAll(all);
    Set<String> keys = new TreeSet<>();
    for (Supply supply : order.supplies()) {
      if (supply.atMost() > 0) {
        keys.add(supply.lotKey());
      }
    }
    lots = List.copyOf(keys);
  }

  MaterialAnswer solve() {
    String material = order.material().id();
    Choice best = bestChoice();
    if (best == null) {
      return effort.spent()
          ? new MaterialAnswer.Nothing(material)
          : new MaterialAnswer.Lacking(
              RunSolving.asksForFullSticks(order)
                  ? new Shortage.NoFullSticks(material)
                  : new Shortage.SuppliesFallShort(material));
    }
    Bound bound = bound(best);
    List<Part> parts = new ArrayList<>();
    for (String lot : lots) {
      Set<Unit> share = share(best.lotOf(), lot);
      if (!share.isEmpty()) {
        RunDemand demand = demand(share, lot::equals);
        SpliceSolution solution = solution(lot, share);
        parts.add(
            new Part(
                new RunLayouts(order, needs(share), demand.lines(solution)),
                demand.patterns(solution)));
      }
    }
    return new MaterialAnswer.SolvedRuns(
        order,
        parts,
        bound.least(),
        bound.least() == best.cost() ? Proof.PROVED : Proof.OPEN,
        bound.certificate());
  }

  private @Nullable Choice bestChoice() {
    Choice best = null;
    for (String lot : lots) {
      best = better(best, choice(mostly(lot)));
    }
    boolean improved = best != null;
    while (improved && !effort.spent()) {
      improved = false;
      for (Unit unit : units) {
        for (String lot : lots) {
          Map<Unit, String> moved = new LinkedHashMap<>(Objects.requireNonNull(best).lotOf());
          if (!lot.equals(moved.put(unit, lot))) {
            Choice other = choice(moved);
            if (other != null && other.cost() < best.cost()) {
              best = other;
              improved = true;
            }
          }
        }
      }
    }
    return best;
  }

  private static @Nullable Choice better(@Nullable Choice a, @Nullable Choice b) {
    return a == null || (b != null && b.cost() < a.cost()) ? b : a;
  }

  /** Everything to one lot; what it cannot serve alone to the first that can. */
  private Map<Unit, String> mostly(String lot) {
    Map<Unit, String> lotOf = new LinkedHashMap<>();
    for (Unit unit : units) {
      lotOf.put(unit, lot);
      List<String> order = new ArrayList<>(List.of(lot));
      order.addAll(lots);
      for (String candidate : order) {
        if (solution(candidate, Set.of(unit)).status().hasSolution()) {
          lotOf.put(unit, candidate);
          break;
        }
      }
    }
    return lotOf;
  }

  private @Nullable Choice choice(Map<Unit, String> lotOf) {
    long cost = 0;
    for (String lot : lots) {
      Set<Unit> share = share(lotOf, lot);
      if (!share.isEmpty()) {
        SpliceSolution solution = solution(lot, share);
        if (!solution.status().hasSolution()) {
          return null;
        }
        cost = Math.addExact(cost, solution.cost());
      }
    }
    return new Choice(lotOf, cost);
  }

  private Set<Unit> share(Map<Unit, String> lotOf, String lot) {
    Set<Unit> share = new LinkedHashSet<>();
    units.stream().filter(unit -> lot.equals(lotOf.get(unit))).forEach(share::add);
    return share;
  }

  private SpliceSolution solution(String lot, Set<Unit> share) {
    return solved.computeIfAbsent(
        new LotShare(lot, share),
        key -> {
          long third = effort.remainingNanos() / 3 * 2;
          return SpliceSolver.solve(
              demand(share, lot::equals).problem(),
              effort
                  .alsoStoppedBy(() -> effort.remainingNanos() < third)
                  .tellingInstead(progress -> {}));
        });
  }

  private RunDemand demand(Set<Unit> share, Predicate<String> lot) {
    return RunDemand.of(
        order,
        need -> share.stream().anyMatch(unit -> unit.holds(need)),
        run -> share.stream().anyMatch(unit -> unit.holds(run)),
        supply -> lot.test(supply.lotKey()));
  }

  private List<Need> needs(Set<Unit> share) {
    return order.needs().stream()
        .filter(need -> share.stream().anyMatch(unit -> unit.holds(need)))
        .toList();
  }

  /** A bound with its evidence; {@link Long#MAX_VALUE} where no plan exists. */
  private record Bound(long least, Certificate certificate) {}

  private Bound bound(Choice best) {
    Map<Unit, Set<String>> allowed = new LinkedHashMap<>();
    units.forEach(unit -> allowed.put(unit, new TreeSet<>(lots)));
    Bound bound = excludeLots(allowed, 0, best.cost());
    return new Bound(Math.min(bound.least(), best.cost()), bound.certificate());
  }

  /** Lots that a unit cannot be cut from even when it has them to itself are no choice for it. */
  private Bound excludeLots(Map<Unit, Set<String>> allowed, int from, long known) {
    for (int u = from; u < units.size(); u++) {
      Unit unit = units.get(u);
      for (String lot : List.copyOf(Objects.requireNonNull(allowed.get(unit)))) {
        if (unit.plain() == null
            && SpliceSolver.isShort(demand(Set.of(unit), lot::equals).problem())) {
          Certificate within = shortage(lot);
          allowed.get(unit).remove(lot);
          Bound outside = excludeLots(allowed, u, known);
          return new Bound(
              outside.least(),
              new Certificate.LotSplit(
                  unit.job(), unit.mark(), List.of(lot), within, outside.certificate()));
        }
      }
    }
    return branch(allowed, known);
  }

  /** By length alone a lot cannot serve a unit. */
  private static Certificate shortage(String lot) {
    SortedMap<String, Certificate> one = new TreeMap<>();
    one.put(lot, new Certificate.RunWeights(1, new TreeMap<>(), 1));
    return new Certificate.ByLot(one);
  }

  private Bound branch(Map<Unit, Set<String>> allowed, long known) {
    Bound here = leaf(allowed);
    if (here.least() >= known || leaves >= MOST_LEAVES || effort.spent()) {
      return here;
    }
    for (Unit unit : units) {
      Set<String> open = Objects.requireNonNull(allowed.get(unit));
      if (unit.plain() == null && open.size() > 1) {
        String lot = open.iterator().next();
        Map<Unit, Set<String>> within = new LinkedHashMap<>(allowed);
        within.put(unit, new TreeSet<>(Set.of(lot)));
        Set<String> others = new TreeSet<>(open);
        others.remove(lot);
        Map<Unit, Set<String>> outside = new LinkedHashMap<>(allowed);
        outside.put(unit, others);
        Bound one = branch(within, known);
        Bound other = branch(outside, known);
        return new Bound(
            Math.min(one.least(), other.least()),
            new Certificate.LotSplit(
                unit.job(), unit.mark(), List.of(lot), one.certificate(), other.certificate()));
      }
    }
    return here;
  }

  /** The better of two bounds: lots pooled, or each lot with what is decided for it. */
  private Bound leaf(Map<Unit, Set<String>> allowed) {
    leaves++;
    Set<String> used = new TreeSet<>();
    allowed.values().forEach(used::addAll);
    RunDemand pooled = demand(new LinkedHashSet<>(units), used::contains);
    SpliceSolution together =
        SpliceSolver.solve(pooled.problem(), effort.tellingInstead(progress -> {}));
    Bound best =
        together.status().hasSolution()
            ? new Bound(
                together.bound(),
                pooled.certificate(Objects.requireNonNull(together.certificate())))
            : new Bound(0, new Certificate.RunWeights(1, new TreeMap<>(), 0));
    SortedMap<String, Certificate> byLot = new TreeMap<>();
    long sum = 0;
    for (String lot : used) {
      Set<Unit> share = new LinkedHashSet<>();
      allowed.forEach(
          (unit, open) -> {
            if (unit.plain() == null && open.size() == 1 && open.contains(lot)) {
              share.add(unit);
            }
          });
      if (share.isEmpty()) {
        continue;
      }
      SpliceSolution alone = solution(lot, share);
      if (alone.status().hasSolution()) {
        sum = Math.addExact(sum, alone.bound());
        byLot.put(
            lot,
            demand(share, lot::equals).certificate(Objects.requireNonNull(alone.certificate())));
      } else if (SpliceSolver.isShort(demand(share, lot::equals).problem())) {
        return new Bound(Long.MAX_VALUE, shortage(lot));
      }
    }
    return sum > best.least() ? new Bound(sum, new Certificate.ByLot(byLot)) : best;
  }
}
