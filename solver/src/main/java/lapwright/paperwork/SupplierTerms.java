package lapwright.paperwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What the suppliers' terms call for beside a plan, which knows material prices only: minimum,
 * delivery that a few sticks more would make free, and days that are too few.
 */
final class SupplierTerms {
  private final Shop shop;
  private final MoneyStyle money;
  private final List<Attention> attention = new ArrayList<>();

  private SupplierTerms(Shop shop) {
    this.shop = shop;
    this.money = new MoneyStyle(shop.currency());
  }

  /**
   * Attention lines.
   *
   * @param parts what is bought
   * @param today null when nobody asks what comes too late
   */
  static List<Attention> of(
      Shop shop,
      Deliveries deliveries,
      List<OrderPaper.SupplierPart> parts,
      @Nullable LocalDate today) {
    SupplierTerms terms = new SupplierTerms(shop);
    for (Delivery delivery : deliveries.deliveries()) {
      terms.minimum(delivery);
      for (OrderPaper.SupplierPart part : parts) {
        if (part.supplier().equals(delivery.terms().id()) && delivery.priced()) {
          terms.freeDelivery(delivery.terms(), part);
        }
      }
      if (today != null) {
        terms.days(delivery, today);
      }
    }
    return terms.attention;
  }

  private void minimum(Delivery delivery) {
    Money minimum = delivery.terms().minimum();
    if (minimum != null && !delivery.shortOfMinimum().isZero()) {
      attention.add(
          new Attention(
              delivery.terms().id()
                  + "'s minimum of "
                  + money.print(minimum)
                  + " is not met by "
                  + money.print(delivery.shortOfMinimum()),
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

  private void days(Delivery delivery, LocalDate today) {
    Integer days = delivery.terms().days();
    if (days == null) {
      return;
    }
    SortedMap<String, LocalDate> late = new TreeMap<>();
    for (Delivery.LastDay day : delivery.lastDays()) {
      if (day.order().isBefore(today)) {
        day.jobs().forEach(job -> late.put(job, day.due()));
      }
    }
    late.forEach(
        (job, due) ->
            attention.add(
                new Attention(
                    "what "
                        + delivery.terms().id()
                        + " brings for "
                        + job
                        + " comes after it is due on "
                        + due
                        + ": ordered today it takes "
                        + days
                        + (days == 1 ? " working day" : " working days")
                        + ", until "
                        + WorkingDays.after(today, days),
                    "ask for an earlier day, move the job, or order it from another supplier")));
  }
}
