package lapwright.files.shop;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Node;
import lapwright.files.source.Values;
import lapwright.measure.Money;
import lapwright.measure.SafeSide;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;

/** suppliers.yaml: the terms of each supplier, by name. */
public final class SupplierFile {
  private static final Map<String, Supplier.Rounds> ROUNDS =
      Values.ordered(
          Supplier.Rounds.LINE.word(), Supplier.Rounds.LINE,
          Supplier.Rounds.EACH.word(), Supplier.Rounds.EACH);

  private SupplierFile() {}

  public static Map<String, Supplier> read(Path path, Inputs inputs) {
    Findings findings = inputs.findings();
    Map<String, Supplier> suppliers = new LinkedHashMap<>();
    Node root = inputs.tree(path);
    Fields top = root == null ? null : Fields.of(root, "", ShopFields.SUPPLIERS, findings);
    Node.Entry entry = top == null ? null : top.entry("suppliers");
    if (entry == null) {
      if (top != null) {
        top.missing("suppliers", "Begin with suppliers:, then each supplier's name and terms.");
      }
      return suppliers;
    }
    Fields named = Fields.named(entry.value(), "suppliers", findings);
    for (Node.Entry supplier : named == null ? List.<Node.Entry>of() : named.entries()) {
      String way = "suppliers > " + supplier.key();
      Fields fields = Fields.of(supplier.value(), way, ShopFields.SUPPLIER, findings);
      if (fields == null) {
        continue;
      }
      String orderBy = fields.words("order-by");
      if (orderBy != null && !orderBy.matches("([01]?\\d|2[0-3]):[0-5]\\d")) {
        findings.fault(
            fields.placeOf("order-by"),
            fields.way("order-by"),
            orderBy,
            "not a time of day",
            "Write hours and minutes in quotes, such as \"10:00\".");
      }
      Supplier.Rounds rounds = fields.word("rounds", ROUNDS);
      suppliers.put(
          supplier.key(),
          new Supplier(
              supplier.key(),
              fields.quantity("days", 0),
              orderBy == null ? "" : orderBy,
              money(fields.money("minimum")),
              money(fields.money("freight")),
              money(fields.money("free-from")),
              fields.positive("longest", SafeSide.SHORTER),
              rounds == null ? Supplier.Rounds.LINE : rounds));
    }
    return suppliers;
  }

  private static @Nullable Money money(@Nullable BigDecimal amount) {
    return amount == null
        ? null
        : Money.rounded(
            amount.movePointRight(10).toBigInteger(), BigDecimal.TEN.pow(6).toBigInteger());
  }
}
