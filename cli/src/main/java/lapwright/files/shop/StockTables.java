package lapwright.files.shop;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Nearest;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Table;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** on-hand.csv and rack.csv: what lies in the shop. */
final class StockTables {
  private static final Map<String, Ends> ENDS = ends();

  private final Map<String, MaterialFile.Entry> materials;
  private final Inputs inputs;
  private final Findings findings;
  private final Values values;
  private final Map<String, Place> rackIds = new TreeMap<>();
  private final SortedMap<String, Integer> items = new TreeMap<>();
  private final List<Table.Row> otherOnHand = new ArrayList<>();
  private final List<Table.Row> otherRack = new ArrayList<>();

  StockTables(Map<String, MaterialFile.Entry> materials, Inputs inputs) {
    this.materials = materials;
    this.inputs = inputs;
    this.findings = inputs.findings();
    this.values = new Values(findings);
  }

  private static Map<String, Ends> ends() {
    Map<String, Ends> words = new LinkedHashMap<>();
    for (Ends ends : Ends.values()) {
      words.put(ends.word(), ends);
    }
    return words;
  }

  /** Every name on the rack, of whatever material. */
  List<String> rackIds() {
    return List.copyOf(rackIds.keySet());
  }

  /** Counted goods that lie in the shop. */
  SortedMap<String, Integer> items() {
    return items;
  }

  /** Rows of materials that are not planned. */
  OtherStock other() {
    return new OtherStock(otherOnHand, otherRack);
  }

  /** Adds the sticks on hand to {@code supplies}, by material; counts the items. */
  void readOnHand(Path path, Map<String, List<Supply>> supplies) {
    Map<String, Map<String, Supply.OnHand>> byKey = new LinkedHashMap<>();
    for (Table.Row row : rows(path, ShopFields.ON_HAND, List.of("material", "length", "qty"))) {
      Place place = row.place();
      if (row.cell("length").isEmpty() && !materials.containsKey(row.cell("material").strip())) {
        readItem(row);
        continue;
      }
      Length length = values.positive(place, "length", row.cell("length"), SafeSide.SHORTER);
      Integer qty = values.quantity(place, "qty", row.cell("qty"), 0);
      String at = values.words(place, "place", row.cell("place"));
      String lot = values.words(place, "lot", row.cell("lot"));
      Material material = material(row, otherOnHand);
      if (material == null || length == null || qty == null || at == null || lot == null) {
        continue;
      }
      if (!material.shortBy().isShorterThan(length)) {
        findings.fault(
            place,
            "length",
            row.cell("length"),
            "no longer than the material's short-by",
            "Correct the length, or short-by in materials.yaml.");
        continue;
      }
      if (qty == 0 || hasColon(place, "place", at) || hasColon(place, "lot", lot)) {
        continue;
      }
      Supply.OnHand sticks = new Supply.OnHand(length, qty, at, lot);
      Supply.OnHand before =
          byKey
              .computeIfAbsent(material.id(), id -> new LinkedHashMap<>())
              .putIfAbsent(sticks.key(), sticks);
      if (before != null) {
        int sum = before.qty() + qty;
        if (sum > Values.MOST) {
          findings.fault(
              place, "qty", row.cell("qty"), "more than 1,000,000 together", "Is that right?");
          continue;
        }
        byKey.get(material.id()).put(sticks.key(), new Supply.OnHand(length, sum, at, lot));
        findings.note(
            Note.Kind.WARNING, place, "length", "listed before; the quantities were added up");
      }
    }
    byKey.forEach(
        (id, sticks) ->
            supplies.computeIfAbsent(id, key -> new ArrayList<>()).addAll(sticks.values()));
  }

