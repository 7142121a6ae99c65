package lapwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchCommandTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @Test
  void measuresAFileWithTwoMethods() {
    int status =
        run(
            "instances/worked-examples/winston.txt",
            "--method",
            "lapwright,first-fit",
            "--warm-up",
            "0");

    assertEquals(BenchCommand.RIGHT, status, err.toString());
    assertTrue(out.toString().contains("winston"));
    assertTrue(out.toString().contains("worked-examples"));
    assertEquals("", err.toString());
  }

  @Test
  void printsNothingButCsvWhenAskedTo() {
    run("--generate", "uniform:n=20", "--count", "2", "--csv", "--method", "first-fit");

    assertEquals(3, out.toString().lines().count());
    assertTrue(out.toString().lines().allMatch(line -> line.split(",", -1).length == 12));
  }

  @Test
  void plansShopsOfRuns() {
    int status =
        run("--runs", "4", "--runs-kind", "anywhere, 20 ft", "--count", "2", "--time", "100");

    assertEquals(BenchCommand.RIGHT, status, err.toString());
    assertTrue(out.toString().contains("anywhere, 20 ft"));
    assertTrue(out.toString().lines().filter(line -> line.contains("seed ")).count() == 2);
    assertEquals(BenchCommand.WRONG_USAGE, run("--runs", "4", "--runs-kind", "nosuch"));
  }

  @Test
  void givesStatusOneForAWrongAnswer(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("i.txt"), "3\n10\n6\n6\n6\n");
    Files.writeString(folder.resolve("optima.csv"), "name,optimum\ni,4\n");

    assertEquals(BenchCommand.WRONG_ANSWER, run(folder.toString(), "--method", "first-fit"));
    assertTrue(out.toString().contains("WRONG: cost 3 beats the known optimum 4"));
    assertTrue(err.toString().contains("1 of 1 answers"));
  }

  @Test
  void givesStatusTwoForWrongUsage() {
    assertEquals(BenchCommand.WRONG_USAGE, run());
    assertEquals(BenchCommand.WRONG_USAGE, run("--generate", "nosuch"));
    assertEquals(BenchCommand.WRONG_USAGE, run("--generate", "uniform", "--method", "nosuch"));
    assertEquals(BenchCommand.WRONG_USAGE, run("--growth", "nosuch"));
    assertEquals(BenchCommand.WRONG_USAGE, run("--nosuch"));
    assertEquals("", out.toString());
    assertTrue(err.toString().contains("no class is called 'nosuch'"));
  }

  @Test
  void givesStatusThreeForWrongInput(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("bad.txt");
    Files.writeString(file, "2\n10\n11\nx\n");

    assertEquals(BenchCommand.WRONG_INPUT, run(file.toString()));
    assertTrue(err.toString().contains(file + ":3: size 11 is above 10"));
    assertTrue(err.toString().contains(file + ":4: "));
  }

  @Test
  void writesInstancesAndWeeksInsteadOfSolving(@TempDir Path folder) {
    int status =
        run(
            "--generate",
            "triplets:n=60",
            "--count",
            "2",
            "--weeks",
            "2",
            "--stocked",
            "--out",
            folder.toString());

    assertEquals(BenchCommand.RIGHT, status, err.toString());
    assertTrue(Files.exists(folder.resolve("triplets-n-60/triplets-n60-seed1.txt")));
    assertTrue(Files.exists(folder.resolve("triplets-n-60/optima.csv")));
    assertTrue(Files.exists(folder.resolve("week-2/jobs/job-0002.yaml")));
    assertTrue(Files.exists(folder.resolve("week-2/rack.csv")));
  }

  @Test
  void plansWeeks() {
    assertEquals(BenchCommand.RIGHT, run("--weeks", "1,2", "--seed", "5"), err.toString());
    assertEquals(4, out.toString().lines().count());
    assertFalse(out.toString().contains("> limit"));
  }

  @Test
  void fitsGrowth() {
    int status = run("--growth", "lengths", "--method", "first-fit", "--count", "1", "--summary");

    assertEquals(BenchCommand.RIGHT, status, err.toString());
    assertTrue(out.toString().contains("first-fit: time grows with the power"));
  }

  private int run(String... arguments) {
    return BenchCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }
}
