package lapwright.exact;

import java.util.ArrayList;
import java.util.List;
import lapwright.colgen.Master;
import lapwright.colgen.Pattern;
import lapwright.colgen.PatternSource;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.problem.Refutation;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import org.jspecify.annotations.Nullable;

/** The state of one solve: the best solution, the best bound, and the order of attack. */
final class Search {
  private static final int LEAST_COLUMNS_A_CALL = 200;
  private static final int MOST_NODES = 200;
  private static final int DIVES = 6;

  /** Part of one stick. */
  private static final long NEXT_TO_NOTHING = 500;

  private static final int MOST_COLUMNS_FOR_MIP = 1500;
  private static final int MOST_MIP_NODES = 500;

  private final StickProblem problem;
  private final double greatestSum;
  private final boolean thorough;
  private final long ceiling;
  private final Effort effort;
  private final ReachableCosts reachable;
  private final List<GreedyFill> completions = new ArrayList<>();
  private @Nullable Layout best;
  private long bound;
  private StickCertificate certificate;
  private boolean impossible;
  private boolean claimed;
  private int recombined;

  /**
   * @param greatestSum what the weights of all items together may be at most
   * @param thorough false for a draft: the root alone, and no integer programs
   * @param ceiling only solutions that cost less are wanted
   */
  Search(StickProblem problem, double greatestSum, boolean thorough, long ceiling, Effort effort) {
    this.thorough = thorough;
    this.ceiling = ceiling;
    this.greatestSum = greatestSum;
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
    PackLimits everything = PackLimits.of(problem);
    offer(new GreedyFill(problem, GreedyFill.longestFirst(problem)).complete(nothingYet()));
    offer(LengthBound.of(problem, everything));
    if (isClosed()) {
      return;
    }
    offer(DualFeasible.of(problem, everything));
    if (isClosed()) {
      return;
    }
    completions.add(new GreedyFill(problem, new FullestFill(problem)));
    offer(completions.get(0).complete(nothingYet()));
    completions.add(new GreedyFill(problem, GreedyFill.longestFirst(problem)));
    if (isClosed() || effort.spent()) {
      return;
    }
    List<Pattern> filling = isFull() ? refuteFull() : List.of();
    if (isClosed() || effort.spent()) {
      return;
    }
    PatternSource source = PatternSource.of(problem);
    try (Relaxation relaxation = new Relaxation(problem, source, columnsACall(), greatestSum)) {
      if (best != null) {
        relaxation.addAll(best);
      }
      filling.forEach(relaxation.master()::add);
      new PackTree(problem, relaxation, this, effort)
          .run(isOneStock() || !thorough ? 1 : MOST_NODES);
      settleOneStock();
    }
  }

  /** More where more items are, so that the calls do not become more. */
  private int columnsACall() {
    return Math.max(LEAST_COLUMNS_A_CALL, problem.items().size() * 2 / 3);
  }

  private boolean isOneStock() {
    return problem.stocks().size() == 1 && problem.stocks().get(0).packSize() == 1;
  }

  /**
   * True when the sticks of the bound have next to nothing to waste: then a relaxation that lets
   * sticks waste says no more than the lengths do.
   */
  private boolean isFull() {
    if (!isOneStock() || !thorough) {
      return false;
    }
    long price = problem.stocks().get(0).packCost();
    long capacity = problem.stocks().get(0).capacity();
    if (price <= 0) {
      return false;
    }
    long waste = capacity * Numbers.ceilDiv(bound(), price);
    for (StickProblem.Item item : problem.items()) {
      waste -= item.size() * item.demand();
    }
    return waste < capacity / NEXT_TO_NOTHING;
  }

  /** With one stock length sold singly: does one stick fewer than known suffice? */
  private void settleOneStock() {
    if (!isOneStock() || !thorough) {
      return;
    }
    long price = problem.stocks().get(0).packCost();
    long refused = 0;
    while (best != null && price > 0 && bound() < best.cost() && !effort.spent()) {
      long sticks = Numbers.ceilDiv(bound(), price) + refused;
      if (sticks * price >= best.cost()) {
        claimed = true;
        return;
      }
      Sufficiency.Verdict verdict = new Sufficiency(problem, effort).of(List.of(sticks));
      if (verdict.layout() != null) {
        offer(verdict.layout());
      } else if (verdict.refutation() != null) {
        refused = 0;
        offer((sticks + 1) * price, morePacksThan(sticks, verdict.refutation()));
      } else if (verdict.refused()) {
        refused++;
      } else {
        return;
      }
    }
  }

