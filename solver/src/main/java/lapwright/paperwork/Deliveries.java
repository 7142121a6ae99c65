package lapwright.paperwork;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.check.CheckedPlan;
import lapwright.compare.SupplierAlone;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.WeightRate;
import lapwright.paperwork.Delivery.LastDay;
import lapwright.plan.Cut;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.ItemStock;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What the suppliers bring and what that costs delivered, and what it would cost from one of them.
 *
 * @param deliveries of named suppliers from whom something is bought, by name
 * @param asPlanned goods and freight of all of them
 * @param fromOne everything from one supplier, by name; empty when that was not asked
 * @param proved true when every plan that is compared is proved, for material prices
 */
public record Deliveries(
    List<Delivery> deliveries, Money asPlanned, List<FromOne> fromOne, boolean proved) {
  public static final Deliveries NONE = new Deliveries(List.of(), Money.ZERO, List.of(), true);

  private static final long MILLIGRAMS_IN_HUNDRED_MILLIONTHS_OF_KG = 100;

  public Deliveries {
    deliveries = List.copyOf(deliveries);
    Objects.requireNonNull(asPlanned);
    fromOne = List.copyOf(fromOne);
  }

  /**
   * Everything from one supplier.
   *
   * @param delivered goods and freight; null when no plan was found
   * @param underMinimum true when he does not deliver so little
   * @param lacking ids of the materials that cannot be planned that way
   */
  public record FromOne(
      String supplier, @Nullable Money delivered, boolean underMinimum, List<String> lacking) {
    public FromOne {
      Objects.requireNonNull(supplier);
      lacking = List.copyOf(lacking);
    }
  }

  static Deliveries of(CheckedPlan plan, List<SupplierAlone> alone) {
    List<Delivery> deliveries = deliveries(plan.plan());
    List<FromOne> fromOne = new ArrayList<>();
    boolean proved = isProved(plan);
    for (SupplierAlone one : alone) {
      CheckedPlan other = one.plan();
      List<Delivery> his = other == null ? List.of() : deliveries(other.plan());
      fromOne.add(
          new FromOne(
              one.supplier(),
              other == null ? null : sum(his),
              his.stream().anyMatch(delivery -> !delivery.shortOfMinimum().isZero()),
              one.lacking()));
      proved &= other == null || isProved(other);
    }
    return new Deliveries(deliveries, sum(deliveries), fromOne, proved);
  }

  private static boolean isProved(CheckedPlan plan) {
    return plan.plan().materials().stream().allMatch(material -> material.proof() == Proof.PROVED);
  }

  private static Money sum(List<Delivery> deliveries) {
    return deliveries.stream().map(Delivery::delivered).reduce(Money.ZERO, Money::plus);
  }

  private static List<Delivery> deliveries(OrderPlan plan) {
    SortedMap<String, Sum> sums = new TreeMap<>();
    Map<String, @Nullable LocalDate> dueOfJob = new TreeMap<>();
    PlannedJob.firstDueFirst(plan).forEach(job -> dueOfJob.put(job.job(), job.due()));
    for (MaterialPlan material : plan.materials()) {
      Supplies supplies = Supplies.of(material.order());
      for (Purchase purchase : material.purchases()) {
        Supply.Offer offer = supplies.offer(purchase.supply());
        Money pack = StockWorth.packPrice(material.order(), offer);
        if (!offer.supplier().isEmpty()) {
          Sum sum = sumOf(offer.supplier(), sums, plan);
          sum.add(pack, purchase.packs(), offer.goodUntil());
          sum.load(
              offer.length(),
              Math.multiplyExact(purchase.packs(), offer.soldIn()),
              material.order().material().weight());
        }
      }
      for (Pattern pattern : material.patterns()) {
        if (supplies.named(pattern.supply()) instanceof Supply.Offer offer
            && sums.containsKey(offer.supplier())) {
          for (Cut cut : pattern.cuts()) {
            sumOf(offer.supplier(), sums, plan).waits(cut.job(), dueOfJob.get(cut.job()));
          }
        }
      }
    }
    for (ItemPlan item : plan.items()) {
      for (Purchase purchase : item.purchases()) {
        ItemStock.Offer offer = ItemLines.offer(item, purchase.supply());
        Sum sum = sumOf(offer.supplier(), sums, plan);
        sum.add(offer.packPrice(), purchase.packs(), offer.goodUntil());
        item.order().needs().stream()
            .filter(need -> need.qty() > 0)
            .forEach(need -> sum.waits(need.job(), need.due()));
      }
    }
    return sums.values().stream().map(Sum::delivery).toList();
  }

  private static Sum sumOf(String supplier, SortedMap<String, Sum> sums, OrderPlan plan) {
    return sums.computeIfAbsent(supplier, name -> new Sum(plan.shop().supplier(name)));
  }

  /** One supplier's lines, added up. */
  private static final class Sum {
    private final Supplier terms;
    private final SortedMap<LocalDate, SortedSet<String>> waiting = new TreeMap<>();
    private boolean priced;
    private Money goods = Money.ZERO;
    private long milligrams;
    private int unweighed;
    private Length longest = Length.ZERO;
    private @Nullable LocalDate goodUntil;
    private int withoutEnd;

    private Sum(Supplier terms) {
      this.terms = terms;
    }

    private void add(@Nullable Money pack, int packs, @Nullable LocalDate end) {
      if (pack == null) {
        return;
      }
      priced = true;
      goods = goods.plus(terms.billed(pack, packs));
      if (end == null) {
        withoutEnd++;
      } else if (goodUntil == null || end.isBefore(goodUntil)) {
        goodUntil = end;
      }
    }

    private void load(Length length, int sticks, @Nullable WeightRate weight) {
      longest = length.isLongerThan(longest) ? length : longest;
      if (weight == null) {
        unweighed++;
      } else {
        milligrams = Math.addExact(milligrams, milligrams(weight, length.times(sticks)));
      }
    }

    private void waits(String job, @Nullable LocalDate due) {
      if (due != null) {
        waiting.computeIfAbsent(due, day -> new TreeSet<>()).add(job);
      }
    }

    private static long milligrams(WeightRate weight, Length length) {
      return weight
          .amount()
          .multiply(BigDecimal.valueOf(weight.weight().hundredMillionthsOfKg()))
          .multiply(BigDecimal.valueOf(length.units()))
          .divide(
              BigDecimal.valueOf(weight.length().units())
                  .multiply(BigDecimal.valueOf(MILLIGRAMS_IN_HUNDRED_MILLIONTHS_OF_KG)),
              0,
              RoundingMode.HALF_UP)
          .longValueExact();
    }

    private Delivery delivery() {
      List<LastDay> lastDays = new ArrayList<>();
      Integer days = terms.days();
      if (days != null) {
        waiting.forEach(
            (due, jobs) ->
                lastDays.add(new LastDay(WorkingDays.before(due, days), due, List.copyOf(jobs))));
      }
      return new Delivery(
          terms, priced, goods, milligrams, unweighed, longest, lastDays, goodUntil, withoutEnd);
    }
  }
}
