package lapwright.compare;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.effort.Effort;
import lapwright.exact.StickSolver;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;

/**
 * The stock of one material as job after job is planned from it: packs that can still be had,
 * sticks of a pack that nobody has cut yet (paid for, so they cost nothing), and kept offcuts.
 *
 * <p>An offcut of a stick with rest r = capacity - sum of sizes is r + tail long, starts at a sawn
 * end, and takes sizes up to r: cutting it is the same as cutting more pieces from the whole stick.
 */
final class WhatIsLeft {
  private final StickProblem whole;
  private final long kerf;
  private final int[] packsTaken;
  private final int[] uncut;
  private final List<Stick> sticks = new ArrayList<>();

  /**
   * @param kerf width of a cut, in units of length
   */
  WhatIsLeft(StickProblem whole, long kerf) {
    this.whole = whole;
    this.kerf = kerf;
    this.packsTaken = new int[whole.stocks().size()];
    this.uncut = new int[whole.stocks().size()];
  }

  /** Plans a job's pieces and takes what its plan cuts. */
  StickSolution plan(SortedMap<Integer, Integer> demand, Effort effort) {
    List<Integer> items = new ArrayList<>();
    List<Item> jobItems = new ArrayList<>();
    demand.forEach(
        (item, qty) -> {
          Item all = whole.items().get(item);
          items.add(item);
          jobItems.add(new Item(all.size(), qty, all.small()));
        });
    List<Source> sources = sources();
    StickProblem problem =
        new StickProblem(jobItems, sources.stream().map(Source::stock).toList(), whole.keepFrom());
    StickSolution solution = StickSolver.solve(problem, List.of(), effort);
    for (PatternUse use : solution.patterns()) {
      Source source = sources.get(use.stock());
      for (int time = 0; time < use.times(); time++) {
        Stick stick = take(source);
        for (Count count : use.counts()) {
          stick.add(items.get(count.item()), count.count(), jobItems.get(count.item()).size());
        }
      }
    }
    return solution;
  }

  /** All sticks that were cut, equal ones together. */
  List<PatternUse> sticks() {
    Map<PatternUse, Integer> times = new LinkedHashMap<>();
    for (Stick stick : sticks) {
      times.merge(new PatternUse(stick.stock, stick.list(), 1), 1, Integer::sum);
    }
    List<PatternUse> uses = new ArrayList<>();
    times.forEach((use, n) -> uses.add(new PatternUse(use.stock(), use.counts(), n)));
    return uses;
  }

  private List<Source> sources() {
    List<Source> sources = new ArrayList<>();
    for (int j = 0; j < uncut.length; j++) {
      Stock stock = whole.stocks().get(j);
      if (uncut[j] > 0) {
        sources.add(new Source(free(stock, uncut[j]), j, new ArrayDeque<>()));
      }
      int packs = stock.isLimited() ? stock.mostPacks() - packsTaken[j] : stock.mostPacks();
      if (packs > 0) {
        sources.add(new Source(withPacks(stock, packs), j, new ArrayDeque<>()));
      }
    }
    Map<Stock, Deque<Stick>> offcuts = new LinkedHashMap<>();
    for (Stick stick : sticks) {
      Stock stock = whole.stocks().get(stick.stock);
      long offcut = stick.rest + stock.tail();
      if (offcut > 0 && offcut >= whole.keepFrom()) {
        offcuts.computeIfAbsent(offcutOf(stock, stick.rest), same -> new ArrayDeque<>()).add(stick);
      }
    }
    offcuts.forEach(
        (stock, same) -> sources.add(new Source(withPacks(stock, same.size()), -1, same)));
    return sources;
  }

  private Stick take(Source source) {
    if (source.original < 0) {
      return source.kept.removeFirst();
    }
    if (uncut[source.original] == 0) {
      packsTaken[source.original]++;
      uncut[source.original] += whole.stocks().get(source.original).packSize();
    }
    uncut[source.original]--;
    Stick stick = new Stick(source.original, whole.stocks().get(source.original).capacity());
    sticks.add(stick);
    return stick;
  }

  private Stock offcutOf(Stock stock, long rest) {
    return new Stock(
        rest + stock.tail(),
        rest,
        rest - (stock.capacity() - stock.smallCapacity()),
        stock.tail() + kerf == 0,
        stock.tail(),
        0,
        0,
        1,
        1);
  }

  private static Stock free(Stock stock, int sticks) {
    return new Stock(
        stock.length(),
        stock.capacity(),
        stock.smallCapacity(),
        stock.wholeUse(),
        stock.tail(),
        0,
        0,
        1,
        sticks);
  }

  private static Stock withPacks(Stock stock, int packs) {
    return new Stock(
        stock.length(),
        stock.capacity(),
        stock.smallCapacity(),
        stock.wholeUse(),
        stock.tail(),
        stock.packCost(),
        stock.packCash(),
        stock.packSize(),
        packs);
  }

  /**
   * Where a job's sticks come from.
   *
   * @param original index of the whole problem's stock; -1 when they are kept offcuts
   * @param kept the sticks whose offcuts they are
   */
  private record Source(Stock stock, int original, Deque<Stick> kept) {}

  /** A stick that was cut. */
  private static final class Stick {
    private final int stock;
    private final SortedMap<Integer, Integer> counts = new TreeMap<>();
    private long rest;

    private Stick(int stock, long capacity) {
      this.stock = stock;
      this.rest = capacity;
    }

    private void add(int item, int count, long size) {
      counts.merge(item, count, Math::addExact);
      rest -= size * count;
    }

    private List<Count> list() {
      List<Count> list = new ArrayList<>();
      counts.forEach((item, count) -> list.add(new Count(item, count)));
      return list;
    }
  }
}
