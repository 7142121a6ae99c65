package lapwright.exact;

import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/** The state of one solve: the best solution, the best bound, and the order of attack. */
final class Search {
  private final StickProblem problem;
  private final Effort effort;
  private final ReachableCosts reachable;
  private @Nullable Layout best;
  private long bound;
  private StickCertificate certificate;
  private boolean impossible;
  private boolean claimed;

  Search(StickProblem problem, Effort effort) {
    this.problem = problem;
    this.effort = effort;
    reachable = new ReachableCosts(problem);
    certificate = LengthBound.certificate(1, new long[problem.items().size()]);
  }

  /** The order of attack. */
  void run() {
    if (someItemFitsNothing()) {
      impossible = true;
      return;
    }
    GreedyFill greedy = new GreedyFill(problem, GreedyFill.longestFirst(problem));
    offer(greedy.complete(new Layout.Builder(problem)));
    LengthBound.Proven byLength = LengthBound.of(problem, PackLimits.of(problem));
    offer(byLength.bound(), byLength.weights());
  }

  private boolean someItemFitsNothing() {
    long leastOther = Long.MAX_VALUE / 2;
    for (StickProblem.Item item : problem.items()) {
      if (!item.small()) {
        leastOther = Math.min(leastOther, item.size());
      }
    }
    for (StickProblem.Item item : problem.items()) {
      boolean fits = false;
      for (StickProblem.Stock stock : problem.stocks()) {
        fits |=
            item.size() <= (item.small() ? stock.smallCapacity() : stock.capacity())
                || item.size() + leastOther <= stock.capacity()
                || (stock.wholeUse() && item.size() == stock.capacity());
      }
      if (!fits) {
        return true;
      }
    }
    return false;
  }

  /** Takes a solution if it is better. */
  boolean offer(@Nullable Layout layout) {
    if (layout == null || (best != null && layout.cost() >= best.cost())) {
      return false;
    }
    best = layout;
    tell();
    return true;
  }

  /** Takes a bound if it is better. */
  void offer(long provenBound, StickCertificate evidence) {
    if (provenBound == WeightBound.IMPOSSIBLE) {
      impossible = true;
      return;
    }
    long raised = best == null ? provenBound : reachable.atLeast(provenBound, best.cost());
    if (raised > bound) {
      bound = raised;
      certificate = evidence;
      tell();
    }
  }

  private void tell() {
    effort.report(new Progress("", best == null ? -1 : best.cost(), bound, false));
  }

  boolean isClosed() {
    return best != null && bound >= best.cost();
  }

  @Nullable Layout best() {
    return best;
  }

  long bound() {
    return best == null ? bound : Math.min(bound, best.cost());
  }

  StickCertificate certificate() {
    return certificate;
  }

  boolean isImpossible() {
    return impossible;
  }

  boolean isClaimed() {
    return claimed;
  }
}
