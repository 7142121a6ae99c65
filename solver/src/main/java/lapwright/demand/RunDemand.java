package lapwright.demand;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import lapwright.layout.ExpansionGaps;
import lapwright.layout.JointGraph;
import lapwright.layout.StretchSplits;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.LengthPattern;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Arc;
import lapwright.problem.SpliceProblem.Beside;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits;
import lapwright.problem.SpliceSolution;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;

/**
 * One material's order with runs as a problem in integers, or a part of it, and the way back.
 *
 * <p>Plain items are the distinct lengths as {@link Need#planned} gives them, longest first. Each
 * unbroken stretch of a run is a group of lines; equal stretches are one group, unless their joints
 * must be staggered. What sticks give that the order as a whole offers decides how few joints a run
 * may have, also in a part of it. Immutable.
 */
public final class RunDemand {
  private final MaterialOrder order;
  private final List<Supply> supplies;
  private final List<UsableStick> sticks;
  private final SpliceProblem problem;
  private final List<GroupLines> groups = new ArrayList<>();

  /** The lines of a group in the shop's words. */
  private record GroupLines(StretchSplits splits, List<LineName> lines) {}

  /** A stretch of one line. */
  private record LineName(int run, int line, int stretch, StretchSplits splits) {}

  private RunDemand(
      MaterialOrder order,
      Predicate<Need> needs,
      Predicate<RunNeed> runs,
      Predicate<Supply> offered) {
    this.order = order;
    List<Supply> all =
        order.supplies().stream()
            .filter(supply -> StickDemand.sawTakes(order.saw(), supply))
            .toList();
    this.supplies = all.stream().filter(offered).toList();
    this.sticks = supplies.stream().map(this::stick).toList();
    StickPrices prices = new StickPrices(order);
    List<Stock> stocks = new ArrayList<>();
    for (int j = 0; j < supplies.size(); j++) {
      stocks.add(StickDemand.stock(supplies.get(j), sticks.get(j), prices));
    }
    long kerf = order.saw().kerf().units();
    long hold = order.saw().hold().units();
    SortedMap<Length, Integer> demand = new TreeMap<>(Collections.reverseOrder());
    Set<Length> small = new HashSet<>();
    for (Need need : order.needs()) {
      if (needs.test(need)) {
        Length planned = need.planned(order.saw().kerf());
        demand.merge(planned, need.total(), Math::addExact);
        if (need.held().isShorterThan(order.saw().hold())) {
          small.add(planned);
        }
      }
    }
    List<Item> items = new ArrayList<>();
    demand.forEach(
        (length, qty) ->
            items.add(new Item(Math.addExact(length.units(), kerf), qty, small.contains(length))));
    this.problem =
        new SpliceProblem(
            items,
            stocks,
            kerf,
            hold,
            order.material().keepOffcutsFrom().units(),
            groups(all, runs));
  }

  /**
   * The whole order.
   *
   * @throws lapwright.layout.LayoutException when no split of a run keeps its rules
   */
  public static RunDemand of(MaterialOrder order) {
    return new RunDemand(order, need -> true, run -> true, supply -> true);
  }

  /** A part of an order, cut from a part of its supplies. */
  public static RunDemand of(
      MaterialOrder order,
      Predicate<Need> needs,
      Predicate<RunNeed> runs,
      Predicate<Supply> supplies) {
    return new RunDemand(order, needs, runs, supplies);
  }

  private UsableStick stick(Supply supply) {
    return UsableStick.of(order.material(), order.saw(), supply);
  }

  private List<Group> groups(List<Supply> all, Predicate<RunNeed> wanted) {
    StretchesOfRuns stretchesOfRuns = new StretchesOfRuns(order, all, supplies);
    Map<GroupKey, GroupLines> byKey = new LinkedHashMap<>();
    for (int r = 0; r < order.runs().size(); r++) {
      RunNeed need = order.runs().get(r);
      if (!wanted.test(need)) {
        continue;
      }
      List<StretchSplits> stretches = stretchesOfRuns.of(need);
      for (int s = 0; s < stretches.size(); s++) {
        StretchSplits splits = stretches.get(s);
        long apart = apart(need.run(), splits);
        GroupKey key =
            new GroupKey(inIntegers(splits), apart, apart > 0 ? r : -1, apart > 0 ? s : -1);
        GroupLines lines =
            byKey.computeIfAbsent(key, k -> new GroupLines(splits, new ArrayList<>()));
        for (int line = need.firstLine(); line <= need.lastLine(); line++) {
          lines.lines().add(new LineName(r, line, s, splits));
        }
      }
    }
    List<Group> made = new ArrayList<>();
    byKey.forEach(
        (key, lines) -> {
          groups.add(lines);
          made.add(
              key.apart() == 0
                  ? new Group(lines.lines().size(), key.splits(), 0)
                  : new Group(
                      lines.lines().size(),
                      key.splits(),
                      key.apart(),
                      beside(
                          order.runs().get(key.run()),
                          key.stretch(),
                          lines.splits(),
                          key.apart())));
        });
    return made;
  }

