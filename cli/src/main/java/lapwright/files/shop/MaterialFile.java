package lapwright.files.shop;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Nearest;
import lapwright.files.source.Node;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.measure.SafeSide;
import lapwright.measure.WeightRate;
import lapwright.shop.Material;
import lapwright.shop.OneLotPer;
import org.jspecify.annotations.Nullable;

/** materials.yaml: what a material is, and the stock lengths that stand there. */
public final class MaterialFile {
  public static final Map<String, Boolean> MILL_ENDS = Values.ordered("good", true, "bad", false);
  private static final Map<String, Form> FORMS = forms();
  private static final Map<String, OneLotPer> ONE_LOT = oneLot();

  private MaterialFile() {}

  public enum Form {
    STICK,
    FLAT,
    SHEET
  }

  /**
   * A material as read.
   *
   * @param material null when it is no stick, or wrong
   * @param stock lines that stand with the material
   */
  public record Entry(Place place, Form form, @Nullable Material material, List<OfferLine> stock) {
    public Entry {
      Objects.requireNonNull(place);
      Objects.requireNonNull(form);
      stock = List.copyOf(stock);
    }
  }

  private static Map<String, OneLotPer> oneLot() {
    Map<String, OneLotPer> words = new LinkedHashMap<>();
    for (OneLotPer within : List.of(OneLotPer.JOB, OneLotPer.RUN, OneLotPer.NONE)) {
      words.put(within.word(), within);
    }
    return words;
  }

  private static Map<String, Form> forms() {
    Map<String, Form> words = new LinkedHashMap<>();
    words.put("stick", Form.STICK);
    words.put("flat", Form.FLAT);
    words.put("sheet", Form.SHEET);
    return words;
  }

  /** Reads the file; null when that is impossible. */
  public static @Nullable Map<String, Entry> read(
      Path path, @Nullable ShopFile shop, Inputs inputs) {
    Findings findings = inputs.findings();
    Node root = inputs.tree(path);
    Fields top = root == null ? null : Fields.of(root, "", ShopFields.MATERIALS, findings);
    if (top == null) {
      return null;
    }
    Node.Entry entry = top.entry("materials");
    if (entry == null) {
      top.missing("materials", "Begin with materials:, then each material's name and fields.");
      return null;
    }
    Fields named = Fields.named(entry.value(), "materials", findings);
    if (named == null) {
      return null;
    }
    Map<String, Entry> materials = new LinkedHashMap<>();
    for (Node.Entry material : named.entries()) {
      materials.put(material.key(), material(material, shop, findings));
    }
    return materials;
  }

  private static Entry material(Node.Entry entry, @Nullable ShopFile shop, Findings findings) {
    String way = "materials > " + entry.key();
    Fields fields = Fields.of(entry.value(), way, ShopFields.MATERIAL, findings);
    if (fields == null) {
      return new Entry(entry.place(), Form.STICK, null, List.of());
    }
    Form form = fields.word("form", FORMS);
    form = form == null ? Form.STICK : form;
    String name = fields.words("name");
    String saw = fields.words("saw");
    if (saw == null && !fields.has("saw") && form == Form.STICK) {
      fields.missing("saw", "Name the saw of shop.yaml that cuts it.");
    }
    if (saw != null && shop != null && !shop.saws().containsKey(saw)) {
      findings.fault(
          fields.placeOf("saw"),
          fields.way("saw"),
          saw,
          "shop.yaml has no such saw",
          Nearest.advice(
              saw,
              shop.saws().keySet(),
              "Saws there: " + String.join(", ", shop.saws().keySet()) + "."));
      saw = null;
    }
    WeightRate weight = fields.weight("weight");
    Boolean good = fields.word("mill-ends", MILL_ENDS);
    Length shortBy = fields.length("short-by", SafeSide.LONGER);
    Length keep = fields.length("keep-offcuts-from", SafeSide.LONGER);
    Length depth = fields.positive("depth", SafeSide.LONGER);
    Boolean oneWay = fields.word("one-way", Values.YES_OR_NO);
    OneLotPer oneLot = fields.word("one-lot-per", ONE_LOT);
    List<OfferLine> stock = form == Form.STICK ? stock(fields, findings) : List.of();
    if (form != Form.STICK || saw == null) {
      return new Entry(entry.place(), form, null, stock);
    }
    Length keepHere =
        keep != null ? keep : shop == null ? Length.ofInches(24) : shop.keepOffcutsFrom();
    Material material =
        new Material(
            entry.key(),
            name == null ? entry.key() : name,
            saw,
            good != null && good,
            shortBy == null ? Length.ZERO : shortBy,
            keepHere,
            weight,
            oneLot == null ? OneLotPer.NONE : oneLot,
            depth,
            oneWay != null && oneWay);
    return new Entry(entry.place(), form, material, stock);
  }

  private static List<OfferLine> stock(Fields material, Findings findings) {
    List<Node> items = material.list("stock");
    List<OfferLine> lines = new ArrayList<>();
    Values values = new Values(findings);
    int n = 0;
    for (Node item : items == null ? List.<Node>of() : items) {
      String way = material.way("stock") + " > " + ++n;
      if (item instanceof Node.Scalar scalar) {
        Length length = values.positive(scalar.place(), way, scalar.text(), SafeSide.SHORTER);
        if (length != null) {
          lines.add(OfferLine.bare(scalar.place(), length));
        }
        continue;
      }
      Fields fields = Fields.of(item, way, ShopFields.STOCK, findings);
      OfferLine line = fields == null ? null : stockLine(fields, findings);
      if (line != null) {
        lines.add(line);
      }
    }
    return lines;
  }

  private static @Nullable OfferLine stockLine(Fields fields, Findings findings) {
    Length length = fields.positive("length", SafeSide.SHORTER);
    if (length == null && !fields.has("length")) {
      fields.missing("length", "Give the stock length, such as length: 20'.");
    }
    BigDecimal amount = fields.money("price");
    Price.Per per = fields.word("per", OfferLine.PER);
    boolean faulty =
        OfferLine.checkPrice(
            fields.place(),
            fields.way("price"),
            fields.way("per"),
            fields.has("price"),
            fields.has("per"),
            findings);
    faulty |= (fields.has("price") && amount == null) || (fields.has("per") && per == null);
    Integer soldIn = fields.quantity("sold-in", 1);
    Integer atMost = fields.quantity("at-most", 0);
    String supplier = fields.words("supplier");
    String code = fields.words("code");
    LocalDate quoted = fields.day("quoted");
    LocalDate goodUntil = fields.day("good-until");
    OfferLine.checkDays(
        fields.placeOf("good-until"), fields.way("good-until"), quoted, goodUntil, findings);
    if (length == null) {
      return null;
    }
    return new OfferLine(
        fields.place(),
        supplier == null ? "" : supplier,
        length,
        amount,
        per,
        soldIn == null ? 1 : soldIn,
        atMost == null ? Integer.MAX_VALUE : atMost,
        code == null ? "" : code,
        quoted,
        goodUntil,
        fields.entries().size() == 1,
        faulty);
  }
}
