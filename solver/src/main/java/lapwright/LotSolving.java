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
import lapwright.effort.Questions;
import lapwright.plan.Certificate;
import lapwright.plan.Proof;
import lapwright.problem.SpliceSolution;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;
import lapwright.splice.NeatJoints;
import lapwright.splice.SpliceQuestions;
import lapwright.splice.SpliceSolver;
import org.jspecify.annotations.Nullable;

/**
 * Chooses a lot for every job (or run) of a material whose lots must not mix, together with the
 * cutting.
 *
 * <p>What a choice costs is the sum over the lots of what cutting its jobs from it costs. The first
 * choices give everything to one lot as far as it can; then single jobs change their lot as long as
 * that helps, those left out whose bound says that it cannot. The bound is a tree of decisions
 * about lots: a leaf where everything is cut from all lots that are left to anybody, or one where
 * each lot is bounded by itself. Where all is decided and the bounds do not tell, the choice is
 * solved; it may be the better one.
 *
 * <p>Where lots must not mix within a run, plain pieces are free in the bound; in the plan the
 * equal pieces of one job come from one lot.
 */
final class LotSolving {
  private static final int MOST_LEAVES = 2_000;
  private static final int MOST_LEAVES_WITH_PLAIN = 60;
  private static final int QUESTIONS = 1_500;
  private static final int CLOSE = 20;

