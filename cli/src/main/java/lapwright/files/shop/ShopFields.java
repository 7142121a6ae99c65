package lapwright.files.shop;

import java.util.List;

/**
 * Names of the fields and columns that the files of a shop may have; the editors' schemas list the
 * same.
 */
public final class ShopFields {
  public static final List<String> SHOP =
      List.of("name", "currency", "units", "saws", "keep-offcuts-from", "on-hand-value");
  public static final List<String> SAW =
      List.of(
          "kerf", "end-trim", "hold", "shortest-cut", "longest-stick", "stack", "stack-end-trim");
  public static final List<String> MATERIALS = List.of("materials");
  public static final List<String> MATERIAL =
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
  public static final List<String> STOCK =
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
  public static final List<String> SUPPLIERS = List.of("suppliers");
  public static final List<String> SUPPLIER =
      List.of("days", "order-by", "minimum", "freight", "free-from", "longest", "rounds");
  public static final List<String> PRICES =
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
  public static final List<String> ON_HAND = List.of("material", "length", "qty", "place", "lot");
  public static final List<String> RACK =
      List.of("id", "material", "length", "width", "ends", "place", "lot", "not-for-planning");

  private ShopFields() {}
}
