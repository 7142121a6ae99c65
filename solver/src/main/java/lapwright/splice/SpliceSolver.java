package lapwright.splice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceSolution;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Status;

/**
 * Decides where lines are joined and how everything is cut, together.
 *
 * <p>The linear program over patterns and splits gives the bound, through weights that are checked
 * exactly, and guides dives that fix the splits; the cutting that is left is solved by exact. A
 * tree over packs closes what packs and several stock lengths leave open.
 *
 * <p>Deterministic and single-threaded, as long as the effort is not spent before the method ends
 * by itself. Thread-safe.
 */
public final class SpliceSolver {
  private static final int ROOT_ROUNDS = 60;
  private static final int NEXT_TO_NOTHING = 5_000;
  private static final int COOLINGS = 16;
  private static final int MANY_LINES = 50;
  private static final double DISTURBANCE = 0.02;
  private static final double[] CLOSE = {0.8, 0.6, 0.9, 0.7, 0.8, 0.6, 0.9, 0.7};

  private final Merged merged;
  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final long step;
  private final Effort effort;
  private final ReachableCosts reachable;
  private final Incumbent best;
  private final BestBound bound = new BestBound();
  private final Map<SplitProgram.SplitColumn, Integer> staggered = new LinkedHashMap<>();

  /** The splits of groups whose lines are staggered, that of the first line first. */
  private final Map<Integer, List<Split>> takingTurns = new LinkedHashMap<>();

  private SpliceSolver(SpliceProblem raw, Effort effort) {
    this.effort = effort;
    merged = Merged.of(raw);
    problem = merged.problem();
    choices = Choices.of(problem);
    step = Choices.step(problem);
    reachable = new ReachableCosts(merged.sticks());
    best = new Incumbent(raw, merged, effort);
  }

  /** Solves. */
  public static SpliceSolution solve(SpliceProblem problem, Effort effort) {
    return new SpliceSolver(problem, effort).run();
  }

  private SpliceSolution run() {
    List<List<Long>> first = Choices.leastSizes(problem, choices);
    if (first.stream().anyMatch(List::isEmpty)) {
      return SpliceSolution.none(Status.IMPOSSIBLE);
    }
    boolean apart = problem.groups().stream().anyMatch(group -> group.apart() > 0);
    PackLimits all = PackLimits.of(merged.sticks());
    new ClassSearch(problem, choices, merged.costUnit(), reachable, all, step, new Best(apart))
        .run(first, effort.share(2));
    if (bound.isImpossible()) {
      return SpliceSolution.none(Status.IMPOSSIBLE);
    }
    if (!isClosed() && !isCloseEnough()) {
      recut(coolings(), effort.leaving(effort.remainingNanos() / 4));
    }
    if (isWorthCuttingInEarnest()) {
      best.cutInEarnest();
    }
    if (isClosed() || isCloseEnough() || (best.isFound() && effort.spent())) {
      return solution();
    }
    try (JointMaster master = new JointMaster(problem, choices, step)) {
      for (int g = 0; g < first.size(); g++) {
        master.add(g, first.get(g));
        for (List<Long> split : choices.get(g).plainOnes()) {
          master.add(g, split);
        }
      }
      if (best.isFound()) {
        for (int g = 0; g < first.size(); g++) {
          for (Split split : best.splits().get(g)) {
            master.add(g, split.lengths());
          }
        }
      }
      master.converge(ROOT_ROUNDS, effort);
      if (!stagger(master)) {
        return SpliceSolution.none(Status.IMPOSSIBLE);
      }
      wholesAtTheirPrice();
      dive(master, CLOSE[0]);
      improve(master);
    }
    if (!isClosed() && !isCloseEnough()) {
      best.cutInEarnest();
    }
    return solution();
  }

  /** True when more work would be long and could gain next to nothing. */
  private boolean isCloseEnough() {
    return best.isFound()
        && ClassSearch.isLarge(problem)
        && best.cost() - rawBound() <= best.cost() / NEXT_TO_NOTHING;
  }

  /** True when it may close much of what is open. */
  private boolean isWorthCuttingInEarnest() {
    return best.isFound()
        && !isClosed()
        && !isCloseEnough()
        && 2 * (best.cost() - best.boundOfCutting()) >= best.cost() - rawBound();
  }

  /** What the search by classes finds. */
  private final class Best implements ClassSearch.Finds {
    private final boolean boundsAlone;

    /**
     * @param boundsAlone true when its splits need not keep all rules
     */
    private Best(boolean boundsAlone) {
      this.boundsAlone = boundsAlone;
    }

    @Override
    public void offer(List<List<Split>> splits) {
      if (!boundsAlone && !splits.isEmpty()) {
        SpliceSolver.this.offer(splits);
      }
    }

    @Override
    public void offer(PackTree.Proven proven) {
      if (bound.take(proven) && !bound.isImpossible()) {
        tell();
      }
    }

    @Override
    public List<ClassMaster.Cutting> cuttings() {
      return best.cuttings();
    }

    @Override
    public boolean isEnough() {
      return bound.isImpossible() || SpliceSolver.this.isClosed() || isCloseEnough();
    }

    @Override
    public void recut(Effort within) {
      // With several stock lengths costs lie close, and the bound is not there yet.
      SpliceSolver.this.recut(
          problem.stocks().size() == 1 ? coolings() / 2 : Math.min(1, coolings()), within);
    }

