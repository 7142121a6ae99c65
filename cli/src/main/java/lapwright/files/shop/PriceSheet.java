package lapwright.files.shop;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Nearest;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Table;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.measure.SafeSide;
import org.jspecify.annotations.Nullable;

/** prices/SUPPLIER.csv: what one supplier asks. */
final class PriceSheet {
  private PriceSheet() {}

  /**
   * Adds the sheet's lines to {@code offers}, by material. A line without a length, of what is no
   * material, is an item's.
   */
  static void read(
      Path path,
      Map<String, MaterialFile.Entry> materials,
      Map<String, List<OfferLine>> offers,
      Map<String, List<OfferLine>> items,
      Inputs inputs) {
    Findings findings = inputs.findings();
    Values values = new Values(findings);
    String supplier = Inputs.stem(path);
    Table table = inputs.table(path, ShopFields.PRICES, List.of("material", "length"));
    if (table == null
        || values.name(Place.whole(inputs.name(path)), "supplier", supplier) == null) {
      return;
    }
    for (Table.Row row : table.rows()) {
      String id = values.name(row.place(), "material", row.cell("material"));
      if (id == null) {
        continue;
      }
      MaterialFile.Entry material = materials.get(id);
      if (material == null && row.cell("length").isEmpty()) {
        OfferLine line = line(row, supplier, Length.ZERO, values, findings);
        String near = Nearest.to(id, materials.keySet());
        if (near != null) {
          findings.note(
              Note.Kind.WARNING,
              row.place(),
              "material",
              id + " has no length, so it is an item; did you mean the material " + near + "?");
        }
        if (line != null) {
          items.computeIfAbsent(id, key -> new ArrayList<>()).add(line);
        }
        continue;
      }
      if (material == null) {
        String near = Nearest.to(id, materials.keySet());
        findings.note(
            Note.Kind.NOT_USED,
            row.place(),
            "material",
            "the shop has no material "
                + id
                + (near == null ? "" : "; did you mean " + near + "?"));
        continue;
      }
      if (material.form() != MaterialFile.Form.STICK) {
        findings.note(
            Note.Kind.NOT_USED, row.place(), "material", id + " is flat, which is not planned yet");
        continue;
      }
      Length length = values.positive(row.place(), "length", row.cell("length"), SafeSide.SHORTER);
      OfferLine line = line(row, supplier, length, values, findings);
      if (line != null) {
        offers.computeIfAbsent(id, key -> new ArrayList<>()).add(line);
      }
    }
  }

  private static @Nullable OfferLine line(
      Table.Row row, String supplier, @Nullable Length length, Values values, Findings findings) {
    Place place = row.place();
    BigDecimal amount =
        row.cell("price").isEmpty() ? null : values.money(place, "price", row.cell("price"));
    Price.Per per =
        row.cell("per").isEmpty()
            ? null
            : values.word(place, "per", row.cell("per"), OfferLine.PER);
    boolean hasPrice = !row.cell("price").isEmpty();
    boolean hasPer = !row.cell("per").isEmpty();
    boolean faulty = OfferLine.checkPrice(place, "price", "per", hasPrice, hasPer, findings);
    faulty |= (hasPrice && amount == null) || (hasPer && per == null);
    Integer soldIn =
        row.cell("sold-in").isEmpty()
            ? Integer.valueOf(1)
            : values.quantity(place, "sold-in", row.cell("sold-in"), 1);
    Integer atMost =
        row.cell("at-most").isEmpty()
            ? Integer.valueOf(Integer.MAX_VALUE)
            : values.quantity(place, "at-most", row.cell("at-most"), 0);
    String code = values.words(place, "code", row.cell("code"));
    LocalDate quoted =
        row.cell("quoted").isEmpty() ? null : values.day(place, "quoted", row.cell("quoted"));
    LocalDate goodUntil =
        row.cell("good-until").isEmpty()
            ? null
            : values.day(place, "good-until", row.cell("good-until"));
    OfferLine.checkDays(place, "good-until", quoted, goodUntil, findings);
    if (length == null || soldIn == null || atMost == null) {
      return null;
    }
    return new OfferLine(
        place,
        supplier,
        length,
        amount,
        per,
        soldIn,
        atMost,
        code == null ? "" : code,
        quoted,
        goodUntil,
        false,
        faulty);
  }
}
