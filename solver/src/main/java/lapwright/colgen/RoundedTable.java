package lapwright.colgen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Patterns of sticks whose lengths share no useful divisor: priced on a table of lengths rounded to
 * a coarser grid, as long as it finds any worth having, and exactly on lists after that.
 *
 * <p>With grid g a size counts as ceil(s / g), a capacity as floor(C / g): what fits there fits.
 * The other way round, a pattern of k pieces measures at most C / g + k there, so that the table's
 * heaviest filling of floor(C / g) + k is no less than the heaviest pattern: the bound of a call
 * that the table answers. Time and memory as {@link PatternTable}'s on the coarser grid.
 */
final class RoundedTable implements PatternSource {
  private static final long CELLS = 8_000_000;
  private static final long MOST_POSITIONS = 16_000;
  private static final long FEWEST_POSITIONS = 4_000;
  private static final long MOST_PIECES = 1_000;

  private final PatternLists exact;
  private final PatternTable table;
  private final int stocks;

  /** True for a problem without small items, of which no stick holds very many. */
  static boolean suits(StickProblem problem) {
    long longest = problem.stocks().stream().mapToLong(Stock::capacity).max().orElse(0);
    return problem.items().stream()
        .noneMatch(item -> item.small() || longest / item.size() > MOST_PIECES);
  }

  /** Made for a problem that it {@link #suits}. */
  RoundedTable(StickProblem problem) {
    exact = new PatternLists(problem);
    stocks = problem.stocks().size();
    long shortest = problem.items().stream().mapToLong(Item::size).min().orElse(1);
    long positions = CELLS / Math.max(1, PatternTable.stages(problem));
    long longest = problem.stocks().stream().mapToLong(Stock::capacity).max().orElse(1);
    long grid =
        Math.max(1, longest / Math.max(FEWEST_POSITIONS, Math.min(MOST_POSITIONS, positions)));
    List<Item> items = new ArrayList<>();
    for (Item item : problem.items()) {
      items.add(new Item(-Math.floorDiv(-item.size(), grid), item.demand(), false));
    }
    List<Stock> sticks = new ArrayList<>();
    for (Stock stock : problem.stocks()) {
      sticks.add(withCapacity(stock, Math.max(0, stock.capacity()) / grid));
    }
    for (Stock stock : problem.stocks()) {
      long capacity = Math.max(0, stock.capacity());
      sticks.add(withCapacity(stock, capacity / grid + capacity / shortest));
    }
    table = new PatternTable(new StickProblem(items, sticks, 0));
  }

  private static Stock withCapacity(Stock stock, long capacity) {
    return new Stock(
        stock.length(),
        capacity,
        0,
        false,
        0,
        stock.packCost(),
        0,
        stock.packSize(),
        stock.mostPacks());
  }

  @Override
  public Priced price(long[] weights, int[] limits, long[] thresholds, int most) {
    if (most > 0) {
      long[] all = Arrays.copyOf(thresholds, 2 * stocks);
      Arrays.fill(all, stocks, all.length, Long.MAX_VALUE);
      Priced rounded = table.price(weights, limits, all, most);
      if (!rounded.patterns().isEmpty()) {
        return new Priced(rounded.greatest().subList(stocks, 2 * stocks), rounded.patterns());
      }
    }
    return exact.price(weights, limits, thresholds, most);
  }
}