    @Override
    public boolean wantsSplits() {
      return true;
    }

    @Override
    public long cost() {
      return best.isFound() ? best.cost() / merged.costUnit() : Long.MAX_VALUE;
    }
  }

  /** The columns so far together, then dives from disturbed prices, which bring others. */
  private void improve(JointMaster master) {
    int columns = 0;
    for (int d = 0; d < CLOSE.length && !isClosed() && !effort.spent(); d++) {
      int known = master.patterns().size() + master.splits().size();
      if (staggered.isEmpty() && known > columns + columns / 20) {
        columns = known;
        List<List<Split>> splits = ColumnMip.splits(problem, master, effort);
        if (splits != null) {
          offer(splits);
        }
      }
      if (!isClosed() && !effort.spent()) {
        master.disturb(DISTURBANCE, d);
        dive(master, CLOSE[d]);
        master.disturb(0, 0);
      }
    }
  }

  /**
   * A solution of lines whose whole sticks are priced as sticks, which the linear program, where
   * such a piece may come from a longer stick, takes for cheaper than they are.
   */
  private void wholesAtTheirPrice() {
    if (!staggered.isEmpty()
        || choices.stream().anyMatch(Choice::hasAnyLength)
        || problem.groups().stream()
            .allMatch(group -> group.splits().closing() == SpliceProblem.Closing.ANY_CUT)) {
      return;
    }
    Map<Long, Double> wholes = new HashMap<>();
    double least = Double.POSITIVE_INFINITY;
    for (Stock stock : problem.stocks()) {
      double price = (double) stock.packCost() / stock.packSize();
      wholes.merge(stock.capacity() - problem.cut(), price, Math::min);
      least = stock.isLimited() ? least : Math.min(least, price / stock.capacity());
    }
    double perLength = Double.isInfinite(least) ? 1 : least;
    LengthPrices prices =
        length ->
            length > problem.longestUsable()
                ? Double.POSITIVE_INFINITY
                : Objects.requireNonNullElse(wholes.get(length), length * perLength);
    List<List<Split>> splits = new ArrayList<>();
    for (int g = 0; g < choices.size(); g++) {
      splits.add(
          List.of(new Split(choices.get(g).cheapest(prices), problem.groups().get(g).lines())));
    }
    offer(splits);
  }

  private void dive(JointMaster master, double close) {
    List<List<Split>> splits = new Dive(problem, master).run(close, staggered, effort);
    if (splits != null) {
      takingTurns.forEach(splits::set);
      offer(splits);
    }
  }

  /** Chooses the splits of lines whose joints must be kept apart; false when there are none. */
  private boolean stagger(JointMaster master) {
    LengthPrices prices = master.prices();
    for (int g = 0; g < problem.groups().size(); g++) {
      Group group = problem.groups().get(g);
      if (group.apart() == 0) {
        continue;
      }
      int number = g;
      List<List<Long>> known =
          master.splits().stream()
              .filter(split -> split.group() == number)
              .map(SplitProgram.SplitColumn::lengths)
              .toList();
      Stagger.Pair pair = new Stagger(problem, group).cheapest(known, prices);
      if (pair == null) {
        return false;
      }
      int odd = (group.lines() + 1) / 2;
      takingTurns.put(g, pair.splits(group.lines()));
      master.add(g, pair.odd());
      staggered.merge(master.split(g, pair.odd()), odd, Integer::sum);
      if (group.lines() > odd) {
        master.add(g, pair.even());
        staggered.merge(master.split(g, pair.even()), group.lines() - odd, Integer::sum);
      }
    }
    return true;
  }

  private void offer(List<List<Split>> splits) {
    if (best.offer(splits, rawBound())) {
      tell();
    }
  }

  /**
   * Where no line may have a joint more than it needs, there is little to be found; and for many
   * lines of several stock lengths dives find more in the same time.
   */
  private int coolings() {
    int lines = problem.groups().stream().mapToInt(Group::lines).sum();
    if (problem.stocks().size() > 1 && lines > MANY_LINES) {
      return 0;
    }
    return problem.groups().stream().anyMatch(group -> Recut.hasSpareJoints(problem, group))
        ? COOLINGS
        : COOLINGS / 4;
  }

  private void recut(int coolings, Effort within) {
    if (best.recut(coolings, this::isAsGoodAsBound, within)) {
      tell();
    }
  }

  /** True when no cost of the merged problem below this one is known to be possible. */
  private boolean isAsGoodAsBound(long cost) {
    return reachable.atLeast(Math.min(bound.bound(), cost), cost) >= cost;
  }

  private void tell() {
    effort.report(new Progress("", best.isFound() ? best.cost() : -1, rawBound(), false));
  }

  /** The bound in the raw problem's costs, raised to a cost that can be reached. */
  private long rawBound() {
    if (!best.isFound()) {
      return Math.multiplyExact(bound.bound(), merged.costUnit());
    }
    long known = best.cost() / merged.costUnit();
    return Math.multiplyExact(
        Math.min(known, reachable.atLeast(Math.min(bound.bound(), known), known)),
        merged.costUnit());
  }

  private boolean isClosed() {
    return best.isFound() && rawBound() >= best.cost();
  }

  private SpliceSolution solution() {
    if (!best.isFound()) {
      return SpliceSolution.none(Status.NOTHING_FOUND);
    }
    return best.solution(isClosed() ? Status.PROVED : Status.OPEN, rawBound(), bound);
  }
}
