package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands as a user meets them: exit status, results and messages apart. */
class CommandsTest {
  @TempDir Path temp;
  private Path folder;
  private TinyShop shop;

  @BeforeEach
  void makeShop() throws IOException {
    folder = temp.resolve("tiny shop");
    shop = TinyShop.in(folder);
  }

  @Test
  void orderSaysWhatToBuyAndThatItIsProved() {
    CommandRun run = CommandRun.of("order", folder);

    assertEquals(ExitStatus.DONE, run.status());
    assertEquals("", run.err());
    assertTrue(
        run.firstLine().startsWith("Buy 2 sticks from 1 supplier for 2 jobs: $80.00"), run::out);
    assertTrue(run.out().replace('\n', ' ').contains("Proved: no plan costs less."), run::out);
    assertTrue(run.out().contains("barn"), run::out);
  }

  @Test
  void theSameInputGivesTheSameOutputByteForByte() {
    for (String option : List.of("--json", "--all")) {
      assertEquals(
          CommandRun.of("order", folder, option).out(),
          CommandRun.of("order", folder, option).out());
    }
    assertEquals(CommandRun.of("cut", folder).out(), CommandRun.of("cut", folder).out());
  }

  @Test
  void jsonIsTheOnlyThingOnStandardOutput() {
    CommandRun run = CommandRun.of("order", folder, "--json");

    assertEquals(ExitStatus.DONE, run.status());
    assertTrue(run.out().startsWith("{"), run::out);
    assertTrue(run.out().endsWith("}\n"), run::out);
    assertTrue(run.out().contains("\"proof\""), run::out);
  }

  @Test
  void onlyTheJobThatIsAskedForIsPlanned() {
    CommandRun run = CommandRun.of("order", folder, "--job", "shed");

    assertTrue(
        run.firstLine().startsWith("Buy 1 stick from 1 supplier for 1 job: $40.00"), run::out);
  }

  @Test
  void anUnknownJobIsNotSilentlyNothing() {
    CommandRun run = CommandRun.of("order", folder, "--job", "shad");

    assertEquals(ExitStatus.WRONG_INPUT, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().contains("shed"), run::err);
  }

  @Test
  void withoutAFirmJobThereIsNothingToBuy() throws IOException {
    shop.job("pier", "done", "3 @ 9' P1 post").job("shed", "bid", "1 @ 9' P1 post");

    CommandRun run = CommandRun.of("order", folder);

    assertEquals(ExitStatus.DONE, run.status());
    assertTrue(run.firstLine().startsWith("Nothing to buy"), run::out);
  }

  @Test
  void wasteIsForFirmJobsAndBidsOrForOneKind() {
    assertTrue(CommandRun.of("waste", folder).out().contains("3 jobs"));
    assertTrue(CommandRun.of("waste", folder, "--firm", "--bids").out().contains("3 jobs"));
    assertTrue(CommandRun.of("waste", folder, "--firm").out().contains("2 jobs"));
    assertTrue(CommandRun.of("waste", folder, "--bids").out().contains("1 job"));
  }

  @Test
  void wasteAnswersWhatIfStockCameInAnotherLength() {
    CommandRun run = CommandRun.of("waste", folder, "--stock-length", "28'");

    assertEquals(ExitStatus.DONE, run.status());
    assertTrue(run.firstLine().startsWith("If stock came only in 28'-0\""), run::out);
  }

  @Test
  void aSavedPlanIsWhatIsCutEvenWhenTheFolderHasChanged() throws IOException {
    assertEquals(ExitStatus.DONE, CommandRun.of("order", folder, "--save").status());
    CommandRun saved = CommandRun.of("cut", folder);
    assertEquals(ExitStatus.DONE, saved.status());
    assertEquals("", saved.err());

    shop.job("pier", "firm", "5 @ 9' P1 post");
    CommandRun changed = CommandRun.of("cut", folder);

    assertEquals(ExitStatus.DONE, changed.status());
    assertEquals(saved.out(), changed.out());
    assertTrue(changed.err().contains("jobs/pier.yaml"), changed::err);

    shop.put("jobs/pier.yaml", "no job at all");
    CommandRun faulty = CommandRun.of("cut", folder);

    assertEquals(ExitStatus.DONE, faulty.status());
    assertEquals(saved.out(), faulty.out());
    assertTrue(faulty.err().contains("faults"), faulty::err);
  }

