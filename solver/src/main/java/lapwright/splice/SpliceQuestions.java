package lapwright.splice;

import java.util.ArrayList;
import java.util.List;
import lapwright.effort.Effort;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceSolution.Split;

/** Questions about joined lines that need no solution. Thread-safe. */
public final class SpliceQuestions {
  private SpliceQuestions() {}

  /**
   * What no solution costs less than.
   *
   * @param least {@link #IMPOSSIBLE} where there is no solution
   */
  public record Bound(long least, SpliceCertificate certificate) {
    public static final long IMPOSSIBLE = JointBound.IMPOSSIBLE;
  }

  /**
   * A bound alone, with no more work than it takes to reach a cost that is known.
   *
   * @param known no more than that is asked for
   * @param thorough false for a bound by few classes of lengths, which takes moments
   */
  public static Bound bound(SpliceProblem raw, long known, boolean thorough, Effort effort) {
    Merged merged = Merged.of(raw);
    SpliceProblem problem = merged.problem();
    List<Choice> choices = Choices.of(problem);
    ReachableCosts reachable = new ReachableCosts(merged.sticks());
    long inUnits = (Math.max(1, known) - 1) / merged.costUnit() + 1;
    List<List<Long>> first = Choices.leastSizes(problem, choices);
    if (first.stream().anyMatch(List::isEmpty)) {
      StepWeights bySize = StepWeights.bySize(1, 1);
      return new Bound(Bound.IMPOSSIBLE, merged.expand(bySize.certificate()));
    }
    BoundAlone finds = new BoundAlone(inUnits, reachable);
    ClassSearch search =
        new ClassSearch(
            problem,
            choices,
            merged.costUnit(),
            reachable,
            PackLimits.of(merged.sticks()),
            Choices.step(problem),
            finds);
    if (thorough) {
      search.run(first, effort);
    } else {
      search.runOverFew(first, effort);
    }
    SpliceCertificate certificate = merged.expand(finds.best.certificate());
    if (finds.best.isImpossible()) {
      return new Bound(Bound.IMPOSSIBLE, certificate);
    }
    long raised = reachable.atLeast(Math.min(finds.best.bound(), inUnits), inUnits);
    return new Bound(Math.min(known, Math.multiplyExact(raised, merged.costUnit())), certificate);
  }

  /** What the search by classes finds where a cost is known and only the bound is wanted. */
  private static final class BoundAlone implements ClassSearch.Finds {
    private final long known;
    private final ReachableCosts reachable;
    private final BestBound best = new BestBound();

    private BoundAlone(long known, ReachableCosts reachable) {
      this.known = known;
      this.reachable = reachable;
    }

    @Override
    public void offer(List<List<Split>> splits) {
      throw new IllegalStateException("only the bound is wanted");
    }

    @Override
    public void offer(PackTree.Proven proven) {
      best.take(proven);
    }

    @Override
    public boolean isEnough() {
      return best.isImpossible()
          || reachable.atLeast(Math.min(best.bound(), known), known) >= known;
    }

    @Override
    public List<ClassMaster.Cutting> cuttings() {
      return List.of();
    }

    @Override
    public long cost() {
      return known;
    }

    @Override
    public void recut(Effort effort) {
      // Only the bound is wanted.
    }

    @Override
    public boolean wantsSplits() {
      return false;
    }
  }

  /** True when the sticks are too few by their length alone, or give no piece long enough. */
  public static boolean isShort(SpliceProblem raw) {
    Merged merged = Merged.of(raw);
    SpliceProblem problem = merged.problem();
    long longest = problem.longestUsable();
    return problem.plain().stream().anyMatch(item -> item.size() - problem.cut() > longest)
        || new JointBound(problem, Choices.of(problem), merged.costUnit())
                .of(StepWeights.bySize(1, 1), PackLimits.of(merged.sticks()))
                .bound()
            == JointBound.IMPOSSIBLE;
  }

  /** True when each line has a split at all. */
  public static boolean canSplit(SpliceProblem raw) {
    SpliceProblem problem = Merged.of(raw).problem();
    return Choices.leastSizes(problem, Choices.of(problem)).stream().noneMatch(List::isEmpty);
  }

  /**
   * True when each group whose neighbouring lines must keep their joints apart has two splits that
   * do, as far as they are tried.
   */
  public static boolean canStagger(SpliceProblem raw) {
    SpliceProblem problem = Merged.of(raw).problem();
    List<Choice> choices = Choices.of(problem);
    LengthPrices bySize = Choices.bySize(problem);
    for (int g = 0; g < choices.size(); g++) {
      Group group = raw.groups().get(g);
      Choice choice = choices.get(g);
      List<List<Long>> known = new ArrayList<>(choice.plainOnes());
      known.add(choice.cheapest(bySize));
      if (group.apart() > 0 && new Stagger(problem, group).cheapest(known, bySize) == null) {
        return false;
      }
    }
    return true;
  }
}
