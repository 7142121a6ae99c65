package lapwright.files.papers;

import java.util.List;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.Price;
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
          "currency");

  private OrderCsv() {}

  /**
   * {@code cost} is not rounded, {@code total} is what the invoice says. Items have no length; the
   * ones that nobody sells come last, with NOT ON THIS ORDER for a supplier.
   */
  public static String text(OrderPaper paper, LengthStyle units) {
    CsvSheet sheet = new CsvSheet(HEAD);
    for (SupplierPart part : paper.suppliers()) {
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
        sheet.row(prices(row, offer.price(), line.exact(), line.billed(), paper));
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
        sheet.row(prices(row, line.offer().price(), line.exact(), line.billed(), paper));
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
              .empty(7));
    }
    return sheet.text();
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