  @Test
  void ticketsOfOneJobComeOutOfTheSavedPlan() {
    CommandRun.of("order", folder, "--save");

    CommandRun run = CommandRun.of("cut", folder, "--job", "shed");

    assertEquals(ExitStatus.DONE, run.status());
    assertEquals(ExitStatus.WRONG_INPUT, CommandRun.of("cut", folder, "--job", "barn").status());
  }

  @Test
  void checkFindsASavedPlanGoodUntilPiecesChange() throws IOException {
    assertTrue(CommandRun.of("check", folder).out().contains("No plan is saved"));
    CommandRun.of("order", folder, "--save");
    CommandRun good = CommandRun.of("check", folder);
    assertEquals(ExitStatus.DONE, good.status());
    assertTrue(good.out().contains("still fits"), good::out);

    shop.replace("materials.yaml", "40.00", "44.00");
    CommandRun dearer = CommandRun.of("check", folder);
    assertEquals(ExitStatus.DONE, dearer.status());
    assertTrue(dearer.out().contains("44.00 each"), dearer::out);

    shop.job("pier", "firm", "4 @ 9' P1 post");
    CommandRun changed = CommandRun.of("check", folder);
    assertEquals(ExitStatus.PLAN_OUTDATED, changed.status());
    assertTrue(changed.out().contains("planned 3, now 4"), changed::out);
  }

  @Test
  void aPlanThatWasTamperedWithIsNotCut() throws IOException {
    CommandRun.of("order", folder, "--save");
    shop.replace("plan.json", "603.25", "604.25");

    assertEquals(ExitStatus.PLAN_OUTDATED, CommandRun.of("check", folder).status());
    CommandRun cut = CommandRun.of("cut", folder);
    assertEquals(ExitStatus.WRONG_INPUT, cut.status());
    assertEquals("", cut.out());

    shop.put("plan.json", "{");
    assertEquals(ExitStatus.WRONG_INPUT, CommandRun.of("cut", folder).status());
    assertEquals(ExitStatus.WRONG_INPUT, CommandRun.of("check", folder).status());
  }

  @Test
  void outWritesAllPapersIntoANewFolder() throws IOException {
    Path papers = temp.resolve("new/papers");

    CommandRun run = CommandRun.of("order", folder, "--out", papers);

    assertEquals(ExitStatus.DONE, run.status());
    assertEquals(
        List.of(
            "on-hand-after.csv",
            "order.csv",
            "plan.json",
            "rack-after.csv",
            "tickets.csv",
            "waste.csv"),
        names(papers));
  }

