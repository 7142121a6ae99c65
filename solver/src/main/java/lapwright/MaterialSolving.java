package lapwright;

import java.util.List;
import java.util.Objects;
import lapwright.allot.Allotment;
import lapwright.demand.MissingStock;
import lapwright.demand.StickDemand;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.exact.StickSolver;
import lapwright.plan.LengthPattern;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Status;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;

/** Solves one material, or says what is missing. */
final class MaterialSolving {
  private MaterialSolving() {}

  /**
   * Plans every piece as short as it may be, and, where some may be short, every piece at its full
   * length too: short pieces are used only where that costs less. The bound is that of the shortest
   * pieces either way, for it holds for all lengths between.
   */
  static MaterialAnswer solve(MaterialOrder order, List<LengthPattern> start, Effort effort) {
    StickDemand demand = StickDemand.of(order);
    if (!demand.mayBeShort()) {
      return solve(demand, start, effort);
    }
    if (solve(StickDemand.atFullLengths(order), List.of(), effort)
        instanceof MaterialAnswer.Solved full) {
      List<LengthPattern> best = shorterBy(demand, full);
      if (!demand.uses(start).isEmpty() && demand.cost(start) < full.cost()) {
        best = start;
      }
      return solve(demand, best, effort) instanceof MaterialAnswer.Solved shortest
          ? shortest.cost() < full.cost() ? shortest : full.boundedBy(shortest)
          : new MaterialAnswer.Nothing(order.material().id());
    }
    return solve(demand, start, effort);
  }

  /** The patterns of full pieces as patterns of the shortest. */
  private static List<LengthPattern> shorterBy(StickDemand demand, MaterialAnswer.Solved full) {
    List<Pattern> tickets =
        Allotment.tickets(
            demand.order(), full.patterns(), full.demand()::planned, () -> "", () -> "");
    return tickets.stream()
        .map(ticket -> LengthPattern.of(ticket, demand.order().saw().kerf()))
        .toList();
  }

  private static MaterialAnswer solve(
      StickDemand demand, List<LengthPattern> start, Effort effort) {
    String material = demand.order().material().id();
    List<Need> fitNothing = demand.needsThatFitNothing();
    if (!fitNothing.isEmpty()) {
      return new MaterialAnswer.Lacking(
          new Shortage.FitsNothing(material, fitNothing, demand.longestUsable()));
    }
    Effort told =
        effort.tellingInstead(
            progress ->
                effort.report(
                    new Progress(material, progress.cost(), progress.bound(), progress.done())));
    StickSolution solution = StickSolver.solve(demand.problem(), demand.uses(start), told);
    if (!solution.status().hasSolution()) {
      return withMoreStock(demand, solution.status(), told);
    }
    effort.report(new Progress(material, solution.cost(), solution.bound(), true));
    return solved(demand, solution);
  }

  /**
   * Tells how much stock is missing, or finds that none is: the problem with further sticks always
   * has a solution, and one that uses none of them is a plan. Where all was tried and no plan was
   * found without further sticks, they are told as missing, though fewer might do.
   */
  private static MaterialAnswer withMoreStock(StickDemand demand, Status without, Effort effort) {
    String material = demand.order().material().id();
    MissingStock missing = MissingStock.of(demand);
    StickSolution with = StickSolver.solve(missing.problem(), List.of(), effort);
    boolean impossible = with.bound() > 0 || without == Status.IMPOSSIBLE;
    if (with.cost() > 0 && (impossible || !effort.spent())) {
      return new MaterialAnswer.Lacking(
          new Shortage.TooFewSticks(
              material,
              missing.stockLength(),
              Math.toIntExact(with.cost()),
              with.status() == Status.PROVED));
    }
    if (with.cost() == 0) {
      StickSolution solution = StickSolver.solve(demand.problem(), with.patterns(), effort);
      if (solution.status().hasSolution()) {
        return solved(demand, solution);
      }
    }
    return new MaterialAnswer.Nothing(material);
  }

  private static MaterialAnswer solved(StickDemand demand, StickSolution solution) {
    return new MaterialAnswer.Solved(
        demand,
        demand.patterns(solution.patterns()),
        demand,
        solution.bound(),
        proof(solution.status()),
        Objects.requireNonNull(solution.certificate()));
  }

  private static Proof proof(Status status) {
    return switch (status) {
      case PROVED -> Proof.PROVED;
      case CLAIMED -> Proof.CLAIMED;
      default -> Proof.OPEN;
    };
  }
}
