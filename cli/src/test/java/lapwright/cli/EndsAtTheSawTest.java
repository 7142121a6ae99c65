package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import lapwright.files.saved.PlanFile;
import lapwright.files.saved.PlanReading;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Angled ends, one way, short pieces, stacks and what is left alone, from the files to paper. */
final class EndsAtTheSawTest {
  @TempDir Path folder;

  @BeforeEach
  void writeFolder() throws IOException {
    write(
        "shop.yaml",
        """
        name: Reedham Shelters
        currency: USD
        units: ft-in
        saws:
          cold-saw:
            { kerf: 1/8", end-trim: 1/2", shortest-cut: 4", longest-stick: 24', stack: 4,
              stack-end-trim: 1" }
          bench-saw: { kerf: 1/8" }
        """);
    write(
        "materials.yaml",
        """
        materials:
          tube-2x2:
            saw: cold-saw
            depth: 2"
            stock:
              - { length: 20', price: 30.00, per: each, supplier: marrowby }
              - { length: 40', price: 50.00, per: each, supplier: marrowby }
          flat-bar:
            saw: bench-saw
            stock: [ { length: 20', price: 12.00, per: each, supplier: marrowby } ]
          rib-bar:
            saw: bench-saw
            one-way: yes
            stock: [ { length: 20', price: 12.00, per: each, supplier: marrowby } ]
        """);
    write("rack.csv", "id,material,length,not-for-planning\nR1,tube-2x2,15'-2\",yes\n");
    write(
        "jobs/boat-shed.yaml",
        """
        job: boat-shed
        status: firm
        due: 2026-12-04
        pieces:
          tube-2x2:
            - 6 @ 15' P1 post
            - { qty: 6, length: 3'-10", mark: B1, ends: 45/45, measured: short-point }
          flat-bar:
            - { qty: 4, length: 5', mark: F1, may-be-short: 1/4" }
        """);
    write(
        "jobs/porch.csv",
        "material,length,qty,mark,ends,measured,depth,long-points\n"
            + "rib-bar,6',2,K1,30/22.5,centre,1\",opposite-edges\n");
  }

  private void write(String file, String text) throws IOException {
    Path path = folder.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  @Test
  void ticketsTellAnglesPassesAndTrueLengths() {
    CommandRun run = CommandRun.of("cut", folder, "--all");
    assertEquals(0, run.status(), run.err());
    String text = run.out().replaceAll("\\s+", " ");
    for (String expected :
        List.of(
            "B1: both ends at 45, sloping towards each other",
            "long points on the same edge",
            // Exact geometry: two ends at 45 across 2" make 3'-10" at the short points 4'-2".
            "B1 boat-shed 1 4'-2\"",
            "K1: first end at 30, second end at 22.5, sloping the same way",
            "long points on opposite edges",
            "neither stick nor piece end for end",
            "up to 4 at once: 6 = 4 + 2, 2 passes",
            "square the end: cut off 1\"",
            "to the short point of its end, which is left at 45 degrees",
            "F1: 4'-11-3/4\", which is 1/4\" less than asked for",
            "2 of F1 are 1/4\" shorter than asked for")) {
      assertTrue(text.contains(expected), expected + " in\n" + run.out());
    }
    assertFalse(text.contains("rack R1"), run.out());
  }

  @Test
  void whatIsPassedOverLeftAloneOrShortIsSaid() {
    CommandRun order = CommandRun.of("order", folder, "--all");
    assertEquals(0, order.status(), order.err());
    String text = order.out().replaceAll("\\s+", " ");
    assertTrue(
        text.contains("cold-saw takes no stick longer than 24'-0\": 40'-0\" from marrowby"),
        order.out());
    assertTrue(text.contains("flat-bar: 2 pieces are cut shorter than asked for"), order.out());
    CommandRun check = CommandRun.of("check", folder);
    assertTrue(check.out().contains("R1 of tube-2x2 is left alone"), check.out());
  }

  @Test
  void aSavedPlanIsReadBackEqualAndStillFits() throws IOException {
    assertEquals(0, CommandRun.of("order", folder, "--save").status());
    String text = Files.readString(folder.resolve(PlanFile.NAME));
    var saved = assertInstanceOf(PlanReading.Saved.class, PlanFile.read(text));
    var again =
        assertInstanceOf(
            PlanReading.Saved.class, PlanFile.read(PlanFile.text(saved.plan(), Map.of(), null)));
    assertEquals(saved.plan(), again.plan());
    for (String expected :
        List.of(
            "\"ends\" : \"45/45\"",
            "\"longPoints\" : \"opposite-edges\"",
            "\"mayBeShortMm\" : 6.35",
            "\"shorterMm\" : 6.35",
            "\"oneWay\" : true",
            "\"stack\" : 4",
            "\"shortestCutMm\" : 101.6")) {
      assertTrue(text.contains(expected), expected);
    }
    assertEquals(0, CommandRun.of("check", folder).status());
    write(
        "materials.yaml",
        Files.readString(folder.resolve("materials.yaml")).replace("depth: 2\"", "depth: 3\""));
    assertEquals(6, CommandRun.of("check", folder).status());
  }

  @Test
  void anOffcutThatIsNotForPlanningStaysOnTheRack() throws IOException {
    Path out = folder.resolve("papers");
    assertEquals(0, CommandRun.of("order", folder, "--out", out).status());
    String rack = Files.readString(out.resolve("rack-after.csv"));
    assertTrue(rack.contains("R1,tube-2x2,\"15'-2\"\"\",,,,,yes"), rack);
    String tickets = Files.readString(out.resolve("tickets.csv"));
    assertTrue(tickets.contains("30/22.5,opposite-edges,yes"), tickets);
  }
}
