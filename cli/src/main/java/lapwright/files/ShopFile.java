package lapwright.files;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.SafeSide;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * shop.yaml as read.
 *
 * @param shortestCuts by saw: the shortest piece that it cuts
 */
record ShopFile(
    Place place,
    String name,
    String currency,
    Shop.Units units,
    boolean onHandValued,
    Map<String, Saw> saws,
    Map<String, Length> shortestCuts,
    Length keepOffcutsFrom) {
  private static final Map<String, Shop.Units> UNITS =
      ordered(
          Shop.Units.FEET_INCHES.word(), Shop.Units.FEET_INCHES,
          Shop.Units.MILLIMETRES.word(), Shop.Units.MILLIMETRES);
  private static final Map<String, Boolean> ON_HAND_VALUE =
      ordered("today", true, "nothing", false);

  /** Two words and what they mean, in the order in which messages list them. */
  static <T> Map<String, T> ordered(String first, T one, String second, T two) {
    Map<String, T> words = new LinkedHashMap<>();
    words.put(first, one);
    words.put(second, two);
    return words;
  }

  /** Reads the file; null when that is impossible. */
  static @Nullable ShopFile read(Path path, Inputs inputs) {
    Findings findings = inputs.findings();
    Node root = inputs.tree(path);
    Fields fields = root == null ? null : Fields.of(root, "", KnownFields.SHOP, findings);
    if (fields == null) {
      return null;
    }
    String name = fields.words("name");
    if (name == null && !fields.has("name")) {
      fields.missing("name", "Write the shop's name, such as name: Saltmarsh Shelters.");
    }
    String currency = fields.words("currency");
    if (currency != null && !currency.matches("[A-Z]{3}")) {
      findings.fault(
          fields.placeOf("currency"),
          "currency",
          currency,
          "not a currency code",
          "Write the three capital letters, such as USD or EUR.");
    }
    Shop.Units units = fields.word("units", UNITS);
    if (units == null && !fields.has("units")) {
      fields.missing("units", "Write units: ft-in or units: mm.");
    }
    Boolean valued = fields.word("on-hand-value", ON_HAND_VALUE);
    Length keep = fields.length("keep-offcuts-from", SafeSide.LONGER);
    if (keep == null) {
      keep = units == Shop.Units.MILLIMETRES ? Length.ofMm(600) : Length.ofInches(24);
      if (!fields.has("keep-offcuts-from")) {
        findings.note(
            Note.Kind.ASSUMED,
            fields.place(),
            "keep-offcuts-from",
            "left out; offcuts from "
                + (units == Shop.Units.MILLIMETRES ? "600 mm" : "24\"")
                + " are kept");
      }
    }
    Map<String, Saw> saws = new LinkedHashMap<>();
    Map<String, Length> shortestCuts = new LinkedHashMap<>();
    readSaws(fields, saws, shortestCuts, findings);
    return new ShopFile(
        fields.place(),
        name == null ? "" : name,
        currency == null ? "" : currency,
        units == null ? Shop.Units.FEET_INCHES : units,
        valued == null || valued,
        saws,
        shortestCuts,
        keep);
  }

  private static void readSaws(
      Fields shop, Map<String, Saw> saws, Map<String, Length> shortestCuts, Findings findings) {
    Node.Entry entry = shop.entry("saws");
    if (entry == null) {
      shop.missing("saws", "Name what cuts: saws:, then cold-saw: { kerf: 3/32\" }.");
      return;
    }
    Fields named = Fields.named(entry.value(), "saws", findings);
    for (Node.Entry saw : named == null ? List.<Node.Entry>of() : named.entries()) {
      String way = "saws > " + saw.key();
      Fields fields = Fields.of(saw.value(), way, KnownFields.SAW, findings);
      if (fields == null) {
        continue;
      }
      Length kerf = fields.length("kerf", SafeSide.LONGER);
      if (kerf == null && !fields.has("kerf")) {
        fields.missing("kerf", "Write the width of the cut, or kerf: 0 for shears and snips.");
      }
      Length endTrim = fields.length("end-trim", SafeSide.LONGER);
      Length hold = fields.length("hold", SafeSide.LONGER);
      Length shortest = fields.length("shortest-cut", SafeSide.LONGER);
      Length longest = fields.positive("longest-stick", SafeSide.SHORTER);
      if (kerf != null && endTrim != null && !endTrim.isZero() && endTrim.isShorterThan(kerf)) {
        findings.fault(
            fields.placeOf("end-trim"),
            fields.way("end-trim"),
            "",
            "the end trim is less than the kerf; it includes its own kerf",
            "Write 0 when nothing is trimmed, else at least the kerf.");
        endTrim = null;
      }
      saws.put(
          saw.key(),
          new Saw(
              saw.key(),
              kerf == null ? Length.ZERO : kerf,
              endTrim == null || (kerf != null && endTrim.isShorterThan(kerf))
                  ? Length.ZERO
                  : endTrim,
              hold == null ? Length.ZERO : hold,
              longest));
      if (shortest != null) {
        shortestCuts.put(saw.key(), shortest);
      }
    }
    if (named != null && named.entries().isEmpty()) {
      shop.missing("saws", "Name at least one, such as cold-saw: { kerf: 3/32\" }.");
    }
  }

  /** How lengths are written. */
  LengthStyle style() {
    return units == Shop.Units.MILLIMETRES ? LengthStyle.MILLIMETRES : LengthStyle.FEET_INCHES;
  }
}
