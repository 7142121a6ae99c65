package lapwright.files.shop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import lapwright.files.source.Findings;
import lapwright.files.source.Nearest;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.measure.DecimalText;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Price;
import lapwright.measure.WeightRate;
import lapwright.shop.ItemStock;
import lapwright.shop.Material;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Turns the lines of one material, or of one item, into offers: priced all or not at all, each
 * once.
 */
final class Offers {
  private static final long MOST_FOR_ITEMS = 100_000_000;

  private final ShopFile shop;
  private final Map<String, Supplier> suppliers;
  private final Set<String> priceSheets;
  private final Findings findings;
  private boolean currencyAskedFor;

  /**
   * @param suppliers terms by name; empty when there is no suppliers.yaml
   * @param priceSheets suppliers that have a price sheet
   */
  Offers(
      ShopFile shop, Map<String, Supplier> suppliers, Set<String> priceSheets, Findings findings) {
    this.shop = shop;
    this.suppliers = suppliers;
    this.priceSheets = priceSheets;
    this.findings = findings;
  }

  List<Supply.Offer> of(Material material, List<OfferLine> lines) {
    Set<Length> pricedLengths = new HashSet<>();
    pricedOf(lines).forEach(line -> pricedLengths.add(line.length()));
    return sound(
        lines,
        (line, priced) -> {
          if (!line.bare() || !pricedLengths.contains(line.length())) {
            findings.fault(
                line.place(),
                material.id(),
                LengthStyle.FEET_INCHES.exact(line.length()),
                "half priced: this length has no price, another has one (" + priced.print() + ")",
                "Price every length of the material, or none; money and length do not add up.");
          }
        },
        line -> offer(material, line),
        Supply.Offer::key,
        (line, first) ->
            findings.fault(
                line.place(),
                material.id(),
                LengthStyle.FEET_INCHES.exact(line.length()),
                "offered twice; first in " + first.print(),
                "Delete one of the two."));
  }

  /** The offers of an item: by the piece or by the pack. */
  List<ItemStock.Offer> ofItem(String item, List<OfferLine> lines) {
    return sound(
        lines,
        (line, priced) ->
            findings.fault(
                line.place(),
                "price",
                item,
                "no price, another line has one (" + priced.print() + ")",
                "Price every line of the item, or none."),
        line -> itemOffer(item, line),
        ItemStock.Offer::key,
        (line, first) ->
            findings.fault(
                line.place(),
                "material",
                item,
                "offered twice in packs of " + line.soldIn() + "; first in " + first.print(),
                "Delete one of the two."));
  }

  private static List<OfferLine> pricedOf(List<OfferLine> lines) {
    return lines.stream().filter(line -> line.amount() != null || line.faulty()).toList();
  }

  /**
   * The offers of lines that are all priced or none, each offered once.
   *
   * @param unpriced is told of a line without a price, and where another has one
   * @param offer of a line; null when it is at fault
   * @param twice is told of a line that offers the same again, and where it was offered first
   */
  private static <T> List<T> sound(
      List<OfferLine> lines,
      BiConsumer<OfferLine, Place> unpriced,
      Function<OfferLine, @Nullable T> offer,
      Function<T, String> key,
      BiConsumer<OfferLine, Place> twice) {
    List<OfferLine> priced = pricedOf(lines);
    Map<String, Place> seen = new HashMap<>();
    List<T> offers = new ArrayList<>();
    for (OfferLine line : lines) {
      if (line.faulty()) {
        continue;
      }
      if (line.amount() == null && !priced.isEmpty()) {
        unpriced.accept(line, priced.get(0).place());
        continue;
      }
      T read = offer.apply(line);
      if (read == null) {
        continue;
      }
      Place first = seen.putIfAbsent(key.apply(read), line.place());
      if (first != null) {
        twice.accept(line, first);
      } else {
        offers.add(read);
      }
    }
    return offers;
  }

  private ItemStock.@Nullable Offer itemOffer(String item, OfferLine line) {
    Price.Per per = line.per();
    Price price = null;
    if (line.amount() != null && per != null) {
      if (per != Price.Per.EACH && per != Price.Per.PACK) {
        findings.fault(
            line.place(),
            "per",
            per.word(),
            item + " has no length, so it is counted",
            "Price it per each or per pack; or give it a length, if it is a material.");
        return null;
      }
      askForCurrency(line);
      price = new Price(line.amount(), per);
      if (!isSane(line, soldAtOnce(price, Length.ZERO, line.soldIn(), null), MOST_FOR_ITEMS)) {
        return null;
      }
    }
    warnOfLessThanAPack(line);
    return new ItemStock.Offer(
        line.supplier(),
        price,
        line.soldIn(),
        line.atMost(),
        line.code(),
        line.quoted(),
        line.goodUntil());
  }

