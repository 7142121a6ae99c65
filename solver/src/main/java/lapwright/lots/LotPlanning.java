package lapwright.lots;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lapwright.demand.RunDemand;
import lapwright.demand.RunJoints;
import lapwright.demand.RunLayouts;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.LengthPattern;
import lapwright.problem.SpliceSolution;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.splice.NeatJoints;
import org.jspecify.annotations.Nullable;

/**
 * Chooses a lot for every job (or run) of a material whose lots must not mix, together with the
 * cutting.
 *
 * <p>Where plain pieces may come from any lot, each by itself, beside runs that must not mix, one
 * program over all lots shares out both, and bounds. Where everything belongs to a job or run, a
 * search over choices comes first and a tree of decisions bounds them; that program comes after it
 * where these leave something open.
 */
public final class LotPlanning {
  private final LotOrder order;
  private final LotSolutions solutions;
  private final BestChoice best;
  private final Effort effort;

  /**
   * A plan.
   *
   * @param parts together the whole order
   * @param bound no plan costs less, by the certificate
   */
  public record Planned(List<Part> parts, long cost, long bound, Certificate certificate) {
    public Planned {
      parts = List.copyOf(parts);
    }
  }

  /** What is cut from one lot, or plain pieces from several. */
  public record Part(RunLayouts layouts, List<LengthPattern> patterns) {
    public Part {
      patterns = List.copyOf(patterns);
    }
  }

  private LotPlanning(LotOrder order, Effort effort) {
    this.order = order;
    this.effort = effort;
    this.solutions = new LotSolutions(this.order, effort);
    this.best = new BestChoice(this.order, solutions);
  }

  /** The best plan that was found; empty where none was, or none exists. */
  public static Optional<Planned> plan(MaterialOrder order, Effort effort) {
    return new LotPlanning(new LotOrder(order), effort).plan();
  }

  /**
   * Sticks that are missing of a lot.
   *
   * @param lot as {@link lapwright.shop.Supply#lotKey} names it
   */
  public record Further(String lot, Length length, int sticks) {}

  /**
   * What further sticks would let an order be planned.
   *
   * @param further empty where the order can be planned as it is
   * @param fewestKnown true when fewer in all would certainly not do
   */
  public record Missing(List<Further> further, boolean fewestKnown) {
    public Missing {
      further = List.copyOf(further);
    }
  }

  /**
   * How many further sticks would do, found by planning with as many of the longest of each maker
   * as it takes; empty where no such plan was found.
   */
  public static Optional<Missing> missing(MaterialOrder order, Effort effort) {
    return new LotPlanning(new LotOrder(order, true), effort).missing();
  }

  private Optional<Missing> missing() {
    LotBound bound = choose();
    LotChoice chosen = best.best();
    if (chosen == null || bound == null) {
      return Optional.empty();
    }
    List<Further> further = new ArrayList<>();
    for (LotShare share : chosen.shares()) {
      long sticks = solutions.of(share).cost();
      Length length = order.demand(share).furtherLength().orElse(null);
      if (sticks > 0 && length != null) {
        further.add(new Further(share.lot(), length, Math.toIntExact(sticks)));
      }
    }
    return Optional.of(new Missing(further, bound.least() >= chosen.cost()));
  }

  private @Nullable LotBound choose() {
    return order.free().counts().isEmpty() ? ofUnits() : withFreePieces();
  }

  private Optional<Planned> plan() {
    LotBound bound = choose();
    LotChoice chosen = best.best();
    if (chosen == null || bound == null) {
      return Optional.empty();
    }
    List<Part> parts = new ArrayList<>();
    List<List<Need>> free = order.free().dealt(chosen.shares());
    for (int s = 0; s < chosen.shares().size(); s++) {
      LotShare share = chosen.shares().get(s);
      RunDemand demand = order.demand(share);
      SpliceSolution solution =
          NeatJoints.of(demand.problem(), solutions.of(share), RunJoints.tapeMarks(demand.order()));
      List<Need> needs = new ArrayList<>(order.needs(share));
      needs.addAll(free.get(s));
      parts.add(
          new Part(
              new RunLayouts(order.order(), needs, demand.lines(solution)),
              demand.patterns(solution)));
    }
    return Optional.of(
        new Planned(
            parts, chosen.cost(), Math.min(bound.least(), chosen.cost()), bound.certificate()));
  }

  private @Nullable LotBound ofUnits() {
    best.search(effort);
    if (best.best() == null) {
      return null;
    }
    LotBound bound = new DecisionTree(order, solutions, best, effort).bound();
    if (bound.least() >= best.cost() || effort.spent()) {
      return bound;
    }
    LotBound shared = new SharedSearch(order, solutions, best).run(effort);
    return shared.least() > bound.least() ? shared : bound;
  }

  private LotBound withFreePieces() {
    LotBound bound = new SharedSearch(order, solutions, best).run(effort);
    if (best.best() == null) {
      unitsFirst();
    }
    return bound;
  }

  /**
   * Where the program's sharings cannot be cut: runs first, and the free pieces from what is left.
   */
  private void unitsFirst() {
    for (String lot : order.lots()) {
      Map<LotUnit, String> lotOf = best.mostly(lot);
      for (String other : order.lots()) {
        List<LotShare> shares = new ArrayList<>();
        Set<String> idle = new TreeSet<>(order.lots());
        boolean added = false;
        for (LotShare share : LotChoice.shares(order.lots(), lotOf)) {
          idle.remove(share.lot());
          added |= share.lot().equals(other);
          shares.add(
              share.lot().equals(other)
                  ? new LotShare(share.lots(), share.units(), order.free().counts())
                  : share);
        }
        if (!added) {
          shares.add(new LotShare(idle, new LinkedHashSet<>(), order.free().counts()));
        }
        best.offer(shares);
      }
    }
  }
}
