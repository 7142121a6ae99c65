package lapwright.exact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.colgen.Pattern;
import lapwright.problem.Refutation;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import org.jspecify.annotations.Nullable;

/**
 * A problem made small without loss, and the way back.
 *
 * <p>Equal items are one item. Sizes are divided by their greatest common divisor and capacities
 * rounded down after it, which is exact: every sum of sizes is a multiple. A capacity is no more
 * than all items together. Stocks that hold nothing are left out; stocks that are then equal in all
 * that decides cost are one stock, which 200 offcuts of a rack often are. Costs are divided by
 * their common divisor.
 */
final class Reduction {
  private final StickProblem raw;
  private final StickProblem reduced;
  private final List<List<Integer>> rawItems;
  private final List<List<Integer>> rawStocks;
  private final long costUnit;
  private final long sizeUnit;

  private Reduction(
      StickProblem raw,
      StickProblem reduced,
      List<List<Integer>> rawItems,
      List<List<Integer>> rawStocks,
      long costUnit,
      long sizeUnit) {
    this.raw = raw;
    this.reduced = reduced;
    this.rawItems = rawItems;
    this.rawStocks = rawStocks;
    this.costUnit = costUnit;
    this.sizeUnit = sizeUnit;
  }

  static Reduction of(StickProblem raw) {
    Map<SizeClass, List<Integer>> itemsBySize = new LinkedHashMap<>();
    long sizeUnit = 0;
    for (int i = 0; i < raw.items().size(); i++) {
      Item item = raw.items().get(i);
      sizeUnit = Numbers.gcd(sizeUnit, item.size());
      itemsBySize
          .computeIfAbsent(new SizeClass(item.size(), item.small()), k -> new ArrayList<>())
          .add(i);
    }
    List<SizeClass> sizes = new ArrayList<>(itemsBySize.keySet());
    sizes.sort(Comparator.comparing(SizeClass::small).thenComparing(s -> -s.size()));
    List<Item> items = new ArrayList<>();
    List<List<Integer>> rawItems = new ArrayList<>();
    long total = 0;
    for (SizeClass size : sizes) {
      List<Integer> members = itemsBySize.getOrDefault(size, List.of());
      int demand = 0;
      for (int member : members) {
        demand = Math.addExact(demand, raw.items().get(member).demand());
      }
      items.add(new Item(size.size() / sizeUnit, demand, size.small()));
      total = Math.addExact(total, Math.multiplyExact(size.size() / sizeUnit, demand));
      rawItems.add(List.copyOf(members));
    }
    long costUnit = 0;
    for (Stock stock : raw.stocks()) {
      costUnit = Numbers.gcd(costUnit, stock.packCost());
    }
    costUnit = Math.max(1, costUnit);
    Map<Stock, List<Integer>> stocksByLook = new LinkedHashMap<>();
    for (int j = 0; j < raw.stocks().size(); j++) {
      Stock look = reducedStock(raw.stocks().get(j), sizes, sizeUnit, costUnit, total);
      if (look != null) {
        stocksByLook.computeIfAbsent(look, k -> new ArrayList<>()).add(j);
      }
    }
    List<Stock> looks = new ArrayList<>(stocksByLook.keySet());
    looks.sort(
        Comparator.comparingLong(Stock::capacity)
            .reversed()
            .thenComparingLong(Stock::packCost)
            .thenComparingInt(Stock::packSize)
            .thenComparingLong(Stock::smallCapacity)
            .thenComparing(Stock::wholeUse));
    List<Stock> stocks = new ArrayList<>();
    List<List<Integer>> rawStocks = new ArrayList<>();
    for (Stock look : looks) {
      List<Integer> members = new ArrayList<>(stocksByLook.getOrDefault(look, List.of()));
      members.sort(
          Comparator.<Integer>comparingLong(j -> raw.stocks().get(j).packCash())
              .thenComparingLong(j -> raw.stocks().get(j).length())
              .thenComparingInt(j -> j));
      long packs = 0;
      for (int member : members) {
        packs += raw.stocks().get(member).mostPacks();
      }
      boolean limited = members.stream().allMatch(j -> raw.stocks().get(j).isLimited());
      stocks.add(
          new Stock(
              look.length(),
              look.capacity(),
              look.smallCapacity(),
              look.wholeUse(),
              0,
              look.packCost(),
              0,
              look.packSize(),
              limited ? (int) Math.min(packs, Integer.MAX_VALUE - 1) : Integer.MAX_VALUE));
      rawStocks.add(List.copyOf(members));
    }
    return new Reduction(
        raw, new StickProblem(items, stocks, 0), rawItems, rawStocks, costUnit, sizeUnit);
  }

