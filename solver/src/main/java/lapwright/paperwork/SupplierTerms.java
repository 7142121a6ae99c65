package lapwright.paperwork;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What the suppliers' terms call for beside a plan, which knows material prices only: minimum,
 * delivery that a few sticks more would make free, and days that are too few.
 */
final class SupplierTerms {
  private final OrderPlan plan;
  private final Shop shop;
  private final MoneyStyle money;
  private final List<Attention> attention = new ArrayList<>();

  private SupplierTerms(OrderPlan plan) {
    this.plan = plan;
    this.shop = plan.shop();
    this.money = new MoneyStyle(shop.currency());
  }

  /**
   * Attention lines.
   *
   * @param parts what is bought
   * @param today null when nobody asks what comes too late
   */
  static List<Attention> of(
      OrderPlan plan, List<OrderPaper.SupplierPart> parts, @Nullable LocalDate today) {
    SupplierTerms terms = new SupplierTerms(plan);
    for (OrderPaper.SupplierPart part : parts) {
      if (!part.supplier().isEmpty()) {
        Supplier supplier = terms.shop.supplier(part.supplier());
        if (part.isPriced()) {
          terms.minimum(supplier, part.billed());
          terms.freeDelivery(supplier, part);
        }
        if (today != null) {
          terms.days(supplier, today);
        }
      }
    }
    return terms.attention;
  }

  private void minimum(Supplier supplier, Money billed) {
    Money minimum = supplier.minimum();
    if (minimum != null && billed.compareTo(minimum) < 0) {
      attention.add(
          new Attention(
              supplier.id()
                  + "'s minimum of "
                  + money.print(minimum)
                  + " is not met by "
                  + money.print(minimum.minus(billed)),
              "add to the order what you will need anyway, or ask what a small order costs"));
    }
  }

  /** The fewest packs of one kind that lift the order over the amount, if they cost less. */
  private void freeDelivery(Supplier supplier, OrderPaper.SupplierPart part) {
    Money freight = supplier.freight();
    Money freeFrom = supplier.freeFrom();
    if (freight == null || freeFrom == null || part.billed().compareTo(freeFrom) >= 0) {
      return;
    }
    OrderPaper.BuyLine best = null;
    Money least = freight;
    long packsOfBest = 0;
    for (OrderPaper.BuyLine line : part.lines()) {
      Money exact = line.exact();
      if (exact == null || exact.isZero()) {
        continue;
      }
      Money pack = new Money(exact.tenThousandths() / line.packs());
      Money missing = freeFrom.minus(part.billed());
      // At least one; a cent more than is missing covers how an invoice rounds a line.
      long packs =
          Math.addExact(missing.tenThousandths(), Money.PER_CENT - 1) / pack.tenThousandths() + 1;
      Money costs = pack.times(packs);
      boolean canBeHad = packs <= line.offer().atMostPacks() - (long) line.packs();
      if (canBeHad && costs.compareTo(least) < 0) {
        best = line;
        least = costs;
        packsOfBest = packs;
      }
    }
    if (best != null) {
      long sticks = packsOfBest * best.offer().soldIn();
      attention.add(
          new Attention(
              sticks
                  + (sticks == 1 ? " stick" : " sticks")
                  + " more would be cheaper than none: delivery from "
                  + supplier.id()
                  + " costs "
                  + money.print(freight)
                  + " and is free from "
                  + money.print(freeFrom)
                  + ", which "
                  + sticks
                  + " more of "
                  + best.material()
                  + " "
                  + style(best)
                  + " reach for "
                  + money.print(least),
              "order "
                  + (sticks == 1 ? "it" : "them")
                  + " and put "
                  + (sticks == 1 ? "it" : "them")
                  + " into on-hand.csv"));
    }
  }

  private String style(OrderPaper.BuyLine line) {
    return Units.of(shop).exact(line.offer().length());
  }

  private void days(Supplier supplier, LocalDate today) {
    Integer days = supplier.days();
    if (days == null) {
      return;
    }
    LocalDate arrival = arrival(today, days);
    SortedMap<String, LocalDate> late = new TreeMap<>();
    for (MaterialPlan material : plan.materials()) {
      Supplies supplies = Supplies.of(material.order());
      for (Pattern pattern : material.patterns()) {
        if (supplies.named(pattern.supply()) instanceof Supply.Offer offer
            && offer.supplier().equals(supplier.id())) {
          for (Cut cut : pattern.cuts()) {
            LocalDate due = due(material, cut.job());
            if (due != null && due.isBefore(arrival)) {
              late.put(cut.job(), due);
            }
          }
        }
      }
    }
    late.forEach(
        (job, due) ->
            attention.add(
                new Attention(
                    "what "
                        + supplier.id()
                        + " brings for "
                        + job
                        + " comes after it is due on "
                        + due
                        + ": ordered today it takes "
                        + days
                        + (days == 1 ? " working day" : " working days")
                        + ", until "
                        + arrival,
                    "ask for an earlier day, move the job, or order it from another supplier")));
  }

  private static @Nullable LocalDate due(MaterialPlan material, String job) {
    for (Need need : material.order().needs()) {
      if (need.job().equals(job)) {
        return need.due();
      }
    }
    for (RunNeed need : material.order().runs()) {
      if (need.job().equals(job)) {
        return need.due();
      }
    }
    return null;
  }

  /** Working days are Monday to Friday; holidays are not known. */
  static LocalDate arrival(LocalDate ordered, int workingDays) {
    LocalDate day = Objects.requireNonNull(ordered);
    for (int left = workingDays; left > 0; left--) {
      do {
        day = day.plusDays(1);
      } while (day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY);
    }
    return day;
  }
}
