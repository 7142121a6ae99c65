package lapwright.bench.instance;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import lapwright.measure.Length;
import lapwright.shop.Job;
import lapwright.shop.Material;
import lapwright.shop.Piece;
import lapwright.shop.ShopOrder;

/** Writes a generated week as an order folder, so that the whole program can be timed on it. */
public final class WeekFolder {
  private static final String SECOND_SUPPLIER = "stonewick";
  private static final String SECOND_PRICE = "42.60";

  private WeekFolder() {}

  public static void write(ShopOrder week, Path folder) throws IOException {
    Files.createDirectories(folder.resolve("prices"));
    Files.createDirectories(folder.resolve("jobs"));
    InstanceWriter.replace(folder.resolve("shop.yaml"), shop(week));
    InstanceWriter.replace(folder.resolve("materials.yaml"), materials(week));
    InstanceWriter.replace(
        folder.resolve("prices").resolve(Week.SUPPLIER + ".csv"), prices(week.materials()));
    for (Job job : week.jobs()) {
      InstanceWriter.replace(folder.resolve("jobs").resolve(job.name() + ".yaml"), lines(job));
    }
  }

  /**
   * Adds what a shop has besides: suppliers' terms, a second supplier of a third of the materials
   * (21 ft in packs of 5), sticks on hand of a quarter and up to three offcuts of each. What is
   * planned in memory knows nothing of it.
   */
  public static void addStock(ShopOrder week, long seed, Path folder) throws IOException {
    SplittableRandom random = new SplittableRandom(seed);
    List<String> second = new ArrayList<>(List.of("material,length,price,per,sold-in"));
    List<String> onHand = new ArrayList<>(List.of("material,length,qty,place"));
    List<String> rack = new ArrayList<>(List.of("id,material,length,ends"));
    int number = 0;
    for (Material material : week.materials()) {
      if (number % 3 == 0) {
        second.add(material.id() + ",21'," + SECOND_PRICE + ",each,5");
      }
      if (number % 4 == 0) {
        onHand.add(material.id() + ",20'," + random.nextInt(1, 7) + ",shelf " + number);
      }
      for (int offcut = random.nextInt(4); offcut > 0; offcut--) {
        Length length = Length.ofSixteenths(random.nextLong(24 * 16, 140 * 16));
        // Letters alone, so that no spreadsheet takes a name for a number.
        String name = "" + (char) ('A' + number / 26) + (char) ('A' + number % 26);
        rack.add(name + "X".repeat(offcut) + "," + material.id() + "," + csv(length) + ",sawn");
      }
      number++;
    }
    InstanceWriter.replace(folder.resolve("prices").resolve(SECOND_SUPPLIER + ".csv"), second);
    InstanceWriter.replace(folder.resolve("on-hand.csv"), onHand);
    InstanceWriter.replace(folder.resolve("rack.csv"), rack);
    InstanceWriter.replace(
        folder.resolve("suppliers.yaml"),
        List.of(
            "suppliers:",
            "  " + Week.SUPPLIER + ": { days: 3, freight: 60.00, free-from: 2000.00 }",
            "  " + SECOND_SUPPLIER + ": { days: 5, minimum: 500.00, freight: 80.00 }"));
  }

  private static String csv(Length length) {
    return "\"" + feetAndInches(length).replace("\"", "\"\"") + "\"";
  }

  private static List<String> shop(ShopOrder week) {
    return List.of(
        "name: " + week.shop().name(),
        "currency: " + week.shop().currency(),
        "units: " + week.shop().units().word(),
        "saws:",
        "  " + Week.SAW.id() + ": { kerf: 3/32\", end-trim: 1/2\", hold: 0 }",
        "keep-offcuts-from: " + feetAndInches(Week.KEEP_FROM));
  }

  private static List<String> materials(ShopOrder week) {
    List<String> lines = new ArrayList<>(List.of("materials:"));
    for (Material material : week.materials()) {
      lines.add("  " + material.id() + ":");
      lines.add("    saw: " + material.saw());
    }
    return lines;
  }

  private static List<String> prices(List<Material> materials) {
    List<String> lines = new ArrayList<>(List.of("material,length,price,per"));
    for (Material material : materials) {
      lines.add(material.id() + ",20'," + Week.SHORT_PRICE + ",each");
      lines.add(material.id() + ",24'," + Week.LONG_PRICE + ",each");
    }
    return lines;
  }

  private static List<String> lines(Job job) {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "job: " + job.name(),
                "status: " + job.status().word(),
                "due: " + job.due(),
                "pieces:"));
    String material = "";
    for (Piece piece : job.pieces()) {
      if (!piece.material().equals(material)) {
        material = piece.material();
        lines.add("  " + material + ":");
      }
      lines.add(
          "    - " + piece.qty() + " @ " + feetAndInches(piece.length()) + "  " + piece.mark());
    }
    return lines;
  }

  /** Such as 10'-6-1/2"; lengths lie on the sixteenth. */
  static String feetAndInches(Length length) {
    long sixteenths = length.units() / Length.UNITS_PER_SIXTEENTH;
    long inches = sixteenths / 16;
    long rest = sixteenths % 16;
    String text = inches / 12 + "'-" + inches % 12;
    if (rest > 0) {
      long common = Long.lowestOneBit(rest);
      text += "-" + rest / common + "/" + 16 / common;
    }
    return text + "\"";
  }
}
