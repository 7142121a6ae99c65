package lapwright;

import java.util.List;
import java.util.Objects;
import lapwright.MaterialAnswer.SolvedRuns.Part;
import lapwright.demand.RunDemand;
import lapwright.demand.RunLayouts;
import lapwright.demand.StickDemand;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.layout.LayoutException;
import lapwright.measure.Length;
import lapwright.plan.Proof;
import lapwright.problem.SpliceSolution;
import lapwright.problem.StickSolution.Status;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.splice.SpliceSolver;

/** Solves one material with runs, or one whose lots must not mix. */
final class RunSolving {
  private RunSolving() {}

  static boolean isFor(MaterialOrder order) {
    return !order.runs().isEmpty() || order.material().oneLotPer() != OneLotPer.NONE;
  }

  static MaterialAnswer solve(MaterialOrder order, Effort effort) {
    String material = order.material().id();
    StickDemand plain = StickDemand.of(order.withPieces(order.needs()));
    List<Need> fitNothing = plain.needsThatFitNothing();
    if (!fitNothing.isEmpty()) {
      return new MaterialAnswer.Lacking(
          new Shortage.FitsNothing(material, fitNothing, plain.longestUsable()));
    }
    MaterialAnswer unsplit = unsplit(order);
    if (unsplit != null) {
      return unsplit;
    }
    Effort told =
        effort.tellingInstead(
            progress ->
                effort.report(
                    new Progress(material, progress.cost(), progress.bound(), progress.done())));
    if (order.material().oneLotPer() != OneLotPer.NONE) {
      return new LotSolving(order, told).solve();
    }
    RunDemand demand = RunDemand.of(order);
    SpliceSolution solution = SpliceSolver.solve(demand.problem(), told);
    if (!solution.status().hasSolution()) {
      return solution.status() == Status.IMPOSSIBLE
          ? new MaterialAnswer.Lacking(new Shortage.SuppliesFallShort(material))
          : new MaterialAnswer.Nothing(material);
    }
    return new MaterialAnswer.SolvedRuns(
        order,
        List.of(
            new Part(
                new RunLayouts(order, order.needs(), demand.lines(solution)),
                demand.patterns(solution))),
        solution.bound(),
        solution.status() == Status.PROVED ? Proof.PROVED : Proof.OPEN,
        demand.certificate(Objects.requireNonNull(solution.certificate())));
  }

  /** The first run that no split keeps to its rules. */
  private static @org.jspecify.annotations.Nullable MaterialAnswer unsplit(MaterialOrder order) {
    for (RunNeed need : order.runs()) {
      try {
        RunDemand.of(order, one -> false, need::equals, supply -> true);
        Length apart = need.run().rules().stagger();
        if (!canStagger(order, need, apart)) {
          return new MaterialAnswer.Lacking(
              new Shortage.NoSplit(
                  order.material().id(),
                  need.job(),
                  need.run().mark(),
                  "stagger",
                  "no two splits of it keep their joints that far apart",
                  "make stagger at most {}, or allow more joints or places",
                  greatestStagger(order, need)));
        }
      } catch (LayoutException e) {
        return new MaterialAnswer.Lacking(
            new Shortage.NoSplit(
                order.material().id(),
                need.job(),
                need.run().mark(),
                e.rule(),
                Objects.requireNonNull(e.getMessage()),
                e.advice(),
                e.length()));
      }
    }
    return null;
  }

  private static boolean canStagger(MaterialOrder order, RunNeed need, Length apart) {
    Run run = need.run();
    if (apart.isZero() || need.lines() == 1) {
      return true;
    }
    RunNeed changed = need.withRules(run.rules().staggered(apart));
    MaterialOrder alone =
        new MaterialOrder(
            order.material(),
            order.saw(),
            order.onHandValued(),
            order.supplies(),
            List.of(),
            List.of(changed));
    return SpliceSolver.canStagger(RunDemand.of(alone).problem());
  }

  /** The greatest distance that some two splits keep, in steps of the run's pieces. */
  private static Length greatestStagger(MaterialOrder order, RunNeed need) {
    Length step = need.run().rules().pieces().step();
    long none = need.run().rules().stagger().units() / step.units() + 1;
    long some = 0;
    while (none - some > 1) {
      long middle = (some + none) / 2;
      if (canStagger(order, need, step.times(middle))) {
        some = middle;
      } else {
        none = middle;
      }
    }
    return step.times(some);
  }
}
