package lapwright.print;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.WeightRate.WeightUnit;
import lapwright.paperwork.Deliveries;
import lapwright.paperwork.Deliveries.FromOne;
import lapwright.paperwork.Delivery;
import lapwright.paperwork.Delivery.LastDay;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;

/**
 * What each supplier brings, when to order it, and what it costs delivered. A minimum that is not
 * met is a line of attention.
 */
final class DeliveryText {
  private static final long HUNDRED_MILLIONTHS_OF_KG_IN_MILLIGRAM = 100;

  private final Shop shop;
  private final Deliveries deliveries;
  private final MoneyStyle money;
  private final Page page;

  DeliveryText(Shop shop, Deliveries deliveries, MoneyStyle money, Page page) {
    this.shop = shop;
    this.deliveries = deliveries;
    this.money = money;
    this.page = page;
  }

  /**
   * Nothing where no supplier's terms are known.
   *
   * @param whole false to leave out all but the sums and the first day
   */
  void write(boolean whole) {
    boolean known =
        deliveries.deliveries().stream()
            .anyMatch(one -> !one.terms().equals(Supplier.named(one.terms().id())));
    if (known && whole) {
      page.blank();
      deliveries.deliveries().forEach(this::whole);
      if (deliveries.deliveries().stream().anyMatch(one -> !one.lastDays().isEmpty())) {
        page.text(
            "Days are working days, Monday to Friday; holidays, and the time to cut, are yours to"
                + " add.",
            0,
            2);
      }
    } else if (known) {
      page.text(shortly(), 0, 2);
    }
    if (!deliveries.fromOne().isEmpty()) {
      page.text(fromOne(whole), 0, 2);
    }
  }

  private void whole(Delivery one) {
    Supplier terms = one.terms();
    List<String> facts = new ArrayList<>();
    facts.add(sum(one));
    if (one.milligrams() > 0) {
      facts.add(
          weight(one.milligrams())
              + (one.unweighed() == 0
                  ? ""
                  : " and "
                      + Phrases.count(one.unweighed(), "line", "lines")
                      + " of unknown weight"));
    }
    if (!one.longest().isZero()) {
      facts.add("longest stick " + page.length(one.longest()));
    }
    page.text(terms.id() + ": " + String.join("; ", facts) + ".", 0, 2);
    for (LastDay day : one.lastDays()) {
      page.text(
          "Order by "
              + at(day.order(), terms)
              + " for "
              + Phrases.list(day.jobs())
              + ", due "
              + Phrases.day(day.due())
              + ".",
          2,
          4);
    }
    LocalDate until = one.goodUntil();
    if (until != null) {
      page.text(
          "Prices are good until "
              + Phrases.day(until)
              + (one.withoutEnd() == 0
                  ? "."
                  : "; of "
                      + Phrases.count(one.withoutEnd(), "line", "lines")
                      + " no end is written."),
          2,
          4);
    }
  }

  private String shortly() {
    List<String> parts = new ArrayList<>();
    parts.add("Delivered " + money.print(deliveries.asPlanned()));
    for (Delivery one : deliveries.deliveries()) {
      String name = one.terms().id();
      if (!one.lastDays().isEmpty()) {
        parts.add("order from " + name + " by " + at(one.lastDays().get(0).order(), one.terms()));
      }
    }
    return String.join("; ", parts) + ".";
  }

  private String sum(Delivery one) {
    if (!one.priced()) {
      return "no prices";
    }
    if (one.terms().freight() == null) {
      return money.print(one.goods());
    }
    return one.isFree()
        ? money.print(one.goods()) + ", delivered free"
        : money.print(one.goods())
            + " and "
            + money.print(one.freight())
            + " freight, "
            + money.print(one.delivered())
            + " delivered";
  }

  private static String at(LocalDate day, Supplier terms) {
    return Phrases.day(day) + (terms.orderBy().isEmpty() ? "" : " " + terms.orderBy());
  }

  /** In the shop's unit, rounded to a whole one. */
  private String weight(long milligrams) {
    WeightUnit unit =
        shop.units() == Shop.Units.FEET_INCHES ? WeightUnit.POUND : WeightUnit.KILOGRAM;
    BigInteger twice =
        BigInteger.valueOf(milligrams)
            .multiply(BigInteger.valueOf(HUNDRED_MILLIONTHS_OF_KG_IN_MILLIGRAM * 2));
    BigInteger one = BigInteger.valueOf(unit.hundredMillionthsOfKg());
    long whole = twice.add(one).divide(one.shiftLeft(1)).longValueExact();
    return MoneyStyle.grouped(whole) + " " + unit.symbol();
  }

  private String fromOne(boolean whole) {
    List<String> parts = new ArrayList<>();
    for (FromOne one : deliveries.fromOne()) {
      Money delivered = one.delivered();
      String from = "all from " + one.supplier() + " ";
      if (delivered != null) {
        parts.add(
            from + money.print(delivered) + (one.underMinimum() ? " (under his least order)" : ""));
      } else if (one.lacking().isEmpty()) {
        parts.add(from + "not worked out in the time");
      } else {
        parts.add(from + "not possible" + (whole ? " (" + Phrases.list(one.lacking()) + ")" : ""));
      }
    }
    parts.add("as planned " + money.print(deliveries.asPlanned()));
    String text = String.join(", ", parts);
    return Character.toUpperCase(text.charAt(0))
        + text.substring(1)
        + ", each delivered. "
        + (deliveries.proved() ? "Proved for" : "Not all proved for")
        + " material prices, not for freight.";
  }
}
