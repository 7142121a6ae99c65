package lapwright.lots;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import lapwright.demand.RunDemand;
import lapwright.problem.SpliceProblem;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;

/** An order whose lots must not mix, by units and lots. Immutable. */
final class LotOrder {
  private final MaterialOrder order;
  private final List<LotUnit> units;
  private final List<String> lots;
  private final FreePieces free;
  private final Set<String> withFurther;

  LotOrder(MaterialOrder order) {
    this(order, false);
  }

  /**
   * Of an order.
   *
   * @param further true where as many further sticks may be had as it takes, of those makers that
   *     offer any, or of any lot where none does: these cost 1 each, and all else nothing
   */
  LotOrder(MaterialOrder order, boolean further) {
    this.order = order;
    boolean perJob = order.material().oneLotPer() == OneLotPer.JOB;
    Set<LotUnit> all = new LinkedHashSet<>();
    if (perJob) {
      order.needs().forEach(need -> all.add(new LotUnit(need.job(), "")));
    }
    for (RunNeed need : order.runs()) {
      all.add(new LotUnit(need.job(), perJob ? "" : need.run().mark()));
    }
    units = List.copyOf(all);
    free = new FreePieces(order, perJob ? List.of() : order.needs());
    Set<String> keys = new TreeSet<>();
    for (Supply supply : order.supplies()) {
      if (supply.atMost() > 0) {
        keys.add(supply.lotKey());
      }
    }
    lots = List.copyOf(keys);
    Set<String> offered = new TreeSet<>();
    for (Supply supply : order.supplies()) {
      if (supply instanceof Supply.Offer && keys.contains(supply.lotKey())) {
        offered.add(supply.lotKey());
      }
    }
    withFurther = further ? Set.copyOf(offered.isEmpty() ? keys : offered) : Set.of();
  }

  /** True where further sticks are counted instead of costs. */
  boolean countsFurtherSticks() {
    return !withFurther.isEmpty();
  }

  /** What is to be solved for a demand from some lots. */
  SpliceProblem problem(RunDemand demand, Set<String> some) {
    if (!countsFurtherSticks()) {
      return demand.problem();
    }
    return some.stream().anyMatch(withFurther::contains)
        ? demand.withFurtherSticks()
        : demand.withoutCosts();
  }

  MaterialOrder order() {
    return order;
  }

  List<LotUnit> units() {
    return units;
  }

  List<String> lots() {
    return lots;
  }

  /** The pieces that may come from any lot. */
  FreePieces free() {
    return free;
  }

  RunDemand demand(LotShare share) {
    List<Need> needs = new ArrayList<>(needs(share));
    needs.addAll(free.asNeeds(share.free()));
    return demand(needs, share.units(), share.lots()::contains);
  }

  /** Everything from these lots together. */
  RunDemand pooled(Predicate<String> lot) {
    return demand(order.needs(), new LinkedHashSet<>(units), lot);
  }

  /** The free pieces alone from these lots. */
  RunDemand freeAlone(Predicate<String> lot) {
    return demand(free.asNeeds(free.counts()), Set.of(), lot);
  }

  private RunDemand demand(List<Need> needs, Set<LotUnit> runs, Predicate<String> lot) {
    MaterialOrder part =
        new MaterialOrder(
            order.material(),
            order.saw(),
            order.onHandValued(),
            order.supplies(),
            needs,
            order.runs(),
            order.fromStockOnly());
    return RunDemand.of(
        part,
        need -> true,
        run -> runs.stream().anyMatch(unit -> unit.holds(run)),
        supply -> lot.test(supply.lotKey()));
  }

  /** The plain pieces of the units of a share. */
  List<Need> needs(LotShare share) {
    return order.needs().stream()
        .filter(need -> share.units().stream().anyMatch(unit -> unit.holds(need)))
        .toList();
  }
}
