package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.LongSupplier;
import lapwright.BrokenPlanException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A fault of the program in a comparison, brought about by a clock that throws when it is asked
 * from there: the plan is told all the same, and that something is left out.
 */
final class UnansweredTest {
  @TempDir Path folder;

  /** A clock that a class of {@code lapwright.compare} cannot read. */
  private static LongSupplier failingIn(String comparison) {
    return () -> {
      boolean asked =
          StackWalker.getInstance()
              .walk(
                  frames ->
                      frames.anyMatch(
                          frame -> frame.getClassName().equals("lapwright.compare." + comparison)));
      if (asked) {
        throw new BrokenPlanException(List.of());
      }
      return System.nanoTime();
    };
  }

  private CommandRun failing(String comparison, Object... args) {
    return CommandRun.withClock(failingIn(comparison), args);
  }

  @ParameterizedTest
  @CsvSource({
    "JointChoice, what one more joint a line would save",
    "JointChoice, 'what full sticks, then a closing piece, would cost'",
    "RunJobByJob, what ordering job by job would cost",
    "SupplierAlone, everything from",
    "Dividing, each job's part of the cost",
  })
  void anOrderStandsWithoutTheComparisonThatFails(String comparison, String leftOut)
      throws IOException {
    RunFolder.copy("eaves", folder);
    CommandRun order = failing(comparison, "order", folder, "--all", "--save");
    assertEquals(ExitStatus.DONE, order.status(), order.err());
    assertTrue(order.firstLine().startsWith("Buy "), order.out());
    assertTrue(order.err().contains(leftOut), order.err());
    assertTrue(order.err().contains("it passed its check"), order.err());
    assertFalse(order.err().contains("\tat "), order.err());
    assertTrue(Files.exists(folder.resolve("plan.json")));
  }

  @ParameterizedTest
  @CsvSource({
    "JobByJobPlan, what ordering job by job would cost (tube)",
    "CostlyMark, marks that alone cost two sticks (tube)",
  })
  void soItDoesWithoutRuns(String comparison, String leftOut) throws IOException {
    manyLengths();
    CommandRun order = failing(comparison, "order", folder);
    assertEquals(ExitStatus.DONE, order.status(), order.err());
    assertTrue(order.out().startsWith("Buy "), order.out());
    assertTrue(order.err().contains(leftOut), order.err());
  }

  /** Enough lengths for each plan of them to ask for the time. */
  private void manyLengths() throws IOException {
    TinyShop shop = TinyShop.in(folder);
    for (String job : List.of("pier", "shed")) {
      StringBuilder rows = new StringBuilder("material,length,qty,mark\n");
      for (int mm = 811; mm < 2900; mm += 97) {
        rows.append("tube," + mm + " mm,3,P" + mm + "\n");
      }
      Files.delete(folder.resolve("jobs/" + job + ".yaml"));
      shop.put("jobs/" + job + ".csv", rows.toString());
    }
  }

  @Test
  void whereTheFaultHappenedIsShownToWhoAsks() throws IOException {
    TinyShop.in(folder);
    CommandRun order = failing("CostlyMark", "--debug", "order", folder);
    assertEquals(ExitStatus.DONE, order.status(), order.err());
    assertTrue(order.err().contains("\tat lapwright.compare.CostlyMark"), order.err());
  }

  @ParameterizedTest
  @CsvSource({
    "Dividing, waste, --all",
    "OneMore, explain, E1",
  })
  void estimatesAndAnswersStandToo(String comparison, String command, String option)
      throws IOException {
    RunFolder.copy("eaves", folder);
    CommandRun run = failing(comparison, command, folder, option);
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertFalse(run.out().isEmpty());
    assertTrue(run.err().contains("a fault in the program left out: "), run.err());
  }

  @Test
  void dimensionsStandToo() throws IOException {
    manyLengths();
    CommandRun run = failing("ShorterMark", "waste", folder, "--dimensions");
    assertEquals(ExitStatus.DONE, run.status(), run.err());
    assertTrue(run.err().contains("marks that could be shorter (tube)"), run.err());
  }

  @Test
  void theOnlyQuestionThatFailsIsNoAnswer() throws IOException {
    RunFolder.copy("eaves", folder);
    CommandRun run = failing("OtherLength", "waste", folder, "--stock-length", "12'");
    assertEquals(ExitStatus.PROGRAM_FAULT, run.status(), run.out());
  }
}
