package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Questions about one mark and about prices, on a small folder whose answers are known by hand. */
final class AskingTest {
  @TempDir private Path folder = Path.of("");

  @BeforeEach
  void threeJobsOfOnePostEach() throws IOException {
    write(
        "shop.yaml",
        """
        name: Test shop
        currency: USD
        units: ft-in
        saws:
          cold-saw: { kerf: 3/32", end-trim: 1/2", hold: 3" }
        keep-offcuts-from: 24"
        """);
    write(
        "materials.yaml",
        """
        materials:
          tube:
            saw: cold-saw
        """);
    write(
        "prices/pellbrook.csv",
        """
        material,length,price,per,good-until
        tube,20',41.00,each,2026-12-11
        tube,24',48.00,each,2026-11-20
        """);
    write("prices/ostermoor.csv", "material,length,price,per\ntube,20',2.10,ft\n");
    for (String job : new String[] {"ash", "birch", "cedar"}) {
      write("jobs/" + job + ".yaml", "pieces:\n  tube:\n    - 1 @ 9'-6\" P1 post\n");
    }
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  @Test
  void tellsWhereEachPieceLandsAndWhatOneMoreCosts() {
    CommandRun run = CommandRun.of("explain", folder, "P1");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertEquals("P1: 3 pieces on 2 tickets.", run.firstLine());
    // Three posts take two sticks, which give a fourth one.
    assertTrue(run.out().contains("1 P1 of "), run.out());
    assertTrue(run.out().contains("One more: costs nothing, the stock"), run.out());
    assertTrue(run.out().contains("Both plans are"), run.out());
  }

  @Test
  void oneMoreThatNeedsAStickCostsIt() throws IOException {
    write("jobs/cedar.yaml", "pieces:\n  tube:\n    - 2 @ 9'-6\" P1 post\n");
    CommandRun run = CommandRun.of("explain", folder, "P1", "--json");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.out().contains("\"without\" : 82.00"), run.out());
    assertTrue(run.out().contains("\"with\" : 123.00"), run.out());
    assertTrue(run.out().contains("\"costs\" : 41.00"), run.out());
  }

  @Test
  void anUnknownMarkGetsTheNearestOne() {
    CommandRun run = CommandRun.of("explain", folder, "PI");
    assertEquals(ExitStatus.WRONG_INPUT, run.status());
    assertTrue(run.err().contains("Did you mean P1?"), run.err());
    assertEquals("", run.out());
  }

  @Test
  void eachJobsPartIsFrozenInTheSavedPlan() throws IOException {
    CommandRun run = CommandRun.of("order", folder, "--save", "--all");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.out().contains("Each job's part of the $82.00"), run.out());
    assertTrue(run.out().contains("$27.34"), run.out());
    String saved = Files.readString(folder.resolve("plan.json"));
    assertTrue(saved.contains("\"pays\" : 27.34"), saved);
    // The saved parts stay what they are, and the plan with them passes the check.
    CommandRun cut = CommandRun.of("cut", folder, "--json");
    assertTrue(cut.out().contains("\"pays\" : 27.34"), cut.out());
    assertFalse(CommandRun.of("order", folder).out().contains("Each job's part"), run.out());
  }

  @Test
  void aSavedPlanWhosePartsDoNotAddUpIsRefused() throws IOException {
    CommandRun.of("order", folder, "--save");
    Path file = folder.resolve("plan.json");
    String saved = Files.readString(file);
    Files.writeString(file, saved.replace("\"pays\" : 27.34", "\"pays\" : 27.35"));
    assertEquals(ExitStatus.WRONG_INPUT, CommandRun.of("cut", folder).status());
  }

  @Test
  void wasteTellsEachJobsPart() {
    CommandRun run = CommandRun.of("waste", folder, "--all");
    assertTrue(run.out().contains("Each job's part of the $82.00"), run.out());
  }

  @Test
  void pricesComeCheapestByLengthFirstWithTheirDay() {
    CommandRun run = CommandRun.of("prices", folder);
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    int cheapest = run.out().indexOf("48.00 each");
    int second = run.out().indexOf("41.00 each");
    int dearest = run.out().indexOf("2.10 a ft");
    assertTrue(0 < cheapest && cheapest < second && second < dearest, run.out());
    assertTrue(run.out().contains("2026-11-20 over"), run.out());
    assertFalse(run.out().contains("2026-12-11 over"), run.out());
    assertTrue(run.out().contains("1 is out of date"), run.out());
    assertTrue(run.out().contains("1 has no last day"), run.out());
  }

  @Test
  void pricesAsJson() {
    CommandRun run = CommandRun.of("prices", folder, "--json", "--date", "2026-11-19");
    assertTrue(run.out().contains("\"perFoot\" : 2.05"), run.out());
    assertFalse(run.out().contains("out of date"), run.out());
  }

  @Test
  void pricesOfAnUnknownMaterialNameTheNearest() {
    CommandRun run = CommandRun.of("prices", folder, "--material", "tubes");
    assertEquals(ExitStatus.WRONG_INPUT, run.status());
    assertTrue(run.err().contains("Did you mean tube?"), run.err());
  }
}
