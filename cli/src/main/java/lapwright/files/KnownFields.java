package lapwright.files;

import java.util.List;
import java.util.stream.Stream;

/** Names of the fields and columns that files may have; the editors' schemas list the same. */
final class KnownFields {
  static final List<String> ORDER = List.of("shop", "jobs", "due-until", "without");
  static final List<String> SHOP =
      List.of("name", "currency", "units", "saws", "keep-offcuts-from", "on-hand-value");
  static final List<String> SAW =
      List.of(
          "kerf", "end-trim", "hold", "shortest-cut", "longest-stick", "stack", "stack-end-trim");
  static final List<String> MATERIALS = List.of("materials");
  static final List<String> MATERIAL =
      List.of(
          "name",
          "form",
          "saw",
          "weight",
          "mill-ends",
          "short-by",
          "keep-offcuts-from",
          "one-lot-per",
          "depth",
          "one-way",
          "stock");
  static final List<String> STOCK =
      List.of(
          "length",
          "price",
          "per",
          "supplier",
          "sold-in",
          "at-most",
          "code",
          "quoted",
          "good-until");
  static final List<String> SUPPLIERS = List.of("suppliers");
  static final List<String> SUPPLIER =
      List.of("days", "order-by", "minimum", "freight", "free-from", "longest", "rounds");
  static final List<String> PRICES =
      List.of(
          "material",
          "length",
          "price",
          "per",
          "sold-in",
          "at-most",
          "code",
          "quoted",
          "good-until");
  static final List<String> ON_HAND = List.of("material", "length", "qty", "place", "lot");
  static final List<String> RACK =
      List.of("id", "material", "length", "width", "ends", "place", "lot", "not-for-planning");
  static final List<String> JOB =
      List.of(
          "job", "status", "due", "times", "pieces", "runs", "roofs", "walls", "blanks", "items",
          "kits", "change");

  /** Fields of a job that this version reads and does not plan. */
  static final List<String> JOB_NOT_PLANNED = List.of("roofs", "walls", "blanks");

  static final List<String> KIT = List.of("pieces", "runs", "roofs", "walls", "blanks", "items");
  static final List<String> KIT_USE = List.of("kit", "times", "prefix");

  static final List<String> PIECE = with(PieceRules.FIELDS, "qty", "length", "mark", "for");
  static final List<String> RUN =
      List.of(
          "mark",
          "length",
          "qty",
          "for",
          "add-at-start",
          "add-at-end",
          "joint",
          "lap",
          "butt-gap",
          "joints-at",
          "bearings",
          "shortest-piece",
          "shortest-at-end",
          "longest-piece",
          "step",
          "closing",
          "full-sticks",
          "leave-long",
          "extra-joints",
          "most-joints",
          "stagger",
          "longest-unbroken",
          "gap");
  static final List<String> BEARINGS = List.of("first", "spacing");
  static final List<String> JOB_TABLE =
      with(PieceRules.FIELDS, "material", "length", "qty", "mark", "for", "girth", "job", "due");

  private KnownFields() {}

  private static List<String> with(List<String> more, String... fields) {
    return Stream.concat(Stream.of(fields), more.stream()).toList();
  }
}
