package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Counted goods from the job's file to every paper. All counts and sums are done by hand. */
final class ItemsTest {
  @TempDir Path folder;
  private TinyShop shop;

  /**
   * Pier: 3 posts of 9', 60 screws. Two sheds: each a post of 9' and, by its kit, 45 screws and 4
   * anchors. So 4 posts + 1 = 5 of 9', 3 sticks at 40.00; 150 screws; 8 anchors.
   */
  @BeforeEach
  void folder() throws IOException {
    shop = TinyShop.in(folder);
    shop.put(
        "jobs/pier.yaml",
        "job: pier\nstatus: firm\npieces:\n  tube: [3 @ 9' P1 post]\nitems:\n  screw-brown: 60\n");
    shop.put("kits/box.yaml", "items:\n  screw-brown: 15\n");
    shop.put(
        "jobs/shed.yaml",
        "job: shed\nstatus: firm\ntimes: 2\npieces:\n  tube: [1 @ 9' P1 post]\n"
            + "items: { anchor: 4 }\nkits: [{ kit: box, times: 3 }]\n");
    shop.put(
        "prices/north.csv",
        "material,length,price,per,sold-in,code\nscrew-brown,,6.00,pack,100,NS-1\nanchor,,1.25,each,1,\n");
  }

  private static String unwrapped(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private CommandRun run(String command, Object... options) {
    Object[] args = new Object[options.length + 2];
    args[0] = command;
    args[1] = folder;
    System.arraycopy(options, 0, args, 2, options.length);
    return CommandRun.of(args);
  }

  private String file(String name) throws IOException {
    return Files.readString(folder.resolve(name)).replace("\r\n", "\n");
  }

  /** 120.00 of sticks, two packs of 100 at 6.00, eight anchors at 1.25: 142.00. */
  @Test
  void isBoughtByTheSupplierWithCodeQuantityPacksPriceAndTotal() throws IOException {
    CommandRun order = run("order", "--out", folder.resolve("papers"));
    assertEquals(0, order.status(), order.err());
    assertTrue(
        unwrapped(order.out())
            .startsWith(
                "Buy 3 sticks and 2 kinds of items from 1 supplier for 2 jobs: $142.00 of material."
                    + " Proved: no plan costs less."),
        order.out());
    assertTrue(
        order
            .out()
            .lines()
            .anyMatch(
                line -> line.matches(" +screw-brown +NS-1 +200 +2 of 100 +6.00 a pack +\\$12.00")),
        order.out());
    assertTrue(
        order.out().lines().anyMatch(line -> line.matches(" +anchor +8 +1.25 each +\\$10.00")),
        order.out());
    assertEquals(
        """
        supplier,code,material,name,length,length_mm,sticks,items,packs,sold_in,price,per,cost,total,currency,freight,days,order_by
        north,,tube,tube,"20'-0""\",6096,3,,3,1,40.00,each,120.00,120.00,USD,,,
        north,,anchor,,,,,8,8,1,1.25,each,10.00,10.00,USD,,,
        north,NS-1,screw-brown,,,,,200,2,100,6.00,pack,12.00,12.00,USD,,,
        """,
        file("papers/order.csv"));
    assertEquals(
        "material,length,qty,place,lot\nscrew-brown,,50,,\n", file("papers/on-hand-after.csv"));
  }

  @Test
  void isPackedWithEachCopyOfItsJob() {
    String cut = run("cut", "--all").out();
    String pier = cut.substring(cut.lastIndexOf("pier"), cut.indexOf("shed, copy 1"));
    assertTrue(pier.lines().anyMatch(line -> line.matches(" +screw-brown +60")), cut);
    String second = cut.substring(cut.indexOf("shed, copy 2"));
    assertTrue(second.lines().anyMatch(line -> line.matches(" +screw-brown +45")), cut);
    assertTrue(second.lines().anyMatch(line -> line.matches(" +anchor +4")), cut);
  }

  @Test
  void aJobChangesTheQuantityOfAnItemOrDropsIt() throws IOException {
    shop.replace(
        "jobs/shed.yaml", "items:", "change: { screw-brown: 90, anchor: dropped }\nitems:");
    String json = run("order", "--json").out();
    // 60 + 2 x 90 = 240: three packs.
    assertTrue(json.contains("\"wanted\" : 240"), json);
    assertFalse(json.contains("\"anchor\""), json);
  }

  @Test
  void whatNobodySellsStopsNothingAndCannotBeMissed() throws IOException {
    shop.replace("jobs/pier.yaml", "items:\n", "items:\n  screw-brwn: 25\n");
    CommandRun order = run("order", "--out", folder.resolve("papers"));
    assertEquals(0, order.status(), order.err());
    String third = order.out().lines().limit(5).reduce("", (a, b) -> a + "\n" + b);
    assertTrue(third.contains("! NOT ON THIS ORDER: 25 of screw-brwn"), order.out());
    assertTrue(
        unwrapped(order.out()).contains("25 of screw-brwn for pier are not on this order"),
        order.out());
    assertTrue(unwrapped(order.out()).contains("did you mean screw-brown?"), order.out());
    assertTrue(
        file("papers/order.csv").replace("\"", "").contains("NOT ON THIS ORDER,,screw-brwn,,,,,25"),
        file("papers/order.csv"));
    shop.replace("jobs/pier.yaml", "  screw-brwn: 25\n", "");
    assertFalse(run("order").out().contains("NOT ON"));
  }

  /** 150 of 200 are needed. 30 more are left over; 40 more than that need a pack. */
  @Test
  void laterOrdersBuyOnlyTheDifference() throws IOException {
    assertEquals(0, run("order", "--save").status());
    CommandRun same = run("order", "--more");
    assertTrue(same.out().startsWith("Nothing to buy"), same.out());
    assertEquals(0, run("check").status());

    shop.replace("jobs/pier.yaml", "screw-brown: 60", "screw-brown: 90");
    CommandRun check = run("check");
    assertEquals(ExitStatus.PLAN_OUTDATED, check.status());
    assertTrue(check.out().contains("screw-brown, for pier: planned 60, now 90"), check.out());
    CommandRun more = run("order", "--more", "--save");
    assertEquals(0, more.status(), more.err());
    assertTrue(more.out().startsWith("Buy nothing"), more.out());
    assertTrue(more.out().contains("pier screw-brown: 60 to 90"), more.out());
    assertTrue(more.out().contains("30 left over of what was bought"), more.out());
    assertEquals(0, run("check").status(), run("check").out());

    shop.replace("jobs/pier.yaml", "screw-brown: 90", "screw-brown: 130");
    CommandRun again = run("order", "--more", "--save");
    assertTrue(again.out().startsWith("Buy 1 kind of items"), again.out());
    assertTrue(again.out().contains("$6.00"), again.out());
    String cut = run("cut", "--all").out();
    assertTrue(cut.lines().anyMatch(line -> line.matches(" +screw-brown +130")), cut);

    // A job that needs fewer gives back: nothing is bought, and check is content.
    shop.replace("jobs/pier.yaml", "screw-brown: 130", "screw-brown: 10");
    CommandRun fewer = run("order", "--more", "--save");
    assertEquals(0, fewer.status(), fewer.err());
    assertTrue(fewer.out().contains("pier screw-brown: 130 to 10"), fewer.out());
    assertEquals(0, run("check").status(), run("check").out());
  }

  @Test
  void whatCombiningSavedIsKeptWhenMoreIsSaved() throws IOException {
    assertEquals(0, run("order", "--save").status());
    String saved = "\"saved\" : {";
    String before = file("plan.json");
    assertTrue(before.contains(saved), before);
    shop.replace("jobs/pier.yaml", "3 @ 9'", "5 @ 9'");
    assertEquals(0, run("order", "--more", "--save").status());
    String after = file("plan.json");
    assertEquals(
        before.substring(before.indexOf(saved), before.indexOf("\"delivery\"")).strip(),
        after.substring(after.indexOf(saved), after.indexOf("\"more\"")).strip());
  }

  @Test
  void piecesOnHandServeFirst() throws IOException {
    shop.put("on-hand.csv", "material,length,qty\nscrew-brown,,55\n");
    CommandRun order = run("order", "--out", folder.resolve("papers"));
    assertTrue(order.out().contains("screw-brown (55 on hand)"), order.out());
    assertTrue(unwrapped(order.out()).contains("$136.00 of material"), order.out());
    assertEquals(
        "material,length,qty,place,lot\nscrew-brown,,5,,\n", file("papers/on-hand-after.csv"));
  }

  @Test
  void aFolderOfItemsOnlyIsAnOrderToo() throws IOException {
    shop.put("jobs/pier.yaml", "job: pier\nstatus: firm\nitems: { anchor: 3 }\n");
    shop.put("jobs/shed.yaml", "job: shed\nstatus: done\nitems: { anchor: 3 }\n");
    CommandRun order = run("order");
    assertEquals(0, order.status(), order.err());
    assertTrue(
        unwrapped(order.out())
            .startsWith("Buy 1 kind of items from 1 supplier for 1 job: $3.75 of material."),
        order.out());
    assertTrue(
        run("cut").out().startsWith("Nothing to cut: no firm job has pieces. Items to pack:"));
  }

  @Test
  void pricesListItemsToo() {
    CommandRun prices = run("prices", "--material", "screw-brown");
    assertEquals(0, prices.status(), prices.err());
    assertTrue(prices.out().contains("$0.06"), prices.out());
    assertTrue(run("prices", "--json").out().contains("\"each\" : 1.25"));
  }

  /** Alone: pier 2 sticks and a pack, 86.00; shed 1 stick, a pack and 8 anchors, 56.00. */
  @Test
  void eachJobPaysForItsItems() {
    String all = run("order", "--all").out();
    assertTrue(all.lines().anyMatch(line -> line.matches(" +pier +\\$86.00 +\\$86.00")), all);
    assertTrue(all.lines().anyMatch(line -> line.matches(" +shed +\\$56.00 +\\$56.00")), all);
  }

  @Test
  void jsonTellsWhatIsDeliveredAndCheckAnswersInJsonToo() throws IOException {
    shop.put("suppliers.yaml", "suppliers:\n  north: { freight: 30.00, minimum: 150.00 }\n");
    CommandRun order = run("order", "--json", "--save");
    assertTrue(order.out().contains("\"freight\" : 30.00"), order.out());
    assertTrue(order.out().contains("\"underMinimumBy\" : 8.00"), order.out());
    shop.replace("jobs/pier.yaml", "screw-brown: 60", "screw-brown: 61");
    CommandRun check = run("check", "--json");
    assertEquals(ExitStatus.PLAN_OUTDATED, check.status());
    assertTrue(check.out().startsWith("{"), check.out());
    assertTrue(check.out().contains("\"fits\" : false"), check.out());
    assertTrue(check.out().contains("\"planned\" : \"60\""), check.out());
  }

  @Test
  void theOtherSuppliersAreNoNewsWhereOnlyOneWasAsked() throws IOException {
    shop.put(
        "prices/south.csv", "material,length,price,per\ntube,20',39.00,each\nanchor,,1.00,each\n");
    assertEquals(0, run("order", "--only-supplier", "north", "--save").status());
    CommandRun check = run("check");
    assertEquals(0, check.status(), check.out());
    assertFalse(check.out().contains("south"), check.out());
    assertEquals(0, run("order", "--save", "--replace").status());
    assertFalse(run("check").out().contains("Prices have changed"), run("check").out());
  }

  /** A job without pieces and items adds nothing, to no paper and to no plan. */
  @Test
  void aJobThatNeedsNothingChangesNothing() throws IOException {
    String before = run("order", "--json").out();
    shop.put("jobs/idle.yaml", "job: idle\nstatus: firm\n");
    String after = run("order", "--json").out();
    assertEquals(withoutInputs(before), withoutInputs(after));
    assertTrue(after.contains("jobs/idle.yaml"), after);
  }

  private static String withoutInputs(String json) {
    return json.replaceAll("(?s)\"inputs\" : \\{.*?\\}", "");
  }

  @Test
  void offcutsThatAreNotForPlanningAreNamedInTheOrder() throws IOException {
    shop.put("rack.csv", "id,material,length,not-for-planning\nK7,tube,9'-6\",yes\nK8,tube,3',\n");
    CommandRun order = run("order");
    assertTrue(unwrapped(order.out()).contains("not for planning"), order.out());
    assertTrue(order.out().contains("K7"), order.out());
    assertFalse(order.out().contains("K8"), order.out());
  }

  @Test
  void aStickLongerThanASupplierDeliversIsNotBoughtOfHim() throws IOException {
    shop.put("suppliers.yaml", "suppliers:\n  north: { longest: 20' }\n");
    shop.put(
        "prices/north.csv", "material,length,price,per\ntube,24',1.00,each\nanchor,,1.25,each\n");
    CommandRun order = run("order");
    assertFalse(order.out().contains("24'-0\""), order.out());
    assertFalse(run("prices").out().contains("24'-0\""));
    shop.replace("suppliers.yaml", "longest: 20'", "longest: 24'");
    assertTrue(run("order").out().contains("24'-0\""));
  }

  /** Ten more screws of a list out of a spreadsheet: 160, in the same two packs. */
  @Test
  void rowsWithoutALengthAreItemsInAListToo() throws IOException {
    shop.put("jobs/dock.csv", "material,length,qty\nscrew-brown,,10\n");
    String json = run("order", "--json").out();
    assertTrue(json.contains("\"wanted\" : 160"), json);
    shop.put("jobs/dock.csv", "material,length,qty\ntube,,10\n");
    CommandRun cut = run("order");
    assertEquals(3, cut.status());
    assertTrue(cut.err().contains("jobs/dock.csv, line 2"), cut.err());
    assertTrue(cut.err().contains("Give it a length"), cut.err());
  }

  /** 150 screws of two packs of 100: 50 are left, so that the next one costs nothing. */
  @Test
  void isExplainedByItsName() {
    CommandRun screws = run("explain", "screw-brown");
    assertEquals(0, screws.status(), screws.err());
    assertEquals("screw-brown: 150 pieces, counted; no ticket cuts them.", screws.firstLine());
    assertTrue(screws.out().contains("2 packs of 100 from north. 50 will be left."), screws.out());
    assertTrue(screws.out().contains("One more: costs nothing"), screws.out());
    assertTrue(run("explain", "anchor").out().contains("One more: costs $1.25"), screws.out());
    assertTrue(run("explain", "anchor", "--json").out().contains("\"bought\" : 8"));
    assertTrue(run("explain", "ancor").err().contains("anchor"));
  }

  /** Freight once a supplier, days in every row; due 2026-12-04 less two working days. */
  @Test
  void theListOfWhatToBuyTellsFreightAndDays() throws IOException {
    shop.put("suppliers.yaml", "suppliers:\n  north: { days: 2, freight: 25.00 }\n");
    shop.replace("jobs/pier.yaml", "status: firm", "status: firm\ndue: 2026-12-04");
    assertEquals(0, run("order", "--out", folder.resolve("papers")).status());
    List<String> rows = file("papers/order.csv").lines().toList();
    assertTrue(rows.get(1).endsWith(",USD,25.00,2,2026-12-02"), rows.toString());
    assertTrue(rows.get(2).endsWith(",USD,,2,2026-12-02"), rows.toString());
  }
}