  /**
   * Joints on both sides of an expansion gap, in neighbouring lines, are far enough apart if each
   * is half as far from the gap.
   */
  private static Beside beside(RunNeed need, int stretch, StretchSplits splits, long apart) {
    List<Length> gaps = ExpansionGaps.of(need.run());
    long half = apart - apart / 2;
    return new Beside(
        splits.earlier(),
        need.settled().stream()
            .map(line -> line.stream().map(joint -> splits.reachOf(joint.units())).toList())
            .toList(),
        stretch == 0
            ? Long.MIN_VALUE
            : splits.reachOf(Math.addExact(gaps.get(stretch - 1).units(), half)),
        stretch == gaps.size()
            ? Long.MAX_VALUE
            : splits.reachOf(Math.subtractExact(gaps.get(stretch).units(), half)));
  }

  /**
   * How far joints of neighbouring lines must be planned apart. Where they may go anywhere, what
   * sticks give back to butt gaps moves the middle of each by a quarter of its gap at most.
   */
  private static long apart(Run run, StretchSplits splits) {
    long stagger = run.rules().stagger().units();
    boolean moves = stagger > 0 && splits.graph() == null && splits.join() < 0;
    return moves ? Math.addExact(stagger, -splits.join() / 2 + 1) : stagger;
  }

  /** What lines must have in common to be one group. */
  private record GroupKey(Splits splits, long apart, int run, int stretch) {}

  private static Splits inIntegers(StretchSplits splits) {
    JointGraph graph = splits.graph();
    if (graph != null) {
      return new Splits.Graph(
          graph.positions(),
          graph.legs().stream().map(leg -> new Arc(leg.from(), leg.to(), leg.length())).toList(),
          closing(splits.run().rules().closing()));
    }
    return new Splits.Anywhere(
        splits.total(),
        splits.join(),
        splits.mostPieces(),
        splits.limits().shortest(),
        splits.limits().shortestAtEnd(),
        splits.limits().longest(),
        splits.run().rules().pieces().step().units(),
        closing(splits.run().rules().closing()));
  }

  private static Closing closing(ClosingPiece rule) {
    if (!rule.othersWhole()) {
      return Closing.ANY_CUT;
    }
    return switch (rule.where()) {
      case START -> Closing.FIRST;
      case END -> Closing.LAST;
      case EITHER -> Closing.FIRST_OR_LAST;
    };
  }

  public SpliceProblem problem() {
    return problem;
  }

  /**
   * The same with as many further sticks as it takes, which cost 1 each, and all else nothing: its
   * least cost is how many are missing. The further sticks are the last stock; they are as long as
   * the longest that can be had, or lie there.
   */
  public SpliceProblem withFurtherSticks() {
    SpliceProblem free = withoutCosts();
    List<Stock> stocks = new ArrayList<>(free.stocks());
    Stock longest = null;
    for (Stock stock : stocks) {
      longest = longest == null || stock.capacity() > longest.capacity() ? stock : longest;
    }
    if (longest != null) {
      stocks.add(priced(longest, 1, 1, Integer.MAX_VALUE));
    }
    return problem.withStocks(stocks);
  }

  /** The same where nothing costs anything. */
  public SpliceProblem withoutCosts() {
    return problem.withStocks(
        problem.stocks().stream()
            .map(stock -> priced(stock, 0, stock.packSize(), stock.mostPacks()))
            .toList());
  }

  private static Stock priced(Stock stock, long price, int packSize, int mostPacks) {
    return new Stock(
        stock.length(),
        stock.capacity(),
        stock.smallCapacity(),
        stock.wholeUse(),
        stock.tail(),
        price,
        price,
        packSize,
        mostPacks);
  }

