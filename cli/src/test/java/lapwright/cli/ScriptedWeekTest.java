package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.files.saved.PlanFile;
import lapwright.files.saved.PlanReading;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Proof;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The sample week from Monday to Wednesday, as the README tells it. Whatever is planned is read
 * back from what was printed or saved, and checked again.
 */
final class ScriptedWeekTest {
  private static final String MONDAY = "2026-11-30";
  private static final String WEDNESDAY = "2026-12-02";

  @TempDir private Path elsewhere = Path.of("");
  private Path shop = Path.of("");
  private Path order = Path.of("");

  @BeforeEach
  void copy() throws IOException {
    shop = elsewhere.resolve("reedbank");
    order = shop.resolve("orders").resolve(MONDAY);
    Path sample = Path.of("..", "sample-orders", "reedbank");
    try (Stream<Path> all = Files.walk(sample)) {
      for (Path each : all.toList()) {
        Path to = shop.resolve(sample.relativize(each).toString());
        if (Files.isDirectory(each)) {
          Files.createDirectories(to);
        } else {
          Files.copy(each, to);
        }
      }
    }
  }

  private CommandRun run(String command, String day, String... options) {
    Object[] words =
        Stream.concat(Stream.of(command, order, "--date", day), Stream.of(options)).toArray();
    CommandRun run = CommandRun.of(words);
    assertEquals(ExitStatus.DONE, run.status(), () -> run.err() + run.out());
    return run;
  }

