package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Planning that is stopped before it begins: a plan that is not proved, or none at all. */
final class StoppedEarlyTest {
  @TempDir Path folder;

  private CommandRun stopped(Object... args) {
    Interruption interruption = new Interruption();
    interruption.want();
    return CommandRun.of(0, interruption, args);
  }

  private void week(String materials, String rows) throws IOException {
    TinyShop shop = TinyShop.in(folder);
    shop.replace("shop.yaml", "kerf: 1/8\"", "kerf: 0");
    shop.put("materials.yaml", materials);
    for (String job : List.of("pier", "shed", "barn")) {
      Files.delete(folder.resolve("jobs/" + job + ".yaml"));
    }
    shop.put("jobs/week.csv", "material,length,qty\n" + rows);
  }

  /** Far too many lengths for the first plan to be the best by chance. */
  @Test
  void aPlanWithoutProofIsToldAndFailsWhereAProofIsRequired() throws IOException {
    Random random = new Random(1);
    StringBuilder rows = new StringBuilder();
    for (int row = 0; row < 400; row++) {
      rows.append("tube,")
          .append(305 + random.nextInt(5500))
          .append(" mm,")
          .append(1 + random.nextInt(10))
          .append('\n');
    }
    week(
        """
        materials:
          tube:
            saw: saw
            stock:
              - { length: 6000 mm, price: 41.00, per: each, supplier: north }
              - { length: 7000 mm, price: 48.10, per: each, supplier: north }
        """,
        rows.toString());
    CommandRun order = stopped("order", folder, "--require-proof");
    assertEquals(ExitStatus.NOT_PROVED, order.status(), order.err());
    assertTrue(order.out().startsWith("Buy "), order.out());
    assertTrue(order.err().contains("Not proved"), order.err());
    assertEquals(ExitStatus.DONE, stopped("order", folder).status());
  }

  /**
   * Eighty sticks are there, each of which was divided in three to make the list: a plan exists,
   * and no first guess finds it.
   */
  @Test
  void noPlanBeforeTheStopIsToldAndNothingIsWritten() throws IOException {
    Random random = new Random(3);
    Map<Integer, Integer> pieces = new TreeMap<>();
    for (int stick = 0; stick < 80; stick++) {
      int first = 200 + random.nextInt(280);
      int second = 200 + random.nextInt(980 - first - 219);
      for (int piece : List.of(first, second, 1000 - first - second)) {
        pieces.merge(piece, 1, Integer::sum);
      }
    }
    StringBuilder rows = new StringBuilder();
    pieces.forEach((mm, qty) -> rows.append("tube," + mm + " mm," + qty + "\n"));
    week(
        """
        materials:
          tube:
            saw: saw
            mill-ends: good
            stock:
              - { length: 1000 mm, price: 40.00, per: each, supplier: north, at-most: 80 }
        """,
        rows.toString());
    CommandRun order = stopped("order", folder, "--save");
    assertEquals(ExitStatus.INTERRUPTED, order.status(), order.out());
    assertEquals("", order.out());
    assertTrue(order.err().contains("nothing was written"), order.err());
    assertTrue(Files.notExists(folder.resolve("plan.json")));
  }
}
