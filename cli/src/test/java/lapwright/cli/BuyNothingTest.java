package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cutting from what is there. Numbers are our own, worked by hand. */
class BuyNothingTest {
  @TempDir Path folder;

  @BeforeEach
  void folder() throws IOException {
    write(
        "shop.yaml",
        """
        name: Reedham Shelters
        currency: USD
        units: ft-in
        saws:
          snips: { kerf: 0 }
        keep-offcuts-from: 24"
        """);
    write("materials.yaml", "materials:\n  trim:\n    saw: snips\n    stock: [10', 20']\n");
    write("on-hand.csv", "material,length,qty\ntrim,20',1\n");
    write("rack.csv", "id,material,length\nA1,trim,7'\nA2,trim,6'\nA3,trim,13'\n");
    pieces(2);
  }

  private void write(String file, String text) throws IOException {
    Path path = folder.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private void pieces(int qty) throws IOException {
    write(
        "jobs/barn.yaml",
        "job: barn\nstatus: firm\npieces:\n  trim:\n    - %d @ 6'  T1\n".formatted(qty));
  }

  @Test
  void drawsTheLeast() {
    // Two pieces of 6': A2 and A1 are 13' as well as A3 alone; nothing draws less.
    CommandRun cut = CommandRun.of("cut", folder, "--buy-nothing", "--json");

    assertEquals(0, cut.status(), cut.err());
    assertTrue(cut.err().contains("Proved"), cut.err());
    assertTrue(cut.out().contains("\"objective\" : \"drawn\""), cut.out());
    // 13 ft = 3962.4 mm
    assertTrue(cut.out().contains("\"costMm\" : 3962.4"), cut.out());
    assertTrue(cut.out().contains("\"drawn\" : 3962.4"), cut.out());
  }

  @Test
  void namesWhatIsMissingAndHowMuch() throws IOException {
    // The stick gives 3, the offcuts 1, 1 and 2: seven. Of nine, two are missing: one stick of 20'.
    pieces(9);

    CommandRun cut = CommandRun.of("cut", folder, "--buy-nothing");

    assertEquals(4, cut.status());
    assertEquals("", cut.out());
    assertTrue(cut.err().contains("trim: 1 stick of 20'-0\" more would do"), cut.err());
    assertTrue(cut.err().contains("lapwright order"), cut.err());
  }

  @Test
  void namesPiecesThatNothingThereGives() throws IOException {
    write("jobs/shed.yaml", "job: shed\nstatus: firm\npieces:\n  trim:\n    - 1 @ 20'-1\"  T9\n");

    CommandRun cut = CommandRun.of("cut", folder, "--buy-nothing");

    assertEquals(4, cut.status());
    assertTrue(cut.err().contains("T9 of shed"), cut.err());
  }

  @Test
  void plansNowThoughAPlanIsSaved() throws IOException {
    CommandRun.of("order", folder, "--save");
    pieces(1);

    CommandRun cut = CommandRun.of("cut", folder, "--buy-nothing");

    assertEquals(0, cut.status(), cut.err());
    assertTrue(cut.firstLine().startsWith("Cut 1 piece for 1 job"), cut.out());
    assertTrue(cut.out().contains("rack A2"), cut.out());
  }
}