  /** A row without a length, of what is no material. */
  private void readItem(Table.Row row) {
    Place place = row.place();
    String item = values.name(place, "material", row.cell("material"));
    Integer qty = values.quantity(place, "qty", row.cell("qty"), 0);
    if (item == null || qty == null) {
      return;
    }
    if (!row.cell("place").isEmpty() || !row.cell("lot").isEmpty()) {
      findings.note(
          Note.Kind.NOT_USED,
          place,
          "place",
          "places and lots of counted goods are not kept account of");
    }
    if (items.merge(item, qty, Math::addExact) > Values.MOST) {
      findings.fault(
          place, "qty", row.cell("qty"), "more than 1,000,000 together", "Is that right?");
      items.put(item, 0);
    }
  }

  /** Adds the offcuts to {@code supplies}, by material. */
  void readRack(Path path, Map<String, List<Supply>> supplies) {
    for (Table.Row row : rows(path, ShopFields.RACK, List.of("id", "material", "length"))) {
      Place place = row.place();
      String id = values.name(place, "id", row.cell("id"));
      if (id != null) {
        Place first = rackIds.putIfAbsent(id, place);
        if (first != null) {
          findings.fault(
              place,
              "id",
              id,
              "the name stands twice; first in line " + first.line(),
              "Every offcut has a name of its own: give one another, or delete the row.");
          id = null;
        }
      }
      Length length = values.positive(place, "length", row.cell("length"), SafeSide.SHORTER);
      Ends ends =
          row.cell("ends").isEmpty()
              ? Ends.SAWN
              : values.word(place, "ends", row.cell("ends"), ENDS);
      String at = values.words(place, "place", row.cell("place"));
      String lot = values.words(place, "lot", row.cell("lot"));
      Boolean leftAlone =
          row.cell("not-for-planning").isEmpty()
              ? Boolean.FALSE
              : values.word(
                  place, "not-for-planning", row.cell("not-for-planning"), Values.YES_OR_NO);
      Material material = material(row, otherRack);
      if (material != null && leftAlone != null && leftAlone) {
        otherRack.add(row);
        findings.note(
            Note.Kind.NOT_USED,
            place,
            OtherStock.NOT_FOR_PLANNING,
            (id == null ? "the offcut" : id) + " of " + material.id() + " is left alone");
        continue;
      }
      if (material != null && !row.cell("width").isEmpty()) {
        findings.fault(
            place,
            "width",
            row.cell("width"),
            material.id() + " comes in sticks, and a stick has no width",
            "Leave the width empty, or correct the material.");
        continue;
      }
      if (material != null
          && id != null
          && length != null
          && ends != null
          && at != null
          && lot != null) {
        supplies
            .computeIfAbsent(material.id(), key -> new ArrayList<>())
            .add(new Supply.RackOffcut(id, length, ends, at, lot));
      }
    }
  }

  private List<Table.Row> rows(Path path, List<String> known, List<String> required) {
    Table table = inputs.table(path, known, required);
    return table == null ? List.of() : table.rows();
  }

  /** The row's material when it is a sound stick; else null, reported where it matters. */
  private @Nullable Material material(Table.Row row, List<Table.Row> others) {
    String id = values.name(row.place(), "material", row.cell("material"));
    if (id == null) {
      return null;
    }
    MaterialFile.Entry entry = materials.get(id);
    if (entry == null) {
      others.add(row);
      String near = Nearest.to(id, materials.keySet());
      findings.note(
          Note.Kind.NOT_USED,
          row.place(),
          "material",
          "the shop has no material " + id + (near == null ? "" : "; did you mean " + near + "?"));
      return null;
    }
    if (entry.form() != MaterialFile.Form.STICK) {
      others.add(row);
      findings.note(
          Note.Kind.NOT_USED, row.place(), "material", id + " is flat, which is not planned yet");
      return null;
    }
    return entry.material();
  }

  private boolean hasColon(Place place, String field, String text) {
    if (text.indexOf(':') < 0) {
      return false;
    }
    findings.fault(place, field, text, "a colon in a name", "Leave the colon out.");
    return true;
  }
}
