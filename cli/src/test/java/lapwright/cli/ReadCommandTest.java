package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lapwright.files.FolderReading;
import lapwright.files.OrderFolder;
import lapwright.files.StartFolder;
import lapwright.files.jobs.JobChoice;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A list out of a spreadsheet becomes a job of an order folder, or nothing is written. */
final class ReadCommandTest {
  private static final String LIST =
      "Kirby lean-to,,\nQty,Section,Length (in)\n4 ea,tube-2x3-14ga,114\n2,angle-1-1/2,54.5\n"
          + "Total,6,\n";

  @TempDir Path dir;
  private Path shop = Path.of("");

  @BeforeEach
  void start() throws IOException {
    shop = dir.resolve("shop");
    StartFolder.write(shop);
  }

  @Test
  void writesAJobThatTheOrderTakesAndSaysRowByRowWhatItUnderstood() throws IOException {
    CommandRun run = CommandRun.of("read", list(LIST), "--as", "kirby", "--to", shop);
    assertEquals(0, run.status(), run.err());
    assertEquals("Wrote jobs/kirby.csv: 6 pieces in 2 rows.", run.firstLine());
    assertTrue(run.out().contains("    3  4 @ 9'-6\"  tube-2x3-14ga"), run.out());
    assertTrue(run.out().contains("    4  2 @ 4'-6-1/2\"  angle-1-1/2"), run.out());
    assertTrue(run.out().contains("    5  (a total, not read: Total 6)"), run.out());
    FolderReading.Sound sound =
        (FolderReading.Sound) OrderFolder.read(shop, JobChoice.firm().only(List.of("kirby")));
    assertEquals(
        List.of(4, 2),
        sound.input().wantedJobs().get(0).pieces().stream().map(piece -> piece.qty()).toList());
  }

  @Test
  void neverOverwritesUnlessTold() throws IOException {
    Path written = shop.resolve("jobs/tool-porch.csv");
    String before = Files.readString(written);
    CommandRun run = CommandRun.of("read", list(LIST), "--as", "tool-porch", "--to", shop);
    assertEquals(3, run.status());
    assertTrue(run.err().contains("--replace"), run.err());
    assertEquals(before, Files.readString(written));
    assertEquals(
        0,
        CommandRun.of("read", list(LIST), "--as", "tool-porch", "--to", shop, "--replace")
            .status());
    assertFalse(before.equals(Files.readString(written)));
  }

  @Test
  void writesNothingWhereAnyRowIsAmbiguous() throws IOException {
    CommandRun run =
        CommandRun.of(
            "read",
            list("Qty,Section,Length\n4,tube,9'-6\"\n4,tube,114\n"),
            "--as",
            "kirby",
            "--to",
            shop);
    assertEquals(3, run.status());
    assertTrue(run.err().contains("list.csv, line 3, column C, Length: 114"), run.err());
    assertTrue(run.err().contains("Nothing was written."), run.err());
    try (Stream<Path> jobs = Files.list(shop.resolve("jobs"))) {
      assertTrue(jobs.noneMatch(path -> path.toString().contains("kirby")));
    }
  }

  @Test
  void takesAMaterialAndAUnitForAListThatNamesNone() throws IOException {
    CommandRun run =
        CommandRun.of(
            "read",
            list("Qty,Length\n4,9.5\n"),
            "--as",
            "kirby",
            "--to",
            shop,
            "--material",
            "purlin-z",
            "--unit",
            "ft");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("4 @ 9'-6\"  purlin-z"), run.out());
    assertTrue(run.out().contains("materials.yaml does not have purlin-z"), run.out());
    assertEquals(
        2, CommandRun.of("read", list(LIST), "--as", "k", "--to", shop, "--unit", "yd").status());
  }

  @Test
  void refusesNamesThatNoFileCanHaveAndFoldersThatAreNoOrder() throws IOException {
    for (String name : List.of("../kirby", "a:b", "", ".hidden", "x ")) {
      assertEquals(3, CommandRun.of("read", list(LIST), "--as", name, "--to", shop).status(), name);
    }
    Path empty = Files.createDirectory(dir.resolve("empty"));
    CommandRun run = CommandRun.of("read", list(LIST), "--as", "kirby", "--to", empty);
    assertEquals(3, run.status());
    assertTrue(run.err().contains("Not an order folder"), run.err());
  }

  private Path list(String text) throws IOException {
    return Files.writeString(dir.resolve("list.csv"), text);
  }
}
