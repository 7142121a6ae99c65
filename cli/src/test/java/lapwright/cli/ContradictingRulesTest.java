package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rules of a run that contradict each other or the sticks of 10': the rule is named, and the
 * nearest change that would do. A line of 36'-8" lapped by 4" takes four pieces; by hand.
 */
final class ContradictingRulesTest {
  @TempDir Path folder;

  private CommandRun order(String rules) throws IOException {
    TinyShop shop = TinyShop.in(folder);
    for (String job : new String[] {"pier", "shed", "barn"}) {
      Files.delete(folder.resolve("jobs/" + job + ".yaml"));
    }
    shop.replace("materials.yaml", "length: 20'", "length: 10'");
    shop.replace("materials.yaml", "saw: saw", "saw: saw\n    mill-ends: good");
    shop.put(
        "jobs/pier.yaml",
        "job: pier\nstatus: firm\nruns:\n  tube:\n    - { mark: T1, length: 36'-8\", qty: 3,"
            + " joint: lap, lap: 4\", "
            + rules
            + " }\n");
    return CommandRun.of("order", folder);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {
        "|shortest-at-end: 12'|, shortest-at-end, Allow pieces of 10'-0\" at the ends.",
        "|shortest-piece: 12', shortest-at-end: 5'|, shortest-piece, Allow pieces of 10'-0\".",
        "|longest-piece: 8', shortest-at-end: 9'|, shortest-at-end, longest-piece permits no piece",
        "|longest-piece: 8', full-sticks: yes|, full-sticks, or make longest-piece 10'-0\"",
        "|full-sticks: yes, stagger: 2'|, stagger, Write closing: either",
        "|joints-at: [2', 35']|, joints-at, Add a place between",
        "|most-joints: 1|, most-joints, Make most-joints 3.",
      })
  void theRuleAndTheNearestChangeAreNamed(String rules, String rule, String advice)
      throws IOException {
    CommandRun order = order(rules);
    assertEquals(ExitStatus.WRONG_INPUT, order.status(), order.out() + order.err());
    assertTrue(order.err().contains("runs > tube > 1 > " + rule), order.err());
    assertTrue(order.err().contains("T1 of pier"), order.err());
    assertTrue(order.err().contains(advice), order.err());
  }

  /** By hand: full sticks from one end are joined at 10', from the other at 7'-8", and so on. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {
        "|full-sticks: yes, stagger: 6\", closing: either|",
        "|full-sticks: yes, stagger: 6\", closing: either, leave-long: 1\"|",
        "|stagger: 2', closing: either, leave-long: 2\", extra-joints: 1|",
      })
  void whatCanBeDoneIsPlanned(String rules) throws IOException {
    CommandRun order = order(rules);
    assertEquals(ExitStatus.DONE, order.status(), order.out() + order.err());
  }
}