  private record SizeClass(long size, boolean small) {}

  /** What decides cost of a stock, everything else set to zero; null when it holds nothing. */
  private static @Nullable Stock reducedStock(
      Stock stock, List<SizeClass> sizes, long sizeUnit, long costUnit, long total) {
    long capacity = Math.min(total, Math.floorDiv(stock.capacity(), sizeUnit));
    boolean anySmall = sizes.stream().anyMatch(SizeClass::small);
    long smallCapacity =
        anySmall
            ? Math.max(0, Math.min(capacity, Math.floorDiv(stock.smallCapacity(), sizeUnit)))
            : 0;
    boolean whole =
        anySmall
            && stock.wholeUse()
            && sizes.stream().anyMatch(s -> s.small() && s.size() == stock.capacity());
    boolean holdsAny =
        whole
            || sizes.stream()
                .anyMatch(s -> s.size() / sizeUnit <= (s.small() ? smallCapacity : capacity));
    if (!holdsAny || stock.mostPacks() == 0) {
      return null;
    }
    return new Stock(
        0,
        capacity,
        Math.min(smallCapacity, capacity),
        whole,
        0,
        stock.packCost() / costUnit,
        0,
        stock.packSize(),
        1);
  }

  StickProblem raw() {
    return raw;
  }

  StickProblem reduced() {
    return reduced;
  }

  long rawCost(long reducedCost) {
    return Math.multiplyExact(reducedCost, costUnit);
  }

  /** The least reduced cost that is no less than a raw one. */
  long reducedCost(long rawCost) {
    return rawCost / costUnit + (rawCost % costUnit > 0 ? 1 : 0);
  }

  /** What the weights of all items together may be at most, so that they fit 62 bits when raw. */
  double greatestSum() {
    return (double) (1L << 60) / costUnit;
  }

  /** Length of the offcut that a pattern leaves, in raw units; 0 when it is not kept. */
  long keptOffcut(Pattern pattern) {
    Stock stock = raw.stocks().get(rawStocks.get(pattern.stock()).get(0));
    long rest = stock.capacity();
    for (int k = 0; k < pattern.kinds(); k++) {
      rest -= pattern.count(k) * reduced.items().get(pattern.item(k)).size() * sizeUnit;
    }
    long offcut = Math.max(0, rest + stock.tail());
    return offcut >= raw.keepFrom() ? offcut : 0;
  }

  /** Length of a stick, in raw units. */
  long lengthOf(int stock) {
    return raw.stocks().get(rawStocks.get(stock).get(0)).length();
  }

  /** Money to be spent now for packs of a stock, those on hand used first. */
  long cashOf(int stock, int packs) {
    long cash = 0;
    int left = packs;
    for (int member : rawStocks.get(stock)) {
      int taken = Math.min(left, raw.stocks().get(member).mostPacks());
      cash = Math.addExact(cash, Math.multiplyExact(raw.stocks().get(member).packCash(), taken));
      left -= taken;
    }
    return cash;
  }

  /** A solution of the raw problem in the reduced problem's terms; null when it is none. */
  @Nullable Layout reduce(List<PatternUse> uses) {
    int[] itemOfRaw = new int[raw.items().size()];
    for (int i = 0; i < rawItems.size(); i++) {
      for (int member : rawItems.get(i)) {
        itemOfRaw[member] = i;
      }
    }
    int[] stockOfRaw = new int[raw.stocks().size()];
    Arrays.fill(stockOfRaw, -1);
    for (int j = 0; j < rawStocks.size(); j++) {
      for (int member : rawStocks.get(j)) {
        stockOfRaw[member] = j;
      }
    }
    Layout.Builder builder = new Layout.Builder(reduced);
    for (PatternUse use : uses) {
      int stock = stockOfRaw[use.stock()];
      if (stock < 0) {
        return null;
      }
      int[] counts = new int[rawItems.size()];
      for (Count count : use.counts()) {
        counts[itemOfRaw[count.item()]] += count.count();
      }
      builder.add(Pattern.ofCounts(stock, counts), use.times());
    }
    return builder.buildIfComplete();
  }

