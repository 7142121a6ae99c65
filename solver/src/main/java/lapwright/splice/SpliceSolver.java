package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.effort.Effort;
import lapwright.effort.Progress;
import lapwright.effort.Questions;
import lapwright.exact.PackLimits;
import lapwright.exact.ReachableCosts;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits;
import lapwright.problem.SpliceSolution;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Status;
import org.jspecify.annotations.Nullable;

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
  private static final int FEW_WHOLES = 3;
  private static final int ROOT_ROUNDS = 60;
  private static final int QUESTIONS = 400;
  private static final int LARGE = 250;
  private static final int NEXT_TO_NOTHING = 5_000;
  private static final int QUESTIONS_IN_EARNEST = 2_000;
  private static final double DISTURBANCE = 0.02;
  private static final double[] CLOSE = {0.8, 0.6, 0.9, 0.7, 0.8, 0.6, 0.9, 0.7};

  private final SpliceProblem raw;
  private final Merged merged;
  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final long step;
  private final Effort effort;
  private final ReachableCosts reachable;
  private @Nullable FixedSplits bestSplits;
  private @Nullable StickSolution best;
  private final Map<SplitProgram.SplitColumn, Integer> staggered = new LinkedHashMap<>();
  private final Set<Tried> tried = new HashSet<>();

  /** What is left to cut once splits are chosen. */
  private record Tried(StickProblem cutting, Map<Integer, Integer> wholes) {}

  private long bound;
  private SpliceCertificate certificate = StepWeights.bySize(1, 0).certificate();

  private SpliceSolver(SpliceProblem raw, Effort effort) {
    this.raw = raw;
    this.effort = effort;
    merged = Merged.of(raw);
    problem = merged.problem();
    choices = choices(problem);
    step = step(problem);
    reachable = new ReachableCosts(merged.sticks());
  }

  /** Solves. */
  public static SpliceSolution solve(SpliceProblem problem, Effort effort) {
    return new SpliceSolver(problem, effort).run();
  }

  /**
   * A bound alone, with no more work than it takes to reach a cost that is known.
   *
   * @param known no more than that is asked for
   * @param thorough false for a bound by few classes of lengths, which takes moments
   */
  public static Bound bound(SpliceProblem problem, long known, boolean thorough, Effort effort) {
    return new SpliceSolver(problem, effort).boundUpTo(known, thorough);
  }

  /**
   * What no solution costs less than.
   *
   * @param least {@link #IMPOSSIBLE} where there is no solution
   */
  public record Bound(long least, SpliceCertificate certificate) {
    public static final long IMPOSSIBLE = JointBound.IMPOSSIBLE;
  }

  private Bound boundUpTo(long known, boolean thorough) {
    long inUnits = (Math.max(1, known) - 1) / merged.costUnit() + 1;
    List<List<Long>> first = firstSplits();
    if (first.stream().anyMatch(List::isEmpty)) {
      StepWeights bySize = StepWeights.bySize(1, 1);
      return new Bound(Bound.IMPOSSIBLE, merged.expand(bySize.certificate()));
    }
    PackLimits all = PackLimits.of(merged.sticks());
    ClassSearch search =
        new ClassSearch(
            problem, choices, merged.costUnit(), reachable, all, step, new BoundAlone(inUnits));
    if (thorough) {
      search.run(first, effort);
    } else {
      search.runOverFew(first, effort);
    }
    if (bound == JointBound.IMPOSSIBLE) {
      return new Bound(Bound.IMPOSSIBLE, merged.expand(certificate));
    }
    long raised = reachable.atLeast(Math.min(bound, inUnits), inUnits);
    return new Bound(
        Math.min(known, Math.multiplyExact(raised, merged.costUnit())), merged.expand(certificate));
  }

  private List<List<Long>> firstSplits() {
    LengthPrices bySize =
        length -> length <= problem.longestUsable() ? length : Double.POSITIVE_INFINITY;
    return choices.stream().map(choice -> choice.cheapest(bySize)).toList();
  }

  /** What the search by classes finds where a cost is known and only the bound is wanted. */
  private final class BoundAlone implements ClassSearch.Finds {
    private final long known;

    private BoundAlone(long known) {
      this.known = known;
    }

    @Override
    public void offer(List<List<Split>> splits) {
      throw new IllegalStateException("only the bound is wanted");
    }

    @Override
    public void offer(PackTree.Proven proven) {
      take(proven);
    }

    @Override
    public boolean isClosed() {
      return bound == JointBound.IMPOSSIBLE
          || reachable.atLeast(Math.min(bound, known), known) >= known;
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
    public boolean wantsSplits() {
      return false;
    }
  }

  /** True when the sticks are too few by their length alone, or give no piece long enough. */
  public static boolean isShort(SpliceProblem problem) {
    SpliceSolver solver = new SpliceSolver(problem, Effort.unlimited());
    long longest = solver.problem.longestUsable();
    return problem.plain().stream().anyMatch(item -> item.size() - problem.cut() > longest)
        || new JointBound(solver.problem, solver.choices, solver.merged.costUnit())
                .of(StepWeights.bySize(1, 1), PackLimits.of(solver.merged.sticks()))
                .bound()
            == JointBound.IMPOSSIBLE;
  }

  private SpliceSolution run() {
    List<List<Long>> first = firstSplits();
    if (first.stream().anyMatch(List::isEmpty)) {
      return SpliceSolution.none(Status.IMPOSSIBLE);
    }
    boolean apart = problem.groups().stream().anyMatch(group -> group.apart() > 0);
    PackLimits all = PackLimits.of(merged.sticks());
    new ClassSearch(problem, choices, merged.costUnit(), reachable, all, step, new Best(apart))
        .run(first, firstHalfOf(effort));
    if (bound == JointBound.IMPOSSIBLE) {
      return SpliceSolution.none(Status.IMPOSSIBLE);
    }
    cutInEarnest();
    if (isClosed() || isCloseEnough() || (best != null && effort.spent())) {
      return solution();
    }
    try (JointMaster master = new JointMaster(problem, choices, step)) {
      for (int g = 0; g < first.size(); g++) {
        master.add(g, first.get(g));
        for (List<Long> split : choices.get(g).plainOnes()) {
          master.add(g, split);
        }
      }
      if (bestSplits != null) {
        for (int g = 0; g < first.size(); g++) {
          for (Split split : bestSplits.splits().get(g)) {
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
    return solution();
  }

  private static Effort firstHalfOf(Effort effort) {
    long half = effort.remainingNanos() / 2;
    return effort.alsoStoppedBy(() -> effort.remainingNanos() < half);
  }

  /** True when more work would be long and could gain next to nothing. */
  private boolean isCloseEnough() {
    return best != null
        && problem.plain().size() + problem.groups().size() > LARGE
        && best.cost() - rawBound() <= best.cost() / NEXT_TO_NOTHING;
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
      take(proven);
    }

    @Override
    public List<ClassMaster.Cutting> cuttings() {
      return SpliceSolver.this.cuttings();
    }

    @Override
    public boolean isClosed() {
      return bound == JointBound.IMPOSSIBLE || SpliceSolver.this.isClosed();
    }

    @Override
    public boolean wantsSplits() {
      return true;
    }

    @Override
    public long cost() {
      return best == null ? Long.MAX_VALUE : best.cost() / merged.costUnit();
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
        || choices.stream().anyMatch(AnywhereChoice.class::isInstance)
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
    FixedSplits fixed = FixedSplits.of(raw, splits);
    if (fixed == null || !tried.add(new Tried(fixed.problem(), fixed.wholes()))) {
      return;
    }
    long half = effort.remainingNanos() / 2;
    StickSolution cutting =
        fixed.draft(
            best == null ? Long.MAX_VALUE : best.cost(),
            effort
                .alsoStoppedBy(() -> effort.remainingNanos() < half)
                .alsoStoppedBy(new Questions(QUESTIONS))
                .tellingInstead(progress -> {}));
    if (cutting.status().hasSolution() && (best == null || cutting.cost() < best.cost())) {
      best = cutting;
      bestSplits = fixed;
      tell();
    }
  }

  private List<ClassMaster.Cutting> cuttings() {
    List<ClassMaster.Cutting> cuttings = new ArrayList<>();
    if (best != null && bestSplits != null) {
      for (StickSolution.PatternUse use : best.patterns()) {
        List<Long> lengths = new ArrayList<>();
        for (StickSolution.Count count : use.counts()) {
          lengths.addAll(Collections.nCopies(count.count(), bestSplits.pieces().get(count.item())));
        }
        cuttings.add(new ClassMaster.Cutting(merged.number(use.stock()), lengths));
      }
    }
    return cuttings;
  }

  /** The best splits, cut as well as they can be. */
  private void cutInEarnest() {
    if (best == null || bestSplits == null || isClosed() || best.cost() == best.bound()) {
      return;
    }
    long half = effort.remainingNanos() / 4 * 3;
    best =
        bestSplits.solve(
            best,
            effort
                .alsoStoppedBy(() -> effort.remainingNanos() < half)
                .alsoStoppedBy(new Questions(QUESTIONS_IN_EARNEST))
                .tellingInstead(progress -> {}));
  }

  private void take(PackTree.Proven proven) {
    if (proven.bound() == JointBound.IMPOSSIBLE) {
      bound = JointBound.IMPOSSIBLE;
      certificate = proven.certificate();
      return;
    }
    if (proven.bound() > bound) {
      bound = proven.bound();
      certificate = proven.certificate();
      tell();
    }
  }

  private void tell() {
    effort.report(new Progress("", best == null ? -1 : best.cost(), rawBound(), false));
  }

  /** The bound in the raw problem's costs, raised to a cost that can be reached. */
  private long rawBound() {
    if (best == null) {
      return Math.multiplyExact(bound, merged.costUnit());
    }
    long known = best.cost() / merged.costUnit();
    return Math.multiplyExact(
        Math.min(known, reachable.atLeast(Math.min(bound, known), known)), merged.costUnit());
  }

  private boolean isClosed() {
    return best != null && rawBound() >= best.cost();
  }

  private SpliceSolution solution() {
    if (best == null || bestSplits == null) {
      return SpliceSolution.none(Status.NOTHING_FOUND);
    }
    best = bestSplits.polished(best);
    return new SpliceSolution(
        isClosed() ? Status.PROVED : Status.OPEN,
        bestSplits.splits(),
        bestSplits.pieces(),
        best,
        best.cost(),
        rawBound(),
        merged.expand(certificate));
  }

  private static List<Choice> choices(SpliceProblem problem) {
    List<Choice> choices = new ArrayList<>();
    Map<GridPrices.Key, GridPrices> grids = new HashMap<>();
    Map<Reaches.Key, Reaches> reaches = new HashMap<>();
    List<Long> wholes = wholes(problem);
    for (Group group : problem.groups()) {
      if (group.splits() instanceof Splits.Graph graph) {
        choices.add(new GraphChoice(graph));
        continue;
      }
      Splits.Anywhere rules = (Splits.Anywhere) group.splits();
      GraphChoice whole = null;
      if (rules.othersWhole() || WholeSticks.suffice(problem, group)) {
        whole = WholeSticks.graph(problem, rules);
      }
      if (whole != null) {
        choices.add(whole);
        continue;
      }
      GridPrices.Key key = GridPrices.key(rules, problem.longestUsable());
      AnywhereChoice anywhere =
          new AnywhereChoice(
              rules,
              problem.longestUsable(),
              wholes,
              grids.computeIfAbsent(key, GridPrices::new),
              reaches.computeIfAbsent(
                  AnywhereChoice.reachKey(rules, problem.longestUsable()), Reaches::new));
      choices.add(
          rules.othersWhole()
              ? new FewWholes(fewWholes(problem, rules, wholes), anywhere)
              : anywhere);
    }
    return choices;
  }

  /** Splits of as many lengths of whole sticks as can be listed. */
  private static GraphChoice fewWholes(
      SpliceProblem problem, Splits.Anywhere rules, List<Long> wholes) {
    List<Long> fitting =
        wholes.stream()
            .filter(whole -> whole >= rules.shortest() && whole <= rules.longest())
            .toList();
    for (int few = Math.min(FEW_WHOLES, fitting.size()); few > 0; few--) {
      List<Long> longestFirst = new ArrayList<>(fitting.subList(0, few));
      longestFirst.sort(java.util.Comparator.reverseOrder());
      GraphChoice some = WholeSticks.graph(problem, rules, longestFirst);
      if (some != null) {
        return some;
      }
    }
    return new GraphChoice(2, List.of());
  }

  /** True when each line has a split at all. */
  public static boolean canSplit(SpliceProblem problem) {
    LengthPrices bySize =
        length -> length <= problem.longestUsable() ? length : Double.POSITIVE_INFINITY;
    return choices(Merged.of(problem).problem()).stream()
        .noneMatch(choice -> choice.cheapest(bySize).isEmpty());
  }

  /**
   * True when each group whose neighbouring lines must keep their joints apart has two splits that
   * do, as far as they are tried.
   */
  public static boolean canStagger(SpliceProblem problem) {
    SpliceSolver solver = new SpliceSolver(problem, Effort.unlimited());
    LengthPrices bySize =
        length -> length <= solver.problem.longestUsable() ? length : Double.POSITIVE_INFINITY;
    for (int g = 0; g < solver.choices.size(); g++) {
      Group group = problem.groups().get(g);
      Choice choice = solver.choices.get(g);
      List<List<Long>> known = new ArrayList<>(choice.plainOnes());
      known.add(choice.cheapest(bySize));
      if (group.apart() > 0 && new Stagger(solver.problem, group).cheapest(known, bySize) == null) {
        return false;
      }
    }
    return true;
  }

  /** What a whole stick gives, the unlimited stocks first, the longest of each kind first. */
  private static List<Long> wholes(SpliceProblem problem) {
    List<Stock> stocks = new ArrayList<>(problem.stocks());
    stocks.sort(
        java.util.Comparator.comparing(Stock::isLimited).thenComparing(stock -> -stock.capacity()));
    return stocks.stream().map(stock -> stock.capacity() - problem.cut()).distinct().toList();
  }

  private static long step(SpliceProblem problem) {
    long step = 0;
    for (Group group : problem.groups()) {
      if (group.splits() instanceof Splits.Anywhere rules) {
        step = Knapsack.gcd(step, rules.step());
      }
    }
    return step;
  }
}
