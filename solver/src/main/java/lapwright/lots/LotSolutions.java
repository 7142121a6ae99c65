package lapwright.lots;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.demand.RunDemand;
import lapwright.effort.Effort;
import lapwright.effort.Questions;
import lapwright.plan.Certificate;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceSolution;
import lapwright.splice.SpliceQuestions;
import lapwright.splice.SpliceSolver;

/** What shares of a lot cost, at most and at least: each is solved once, whoever asks. */
final class LotSolutions {
  private static final int QUESTIONS = 1_500;

  private final LotOrder order;
  private final Effort effort;
  private final Map<LotShare, SpliceSolution> solved = new HashMap<>();
  private final Map<LotShare, LotBound> bounds = new HashMap<>();
  private final Map<LotShare, Long> wanted = new HashMap<>();
  private final Map<LotShare, Boolean> tooFew = new HashMap<>();

  LotSolutions(LotOrder order, Effort effort) {
    this.order = order;
    this.effort = effort;
  }

  SpliceSolution of(LotShare share) {
    return solved.computeIfAbsent(
        share,
        key ->
            SpliceSolver.solve(
                order.problem(order.demand(share), share.lots()),
                effort
                    .share(3)
                    .alsoStoppedBy(new Questions(QUESTIONS))
                    .tellingInstead(progress -> {})));
  }

  /** True when by length alone the lot cannot give the share. */
  boolean isTooFew(LotShare share) {
    return tooFew.computeIfAbsent(
        share, key -> SpliceQuestions.isShort(order.problem(order.demand(share), share.lots())));
  }

  /**
   * What a share costs at least, where its lot has nothing else to give.
   *
   * @param known no more than that is asked for
   */
  LotBound bound(LotShare share, long known) {
    SpliceSolution solution = solved.get(share);
    LotBound quick =
        bounds.computeIfAbsent(share, key -> bound(order.demand(key), key.lots(), known, false));
    return solution != null && solution.status().hasSolution() && solution.bound() > quick.least()
        ? new LotBound(
            solution.bound(),
            certificate(order.demand(share), Objects.requireNonNull(solution.certificate())))
        : quick;
  }

  /** The bound of a share with more work, as far as wanted. */
  long raised(LotShare share, long enough) {
    LotBound before = bound(share, enough);
    if (before.least() < enough && enough > wanted.getOrDefault(share, 0L)) {
      wanted.put(share, enough);
      LotBound more = bound(order.demand(share), share.lots(), enough, true);
      if (more.least() > before.least()) {
        bounds.put(share, more);
      }
    }
    return Math.min(bound(share, enough).least(), enough);
  }

  /** A bound for a demand from some lots. */
  LotBound bound(RunDemand demand, Set<String> lots, long known, boolean thorough) {
    SpliceQuestions.Bound bound =
        SpliceQuestions.bound(
            order.problem(demand, lots),
            known,
            thorough,
            effort.alsoStoppedBy(new Questions(QUESTIONS)).tellingInstead(progress -> {}));
    return new LotBound(bound.least(), certificate(demand, bound.certificate()));
  }

  /** In the shop's words, which have none for further sticks. */
  private Certificate certificate(RunDemand demand, SpliceCertificate certificate) {
    return order.countsFurtherSticks() ? LotBound.UNSAID : demand.certificate(certificate);
  }
}
