package lapwright.print;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;
import lapwright.measure.Price;
import lapwright.paperwork.ProofFigure;
import lapwright.shop.Supply;

/** Turns of phrase that several papers share. */
final class Phrases {
  private Phrases() {}

  /** {@code 1 stick}, {@code 1,200 sticks}. */
  static String count(long number, String one, String many) {
    return MoneyStyle.grouped(number) + " " + (number == 1 ? one : many);
  }

  static String sticks(long number) {
    return count(number, "stick", "sticks");
  }

  static String jobs(long number) {
    return count(number, "job", "jobs");
  }

  /** {@code a}, {@code a and b}, {@code a, b and c}. */
  static String list(List<String> names) {
    int last = names.size() - 1;
    return last < 1
        ? String.join("", names)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }

  /** True where tickets of these names follow each other. */
  static boolean follow(String ticket, String next) {
    try {
      return Math.addExact(Integer.parseInt(ticket), 1) == Integer.parseInt(next);
    } catch (NumberFormatException notCounted) {
      return false;
    }
  }

  /** A share as a factor: 108.32 % is {@code 1.0832}. */
  static String factor(Percent share) {
    String digits = Long.toString(10_000 + share.hundredths() % 10_000).substring(1);
    return MoneyStyle.grouped(share.hundredths() / 10_000) + "." + digits;
  }

  /** Money with its fractions of a cent, where it has any. */
  static String unrounded(Money amount, MoneyStyle style) {
    String cents = style.print(amount);
    if (amount.equals(amount.toCent())) {
      return cents;
    }
    long rest = amount.tenThousandths() % Money.PER_UNIT;
    String whole = style.print(new Money(amount.tenThousandths() - rest));
    return whole.replace(".00", "." + Long.toString(Money.PER_UNIT + rest).substring(1));
  }

  /** {@code Fri 2026-12-04}. */
  static String day(LocalDate day) {
    return day.getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " " + day;
  }

  /** As typed on the price sheet: {@code 41.00 each}, {@code 1.85 a ft}. */
  static String price(Price price) {
    String amount = price.amount().toPlainString();
    return switch (price.per()) {
      case EACH -> amount + " each";
      case PACK -> amount + " a pack";
      case FOOT, METRE, POUND, KILOGRAM, HUNDREDWEIGHT, SQUARE ->
          amount + " a " + price.per().word();
    };
  }

  /** Where sticks of a supply are fetched. */
  static String source(Supply supply) {
    if (supply instanceof Supply.Offer offer) {
      return offer.supplier().isEmpty() ? "bought" : "bought from " + offer.supplier();
    }
    if (supply instanceof Supply.Bought bought) {
      return "bought before" + (bought.supplier().isEmpty() ? "" : " from " + bought.supplier());
    }
    if (supply instanceof Supply.OnHand onHand) {
      return "on hand" + at(onHand.place()) + lot(onHand.lot());
    }
    Supply.RackOffcut offcut = (Supply.RackOffcut) supply;
    return "rack " + offcut.id() + at(offcut.place()) + lot(Supply.writtenLot(offcut.lot()));
  }

  private static String at(String place) {
    return place.isEmpty() ? "" : ", " + place;
  }

  private static String lot(String lot) {
    return lot.isEmpty() ? "" : ", lot " + lot;
  }

  /** How sure it is that nothing better exists, as a sentence. */
  static String proof(ProofFigure figure, MoneyStyle money, LengthStyle units) {
    String least =
        figure.inMoney()
            ? money.print(new Money(figure.bound()))
            : units.atLeast(Length.ofUnits(figure.bound()));
    return switch (figure.proof()) {
      case PROVED ->
          figure.inMoney() ? "Proved: no plan costs less." : "Proved: no plan takes less stock.";
      case CLAIMED ->
          "Claimed: the search found nothing better, but only "
              + least
              + " is proved to be needed ("
              + gap(figure)
              + ").";
      case OPEN -> "Open: " + gap(figure) + "; no plan can do with less than " + least + ".";
    };
  }

  private static String gap(ProofFigure figure) {
    if (!figure.eachWithinOneStick()) {
      return "within " + figure.gapThousandths() / 10 + "." + figure.gapThousandths() % 10 + " %";
    }
    return figure.unproved() == 1
        ? "within 1 stick"
        : "within 1 stick in each of " + figure.unproved() + " materials";
  }
}
