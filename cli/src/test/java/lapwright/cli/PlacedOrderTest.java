package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An order that is saved, and what comes after it. Numbers are our own, worked by hand. */
class PlacedOrderTest {
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
          cold-saw: { kerf: 1/8", end-trim: 1/2", hold: 3" }
        keep-offcuts-from: 24"
        """);
    write(
        "materials.yaml",
        """
        materials:
          tube:
            saw: cold-saw
            stock: [20']
        """);
    write("prices/mossbank.csv", "material,length,price,per,sold-in\ntube,20',40.00,each,3\n");
    write("prices/fenwright.csv", "material,length,price,per,sold-in\ntube,20',43.00,each,1\n");
    job("quay-shelter", "firm", 2, "P1", "9'");
  }

  private void write(String file, String text) throws IOException {
    Path path = folder.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private void job(String name, String status, int qty, String mark, String length)
      throws IOException {
    write(
        "jobs/" + name + ".yaml",
        "job: %s\nstatus: %s\ndue: 2026-12-18\npieces:\n  tube:\n    - %d @ %s  %s\n"
            .formatted(name, status, qty, length, mark));
  }

  private String saved() throws IOException {
    return Files.readString(folder.resolve("plan.json"));
  }

  private static List<String> tickets(String text) {
    String tickets = text.substring(text.indexOf("TICKET 1 "), text.indexOf("Pieces of each job"));
    return Pattern.compile("(?=TICKET )")
        .splitAsStream(tickets)
        .map(ticket -> ticket.replaceAll("[\\s\u2501]+$", ""))
        .toList();
  }

  private static int sticksToBuy(String text) {
    Matcher buy = Pattern.compile("^Buy (\\d+) sticks?").matcher(text);
    return buy.find() ? Integer.parseInt(buy.group(1)) : 0;
  }

  @Test
  void savingRefusesToForgetAnotherOrder() throws IOException {
    assertEquals(0, CommandRun.of("order", folder, "--save").status());
    String first = saved();
    assertEquals(0, CommandRun.of("order", folder, "--save").status(), "the same plan again");
    job("quay-shelter", "firm", 5, "P1", "9'");

    CommandRun refused = CommandRun.of("order", folder, "--save", "--out", folder.resolve("out"));

    assertEquals(3, refused.status());
    assertTrue(refused.err().contains("--more"), refused.err());
    assertTrue(refused.err().contains("--replace"), refused.err());
    assertEquals(first, saved());
    assertTrue(Files.notExists(folder.resolve("out")), "nothing half-written");
    assertEquals(0, CommandRun.of("order", folder, "--save", "--replace").status());
    assertTrue(saved().contains("\"qty\" : 5"), saved());
  }

  @Test
  void aSavedPlanPrintsTheSameTicketsWhateverPricesDo() throws IOException {
    CommandRun.of("order", folder, "--save");
    CommandRun before = CommandRun.of("cut", folder, "--all");
    write("prices/mossbank.csv", "material,length,price,per,sold-in\ntube,20',93.00,each,1\n");
    write("prices/fenwright.csv", "material,length,price,per,sold-in\ntube,20',13.00,each,1\n");

    CommandRun after = CommandRun.of("cut", folder, "--all");

    assertEquals(before.out(), after.out());
    assertTrue(after.err().contains("prices/mossbank.csv"), after.err());
    assertEquals(0, CommandRun.of("check", folder).status(), "prices never spoil a plan");
  }

  @Test
  void checkTellsQuantitiesThatChanged() throws IOException {
    CommandRun.of("order", folder, "--save");
    job("quay-shelter", "firm", 3, "P1", "9'");

    CommandRun check = CommandRun.of("check", folder);

    assertEquals(6, check.status());
    assertTrue(check.out().contains("P1 of quay-shelter, 9'-0\": planned 2, now 3"), check.out());
  }

  @Test
  void aDoneJobDoesNotSpoilTheSavedPlan() throws IOException {
    CommandRun.of("order", folder, "--save");
    job("quay-shelter", "done", 2, "P1", "9'");

    assertEquals(0, CommandRun.of("check", folder).status());
    CommandRun more = CommandRun.of("order", folder, "--more");
    assertEquals(0, more.status());
    assertTrue(!more.out().contains("nobody needs"), more.out());
  }

  @Test
  void moreBuysNothingWhenNothingHasChanged() throws IOException {
    CommandRun.of("order", folder, "--save");
    String before = saved();

    CommandRun more = CommandRun.of("order", folder, "--more", "--save");

    assertEquals(0, more.status());
    assertTrue(more.firstLine().startsWith("Nothing to buy"), more.out());
    assertEquals(before, saved());
  }

  @Test
  void moreNeverBuysAgainAndLeavesTicketsAsTheyAre() throws IOException {
    int bought = sticksToBuy(CommandRun.of("order", folder, "--save").out());
    List<String> first = tickets(CommandRun.of("cut", folder, "--all").out());
    assertEquals(1, bought, "one single stick is cheaper than a pack of three");

    // The stick gave both posts; 7 more take a pack and a single stick, and leave half a stick.
    job("quay-shelter", "firm", 9, "P1", "9'");
    CommandRun more = CommandRun.of("order", folder, "--more", "--save", "--all");
    assertEquals(0, more.status(), more.err());
    bought += sticksToBuy(more.out());
    assertEquals(5, bought);
    assertTrue(more.out().contains("quay-shelter P1, 9'-0\" of tube: 2 to 9"), more.out());

    List<String> second = tickets(CommandRun.of("cut", folder, "--all").out());
    assertEquals(first, second.subList(0, first.size()));
    assertTrue(second.size() > first.size());

    job("pier-canopy", "firm", 1, "B1", "9'");
    CommandRun again = CommandRun.of("order", folder, "--more", "--save");
    assertEquals(0, again.status(), again.err());
    assertTrue(again.firstLine().startsWith("Buy nothing"), again.out());
    List<String> third = tickets(CommandRun.of("cut", folder, "--all").out());
    assertEquals(second, third.subList(0, second.size()));
    assertEquals(0, CommandRun.of("check", folder).status());
    assertTrue(CommandRun.of("order", folder, "--more").firstLine().startsWith("Nothing to buy"));
  }

  @Test
  void loweredQuantitiesAreToldAndNotPlannedAgain() throws IOException {
    job("quay-shelter", "firm", 4, "P1", "9'");
    CommandRun.of("order", folder, "--save");
    String before = saved();
    job("quay-shelter", "firm", 3, "P1", "9'");

    CommandRun more = CommandRun.of("order", folder, "--more", "--save");

    assertEquals(0, more.status());
    assertTrue(more.out().contains("nobody needs any more"), more.out());
    assertTrue(more.out().contains("quay-shelter P1, 9'-0\" of tube: 4 to 3"), more.out());
    assertEquals(before, saved());
  }

  @Test
  void moreNeedsASavedOrder() {
    CommandRun more = CommandRun.of("order", folder, "--more");

    assertEquals(3, more.status());
    assertTrue(more.err().contains("--save"), more.err());
  }

  @Test
  void onlySupplierBuysFromNobodyElse() throws IOException {
    CommandRun one = CommandRun.of("order", folder, "--only-supplier", "mossbank", "--all");

    assertEquals(0, one.status());
    assertTrue(one.firstLine().startsWith("Buy 3 sticks from 1 supplier"), one.out());
    assertTrue(!one.out().contains("fenwright"), one.out());

    CommandRun unknown = CommandRun.of("order", folder, "--only-supplier", "mosbank");
    assertEquals(3, unknown.status());
    assertTrue(unknown.err().contains("mossbank"), unknown.err());
  }
}