  /** Tries to refute the sticks of the bound; else gives patterns that a relaxation is made of. */
  private List<Pattern> refuteFull() {
    long price = problem.stocks().get(0).packCost();
    long sticks = Numbers.ceilDiv(bound(), price);
    Sufficiency.Filling filling = new Sufficiency(problem, effort).filling(List.of(sticks));
    if (filling.refutation() != null) {
      offer((sticks + 1) * price, morePacksThan(sticks, filling.refutation()));
    }
    return filling.patterns();
  }

  private StickCertificate morePacksThan(long packs, Refutation refutation) {
    return new StickCertificate.PackSplit(
        List.of(0),
        Math.toIntExact(packs),
        new StickCertificate.NoSolution(refutation),
        LengthBound.certificate(1, new long[problem.items().size()]));
  }

  /**
   * Decides whether the packs of settled limits suffice: takes a solution that is found, and gives
   * the refutation where there is none; null where it cannot tell.
   */
  @Nullable Refutation settle(PackLimits limits) {
    if (!thorough) {
      return null;
    }
    List<Long> sticks = new ArrayList<>();
    for (int j = 0; j < problem.stocks().size(); j++) {
      if (!limits.isLimited(j)) {
        return null;
      }
      sticks.add((long) limits.most(j) * problem.stocks().get(j).packSize());
    }
    Sufficiency.Verdict verdict = new Sufficiency(problem, effort).of(sticks);
    if (verdict.layout() != null) {
      offer(verdict.layout());
    }
    return verdict.refutation();
  }

  private Layout.Builder nothingYet() {
    return new Layout.Builder(problem);
  }

  /** Dives from a node's relaxation. */
  void dive(Relaxation relaxation, Relaxation.Bounded from, PackLimits limits) {
    Master.Solution solution = from.solution();
    if (!isClosed() && solution != null && !effort.spent()) {
      dive(relaxation, from, solution, limits, bound);
    }
  }

  /**
   * Looks for a better solution among the patterns that are known, if they are few, and by a tenth
   * more than when that was last done: the same patterns within narrower limits give nothing new.
   * Not with one stock sold singly, where {@link Sufficiency} does better by what may be wasted.
   */
  void recombine(PackLimits limits, Master master) {
    int patterns = master.patternCount();
    if (thorough
        && !isOneStock()
        && !isClosed()
        && patterns <= MOST_COLUMNS_FOR_MIP
        && patterns > recombined + recombined / 10
        && !effort.spent()) {
      recombined = patterns;
      long most = best == null ? Long.MAX_VALUE : best.cost() - 1;
      offer(
          ColumnMip.solve(problem, limits, master.patterns(), bound, most, MOST_MIP_NODES, effort));
    }
  }

  /**
   * Dives from the relaxation whose last solution that is; its packs are as the master's bounds
   * have them.
   *
   * @param from with the weights that prove its bound within the limits
   */
  void dive(
      Relaxation relaxation,
      Relaxation.Bounded from,
      Master.Solution solution,
      PackLimits limits,
      long aim) {
    // With one stock length what may be wasted is searched for solutions after the dives.
    boolean exactly = thorough && problem.stocks().size() > 1;
    ExactFinish finish = exactly ? new ExactFinish(problem, limits, from) : null;
    WindowFinish window =
        thorough && WindowFinish.suits(problem) ? new WindowFinish(problem, limits, effort) : null;
    new Dive(problem, relaxation, completions, finish, window, effort)
        .run(
            solution,
            DIVES,
            new Dive.Finds() {
              @Override
              public boolean wants(double cost) {
                return !isClosed() && (best == null || Math.ceil(cost - 1e-6) < best.cost());
              }

              @Override
              public long aim() {
                return aim;
              }

              @Override
              public long goal() {
                return best == null ? aim : best.cost() - 1;
              }

              @Override
              public void take(Layout layout) {
                offer(layout);
              }
            });
  }

  /**
   * True when a relaxation need not be solved further: its bound closes it, or no better bound
   * would be raised to more.
   */
  boolean isEnough(long provenBound, double most) {
    if (isClosedBy(provenBound)) {
      return true;
    }
    return best != null
        && provenBound >= 0
        && most < best.cost()
        && reachable.atLeast(Math.max(provenBound, bound), best.cost())
            >= reachable.atLeast((long) Math.ceil(most - 1e-6), best.cost());
  }

  /** True when a bound, raised to what can be reached, leaves nothing to be gained. */
  boolean isClosedBy(long provenBound) {
    return provenBound >= ceiling
        || (best != null
            && provenBound >= 0
            && (provenBound >= best.cost()
                || reachable.atLeast(provenBound, best.cost()) >= best.cost()));
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

  private void offer(LengthBound.@Nullable Proven proven) {
    if (proven != null) {
      offer(proven.bound(), proven.weights());
    }
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
    return bound >= ceiling || (best != null && bound >= best.cost());
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