  /** The length of the further sticks; empty where there is no stock at all. */
  public Optional<Length> furtherLength() {
    Supply longest = null;
    long capacity = 0;
    for (int j = 0; j < supplies.size(); j++) {
      if (longest == null || problem.stocks().get(j).capacity() > capacity) {
        longest = supplies.get(j);
        capacity = problem.stocks().get(j).capacity();
      }
    }
    return Optional.ofNullable(longest).map(Supply::length);
  }

  public MaterialOrder order() {
    return order;
  }

  /** A solution's patterns in the shop's words, in the solution's order. */
  public List<LengthPattern> patterns(SpliceSolution solution) {
    if (solution.cutting() == null) {
      return List.of();
    }
    return patterns(solution.cutting().patterns(), solution.pieces());
  }

  /**
   * Patterns in the shop's words.
   *
   * @param pieces length of each item
   */
  List<LengthPattern> patterns(List<PatternUse> uses, List<Long> pieces) {
    List<LengthPattern> patterns = new ArrayList<>();
    for (PatternUse use : uses) {
      SortedMap<Length, Integer> counts = new TreeMap<>();
      long sizes = 0;
      boolean held = false;
      for (Count count : use.counts()) {
        long length = pieces.get(count.item());
        counts.merge(Length.ofUnits(length), count.count(), Math::addExact);
        sizes += (length + problem.cut()) * count.count();
        held |=
            count.item() < problem.plain().size()
                ? !problem.plain().get(count.item()).small()
                : length >= problem.hold();
      }
      if (!counts.isEmpty()) {
        Stock stock = problem.stocks().get(use.stock());
        long room = (held ? stock.capacity() : stock.smallCapacity()) - sizes;
        patterns.add(
            new LengthPattern(
                supplies.get(use.stock()).key(),
                counts,
                use.times(),
                Length.ofUnits(sticks.get(use.stock()).offcut(sizes)),
                Length.ofUnits(Math.max(0, room))));
      }
    }
    return patterns;
  }

  /** The lines as the solution splits them, in the order of the runs. */
  public List<PlannedLine> lines(SpliceSolution solution) {
    List<PlannedLine> lines = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      GroupLines group = groups.get(g);
      int next = 0;
      for (Split split :
          alternating(solution.splits().get(g), problem.groups().get(g).apart() > 0)) {
        int closing = closing(problem.groups().get(g), split);
        for (int i = 0; i < split.lines(); i++) {
          LineName name = group.lines().get(next++);
          lines.add(
              new PlannedLine(
                  name.run(),
                  order.runs().get(name.run()),
                  name.line(),
                  name.stretch(),
                  name.splits().lay(split.lengths(), closing, name.line())));
        }
      }
    }
    lines.sort(null);
    return lines;
  }

  /** Index of the piece that may be cut where all others are whole sticks; else -1. */
  private int closing(Group group, Split split) {
    return group.splits().closing() == Closing.ANY_CUT
        ? -1
        : problem.closing(group, split.lengths());
  }

  /** Splits line by line; two that must keep their joints apart take turns. */
  private static List<Split> alternating(List<Split> splits, boolean apart) {
    if (!apart || splits.size() != 2) {
      return splits;
    }
    List<Split> turns = new ArrayList<>();
    int more = splits.get(0).lines() >= splits.get(1).lines() ? 0 : 1;
    int lines = splits.get(0).lines() + splits.get(1).lines();
    for (int i = 0; i < lines; i++) {
      turns.add(new Split(splits.get(i % 2 == 0 ? more : 1 - more).lengths(), 1));
    }
    return turns;
  }

  /** Keys of the supplies that are these stocks. */
  public List<String> keys(List<Integer> stocks) {
    return stocks.stream().map(stock -> supplies.get(stock).key()).toList();
  }

  /** A certificate in the shop's words. */
  public Certificate certificate(SpliceCertificate certificate) {
    if (certificate instanceof SpliceCertificate.Weights leaf) {
      SortedMap<Length, Long> weights = new TreeMap<>();
      leaf.weights().forEach((length, weight) -> weights.put(Length.ofUnits(length), weight));
      return new Certificate.RunWeights(leaf.scale(), weights, leaf.perSize());
    }
    SpliceCertificate.PackSplit split = (SpliceCertificate.PackSplit) certificate;
    return new Certificate.PackSplit(
        keys(split.stocks()), split.packs(), certificate(split.fewer()), certificate(split.more()));
  }
}
