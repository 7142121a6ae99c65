package lapwright;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lapwright.MaterialAnswer.SolvedRuns.Part;
import lapwright.demand.RunDemand;
import lapwright.demand.RunJoints;
import lapwright.demand.RunLayouts;
import lapwright.demand.StickDemand;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.lots.LotPlanning;
import lapwright.measure.Length;
import lapwright.plan.Proof;
import lapwright.problem.SpliceSolution;
import lapwright.problem.StickSolution.Status;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;
import lapwright.splice.NeatJoints;
import lapwright.splice.SpliceSolver;
import org.jspecify.annotations.Nullable;

/** Solves one material with runs, or one whose lots must not mix. */
final class RunSolving {
  private RunSolving() {}

  static boolean isFor(MaterialOrder order) {
    return !order.runs().isEmpty() || order.material().oneLotPer() == OneLotPer.JOB;
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
      return ofLots(order, told);
    }
    RunDemand demand = RunDemand.of(order);
    SpliceSolution solution = SpliceSolver.solve(demand.problem(), told);
    if (!solution.status().hasSolution()) {
      if (solution.status() == Status.IMPOSSIBLE) {
        return new MaterialAnswer.Lacking(missing(demand, told));
      }
      return asksForFullSticks(order) && !effort.spent()
          ? new MaterialAnswer.Lacking(new Shortage.NoFullSticks(material))
          : new MaterialAnswer.Nothing(material);
    }
    SpliceSolution neat = NeatJoints.of(demand.problem(), solution, RunJoints.tapeMarks(order));
    return new MaterialAnswer.SolvedRuns(
        order,
        List.of(
            new Part(
                new RunLayouts(order, order.needs(), demand.lines(neat)), demand.patterns(neat))),
        solution.bound(),
        solution.status() == Status.PROVED ? Proof.PROVED : Proof.OPEN,
        demand.certificate(Objects.requireNonNull(solution.certificate())));
  }

  private static MaterialAnswer ofLots(MaterialOrder order, Effort effort) {
    String material = order.material().id();
    LotPlanning.Planned planned = LotPlanning.plan(order, effort).orElse(null);
    if (planned == null) {
      return effort.spent()
          ? new MaterialAnswer.Nothing(material)
          : asksForFullSticks(order)
              ? new MaterialAnswer.Lacking(new Shortage.NoFullSticks(material))
              : missingOfLots(order, effort);
    }
    return new MaterialAnswer.SolvedRuns(
        order,
        planned.parts().stream().map(part -> new Part(part.layouts(), part.patterns())).toList(),
        planned.bound(),
        planned.bound() == planned.cost() ? Proof.PROVED : Proof.OPEN,
        planned.certificate());
  }

  private static MaterialAnswer missingOfLots(MaterialOrder order, Effort effort) {
    String material = order.material().id();
    LotPlanning.Missing missing =
        LotPlanning.missing(order, effort.tellingInstead(progress -> {})).orElse(null);
    if (missing == null) {
      return new MaterialAnswer.Lacking(new Shortage.SuppliesFallShort(material));
    }
    if (missing.further().isEmpty()) {
      return new MaterialAnswer.Nothing(material);
    }
    List<Shortage.TooFewOfLots.OfMaker> makers = new ArrayList<>();
    for (LotPlanning.Further further : missing.further()) {
      String supplier =
          order.supplies().stream()
              .filter(supply -> supply.lotKey().equals(further.lot()))
              .map(supply -> supply instanceof Supply.Offer offer ? offer.supplier() : "")
              .findFirst()
              .orElse("");
      makers.add(new Shortage.TooFewOfLots.OfMaker(supplier, further.length(), further.sticks()));
    }
    return new MaterialAnswer.Lacking(
        new Shortage.TooFewOfLots(material, makers, missing.fewestKnown()));
  }

  /** How many sticks more would do, where that is found. */
  private static Shortage missing(RunDemand demand, Effort effort) {
    String material = demand.order().material().id();
    Length length = demand.furtherLength().orElse(null);
    if (length == null) {
      return new Shortage.SuppliesFallShort(material);
    }
    SpliceSolution with =
        SpliceSolver.solve(demand.withFurtherSticks(), effort.tellingInstead(progress -> {}));
    return with.status().hasSolution() && with.cost() > 0
        ? new Shortage.TooFewSticks(
            material, length, Math.toIntExact(with.cost()), with.status() == Status.PROVED)
        : new Shortage.SuppliesFallShort(material);
  }

  static boolean asksForFullSticks(MaterialOrder order) {
    return order.runs().stream().anyMatch(need -> need.run().rules().closing().othersWhole());
  }

  /** The first run that no split keeps to its rules. */
  private static @Nullable MaterialAnswer unsplit(MaterialOrder order) {
    for (RunNeed need : order.runs()) {
      Shortage against = RunRules.against(order, need);
      if (against != null) {
        return new MaterialAnswer.Lacking(against);
      }
    }
    return null;
  }
}
