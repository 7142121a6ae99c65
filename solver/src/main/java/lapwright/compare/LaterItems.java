package lapwright.compare;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import lapwright.plan.ItemPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;
import org.jspecify.annotations.Nullable;

/**
 * The counted goods that are still to be had once orders are placed. Unlike cut pieces they serve
 * any job: what one job does not need any more serves the next.
 *
 * @param orders of the items of which jobs need more or less, or that could not be had before
 * @param changed what the jobs need more or less
 */
public record LaterItems(List<ItemOrder> orders, List<ItemCount> changed) {
  public LaterItems {
    orders = List.copyOf(orders);
    changed = List.copyOf(changed);
  }

  /**
   * Pieces of one item for all copies of one job.
   *
   * @param placed what the placed orders give the job
   * @param now what it needs
   */
  public record ItemCount(String item, String job, int placed, int now) {
    public ItemCount {
      Objects.requireNonNull(item);
      Objects.requireNonNull(job);
    }
  }

  /** One copy of a job. */
  private record Copy(String job, int copy) {}

  /**
   * Compares what the jobs need with what placed orders give them.
   *
   * @param placed in the order in which they were placed
   * @param now what the firm jobs need, on hand as it was before all of them
   * @param mayGiveBack jobs whose items are free again where they need fewer
   */
  public static LaterItems of(
      List<OrderPlan> placed, List<ItemOrder> now, Predicate<String> mayGiveBack) {
    SortedMap<String, List<ItemPlan>> plansOf = new TreeMap<>();
    for (OrderPlan order : placed) {
      for (ItemPlan plan : order.items()) {
        plansOf.computeIfAbsent(plan.item(), item -> new ArrayList<>()).add(plan);
      }
    }
    SortedMap<String, ItemOrder> wanted = new TreeMap<>();
    plansOf.forEach(
        (item, plans) ->
            wanted.put(
                item,
                new ItemOrder(
                    new ItemStock(item, List.of(), plans.get(0).order().stock().onHand()),
                    0,
                    List.of())));
    now.forEach(order -> wanted.put(order.item(), order));
    List<ItemOrder> orders = new ArrayList<>();
    List<ItemCount> changed = new ArrayList<>();
    wanted.forEach(
        (item, order) -> {
          List<ItemPlan> plans = plansOf.getOrDefault(item, List.of());
          List<ItemOrder.Need> needs = difference(plans, order.needs(), mayGiveBack);
          changed.addAll(counts(item, plans, needs));
          int leftOver = plans.isEmpty() ? 0 : last(plans).leftOver();
          ItemStock stock = ItemsJobByJob.after(plans, order.stock());
          boolean canBeHadNow =
              leftOver < 0
                  && (stock.onHand() > 0
                      || stock.offers().stream().anyMatch(offer -> offer.atMostPacks() > 0));
          if (!needs.isEmpty() || canBeHadNow) {
            orders.add(new ItemOrder(stock, leftOver, needs));
          }
        });
    return new LaterItems(orders, changed);
  }

  /**
   * Items whose count on hand is that which the placed orders leave, and not what they began with:
   * somebody has counted them off already.
   */
  public static List<String> countedOff(List<OrderPlan> placed, List<ItemOrder> now) {
    List<String> items = new ArrayList<>();
    for (ItemOrder order : now) {
      List<ItemPlan> plans =
          placed.stream()
              .flatMap(one -> one.items().stream())
              .filter(plan -> plan.item().equals(order.item()))
              .toList();
      if (!plans.isEmpty()) {
        int before = plans.get(0).order().stock().onHand();
        int after = onHandAfter(before, plans);
        if (order.stock().onHand() == after && after != before) {
          items.add(order.item());
        }
      }
    }
    return items;
  }

  /** Pieces that lie in the shop once the plans of an item are carried out. */
  public static int onHandAfter(int before, List<ItemPlan> plans) {
    int onHand = before;
    for (ItemPlan plan : plans) {
      onHand = Math.max(0, onHand - plan.fromOnHand());
    }
    return plans.isEmpty() ? onHand : Math.addExact(onHand, Math.max(0, last(plans).leftOver()));
  }

  private static ItemPlan last(List<ItemPlan> plans) {
    return plans.get(plans.size() - 1);
  }

  private static Map<Copy, Integer> given(List<ItemPlan> plans) {
    Map<Copy, Integer> given = new LinkedHashMap<>();
    for (ItemPlan plan : plans) {
      for (ItemOrder.Need need : plan.order().needs()) {
        for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
          given.merge(new Copy(need.job(), copy), need.qty(), Math::addExact);
        }
      }
    }
    return given;
  }

  /** What the needs ask beyond what is given, copies that lack as many together. */
  private static List<ItemOrder.Need> difference(
      List<ItemPlan> plans, List<ItemOrder.Need> needs, Predicate<String> mayGiveBack) {
    Map<Copy, Integer> open = new LinkedHashMap<>();
    Map<String, @Nullable LocalDate> due = new TreeMap<>();
    for (ItemOrder.Need need : needs) {
      due.put(need.job(), need.due());
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        open.merge(new Copy(need.job(), copy), need.qty(), Math::addExact);
      }
    }
    plans.forEach(
        plan -> plan.order().needs().forEach(need -> due.putIfAbsent(need.job(), need.due())));
    given(plans).forEach((copy, qty) -> open.merge(copy, -qty, Math::addExact));
    List<ItemOrder.Need> difference = new ArrayList<>();
    open.forEach(
        (copy, qty) -> {
          if (qty == 0 || (qty < 0 && !mayGiveBack.test(copy.job()))) {
            return;
          }
          int at = difference.size() - 1;
          ItemOrder.Need before = at < 0 ? null : difference.get(at);
          if (before != null
              && before.job().equals(copy.job())
              && before.qty() == qty
              && before.lastCopy() + 1 == copy.copy()) {
            difference.set(
                at,
                new ItemOrder.Need(
                    copy.job(), before.due(), before.copies() + 1, qty, before.firstCopy()));
          } else {
            difference.add(
                new ItemOrder.Need(copy.job(), due.get(copy.job()), 1, qty, copy.copy()));
          }
        });
    return difference;
  }

  private static List<ItemCount> counts(
      String item, List<ItemPlan> plans, List<ItemOrder.Need> difference) {
    Map<String, Integer> placed = new TreeMap<>();
    given(plans).forEach((copy, qty) -> placed.merge(copy.job(), qty, Math::addExact));
    Map<String, Integer> more = new TreeMap<>();
    difference.forEach(need -> more.merge(need.job(), need.total(), Math::addExact));
    List<ItemCount> counts = new ArrayList<>();
    more.forEach(
        (job, qty) -> {
          int before = placed.getOrDefault(job, 0);
          counts.add(new ItemCount(item, job, before, before + qty));
        });
    return counts;
  }
}