  /** A solution of the reduced problem in the raw problem's terms: patterns and packs. */
  Expanded expand(Layout layout) {
    int[] left = new int[raw.items().size()];
    for (int i = 0; i < left.length; i++) {
      left[i] = raw.items().get(i).demand();
    }
    int[] packs = new int[raw.stocks().size()];
    int[] sticksOpen = new int[raw.stocks().size()];
    Map<RawPattern, Integer> uses = new LinkedHashMap<>();
    for (Layout.Use use : layout.uses()) {
      int times = use.times();
      while (times > 0) {
        List<Count> counts = takeRaw(use.pattern(), left);
        int run = times;
        for (Count count : counts) {
          run = Math.min(run, left[count.item()] / count.count());
        }
        int stock = stickFrom(rawStocks.get(use.pattern().stock()), packs, sticksOpen);
        run = Math.min(run, sticksOpen[stock]);
        sticksOpen[stock] -= run;
        for (Count count : counts) {
          left[count.item()] -= run * count.count();
        }
        uses.merge(new RawPattern(stock, counts), run, Integer::sum);
        times -= run;
      }
    }
    List<PatternUse> patterns = new ArrayList<>();
    uses.forEach((p, times) -> patterns.add(new PatternUse(p.stock(), p.counts(), times)));
    List<Integer> packList = new ArrayList<>();
    for (int count : packs) {
      packList.add(count);
    }
    return new Expanded(patterns, packList);
  }

  /** Patterns and packs in the raw problem's terms. */
  record Expanded(List<PatternUse> patterns, List<Integer> packs) {}

  private record RawPattern(int stock, List<Count> counts) {}

  private List<Count> takeRaw(Pattern pattern, int[] left) {
    List<Count> counts = new ArrayList<>();
    for (int k = 0; k < pattern.kinds(); k++) {
      int wanted = pattern.count(k);
      for (int member : rawItems.get(pattern.item(k))) {
        int taken = Math.min(wanted, left[member]);
        if (taken > 0) {
          counts.add(new Count(member, taken));
          wanted -= taken;
        }
      }
      if (wanted > 0) {
        throw new IllegalStateException("more cut than demanded of item " + pattern.item(k));
      }
    }
    counts.sort(Comparator.comparingInt(Count::item));
    return counts;
  }

  /** The first of equal stocks with an open stick; opens a pack where none is. */
  private int stickFrom(List<Integer> members, int[] packs, int[] sticksOpen) {
    for (int member : members) {
      if (sticksOpen[member] > 0) {
        return member;
      }
      if (packs[member] < raw.stocks().get(member).mostPacks()) {
        packs[member]++;
        sticksOpen[member] = raw.stocks().get(member).packSize();
        return member;
      }
    }
    throw new IllegalStateException("more sticks used than there are");
  }

  /** A certificate of the reduced problem in the raw problem's terms. */
  StickCertificate expand(StickCertificate certificate) {
    if (certificate instanceof StickCertificate.Weights leaf) {
      // A unit of reduced cost is costUnit units of cost.
      long divisor = Numbers.gcd(leaf.scale(), costUnit);
      List<Long> weights = new ArrayList<>(Collections.nCopies(raw.items().size(), 0L));
      for (int i = 0; i < rawItems.size(); i++) {
        long weight = Math.multiplyExact(leaf.weights().get(i), costUnit / divisor);
        for (int member : rawItems.get(i)) {
          weights.set(member, weight);
        }
      }
      return new StickCertificate.Weights(leaf.scale() / divisor, weights);
    }
    if (certificate instanceof StickCertificate.NoSolution none) {
      return new StickCertificate.NoSolution(expand(none.refutation()));
    }
    StickCertificate.PackSplit split = (StickCertificate.PackSplit) certificate;
    List<Integer> stocks = new ArrayList<>();
    for (int stock : split.stocks()) {
      stocks.addAll(rawStocks.get(stock));
    }
    stocks.sort(Comparator.naturalOrder());
    return new StickCertificate.PackSplit(
        stocks, split.packs(), expand(split.fewer()), expand(split.more()));
  }

  private Refutation expand(Refutation refutation) {
    if (refutation instanceof Refutation.HoldingSplit split) {
      return new Refutation.HoldingSplit(
          bySize(split.holding()), split.times(), expand(split.fewer()), expand(split.more()));
    }
    Refutation.Sieve sieve = (Refutation.Sieve) refutation;
    return new Refutation.Sieve(
        bySize(sieve.weights()),
        sieve.cuts().stream()
            .map(
                cut ->
                    new Refutation.CutTimes(
                        cut.times(), cut.divisor(), cut.constant(), bySize(cut.multipliers())))
            .toList(),
        sieve.decided(),
        sieve.rest() == null ? null : expand(sieve.rest()));
  }

  private <T> SortedMap<Long, T> bySize(SortedMap<Long, T> reducedSizes) {
    SortedMap<Long, T> sizes = new TreeMap<>();
    reducedSizes.forEach((size, value) -> sizes.put(Math.multiplyExact(size, sizeUnit), value));
    return sizes;
  }
}
