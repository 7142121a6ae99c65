package lapwright.paperwork;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What one supplier brings, on his terms. None of it decides a plan.
 *
 * @param terms as the shop has them
 * @param priced false when nothing that is bought of him has a price
 * @param goods what the invoice says for material and items
 * @param milligrams weight of the lines whose material has one, each line rounded once
 * @param unweighed lines whose material has no weight; items are not counted
 * @param longest the longest stick in it; 0 where it has none
 * @param lastDays for each due day that waits for it, the first first; empty when the terms name no
 *     days
 * @param goodUntil the first day on which one of its prices ends; null when none is written
 * @param withoutEnd lines whose price has no last day written
 */
public record Delivery(
    Supplier terms,
    boolean priced,
    Money goods,
    long milligrams,
    int unweighed,
    Length longest,
    List<LastDay> lastDays,
    @Nullable LocalDate goodUntil,
    int withoutEnd) {
  public Delivery {
    Objects.requireNonNull(terms);
    Objects.requireNonNull(goods);
    Objects.requireNonNull(longest);
    lastDays = List.copyOf(lastDays);
  }

  /**
   * The last day on which an order still arrives on the due day of some jobs.
   *
   * @param order the last day, a working day; cutting takes its own time, which is not in it
   * @param due when the jobs leave the shop
   * @param jobs that are cut from what this supplier brings, or need his items, by name
   */
  public record LastDay(LocalDate order, LocalDate due, List<String> jobs) {
    public LastDay {
      Objects.requireNonNull(order);
      Objects.requireNonNull(due);
      jobs = List.copyOf(jobs);
    }
  }

  /** True where goods reach the amount from which delivery is free. */
  public boolean isFree() {
    Money freeFrom = terms.freeFrom();
    return freeFrom != null && goods.compareTo(freeFrom) >= 0;
  }

  /** What the delivery costs; nothing where it is free or no freight is written. */
  public Money freight() {
    Money freight = terms.freight();
    return !priced || freight == null || isFree() ? Money.ZERO : freight;
  }

  /** Goods and freight. */
  public Money delivered() {
    return goods.plus(freight());
  }

  /** What is missing to the least amount of an order; nothing where that is reached. */
  public Money shortOfMinimum() {
    Money minimum = terms.minimum();
    return !priced || minimum == null || goods.compareTo(minimum) >= 0
        ? Money.ZERO
        : minimum.minus(goods);
  }
}
