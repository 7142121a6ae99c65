package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * One instance of a class.
 *
 * @param group the class it belongs to: its folder's name, or the class it was generated from
 * @param name unique in its group
 * @param problem items in order of falling size, equal sizes merged
 * @param known what is known of its optimum beforehand
 * @param costDecimals decimals by which costs were made whole; 0 when a stick simply costs 1
 */
public record Instance(
    String group, String name, StickProblem problem, Known known, int costDecimals) {
  public Instance {
    Objects.requireNonNull(group);
    Objects.requireNonNull(name);
    Objects.requireNonNull(problem);
    Objects.requireNonNull(known);
  }

  /**
   * Sticks of one length that cost 1 each.
   *
   * @param sizes one a piece, in any order
   */
  public static Instance ofPieces(
      String group, String name, long capacity, Collection<Long> sizes, Known known) {
    TreeMap<Long, Integer> demands = new TreeMap<>();
    sizes.forEach(size -> demands.merge(size, 1, Math::addExact));
    return ofDemands(group, name, capacity, demands, known);
  }

  /** Sticks of one length that cost 1 each, and how many of each size are demanded. */
  public static Instance ofDemands(
      String group, String name, long capacity, Map<Long, Integer> demands, Known known) {
    Stock stock = stock(capacity, 1, Integer.MAX_VALUE);
    return new Instance(group, name, new StickProblem(items(demands), List.of(stock), 0), known, 0);
  }

  /** Sticks that are sold singly and cut without kerf or hold. */
  public static Stock stock(long capacity, long cost, int most) {
    return new Stock(capacity, capacity, capacity, false, 0, cost, cost, 1, most);
  }

  /** Items in order of falling size. */
  public static List<Item> items(Map<Long, Integer> demands) {
    List<Item> items = new ArrayList<>();
    demands.forEach((size, demand) -> items.add(new Item(size, demand, false)));
    items.sort(Comparator.comparing(Item::size).reversed());
    return items;
  }

  public Instance withKnown(Known better) {
    return new Instance(group, name, problem, better, costDecimals);
  }

  public int types() {
    return problem.items().size();
  }

  public long pieces() {
    return problem.items().stream().mapToLong(Item::demand).sum();
  }

  /** True when there is one stock length without a limit at cost 1: bin packing, cutting stock. */
  public boolean isSingleStock() {
    if (problem.stocks().size() != 1) {
      return false;
    }
    Stock stock = problem.stocks().get(0);
    return !stock.isLimited() && stock.packCost() == 1 && stock.packSize() == 1;
  }
}
