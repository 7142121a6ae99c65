package lapwright;

import java.util.List;
import java.util.Objects;
import lapwright.demand.MissingStock;
import lapwright.demand.StickDemand;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.exact.StickSolver;
import lapwright.plan.LengthPattern;
import lapwright.plan.Proof;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Status;
import lapwright.shop.Need;

/** Solves one material, or says what is missing. */
final class MaterialSolving {
  private MaterialSolving() {}

  static MaterialAnswer solve(StickDemand demand, List<LengthPattern> start, Effort effort) {
    String material = demand.order().material().id();
    List<Need> fitNothing = demand.needsThatFitNothing();
    if (!fitNothing.isEmpty()) {
      return new MaterialAnswer.Lacking(
          List.of(new Shortage.FitsNothing(material, fitNothing, demand.longestUsable())));
    }
    Effort told =
        effort.tellingInstead(
            progress ->
                effort.report(
                    new Progress(material, progress.cost(), progress.bound(), progress.done())));
    StickSolution solution = StickSolver.solve(demand.problem(), demand.uses(start), told);
    if (!solution.status().hasSolution()) {
      MissingStock missing = MissingStock.of(demand);
      StickSolution more = StickSolver.solve(missing.problem(), List.of(), told);
      if (more.cost() > 0 && (more.bound() > 0 || solution.status() == Status.IMPOSSIBLE)) {
        return new MaterialAnswer.Lacking(
            List.of(
                new Shortage.TooFewSticks(
                    material,
                    missing.stockLength(),
                    Math.toIntExact(more.cost()),
                    more.status() == Status.PROVED)));
      }
      if (more.cost() != 0) {
        return new MaterialAnswer.Nothing(material);
      }
      solution = StickSolver.solve(demand.problem(), more.patterns(), told);
      if (!solution.status().hasSolution()) {
        return new MaterialAnswer.Nothing(material);
      }
    }
    List<LengthPattern> patterns = demand.patterns(solution.patterns());
    return new MaterialAnswer.Solved(
        demand,
        patterns,
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