  @Test
  void outOntoAFileWritesNothingButStillTellsTheAnswer() throws IOException {
    Path file = Files.writeString(temp.resolve("papers"), "mine");

    CommandRun run = CommandRun.of("order", folder, "--out", file);

    assertEquals(ExitStatus.WRONG_INPUT, run.status());
    assertTrue(run.firstLine().startsWith("Buy 2 sticks"), run::out);
    assertTrue(run.err().contains("not a folder"), run::err);
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void aPieceThatFitsNothingIsNamedAndNothingIsPlanned() throws IOException {
    shop.job("pier", "firm", "3 @ 21' P1 post");

    CommandRun run = CommandRun.of("order", folder, "--save");

    assertEquals(ExitStatus.NO_PLAN, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().contains("P1"), run::err);
    assertFalse(Files.exists(folder.resolve("plan.json")));
  }

  @Test
  void everyFaultOfTheInputIsToldWithItsPlace() throws IOException {
    shop.job("pier", "firm", "3 @ 9 P1 post").job("shed", "firm", "x @ 9' P1");

    CommandRun run = CommandRun.of("order", folder);

    assertEquals(ExitStatus.WRONG_INPUT, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().contains("jobs/pier.yaml, line 5"), run::err);
    assertTrue(run.err().contains("jobs/shed.yaml, line 5"), run::err);
  }

  @ParameterizedTest
  @ValueSource(strings = {"order", "cut", "waste", "check"})
  void aFolderThatIsAFileOrIsNotThereIsWrongInput(String command) throws IOException {
    Path file = Files.writeString(temp.resolve("file"), "");

    for (Path path : List.of(file, temp.resolve("nowhere"))) {
      CommandRun run = CommandRun.of(command, path);
      assertEquals(ExitStatus.WRONG_INPUT, run.status());
      assertEquals("", run.out());
      assertTrue(run.err().contains(path.toString()), run::err);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "buy",
        "order",
        "order a b",
        "order . --tim 3",
        "order . --time",
        "order . --time soon",
        "order . --time 0",
        "order . --time 1e9",
        "order . --date 11/30/2026",
        "order . --units feet",
        "waste . --stock-length 24",
        "waste . --stock-length 0",
        "schema",
        "schema jobs",
        "start"
      })
  void aCommandLineThatCannotBeUnderstoodIsWrongUsage(String line) {
    CommandRun run = CommandRun.of((Object[]) (line.isEmpty() ? new String[0] : line.split(" ")));

    assertEquals(ExitStatus.WRONG_USAGE, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith("lapwright: "), run::err);
    assertTrue(run.err().contains("--help"), run::err);
    assertTrue(run.err().lines().count() <= 3, run::err);
  }

  @ParameterizedTest
  @ValueSource(strings = {"order", "cut", "waste", "check", "schema", "start"})
  void everyCommandHasHelpWithAnExample(String command) {
    CommandRun run = CommandRun.of(command, "--help");

    assertEquals(ExitStatus.DONE, run.status());
    assertEquals("", run.err());
    assertTrue(
        run.out().contains("lapwright " + command + " my-shop")
            || run.out().contains("lapwright schema job"),
        run::out);
    assertTrue(run.out().lines().allMatch(text -> text.length() <= 80), run::out);
    assertFalse(run.out().contains("\u001b"), run::out);
  }

  @Test
  void startWritesAFolderThatCanBePlannedAndIsNotWrittenTwice() {
    Path started = temp.resolve("my-shop");
    assertEquals(ExitStatus.DONE, CommandRun.of("start", started).status());
    assertEquals(ExitStatus.DONE, CommandRun.of("order", started, "--require-proof").status());
    assertEquals(ExitStatus.WRONG_INPUT, CommandRun.of("start", started).status());
  }

  @ParameterizedTest
  @ValueSource(strings = {"job", "kit", "materials", "shop", "order"})
  void schemaPrintsASchema(String kind) {
    CommandRun run = CommandRun.of("schema", kind);

    assertEquals(ExitStatus.DONE, run.status());
    assertTrue(run.out().contains("$schema"), run::out);
  }

  @Test
  void aFaultOfTheProgramShowsWhereOnlyWhenAsked() {
    for (boolean debug : new boolean[] {false, true}) {
      StringWriter err = new StringWriter();
      Surroundings broken =
          new Surroundings(
              new PrintWriter(new StringWriter()),
              new PrintWriter(err),
              new ByteArrayOutputStream(),
              true,
              false,
              0,
              false,
              () -> {
                throw new IllegalStateException("the calendar is lost");
              },
              System::nanoTime,
              1,
              new Interruption());
      String[] line =
          debug
              ? new String[] {"order", folder.toString(), "--debug"}
              : new String[] {"order", folder.toString()};

      assertEquals(ExitStatus.PROGRAM_FAULT, Lapwright.run(line, broken));
      assertTrue(err.toString().contains("the calendar is lost"), err::toString);
      assertEquals(debug, err.toString().contains("\tat "), err::toString);
    }
  }

  @Test
  void aTerminalIsNotScrolledAndAFileGetsEverything() throws IOException {
    for (int i = 0; i < 40; i++) {
      shop.job("job-" + i, "firm", "3 @ " + (5 + i % 10) + "' P" + i + " post");
    }

    CommandRun screen = CommandRun.onScreen(30, "cut", folder);
    CommandRun file = CommandRun.of("cut", folder);

    assertTrue(screen.out().lines().count() < 30, screen::out);
    assertTrue(screen.out().contains("--all"), screen::out);
    assertEquals(CommandRun.onScreen(30, "cut", folder, "--all").out(), file.out());
    assertNotEquals(screen.out(), file.out());
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
