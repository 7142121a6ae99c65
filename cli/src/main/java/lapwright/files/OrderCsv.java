package lapwright.files;

import java.util.List;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.OrderPaper.BuyLine;
import lapwright.paperwork.OrderPaper.SupplierPart;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** {@code order.csv}: what to buy, a line of an order a row. */
public final class OrderCsv {
  public static final String FILE = "order.csv";

  private static final List<String> HEAD =
      List.of(
          "supplier",
          "code",
          "material",
          "name",
          "length",
          "length_mm",
          "sticks",
          "packs",
          "sold_in",
          "price",
          "per",
          "cost",
          "total",
          "currency");

  private OrderCsv() {}

  /** {@code cost} is not rounded, {@code total} is what the invoice says. */
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
                .number(line.packs())
                .number(offer.soldIn());
        if (offer.price() == null) {
          row.empty(2);
        } else {
          row.number(offer.price().amount()).text(offer.price().per().word());
        }
        money(row, line.exact());
        money(row, line.billed());
        sheet.row(row.text(line.billed() == null ? "" : paper.shop().currency()));
      }
    }
    return sheet.text();
  }

  private static void money(CsvSheet.Row row, @Nullable Money amount) {
    if (amount == null) {
      row.empty(1);
    } else {
      row.money(amount);
    }
  }
}
