package lapwright;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import lapwright.allot.Allotment;
import lapwright.demand.RunLayouts;
import lapwright.demand.StickDemand;
import lapwright.plan.Certificate;
import lapwright.plan.LengthPattern;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.problem.StickCertificate;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;

/** What solving one material came to. */
sealed interface MaterialAnswer {
  /**
   * A solution, not yet allotted to jobs.
   *
   * @param demand that {@code patterns} answer
   * @param bounded the demand that {@code bound} and {@code certificate} are about: the same, or,
   *     where pieces may be short and the patterns hold them at full length, the one in which each
   *     is as short as it may be
   */
  record Solved(
      StickDemand demand,
      List<LengthPattern> patterns,
      StickDemand bounded,
      long bound,
      Proof proof,
      StickCertificate certificate)
      implements MaterialAnswer {
    MaterialPlan withTickets(List<Pattern> tickets) {
      List<Purchase> purchases = demand.purchases(patterns);
      return new MaterialPlan(
          demand.order(),
          purchases,
          tickets,
          cost(),
          demand.cash(patterns),
          bound,
          proof,
          bounded.certificate(certificate),
          demand.account(tickets, purchases));
    }

    long cost() {
      return demand.cost(patterns);
    }

    /** The same sticks, bounded by what another answer proves. */
    Solved boundedBy(Solved other) {
      Proof sure =
          other.bound == cost() ? Proof.PROVED : other.cost() == cost() ? other.proof : Proof.OPEN;
      return new Solved(demand, patterns, other.bounded, other.bound, sure, other.certificate);
    }
  }

  /**
   * A solution of an order with runs, or of one whose lots must not mix.
   *
   * @param parts together the whole order; more than one where lots are kept apart
   * @param certificate in the shop's words
   */
  record SolvedRuns(
      MaterialOrder order, List<Part> parts, long bound, Proof proof, Certificate certificate)
      implements MaterialAnswer {
    /** What is cut from one lot, or everything. */
    record Part(RunLayouts layouts, List<LengthPattern> patterns) {}

    MaterialPlan withTickets(Supplier<String> ticketNames, Supplier<String> offcutNames) {
      List<Pattern> tickets = new ArrayList<>();
      List<RunLine> runs = new ArrayList<>();
      List<LengthPattern> patterns = new ArrayList<>();
      List<Need> needs = new ArrayList<>();
      for (Part part : parts) {
        RunLayouts.Finished finished =
            part.layouts()
                .finish(
                    Allotment.tickets(
                        part.layouts().withPieces(),
                        part.patterns(),
                        new Allotment.Uncut(part.layouts()::isWhole, part.layouts()::isWhole),
                        ticketNames,
                        offcutNames));
        tickets.addAll(finished.tickets());
        runs.addAll(finished.runs());
        patterns.addAll(part.patterns());
        needs.addAll(part.layouts().withPieces().needs());
      }
      StickDemand pieces = StickDemand.of(order.withPieces(needs));
      List<Purchase> purchases = pieces.purchases(patterns);
      return new MaterialPlan(
          order,
          purchases,
          tickets,
          pieces.cost(patterns),
          pieces.cash(patterns),
          bound,
          proof,
          certificate,
          RunLayouts.account(order, tickets, purchases, runs),
          runs);
    }
  }

  /** No plan exists. */
  record Lacking(Shortage shortage) implements MaterialAnswer {}

  /** Stopped before there was a plan. */
  record Nothing(String material) implements MaterialAnswer {}
}
