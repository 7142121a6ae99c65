package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The estimator's questions, on a shop whose answers are known by hand. */
final class EstimatingTest {
  @TempDir private Path folder = Path.of("");
  private TinyShop shop;

  @BeforeEach
  void write() throws IOException {
    shop = TinyShop.in(folder);
  }

  /** Two pieces of 1'-11" come out of what the posts of the week leave, 23-3/4" a stick. */
  @Test
  void aBidAloneAndWithTheWeek() throws IOException {
    shop.job("barn", "bid", "2 @ 1'-11\" B1 brace");
    CommandRun run = CommandRun.of("waste", folder, "--job", "barn", "--with-week");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    String said = run.out().replaceAll("\\s+", " ");
    assertTrue(
        said.startsWith(
            "barn alone, bought new, costs $40.00 of material. Together with the 2 jobs of the week"
                + " it adds $0.00, $40.00 less. Proved, both ways."),
        said);
    assertTrue(said.contains("Cost of material $40.00 $80.00 $80.00 $0.00"), said);
    assertTrue(said.contains("Sticks bought 1 2 2 0"), said);
    // 20' for 3'-10"; 40' for 36'; 40' for 39'-10"; nothing for the bid.
    assertTrue(said.contains("Bought for 1 5.2174 1.1111 1.0042 0.0000"), said);
    assertTrue(said.contains("ordered later it may cost what it costs alone"), said);
  }

