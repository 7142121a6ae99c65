package lapwright.files.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lapwright.files.FolderReading;
import lapwright.files.OrderFolder;
import lapwright.files.OrderInput;
import lapwright.files.SampleFolder;
import lapwright.files.source.Fault;
import lapwright.measure.LengthStyle;
import lapwright.shop.Job;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Kits: what a job gets from them, counted by hand, and what is said of each slip. */
final class KitsTest {
  private static final String JOB = "jobs/quarry-stops.yaml";
  private static final String KIT = "kits/bus-shelter.yaml";
  private static final String NORTH = "{ kit: bus-shelter, times: 2, prefix: N- }";

  @TempDir Path dir;

  @Test
  void aJobGetsEachKitAsOftenAsItSaysWithItsPrefixAndTheChanges() throws IOException {
    assertEquals(
        List.of(
            "9 x 7'-8\" N-P1",
            "4 x 5'-0-1/2\" N-B1",
            "9 x 4'-3\" ", // 3 x 2 of one kit and 3 of the other: no mark, so they add up
            "4 x 7'-8\" P1"),
        pieces(SampleFolder.withKits()));
  }

  @Test
  void copiesOfTheJobComeOnTopOfTheKits() throws IOException {
    SampleFolder twice =
        SampleFolder.withKits().replace(JOB, "status: firm", "status: firm\ntimes: 3");
    OrderInput input = twice.read(dir);
    int posts =
        input.materialOrders().stream()
            .flatMap(order -> order.needs().stream())
            .filter(need -> need.job().equals("quarry-stops") && need.mark().equals("N-P1"))
            .mapToInt(lapwright.shop.Need::total)
            .sum();
    assertEquals(27, posts);
  }

  @Test
  void aJobsOwnPiecesAndTablesCanBeChangedInTheSamePlace() throws IOException {
    SampleFolder own =
        SampleFolder.withKits()
            .put("jobs/ferry-canopy.yaml", "job: ferry-canopy\nstatus: firm\nchange: { T1: 7 }\n");
    assertEquals(
        7,
        job(own.read(dir), "ferry-canopy").pieces().get(0).qty(),
        "6 in the table, 7 by the change");
  }

  @Test
  void theSameAsPiecesWrittenOut() throws IOException {
    String written =
        """
        job: quarry-stops
        status: firm
        pieces:
          tube-2x2-14ga:
            - 9 @ 7'-8" N-P1 post
            - 4 @ 5'-0-1/2" N-B1
            - 4 @ 7'-8" P1 post
          angle-2x2: [9 @ 4'-3"]
        """;
    OrderInput kits = SampleFolder.withKits().read(dir.resolve("kits"));
    OrderInput plain = SampleFolder.withKits().put(JOB, written).read(dir.resolve("plain"));
    assertEquals(plain.materialOrders(), kits.materialOrders());
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        arguments(JOB, "- bus-shelter\n", "- bus-sheltr\n", 5, "Did you mean bus-shelter?"),
        arguments(JOB, "- bus-shelter\n", "- gate\n", 5, "Kits: bus-shelter."),
        arguments(
            JOB,
            NORTH,
            "{ kit: bus-shelter }",
            5,
            "Tell them apart by a prefix, such as prefix: B-."),
        arguments(JOB, "- bus-shelter\n", "- " + NORTH + "\n", 5, "Give this kit another prefix."),
        arguments(JOB, "N-P1: 9", "N-P: 9", 7, "Did you mean N-P1?"),
        arguments(JOB, "N-P1: 9", "rafter: 9", 7, "Marks, with the prefix of their kit: "),
        arguments(JOB, "N-P1: 9", "N-P1: 0", 7, "Write dropped, if none is wanted."),
        arguments(JOB, "N-P1: 9", "N-P1: -9", 7, "Leave the minus sign out."),
        arguments(JOB, "N-P1: 9", "N-P1: [9]", 7, "Write how many instead, such as N-P1: 9"),
        arguments(JOB, "N-P1: 9", "B1: 9", 8, "Put both together, or delete one."),
        arguments(JOB, "times: 2", "times: 0", 4, "Write a whole number from 1."),
        arguments(JOB, "times: 2", "tims: 2", 4, "Did you mean times?"),
        arguments(JOB, "times: 2", "times: 500000", 4, "Are times and the kit's qty right?"),
        arguments(JOB, "kit: bus-shelter,", "", 4, "Name the kit"),
        arguments(KIT, "7'-8\"", "7.8", 3, "8\""),
        arguments(KIT, "angle-2x2", "angle-2x3", 5, "Did you mean angle-2x2?"),
        arguments(KIT, "pieces:", "status: firm\npieces:", 1, "Known here: pieces"));
  }

  @ParameterizedTest
  @MethodSource("slips")
  void saysWhereASlipIsAndWhatToDo(String file, String text, String by, int line, String remedy)
      throws IOException {
    List<Fault> faults = SampleFolder.withKits().replace(file, text, by).faults(dir);
    assertTrue(
        faults.stream()
            .anyMatch(
                fault ->
                    fault.place().file().equals(file)
                        && fault.place().line() == line
                        && (fault.remedy() + fault.wrong()).contains(remedy.strip())),
        () -> Fault.print(faults));
  }

  @Test
  void aKitFolderLiesBesideTheJobsWhereverTheyAre() throws IOException {
    Path year = dir.resolve("year");
    SampleFolder.withKits().write(year);
    Path order = dir.resolve("orders/week-49");
    java.nio.file.Files.createDirectories(order);
    java.nio.file.Files.writeString(
        order.resolve("order.yaml"), "shop: ../../year\njobs: ../../year/jobs\n");
    FolderReading reading = OrderFolder.read(order, JobChoice.firm());
    assertTrue(reading instanceof FolderReading.Sound, reading::toString);
  }

  private List<String> pieces(SampleFolder folder) throws IOException {
    return job(folder.read(dir), "quarry-stops").pieces().stream()
        .map(
            piece ->
                piece.qty()
                    + " x "
                    + LengthStyle.FEET_INCHES.exact(piece.length())
                    + " "
                    + piece.mark())
        .toList();
  }

  private static Job job(OrderInput input, String name) {
    return input.order().jobs().stream()
        .filter(job -> job.name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