  private void newPriceSheet() throws IOException {
    Files.copy(
        shop.resolve("later/prices/pellbrook.csv"),
        shop.resolve("shop/prices/pellbrook.csv"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  private void anotherJob() throws IOException {
    Files.copy(
        shop.resolve("later/jobs/mooring-roof.yaml"), shop.resolve("jobs/mooring-roof.yaml"));
  }

  /** Checks every order of a plan's text again, and that each is proved. */
  private static List<OrderPlan> checkedAgain(String plan) {
    PlanReading.Saved saved = assertInstanceOf(PlanReading.Saved.class, PlanFile.read(plan));
    for (OrderPlan each : saved.orders()) {
      assertInstanceOf(Verdict.Sound.class, PlanCheck.check(each));
      for (MaterialPlan material : each.materials()) {
        assertEquals(Proof.PROVED, material.proof(), material.material());
        assertEquals(material.cost(), material.lowerBound());
      }
    }
    return saved.orders();
  }

  private List<OrderPlan> savedOrders() throws IOException {
    return checkedAgain(Files.readString(order.resolve("plan.json")));
  }

  private static long cash(OrderPlan plan) {
    return plan.materials().stream().mapToLong(MaterialPlan::cash).sum()
        + plan.items().stream().mapToLong(ItemPlan::cost).sum();
  }

  private static int pieces(OrderPlan plan, String job, String mark) {
    return plan.materials().stream()
        .flatMap(material -> material.patterns().stream())
        .mapToInt(
            pattern ->
                pattern.times()
                    * pattern.cuts().stream()
                        .filter(cut -> cut.job().equals(job) && cut.mark().equals(mark))
                        .mapToInt(cut -> cut.qty())
                        .sum())
        .sum();
  }

  @Test
  void mondayTheOrderIsPlannedAndTheBidsWait() {
    CommandRun planned = run("order", MONDAY);
    assertTrue(
        planned
            .firstLine()
            .startsWith("Buy 60 sticks and 2 kinds of items from 2 suppliers for 2 jobs: "),
        planned.out());
    assertTrue(planned.out().contains("Proved: no plan costs less."), planned.out());
    assertTrue(
        planned.out().contains("Left out: ferry-hut (a bid) and hay-barn (a bid)."), planned.out());
    // What is bought from each is above its minimum, so nothing is said of that.
    assertFalse(planned.out().contains("minimum"), planned.out());

    OrderPlan plan = checkedAgain(run("order", MONDAY, "--json").out()).get(0);

    // By hand: three sheds of the kit as it is, with 6 posts, and one at the gate with 7.
    assertEquals(18, pieces(plan, "four-sheds", "P1"));
    assertEquals(7, pieces(plan, "four-sheds", "G-P1"));
    assertEquals(18 + 6, pieces(plan, "four-sheds", "K1") + pieces(plan, "four-sheds", "G-K1"));
    assertEquals(16, pieces(plan, "quay-shelter", "K1"));
    assertEquals(0, pieces(plan, "hay-barn", "P1"));
    // By hand: 220 and 4 x 60 screws take two packs; 16 and 4 x 12 anchors less 10 on hand take two
    // packs of 25 and 4 single ones.
    assertEquals(
        List.of(58_0000L + 5_4000L, 36_8000L), plan.items().stream().map(ItemPlan::cost).toList());
    // Every one of the 40 braces keeps its two angled ends.
    long angled =
        plan.materials().stream()
            .flatMap(material -> material.patterns().stream())
            .mapToLong(
                pattern ->
                    pattern.times()
                        * pattern.cuts().stream()
                            .filter(cut -> !cut.rules().ends().isSquare())
                            .mapToLong(cut -> cut.qty())
                            .sum())
            .sum();
    assertEquals(16 + 24, angled);
  }

  @Test
  void savedTicketsStayWhateverPricesDo() throws IOException {
    run("order", MONDAY, "--save");
    assertEquals(1, savedOrders().size());
    String before = run("cut", MONDAY, "--all").out();
    assertTrue(before.contains("both ends at 45"), before);
    Path papers = elsewhere.resolve("papers");
    run("cut", MONDAY, "--out", papers.toString());
    String table = Files.readString(papers.resolve("tickets.csv"));

    newPriceSheet();

    assertEquals(before, run("cut", MONDAY, "--all").out());
    run("cut", MONDAY, "--out", papers.toString());
    assertEquals(table, Files.readString(papers.resolve("tickets.csv")));
    CommandRun check = run("check", "2026-12-01");
    assertTrue(check.out().contains("The saved plan still fits the jobs and the stock."));
    assertTrue(check.out().contains("planned 41.00 each, now 43.50 each"), check.out());
    assertEquals(
        ExitStatus.WRONG_INPUT,
        CommandRun.of("order", order, "--save").status(),
        "the dearer plan does not replace the order");
  }

  @Test
  void anotherJobBuysOnlyTheDifference() throws IOException {
    run("order", MONDAY, "--save");
    String first = tickets(run("cut", MONDAY, "--all").out());
    long paid = cash(savedOrders().get(0));
    newPriceSheet();
    assertTrue(run("order", WEDNESDAY, "--more").firstLine().startsWith("Nothing to buy"));
    anotherJob();

    CommandRun outdated = CommandRun.of("check", order, "--date", WEDNESDAY);
    assertEquals(ExitStatus.PLAN_OUTDATED, outdated.status());
    assertTrue(
        outdated.out().contains("P1 of mooring-roof, 8'-3\": planned 0, now 2"), outdated.out());
    CommandRun more = run("order", WEDNESDAY, "--more", "--save", "--all");

    assertTrue(more.out().contains("mooring-roof P1, 8'-3\" of tube-3x3-11ga: 0 to 2"));
    assertTrue(more.out().contains("ostermoor's minimum of $250.00 is not met by"), more.out());
    assertTrue(more.out().contains("pellbrook's minimum of $300.00 is not met by"), more.out());
    List<OrderPlan> both = savedOrders();
    assertEquals(2, both.size());
    assertEquals(paid, cash(both.get(0)), "what was bought stays bought, at its price");
    assertEquals(0, pieces(both.get(1), "quay-shelter", "P1"));
    assertEquals(2, pieces(both.get(1), "mooring-roof", "P1"));
    String all = tickets(run("cut", WEDNESDAY, "--all").out());
    assertTrue(all.startsWith(first.substring(0, first.lastIndexOf("TICKET 21"))), all);
    assertTrue(run("check", WEDNESDAY).out().contains("still fits the jobs and the stock"));
    assertTrue(run("order", WEDNESDAY, "--more").firstLine().startsWith("Nothing to buy"));
  }

  /** The same jobs in next Monday's folder would be bought again, unless it leaves them out. */
  @Test
  void nextMondayTellsWhatIsOrderedAlready() throws IOException {
    run("order", MONDAY, "--save");
    anotherJob();
    Path next = shop.resolve("orders/2026-12-07");
    Files.createDirectories(next);
    String lines = Files.readString(order.resolve("order.yaml"));
    Files.writeString(next.resolve("order.yaml"), lines);

    CommandRun twice = CommandRun.of("order", next);
    String said = twice.out().replaceAll("\\s+", " ");
    assertTrue(
        said.contains(
            "! four-sheds, quay-shelter are in the order saved in 2026-11-30 already and would be"
                + " bought again: name them under without in order.yaml"),
        said);

    Files.writeString(next.resolve("order.yaml"), lines + "without: [quay-shelter, four-sheds]\n");
    CommandRun once = CommandRun.of("order", next);
    assertEquals(ExitStatus.DONE, once.status(), once.err());
    assertFalse(once.out().contains("already and would"), once.out());
    assertTrue(once.firstLine().contains("for 1 job: "), once.out());
    assertFalse(run("order", MONDAY, "--more").out().contains("already and would"));
  }

  private static String tickets(String text) {
    return text.substring(text.indexOf("TICKET 1 "), text.indexOf("Pieces of each job"))
        .replaceAll("\\(\\d+ of \\d+\\)", "");
  }

  @Test
  void aBidIsPricedAloneAndWithTheWeek() throws IOException {
    run("order", MONDAY, "--save");
    newPriceSheet();

    CommandRun said = run("waste", MONDAY, "--job", "hay-barn", "--with-week");

    assertTrue(said.firstLine().startsWith("hay-barn alone, bought new, costs $"), said.out());
    assertTrue(said.out().contains("Proved, both ways."), said.out());
    assertTrue(said.err().contains("is left aside"), said.err());
    JsonNode json =
        new ObjectMapper()
            .readTree(run("waste", MONDAY, "--job", "hay-barn", "--with-week", "--json").out());
    OrderPlan alone = checkedAgain(json.get("alone").toString()).get(0);
    OrderPlan week = checkedAgain(json.get("week").toString()).get(0);
    OrderPlan together = checkedAgain(json.get("together").toString()).get(0);
    assertEquals(10, pieces(alone, "hay-barn", "P1"));
    assertEquals(0, pieces(week, "hay-barn", "P1"));
    assertEquals(10, pieces(together, "hay-barn", "P1"));
    assertEquals(18, pieces(together, "four-sheds", "P1"));
    long adds = cost(together) - cost(week);
    assertEquals(
        0, json.get("aloneCost").decimalValue().movePointRight(4).longValueExact() - cost(alone));
    assertEquals(0, json.get("adds").decimalValue().movePointRight(4).longValueExact() - adds);
    assertTrue(adds < cost(alone), "bought with the week it costs less");
  }

  private static long cost(OrderPlan plan) {
    return plan.materials().stream().mapToLong(MaterialPlan::cost).sum()
        + plan.items().stream().mapToLong(ItemPlan::cost).sum();
  }
}
