package lapwright.files;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.files.jobs.ChosenJobs;
import lapwright.files.jobs.JobChoice;
import lapwright.files.shop.MaterialFile;
import lapwright.files.shop.ShopFile;
import lapwright.files.shop.Stock;
import lapwright.files.shop.SupplierFile;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Place;
import lapwright.shop.Material;
import lapwright.shop.Shop;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Reads an order folder: shop.yaml, materials.yaml, suppliers.yaml, prices, on-hand.csv, rack.csv
 * and jobs, in the folder or where its order.yaml points to. Gives sound input, or all faults
 * together; trusts nothing that it reads.
 */
public final class OrderFolder {
  private static final ShopFile NO_SHOP =
      new ShopFile(
          Place.whole("shop.yaml"),
          "",
          "USD",
          Shop.Units.FEET_INCHES,
          true,
          Map.of(),
          lapwright.measure.Length.ZERO);

  private OrderFolder() {}

  /** Reads {@code folder} for a command that is about the jobs of {@code choice}. */
  public static FolderReading read(Path folder, JobChoice choice) {
    Findings findings = new Findings();
    OrderInput input = input(new Inputs(folder, findings), choice);
    return input != null && findings.isSound()
        ? new FolderReading.Sound(input)
        : new FolderReading.Faulty(findings.faults());
  }

  private static @Nullable OrderInput input(Inputs inputs, JobChoice choice) {
    Path folder = inputs.folder();
    Findings findings = inputs.findings();
    if (!Files.isDirectory(folder)) {
      findings.fault(
          Place.whole(folder.toString()),
          "",
          "",
          Files.exists(folder) ? "not a folder" : "there is no such folder",
          "Name the folder of an order; lapwright start DIR writes a small one.");
      return null;
    }
    OrderFile order = OrderFile.read(folder, inputs);
    if (order == null) {
      return null;
    }
    Path shopFile = required(order.shop(), "shop", inputs);
    ShopFile readShop = shopFile == null ? null : ShopFile.read(shopFile, inputs);
    ShopFile shop = readShop == null ? NO_SHOP : readShop;
    Path suppliersFile = inputs.treeFile(order.shop(), "suppliers");
    Map<String, Supplier> suppliers =
        suppliersFile == null ? Map.of() : SupplierFile.read(suppliersFile, inputs);
    Path materialsFile = required(order.shop(), "materials", inputs);
    Map<String, MaterialFile.Entry> materials =
        materialsFile == null ? null : MaterialFile.read(materialsFile, readShop, inputs);
    Stock stock =
        Stock.read(order.shop(), shop, materials == null ? Map.of() : materials, suppliers, inputs);
    ChosenJobs chosen =
        ChosenJobs.read(
            order.jobs(), order.kits(), materials, stock.items().keySet(), shop, inputs);
    chosen.choose(choice, order.without(), order.dueUntil());
    if (materials == null || !findings.isSound()) {
      return null;
    }
    List<Material> sticks =
        materials.values().stream()
            .map(MaterialFile.Entry::material)
            .filter(Objects::nonNull)
            .map(Objects::requireNonNull)
            .toList();
    ShopOrder shopOrder =
        new ShopOrder(
            new Shop(
                shop.name(),
                shop.currency(),
                shop.units(),
                shop.onHandValued(),
                List.copyOf(suppliers.values())),
            shop.saws(),
            sticks,
            Map.copyOf(stock.supplies()),
            chosen.jobs(),
            stock.items());
    chosen.reportRunsThatFail(
        shopOrder.materialOrders(job -> chosen.wanted().contains(job.name())));
    return new OrderInput(
        shopOrder,
        chosen.wanted(),
        chosen.leftOut(),
        chosen.takenAsFirm(),
        findings.notes(),
        inputs.digests(),
        stock.rackIds(),
        stock.other());
  }

  private static @Nullable Path required(Path directory, String stem, Inputs inputs) {
    Path path = inputs.treeFile(directory, stem);
    if (path == null) {
      inputs
          .findings()
          .fault(
              Place.whole(inputs.name(directory.resolve(stem + ".yaml"))),
              "",
              "",
              "there is no such file",
              "Name the folder of an order; lapwright start DIR writes a small one.");
    }
    return path;
  }
}
