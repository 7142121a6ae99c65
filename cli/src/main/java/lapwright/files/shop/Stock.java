package lapwright.files.shop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.files.source.Inputs;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.shop.ItemStock;
import lapwright.shop.Material;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What each material can be cut from: offers, then sticks on hand, then offcuts. And what counted
 * goods there are.
 *
 * @param supplies by material
 * @param items that are offered or lie in the shop, by name
 * @param rackIds every name in rack.csv
 * @param other rows of materials that are not planned
 */
public record Stock(
    Map<String, List<Supply>> supplies,
    SortedMap<String, ItemStock> items,
    Set<String> rackIds,
    OtherStock other) {

  public static Stock read(
      Path directory,
      ShopFile shop,
      Map<String, MaterialFile.Entry> materials,
      Map<String, Supplier> suppliers,
      Inputs inputs) {
    Map<String, List<OfferLine>> lines = new LinkedHashMap<>();
    materials.forEach((id, entry) -> lines.put(id, new ArrayList<>(entry.stock())));
    Map<String, List<OfferLine>> itemLines = new TreeMap<>();
    Set<String> sheets =
        readPrices(directory.resolve("prices"), materials, suppliers, lines, itemLines, inputs);
    Offers offers = new Offers(shop, suppliers, sheets, inputs.findings());
    Map<String, List<Supply>> supplies = new LinkedHashMap<>();
    materials.forEach(
        (id, entry) -> {
          Material material = entry.material();
          if (material != null) {
            supplies.put(
                id, new ArrayList<>(offers.of(material, lines.getOrDefault(id, List.of()))));
          }
        });
    StockTables tables = new StockTables(materials, inputs);
    Path onHand = ifThere(directory, "on-hand.csv");
    if (onHand != null) {
      tables.readOnHand(onHand, supplies);
    }
    Path rack = ifThere(directory, "rack.csv");
    if (rack != null) {
      tables.readRack(rack, supplies);
    }
    SortedMap<String, ItemStock> items = new TreeMap<>();
    Set<String> known = new TreeSet<>(itemLines.keySet());
    known.addAll(tables.items().keySet());
    for (String item : known) {
      items.put(
          item,
          new ItemStock(
              item,
              offers.ofItem(item, itemLines.getOrDefault(item, List.of())),
              tables.items().getOrDefault(item, 0)));
    }
    return new Stock(supplies, items, Set.copyOf(tables.rackIds()), tables.other());
  }

  private static Set<String> readPrices(
      Path directory,
      Map<String, MaterialFile.Entry> materials,
      Map<String, Supplier> suppliers,
      Map<String, List<OfferLine>> lines,
      Map<String, List<OfferLine>> items,
      Inputs inputs) {
    Set<String> sheets = new TreeSet<>();
    if (!Files.exists(directory)) {
      return sheets;
    }
    for (Path path : inputs.entries(directory)) {
      if (!Inputs.isTable(path)) {
        inputs
            .findings()
            .note(Note.Kind.NOT_USED, Place.whole(inputs.name(path)), "", "not read: no CSV");
        continue;
      }
      String supplier = Inputs.stem(path);
      if (!suppliers.isEmpty() && !suppliers.containsKey(supplier)) {
        inputs
            .findings()
            .note(
                Note.Kind.WARNING,
                Place.whole(inputs.name(path)),
                "",
                "suppliers.yaml has no terms of " + supplier);
      }
      if (sheets.add(supplier)) {
        PriceSheet.read(path, materials, lines, items, inputs);
      }
    }
    return sheets;
  }

  private static @Nullable Path ifThere(Path directory, String file) {
    Path path = directory.resolve(file);
    return Files.exists(path) || Files.isSymbolicLink(path) ? path : null;
  }
}