  /** The bid's eight braces of 4' take two sticks, with the week and without it. */
  @Test
  void aBidThatSavesNothingWithTheWeek() {
    CommandRun run = CommandRun.of("waste", folder, "--job", "barn", "--with-week", "--json");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.out().contains("\"aloneCost\" : 80.00"), run.out());
    assertTrue(run.out().contains("\"adds\" : 80.00"), run.out());
    assertTrue(run.out().contains("\"together\": {"), run.out());
    assertTrue(run.out().contains("\"proved\" : true"), run.out());
  }

  /** Items count with what they cost: 30 screws alone take a pack, and the week's pack has room. */
  @Test
  void itemsOfABidAreInItsCost() throws IOException {
    shop.put("prices/north.csv", "material,length,price,per,sold-in\nscrew,,5.00,pack,100\n");
    shop.put(
        "jobs/pier.yaml", "status: firm\npieces:\n  tube:\n    - 3 @ 9' P1\nitems:\n  screw: 60\n");
    shop.put(
        "jobs/barn.yaml", "status: bid\npieces:\n  tube:\n    - 8 @ 4' B1\nitems:\n  screw: 30\n");
    CommandRun run = CommandRun.of("waste", folder, "--job", "barn", "--with-week");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    String said = run.out().replaceAll("\\s+", " ");
    assertTrue(said.contains("costs $85.00 of material and items."), said);
    assertTrue(said.contains("it adds $80.00, $5.00 less"), said);
    assertTrue(said.contains("Items $5.00 $0.00"), said);
  }

  /** At most two sticks can be bought: the bid alone takes one of those on hand. */
  @Test
  void aBidThatCannotBeBoughtNew() throws IOException {
    shop.put(
        "materials.yaml",
        """
        materials:
          tube:
            saw: saw
            stock:
              - { length: 20', price: 40.00, per: each, supplier: north, at-most: 2 }
        """);
    shop.put("on-hand.csv", "material,length,qty\ntube,20',5\n");
    shop.job("barn", "bid", "12 @ 4' B1 brace");
    CommandRun run = CommandRun.of("waste", folder, "--job", "barn", "--with-week");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.out().contains("does not suffice for tube"), run.out());
    assertTrue(run.out().contains("costs $120.00"), run.out());
  }

  @Test
  void aBidThatHasNoPlanAtAllIsNamed() throws IOException {
    shop.job("barn", "bid", "1 @ 21' B1 too long");
    CommandRun run = CommandRun.of("waste", folder, "--job", "barn", "--with-week");
    assertEquals(ExitStatus.NO_PLAN, run.status());
    assertTrue(run.err().contains("barn: no plan by itself"), run.err());
    assertTrue(run.err().contains("21'"), run.err());
    assertEquals("", run.out());
  }

  @Test
  void withWeekAsksForABid() {
    assertEquals(ExitStatus.WRONG_USAGE, CommandRun.of("waste", folder, "--with-week").status());
    CommandRun unknown = CommandRun.of("waste", folder, "--with-week", "--job", "bern");
    assertEquals(ExitStatus.WRONG_INPUT, unknown.status());
    assertTrue(unknown.err().contains("barn"), unknown.err());
    CommandRun two = CommandRun.of("waste", folder, "--dimensions", "--stock-length", "20'");
    assertEquals(ExitStatus.WRONG_USAGE, two.status());
    CommandRun out = CommandRun.of("waste", folder, "--dimensions", "--out", folder);
    assertEquals(ExitStatus.WRONG_USAGE, out.status());
  }

  /** Two of 9'-11-15/16" and the cut between them take exactly 20'; of 10' they miss it. */
  @Test
  void theDimensionThatCostsAStick() throws IOException {
    shop.job("pier", "firm", "2 @ 10' P1 post");
    shop.job("shed", "done", "1 @ 9' P1 post");
    CommandRun run = CommandRun.of("waste", folder, "--dimensions", "--firm");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    String said = run.out().replaceAll("\\s+", " ");
    assertTrue(
        said.startsWith(
            "1 mark of 1 would cost less for being up to 1/2\" shorter. Most saves P1 of pier:"
                + " $40.00 for 1/16\"."),
        said);
    assertTrue(said.contains("P1 pier tube 10'-0\" 9'-11-15/16\" 1/16\" $40.00 1 fewer"), said);
    assertTrue(said.contains("decided by the engineered drawings"), said);
    CommandRun json = CommandRun.of("waste", folder, "--dimensions", "--firm", "--json");
    assertTrue(json.out().contains("\"saves\" : 40.00"), json.out());
    assertTrue(json.out().contains("\"shorterMm\" : 3046.4125"), json.out());
  }

  @Test
  void noDimensionCostsAStick() {
    CommandRun run = CommandRun.of("waste", folder, "--dimensions", "--units", "mm");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.firstLine().startsWith("Of 3 marks none was found that saves"), run.out());
    assertTrue(run.out().contains("steps of 1 mm"), run.out());
  }

  /** Six posts of 9': three sticks of 20' at $40.00, six of 16' at $32.00; 8' gives none. */
  @Test
  void severalLengthsSideBySide() throws IOException {
    shop.job("shed", "firm", "3 @ 9' P1 post");
    CommandRun run =
        CommandRun.of("waste", folder, "--firm", "--stock-length", "20'", "--stock-length", "16'");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    String said = run.out().replaceAll("\\s+", " ");
    assertTrue(
        said.startsWith(
            "Of 20'-0\" and 16'-0\" as the only length, 20'-0\" costs least: $120.00, as much as"
                + " the lengths of now."),
        said);
    assertTrue(said.contains("only 20'-0\" 3 1.1111 "), said);
    assertTrue(said.contains("$40.00 $120.00 proved"), said);
    assertTrue(said.contains("only 16'-0\" 6 1.7778 "), said);
    assertTrue(said.contains("$32.00 $192.00 proved"), said);
    CommandRun short8 =
        CommandRun.of("waste", folder, "--firm", "--stock-length", "20'", "--stock-length", "8'");
    assertTrue(short8.out().contains("too short"), short8.out());
    assertTrue(short8.out().contains("No material fits all of"), short8.out());
    CommandRun json =
        CommandRun.of("waste", folder, "--json", "--stock-length", "20'", "--stock-length", "16'");
    assertTrue(json.out().contains("{\"lengths\": [{\"stockLengthMm\": 6096"), json.out());
    assertFalse(json.out().isEmpty());
  }

  @Test
  void aMarkThatAloneCostsAPackIsToldWithTheOrder() throws IOException {
    shop.put(
        "materials.yaml",
        """
        materials:
          tube:
            saw: saw
            stock:
              - { length: 20', price: 40.00, per: each, supplier: north, sold-in: 2 }
        """);
    shop.job("shed", "firm", "1 @ 4' B1 brace");
    shop.job("pier", "firm", "2 @ 18' P1 post");
    CommandRun run = CommandRun.of("order", folder);
    assertTrue(run.out().contains("B1 of shed (1 piece of 4'-0\")"), run.out());
    shop.job("shed", "firm", "1 @ 1' B1 brace");
    assertFalse(CommandRun.of("order", folder).out().contains("alone costs"));
  }
}
