package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which ordered length buys the least: runs worked by hand. */
final class BestLengthTest {
  @TempDir private Path folder;

  /** Four lines of 150 in with one joint each, no lap: 110 in sticks give 110 + 40, six of them. */
  @BeforeEach
  void fourLines() throws IOException {
    TinyShop.in(folder)
        .put(
            "materials.yaml",
            """
            materials:
              trim:
                saw: snips
                mill-ends: good
                stock:
                  - { length: 110", price: 11.00, per: each, supplier: north }
            """)
        .replace("shop.yaml", "saw: { kerf: 1/8\" }", "snips: { kerf: 0 }")
        .put(
            "jobs/pier.yaml",
            """
            job: pier
            status: firm
            runs:
              trim:
                - { mark: T1, length: 150", qty: 4, joint: butt, shortest-piece: 10" }
            """)
        .put("jobs/shed.yaml", "job: shed\nstatus: done\npieces: { trim: [1 @ 9\"] }\n")
        .put("jobs/barn.yaml", "job: barn\nstatus: done\npieces: { trim: [1 @ 9\"] }\n");
  }

  @Test
  void lengthThatWastesNothingIsFound() throws IOException {
    CommandRun run = CommandRun.of("waste", folder, "--best-length", "70in..130in", "--json");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    JsonNode material = new ObjectMapper().readTree(run.out()).get("materials").get(0);
    assertEquals(0, material.get("now").decimalValue().compareTo(new BigDecimal("66.00")));
    // 600 in at 10 cents an inch: two sticks of 75 in a line, or 100 + 50.
    BigDecimal least = new BigDecimal("60.00");
    String best = material.get("best").asText();
    for (JsonNode tried : material.get("tried")) {
      BigDecimal cost = tried.get("cost").decimalValue();
      assertTrue(cost.compareTo(least) >= 0, tried.toString());
      if (tried.get("length").asText().equals(best)) {
        assertEquals(0, cost.compareTo(least));
      }
    }
  }

  @Test
  void answersWithTheLengthAndWhatIsAroundIt() {
    CommandRun run = CommandRun.of("waste", folder, "--best-length", "70in..130in");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.firstLine().contains("would buy the least, $60.00"), run.out());
    assertTrue(run.out().contains("$6.00 (9.09 %) less"), run.out());
    assertTrue(run.out().replaceAll("\\s+", " ").contains("No line of a run has"), run.out());
  }

  /** By hand: three of 100 in and of 76 in; one length must be 100 in and waste, two need not. */
  @Test
  void twoLengthsSaveWhatOneMustWaste() throws IOException {
    Files.writeString(
        folder.resolve("jobs/pier.yaml"),
        "job: pier\nstatus: firm\npieces: { trim: [3 @ 100\"  T1, 3 @ 76\"  T2] }\n");
    CommandRun run = CommandRun.of("waste", folder, "--best-length", "76in..100in", "--json");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    JsonNode material = new ObjectMapper().readTree(run.out()).get("materials").get(0);
    assertEquals("8'-4\"", material.get("best").asText());
    JsonNode two = material.get("bestTwo");
    assertEquals("6'-4\"", two.get("shorter").asText());
    assertEquals("8'-4\"", two.get("longer").asText());
    assertEquals(6, two.get("sticks").asInt());
    // 528 in at 10 cents an inch, against 600 in of the one length.
    assertEquals(0, two.get("cost").decimalValue().compareTo(new BigDecimal("52.80")));
    assertTrue(two.get("proved").asBoolean());
    CommandRun text = CommandRun.of("waste", folder, "--best-length", "76in..100in");
    assertTrue(text.out().replaceAll("\\s+", " ").contains("$7.20 (12.00 %) less"), text.out());
  }

  @Test
  void rangeThatIsNoneIsRefused() {
    for (String range : new String[] {"14ft..8ft", "8ft", "8ft..", "8..14"}) {
      CommandRun run = CommandRun.of("waste", folder, "--best-length", range);
      assertEquals(ExitStatus.WRONG_USAGE, run.status(), range);
      assertEquals("", run.out());
    }
    CommandRun two =
        CommandRun.of("waste", folder, "--best-length", "8ft..9ft", "--stock-length", "9ft");
    assertEquals(ExitStatus.WRONG_USAGE, two.status());
  }
}