  private Supply.@Nullable Offer offer(Material material, OfferLine line) {
    Place place = line.place();
    Supplier terms = suppliers.get(line.supplier());
    if (terms == null
        && !suppliers.isEmpty()
        && !line.supplier().isEmpty()
        && !priceSheets.contains(line.supplier())) {
      findings.fault(
          place,
          "supplier",
          line.supplier(),
          "suppliers.yaml has no such supplier",
          Nearest.advice(line.supplier(), suppliers.keySet(), "Add it there."));
      return null;
    }
    if (line.supplier().indexOf(':') >= 0) {
      findings.fault(
          place, "supplier", line.supplier(), "a colon in a name", "Leave the colon out.");
      return null;
    }
    if (terms != null && terms.longest() != null && line.length().isLongerThan(terms.longest())) {
      findings.note(
          Note.Kind.NOT_USED,
          place,
          "length",
          line.supplier()
              + " delivers no stick longer than "
              + shop.style().exact(Objects.requireNonNull(terms.longest())));
    }
    if (!material.shortBy().isShorterThan(line.length())) {
      findings.fault(
          place, "length", "", "short-by is as long as the stick", "Correct short-by or length.");
      return null;
    }
    Price price = price(material, line);
    if (line.amount() != null && price == null) {
      return null;
    }
    warnOfLessThanAPack(line);
    return new Supply.Offer(
        line.supplier(),
        line.length(),
        price,
        line.soldIn(),
        line.atMost(),
        line.code(),
        line.quoted(),
        line.goodUntil());
  }

  /** The price, if what is sold at once has one that can be counted with. */
  private @Nullable Price price(Material material, OfferLine line) {
    if (line.amount() == null || line.per() == null) {
      return null;
    }
    askForCurrency(line);
    if (line.per() == Price.Per.SQUARE) {
      findings.fault(
          line.place(), "per", "square", "sticks are not sold by the square", "Price them by ft.");
      return null;
    }
    if (line.per().isByWeight() && material.weight() == null) {
      findings.fault(
          line.place(),
          "per",
          line.per().word(),
          "a price by weight, and the material has no weight",
          "Give " + material.id() + " a weight in materials.yaml, such as weight: 4.31 lb/ft.");
      return null;
    }
    Price price = new Price(line.amount(), line.per());
    return isSane(
            line,
            soldAtOnce(price, line.length(), line.soldIn(), material.weight()),
            DecimalText.MOST.longValueExact())
        ? price
        : null;
  }

  private void askForCurrency(OfferLine line) {
    if (shop.currency().isEmpty() && !currencyAskedFor) {
      currencyAskedFor = true;
      findings.fault(
          shop.place(),
          "currency",
          "",
          "missing, though there are prices (" + line.place().print() + ")",
          "Write currency: USD, or the code of yours.");
    }
  }

  private void warnOfLessThanAPack(OfferLine line) {
    if (line.atMost() < line.soldIn()) {
      findings.note(
          Note.Kind.WARNING,
          line.place(),
          "at-most",
          "less than a whole pack: nothing can be bought");
    }
  }

  private static Money soldAtOnce(
      Price price, Length length, int soldIn, @Nullable WeightRate weight) {
    try {
      return price.ofSticks(length, soldIn, weight);
    } catch (ArithmeticException e) {
      return new Money(Long.MAX_VALUE);
    }
  }

  /** False, and a fault, when what is sold at once costs nothing, or more than anybody pays. */
  private boolean isSane(OfferLine line, Money sold, long most) {
    String amount = line.amount() == null ? "" : line.amount().toPlainString();
    if (sold.compareTo(new Money(most * Money.PER_UNIT)) > 0) {
      findings.fault(
          line.place(),
          "price",
          amount,
          "a "
              + (line.length().isZero() ? "pack" : line.soldIn() > 1 ? "pack" : "stick")
              + " would cost more than "
              + MoneyStyle.grouped(most),
          "Are price and per right?");
      return false;
    }
    if (sold.isZero()) {
      findings.fault(
          line.place(),
          "price",
          amount,
          "a price of nothing",
          "Write what it costs; list what you have already in on-hand.csv.");
      return false;
    }
    return true;
  }
}
