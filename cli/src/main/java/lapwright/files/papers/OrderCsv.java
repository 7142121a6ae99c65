package lapwright.files.papers;

import java.util.List;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.Price;
import lapwright.paperwork.Delivery;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.OrderPaper.BuyLine;
import lapwright.paperwork.OrderPaper.ItemLine;
import lapwright.paperwork.OrderPaper.MissingItem;
import lapwright.paperwork.OrderPaper.SupplierPart;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** {@code order.csv}: what to buy, a line of an order a row. */
public final class OrderCsv {
  public static final String FILE = "order.csv";

  private static final String NOT_ON_ORDER = "NOT ON THIS ORDER";

  private static final List<String> HEAD =
      List.of(
          "supplier",
          "code",
          "material",
          "name",
          "length",
          "length_mm",
          "sticks",
          "items",
          "packs",
          "sold_in",
          "price",
          "per",
          "cost",
          "total",
          "currency",
          "freight",
          "days",
          "order_by");

  private OrderCsv() {}

  /**
   * {@code cost} is not rounded, {@code total} is what the invoice says; what a supplier asks for
   * {@code freight} stands once, in his first row. {@code order_by} is the last day on which an
   * order arrives for the first job that waits for it. Items have no length; the ones that nobody
   * sells come last, with NOT ON THIS ORDER for a supplier.
   */
  public static String text(OrderPaper paper, LengthStyle units) {
    CsvSheet sheet = new CsvSheet(HEAD);
    for (SupplierPart part : paper.suppliers()) {
      Delivery delivery = delivery(paper, part);
      boolean first = true;
      for (BuyLine line : part.lines()) {
        Supply.Offer offer = line.offer();
        CsvSheet.Row row =
            new CsvSheet.Row()
                .text(part.supplier())
                .text(offer.code())
                .text(line.material())
                .text(line.name())
                .length(units, offer.length())
                .number(line.sticks())
                .empty(1)
                .number(line.packs())
                .number(offer.soldIn());
        prices(row, offer.price(), line.exact(), line.billed(), paper);
        sheet.row(terms(row, delivery, first));
        first = false;
      }
      for (ItemLine line : part.items()) {
        CsvSheet.Row row =
            new CsvSheet.Row()
                .text(part.supplier())
                .text(line.offer().code())
                .text(line.item())
                .empty(4)
                .number(line.pieces())
                .number(line.packs())
                .number(line.offer().soldIn());
        prices(row, line.offer().price(), line.exact(), line.billed(), paper);
        sheet.row(terms(row, delivery, first));
        first = false;
      }
    }
    for (MissingItem missing : paper.missingItems()) {
      sheet.row(
          new CsvSheet.Row()
              .text(NOT_ON_ORDER)
              .empty(1)
              .text(missing.item())
              .empty(4)
              .number(missing.pieces())
              .empty(10));
    }
    return sheet.text();
  }

  private static @Nullable Delivery delivery(OrderPaper paper, SupplierPart part) {
    return paper.deliveries().deliveries().stream()
        .filter(one -> one.terms().id().equals(part.supplier()))
        .findFirst()
        .orElse(null);
  }

  private static CsvSheet.Row terms(CsvSheet.Row row, @Nullable Delivery delivery, boolean first) {
    if (delivery == null) {
      return row.empty(3);
    }
    boolean known = delivery.priced() && delivery.terms().freight() != null;
    money(row, known && first ? delivery.freight() : null);
    Integer days = delivery.terms().days();
    if (days == null) {
      row.empty(1);
    } else {
      row.number(days);
    }
    return delivery.lastDays().isEmpty()
        ? row.empty(1)
        : row.text(delivery.lastDays().get(0).order().toString());
  }

  private static CsvSheet.Row prices(
      CsvSheet.Row row,
      @Nullable Price price,
      @Nullable Money exact,
      @Nullable Money billed,
      OrderPaper paper) {
    if (price == null) {
      row.empty(2);
    } else {
      row.number(price.amount()).text(price.per().word());
    }
    money(row, exact);
    money(row, billed);
    return row.text(billed == null ? "" : paper.shop().currency());
  }

  private static void money(CsvSheet.Row row, @Nullable Money amount) {
    if (amount == null) {
      row.empty(1);
    } else {
      row.money(amount);
    }
  }
}
