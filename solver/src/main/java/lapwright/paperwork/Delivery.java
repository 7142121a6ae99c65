package lapwright.paperwork;

import java.time.DayOfWeek;
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
 * @param goods what the invoice says for the material
 * @param milligrams weight of the lines whose material has one, each line rounded once
 * @param unweighed lines whose material has no weight
 * @param longest the longest stick in it
 * @param lastDays for each due day that waits for it, the first first; empty when the terms name no
 *     days
 * @param goodUntil the first day on which one of its prices ends; null when none is written
 * @param withoutEnd lines whose price has no last day written
 */
public record Delivery(
    Supplier terms,
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
   * @param jobs that are cut from what this supplier brings, by name
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
    return freight == null || isFree() ? Money.ZERO : freight;
  }

  /** Goods and freight. */
  public Money delivered() {
    return goods.plus(freight());
  }

  /** What is missing to the least amount of an order; nothing where that is reached. */
  public Money shortOfMinimum() {
    Money minimum = terms.minimum();
    return minimum == null || goods.compareTo(minimum) >= 0 ? Money.ZERO : minimum.minus(goods);
  }

  /**
   * Counts working days, Monday to Friday, back from the last of them that is not after the due
   * day. Holidays are not known.
   */
  static LocalDate lastDayToOrder(LocalDate due, int workingDays) {
    LocalDate day = due;
    while (isWeekend(day)) {
      day = day.minusDays(1);
    }
    for (int left = workingDays; left > 0; left--) {
      do {
        day = day.minusDays(1);
      } while (isWeekend(day));
    }
    return day;
  }

  private static boolean isWeekend(LocalDate day) {
    return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
  }
}
