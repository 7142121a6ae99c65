package lapwright;

import java.util.List;
import lapwright.demand.StickDemand;
import lapwright.plan.LengthPattern;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.problem.StickCertificate;

/** What solving one material came to. */
sealed interface MaterialAnswer {
  /** A solution, not yet allotted to jobs. */
  record Solved(
      StickDemand demand,
      List<LengthPattern> patterns,
      long bound,
      Proof proof,
      StickCertificate certificate)
      implements MaterialAnswer {
    MaterialPlan withTickets(List<Pattern> tickets) {
      return new MaterialPlan(
          demand.order(),
          demand.purchases(patterns),
          tickets,
          demand.cost(patterns),
          demand.cash(patterns),
          bound,
          proof,
          demand.certificate(certificate),
          demand.account(patterns));
    }
  }

  /** No plan exists. */
  record Lacking(Shortage shortage) implements MaterialAnswer {}

  /** Stopped before there was a plan. */
  record Nothing(String material) implements MaterialAnswer {}
}
