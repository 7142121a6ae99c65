package lapwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A shop with one tube, two firm jobs and a bid. Worked out by hand: a 20' stick at $40.00 gives
 * two posts of 9', so the three posts of the pier and the one of the shed take two sticks.
 */
final class TinyShop {
  private final Path folder;

  private TinyShop(Path folder) {
    this.folder = folder;
  }

  static TinyShop in(Path folder) throws IOException {
    TinyShop shop = new TinyShop(folder);
    shop.put(
        "shop.yaml",
        """
        name: Tiny Shelters
        currency: USD
        units: ft-in
        saws:
          saw: { kerf: 1/8" }
        keep-offcuts-from: 24"
        """);
    shop.put(
        "materials.yaml",
        """
        materials:
          tube:
            saw: saw
            stock:
              - { length: 20', price: 40.00, per: each, supplier: north }
        """);
    shop.job("pier", "firm", "3 @ 9' P1 post");
    shop.job("shed", "firm", "1 @ 9' P1 post");
    shop.job("barn", "bid", "8 @ 4' B1 brace");
    return shop;
  }

  Path folder() {
    return folder;
  }

  TinyShop job(String name, String status, String piece) throws IOException {
    return put(
        "jobs/" + name + ".yaml",
        "job: " + name + "\nstatus: " + status + "\npieces:\n  tube:\n    - " + piece + "\n");
  }

  TinyShop put(String file, String text) throws IOException {
    Path path = folder.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
    return this;
  }

  TinyShop replace(String file, String text, String by) throws IOException {
    String old = Files.readString(folder.resolve(file));
    if (!old.contains(text)) {
      throw new IllegalArgumentException(file + " does not contain " + text);
    }
    return put(file, old.replace(text, by));
  }
}
