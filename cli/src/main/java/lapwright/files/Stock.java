package lapwright.files;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.shop.Material;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What each material can be cut from: offers, then sticks on hand, then offcuts.
 *
 * @param supplies by material
 * @param rackIds every name in rack.csv
 * @param other rows of materials that are not planned
 */
record Stock(Map<String, List<Supply>> supplies, Set<String> rackIds, OtherStock other) {

  static Stock read(
      Path directory,
      ShopFile shop,
      Map<String, MaterialFile.Entry> materials,
      Map<String, Supplier> suppliers,
      Inputs inputs) {
    Map<String, List<OfferLine>> lines = new LinkedHashMap<>();
    materials.forEach((id, entry) -> lines.put(id, new ArrayList<>(entry.stock())));
    Set<String> sheets =
        readPrices(directory.resolve("prices"), materials, suppliers, lines, inputs);
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
    return new Stock(supplies, Set.copyOf(tables.rackIds()), tables.other());
  }

  private static Set<String> readPrices(
      Path directory,
      Map<String, MaterialFile.Entry> materials,
      Map<String, Supplier> suppliers,
      Map<String, List<OfferLine>> lines,
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
        PriceSheet.read(path, materials, lines, inputs);
      }
    }
    return sheets;
  }

  private static @Nullable Path ifThere(Path directory, String file) {
    Path path = directory.resolve(file);
    return Files.exists(path) || Files.isSymbolicLink(path) ? path : null;
  }
}