  private final MaterialOrder order;
  private final Effort effort;
  private final List<Unit> units = new ArrayList<>();
  private final List<String> lots;
  private final Map<LotShare, SpliceSolution> solved = new HashMap<>();
  private final Map<LotShare, Bound> boundOfShare = new HashMap<>();
  private final Map<LotShare, Long> wantedOfShare = new HashMap<>();
  private final Map<Set<String>, Bound> boundOfLots = new HashMap<>();
  private final Map<LotShare, Boolean> tooFew = new HashMap<>();
  private @Nullable Choice best;
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
    chooseLots();
    if (best == null) {
      return effort.spent()
          ? new MaterialAnswer.Nothing(material)
          : new MaterialAnswer.Lacking(
              RunSolving.asksForFullSticks(order)
                  ? new Shortage.NoFullSticks(material)
                  : new Shortage.SuppliesFallShort(material));
    }
    Bound found = bound();
    Choice chosen = Objects.requireNonNull(best);
    long bound = Math.min(found.least(), chosen.cost());
    List<Part> parts = new ArrayList<>();
    for (String lot : lots) {
      Set<Unit> share = share(chosen.lotOf(), lot);
      if (!share.isEmpty()) {
        RunDemand demand = demand(share, lot::equals);
        SpliceSolution solution =
            NeatJoints.of(demand.problem(), solution(lot, share), demand.tapeMarks());
        parts.add(
            new Part(
                new RunLayouts(order, needs(share), demand.lines(solution)),
                demand.patterns(solution)));
      }
    }
    return new MaterialAnswer.SolvedRuns(
        order,
        parts,
        bound,
        bound == chosen.cost() ? Proof.PROVED : Proof.OPEN,
        found.certificate());
  }

  private void chooseLots() {
    for (String lot : lots) {
      consider(mostly(lot));
    }
    boolean improved = best != null;
    while (improved && !effort.spent()) {
      improved = false;
      for (Unit unit : units) {
        for (String lot : lots) {
          Map<Unit, String> moved = new LinkedHashMap<>(Objects.requireNonNull(best).lotOf());
          if (!lot.equals(moved.put(unit, lot))) {
            improved |= consider(moved);
          }
        }
      }
    }
  }

  /** Takes a choice if it is better, and solves it only if its bound leaves that open. */
  private boolean consider(Map<Unit, String> lotOf) {
    long known = known();
    if (best != null && boundOfChoice(lotOf) >= known) {
      return false;
    }
    Choice other = choice(lotOf);
    if (other == null || other.cost() >= known) {
      return false;
    }
    best = other;
    return true;
  }

  /** The cost of the best choice; {@link Long#MAX_VALUE} before there is one. */
  private long known() {
    return best == null ? Long.MAX_VALUE : best.cost();
  }

  private long boundOfChoice(Map<Unit, String> lotOf) {
    long sum = 0;
    for (String lot : lots) {
      Set<Unit> share = share(lotOf, lot);
      if (!share.isEmpty()) {
        long least = bound(lot, share).least();
        if (least == SpliceQuestions.Bound.IMPOSSIBLE) {
          return least;
        }
        sum = Math.addExact(sum, least);
      }
    }
    return sum;
  }

  /** Everything to one lot; what it cannot serve alone to the first that can. */
  private Map<Unit, String> mostly(String lot) {
    Map<Unit, String> lotOf = new LinkedHashMap<>();
    for (Unit unit : units) {
      lotOf.put(unit, lot);
      List<String> order = new ArrayList<>(List.of(lot));
      order.addAll(lots);
      for (String candidate : order) {
        if (canServe(candidate, unit)) {
          lotOf.put(unit, candidate);
          break;
        }
      }
    }
    return lotOf;
  }

  private boolean canServe(String lot, Unit unit) {
    return !isTooFew(lot, unit) && solution(lot, Set.of(unit)).status().hasSolution();
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
                  .alsoStoppedBy(new Questions(QUESTIONS))
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

  private Bound bound() {
    Map<Unit, Set<String>> allowed = new LinkedHashMap<>();
    units.forEach(unit -> allowed.put(unit, new TreeSet<>(lots)));
    return excludeLots(allowed, 0);
  }

  /** Lots that a unit cannot be cut from even when it has them to itself are no choice for it. */
  private Bound excludeLots(Map<Unit, Set<String>> allowed, int from) {
    for (int u = from; u < units.size(); u++) {
      Unit unit = units.get(u);
      for (String lot : List.copyOf(Objects.requireNonNull(allowed.get(unit)))) {
        if (unit.plain() == null && isTooFew(lot, unit)) {
          Certificate within = shortage(lot);
          Objects.requireNonNull(allowed.get(unit)).remove(lot);
          Bound outside = excludeLots(allowed, u);
          return new Bound(
              outside.least(),
              new Certificate.LotSplit(
                  unit.job(), unit.mark(), List.of(lot), within, outside.certificate()));
        }
      }
    }
    return branch(allowed);
  }

  private boolean isTooFew(String lot, Unit unit) {
    return tooFew.computeIfAbsent(
        new LotShare(lot, Set.of(unit)),
        key -> SpliceQuestions.isShort(demand(key.units(), lot::equals).problem()));
  }

  /** By length alone a lot cannot serve a unit. */
  private static Certificate shortage(String lot) {
    return byLot(lot, new Certificate.RunWeights(1, new TreeMap<>(), 1));
  }

  private Bound branch(Map<Unit, Set<String>> allowed) {
    Bound here = leaf(allowed);
    if (here.least() >= known() || leaves >= mostLeaves() || effort.spent()) {
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
        Bound one = branch(within);
        Bound other = branch(outside);
        return new Bound(
            Math.min(one.least(), other.least()),
            new Certificate.LotSplit(
                unit.job(), unit.mark(), List.of(lot), one.certificate(), other.certificate()));
      }
    }
    return units.stream().allMatch(unit -> unit.plain() == null) ? decided(allowed) : here;
  }

  /** Few where plain pieces are free in the bound, which then closes little. */
  private int mostLeaves() {
    return units.stream().allMatch(unit -> unit.plain() == null)
        ? MOST_LEAVES
        : MOST_LEAVES_WITH_PLAIN;
  }

  /** A leaf in which every unit has its lot: solved, since its bound alone does not close it. */
  private Bound decided(Map<Unit, Set<String>> allowed) {
    Map<Unit, String> lotOf = new LinkedHashMap<>();
    allowed.forEach((unit, open) -> lotOf.put(unit, open.iterator().next()));
    Choice other = choice(lotOf);
    if (other != null && other.cost() < known()) {
      best = other;
    }
    return leaf(allowed);
  }

  /** The better of two bounds: lots pooled, or each lot with what is decided for it. */
  private Bound leaf(Map<Unit, Set<String>> allowed) {
    leaves++;
    Set<String> used = new TreeSet<>();
    allowed.values().forEach(used::addAll);
    Bound pooled = boundOfLots.computeIfAbsent(used, this::pooled);
    if (pooled.least() >= known()) {
      return pooled;
    }
    Map<String, Set<Unit>> shares = new TreeMap<>();
    allowed.forEach(
        (unit, open) -> {
          if (unit.plain() == null && open.size() == 1) {
            shares.computeIfAbsent(open.iterator().next(), lot -> new LinkedHashSet<>()).add(unit);
          }
        });
    Bound bound = byLot(shares);
    return bound.least() > pooled.least() ? bound : pooled;
  }

  /** Each lot by itself; with more work where that may reach what is known. */
  private Bound byLot(Map<String, Set<Unit>> shares) {
    long sum = 0;
    for (Map.Entry<String, Set<Unit>> share : shares.entrySet()) {
      Bound alone = bound(share.getKey(), share.getValue());
      if (alone.least() == SpliceQuestions.Bound.IMPOSSIBLE) {
        return new Bound(Long.MAX_VALUE, byLot(share.getKey(), alone.certificate()));
      }
      sum = Math.addExact(sum, alone.least());
    }
    long known = known();
    for (Map.Entry<String, Set<Unit>> share : shares.entrySet()) {
      if (sum < known && known - sum <= known / CLOSE) {
        long before = bound(share.getKey(), share.getValue()).least();
        sum += raised(share.getKey(), share.getValue(), before + known - sum) - before;
      }
    }
    SortedMap<String, Certificate> certificates = new TreeMap<>();
    shares.forEach((lot, share) -> certificates.put(lot, bound(lot, share).certificate()));
    return new Bound(sum, new Certificate.ByLot(certificates));
  }

  private static Certificate byLot(String lot, Certificate certificate) {
    SortedMap<String, Certificate> one = new TreeMap<>();
    one.put(lot, certificate);
    return new Certificate.ByLot(one);
  }

  /** The bound of a share with more work, as far as wanted. */
  private long raised(String lot, Set<Unit> share, long wanted) {
    LotShare key = new LotShare(lot, share);
    Bound before = bound(lot, share);
    if (before.least() < wanted && wanted > wantedOfShare.getOrDefault(key, 0L)) {
      wantedOfShare.put(key, wanted);
      Bound more = bound(demand(share, lot::equals), wanted, true);
      if (more.least() > before.least()) {
        boundOfShare.put(key, more);
      }
    }
    return Math.min(bound(lot, share).least(), wanted);
  }

  private Bound pooled(Set<String> used) {
    return bound(demand(new LinkedHashSet<>(units), used::contains), known(), true);
  }

  /** What a share costs at least, where its lot has nothing else to give. */
  private Bound bound(String lot, Set<Unit> share) {
    LotShare key = new LotShare(lot, share);
    SpliceSolution solution = solved.get(key);
    Bound quick =
        boundOfShare.computeIfAbsent(
            key, each -> bound(demand(each.units(), lot::equals), known(), false));
    return solution != null && solution.status().hasSolution() && solution.bound() > quick.least()
        ? new Bound(
            solution.bound(),
            demand(share, lot::equals).certificate(Objects.requireNonNull(solution.certificate())))
        : quick;
  }

  private Bound bound(RunDemand demand, long known, boolean thorough) {
    SpliceQuestions.Bound bound =
        SpliceQuestions.bound(
            demand.problem(),
            known,
            thorough,
            effort.alsoStoppedBy(new Questions(QUESTIONS)).tellingInstead(progress -> {}));
    return new Bound(bound.least(), demand.certificate(bound.certificate()));
  }
}
