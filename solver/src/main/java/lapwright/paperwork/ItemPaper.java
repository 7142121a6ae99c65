package lapwright.paperwork;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import lapwright.check.CheckedPlan;
import lapwright.compare.OneMore;
import lapwright.plan.ItemPlan;
import lapwright.shop.ItemOrder;
import lapwright.shop.Shop;

/**
 * Where the pieces of one item go, and what one more would cost.
 *
 * @param orders what was bought of it, the first order first; empty where no job needs it
 * @param oneMore the last of them with one more piece; empty where there is none
 */
public record ItemPaper(Shop shop, String item, List<ItemPlan> orders, List<ItemPlan> oneMore) {
  public ItemPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(item);
    orders = List.copyOf(orders);
    oneMore = List.copyOf(oneMore);
  }

  /** The paper of orders that were placed one after the other, at least one. */
  public static ItemPaper of(List<CheckedPlan> plans, String item) {
    List<ItemPlan> orders = new ArrayList<>();
    for (CheckedPlan plan : plans) {
      plan.plan().items().stream().filter(one -> one.item().equals(item)).forEach(orders::add);
    }
    return new ItemPaper(
        plans.get(0).plan().shop(),
        item,
        orders,
        orders.isEmpty() ? List.of() : List.of(OneMore.ofItem(orders.get(orders.size() - 1))));
  }

  /** All items of the plans, in the order of their letters. */
  public static SortedSet<String> items(List<CheckedPlan> plans) {
    SortedSet<String> items = new TreeSet<>();
    plans.forEach(plan -> plan.plan().items().forEach(item -> items.add(item.item())));
    return items;
  }

  /** Pieces that the jobs need, all orders together. */
  public int needed() {
    return orders.stream()
        .flatMap(order -> order.order().needs().stream())
        .mapToInt(ItemOrder.Need::total)
        .reduce(0, Math::addExact);
  }

  /** The last order. */
  public ItemPlan last() {
    return orders.get(orders.size() - 1);
  }

  /** What one more piece adds to the cost of the last order, in the unit of its cost. */
  public long oneMoreCosts() {
    return oneMore.get(0).cost() - last().cost();
  }

  /** True when one more cannot be had. */
  public boolean oneMoreIsMissing() {
    return oneMore.get(0).missing() > last().missing();
  }
}
