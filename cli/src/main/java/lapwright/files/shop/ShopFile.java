package lapwright.files.shop;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Node;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.SafeSide;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/** shop.yaml as read. */
public record ShopFile(
    Place place,
    String name,
    String currency,
    Shop.Units units,
    boolean onHandValued,
    Map<String, Saw> saws,
    Length keepOffcutsFrom) {
  private static final Length INCH = Length.ofInches(1);
  private static final Map<String, Shop.Units> UNITS =
      Values.ordered(
          Shop.Units.FEET_INCHES.word(), Shop.Units.FEET_INCHES,
          Shop.Units.MILLIMETRES.word(), Shop.Units.MILLIMETRES);
  private static final Map<String, Boolean> ON_HAND_VALUE =
      Values.ordered("today", true, "nothing", false);

  /** Reads the file; null when that is impossible. */
  public static @Nullable ShopFile read(Path path, Inputs inputs) {
    Findings findings = inputs.findings();
    Node root = inputs.tree(path);
    Fields fields = root == null ? null : Fields.of(root, "", ShopFields.SHOP, findings);
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
    readSaws(fields, saws, findings);
    return new ShopFile(
        fields.place(),
        name == null ? "" : name,
        currency == null ? "" : currency,
        units == null ? Shop.Units.FEET_INCHES : units,
        valued == null || valued,
        saws,
        keep);
  }

  private static void readSaws(Fields shop, Map<String, Saw> saws, Findings findings) {
    Node.Entry entry = shop.entry("saws");
    if (entry == null) {
      shop.missing("saws", "Name what cuts: saws:, then cold-saw: { kerf: 3/32\" }.");
      return;
    }
    Fields named = Fields.named(entry.value(), "saws", findings);
    for (Node.Entry saw : named == null ? List.<Node.Entry>of() : named.entries()) {
      String way = "saws > " + saw.key();
      Fields fields = Fields.of(saw.value(), way, ShopFields.SAW, findings);
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
      Integer stack = fields.quantity("stack", 1);
      Length trim = stackTrim(fields, stack, endTrim, findings);
      saws.put(
          saw.key(),
          new Saw(
              saw.key(),
              kerf == null ? Length.ZERO : kerf,
              trim == null || (kerf != null && trim.isShorterThan(kerf)) ? Length.ZERO : trim,
              hold == null ? Length.ZERO : hold,
              longest,
              shortest == null ? Length.ZERO : shortest,
              stack == null ? 1 : stack));
    }
    if (named != null && named.entries().isEmpty()) {
      shop.missing("saws", "Name at least one, such as cold-saw: { kerf: 3/32\" }.");
    }
  }

  /**
   * What is cut off the ends of the sticks of a machine that cuts stacks: the ends of a stack are
   * never quite level, so it may take more than those of one stick.
   */
  private static @Nullable Length stackTrim(
      Fields saw, @Nullable Integer stack, @Nullable Length endTrim, Findings findings) {
    Length stackTrim = saw.length("stack-end-trim", SafeSide.LONGER);
    if (stackTrim == null) {
      return endTrim;
    }
    if (stack == null || stack == 1) {
      findings.fault(
          saw.placeOf("stack-end-trim"),
          saw.way("stack-end-trim"),
          "",
          "the machine cuts one stick at a time",
          "Write stack: 4 for a machine that cuts four at once, or delete it.");
    } else if (endTrim == null || stackTrim.isShorterThan(endTrim)) {
      findings.fault(
          saw.placeOf("stack-end-trim"),
          saw.way("stack-end-trim"),
          "",
          endTrim == null ? "there is no end-trim for one stick" : "less than the end-trim",
          "Write end-trim for one stick, and at least as much for a stack.");
    }
    return endTrim == null ? null : stackTrim;
  }

  /** Lengths of the pieces of runs are multiples of it where a run gives no step. */
  public Length step() {
    return units == Shop.Units.MILLIMETRES ? Length.ofMm(1) : Length.ofUnits(INCH.units() / 16);
  }

  /** How lengths are written. */
  public LengthStyle style() {
    return units == Shop.Units.MILLIMETRES ? LengthStyle.MILLIMETRES : LengthStyle.FEET_INCHES;
  }
}
