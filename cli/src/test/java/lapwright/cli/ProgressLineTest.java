package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import lapwright.effort.Progress;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
  private final StringWriter terminal = new StringWriter();
  private final AtomicLong now = new AtomicLong();
  private final ProgressLine line =
      new ProgressLine(
          new PrintWriter(terminal),
          now::get,
          Set.of("tube", "cee"),
          (cost, bound) -> "cost " + cost + ", at least " + bound,
          () -> false);

  @Test
  void saysNothingInTheFirstSecond() {
    line.tell(new Progress("tube", 5, 4, false));
    now.set(999_999_999);
    line.draw();
    line.close();
    assertEquals("", terminal.toString());
  }

  @Test
  void addsUpCostAndBoundOnceEveryMaterialHasAPlan() {
    line.tell(new Progress("tube", 500, 400, false));
    now.set(2_000_000_000L);
    line.draw();
    assertTrue(terminal.toString().contains("0 of 2 materials"), terminal::toString);
    assertTrue(!terminal.toString().contains("at least"), terminal::toString);

    line.tell(new Progress("cee", 7, 7, true));
    line.draw();
    assertTrue(
        terminal.toString().endsWith("1 of 2 materials done; cost 507, at least 407"),
        terminal::toString);
  }

  @Test
  void countsOnlyTheMaterialsThatArePlanned() {
    line.tell(new Progress("", 1, 1, true));
    now.set(2_000_000_000L);
    line.draw();
    assertTrue(terminal.toString().contains("0 of 2 materials"), terminal::toString);
  }

  @Test
  void wipesItselfAndStaysAway() {
    now.set(2_000_000_000L);
    line.draw();
    int shown = terminal.toString().length() - 1;
    line.close();
    line.draw();
    assertTrue(
        terminal.toString().endsWith("\r" + " ".repeat(shown) + "\r"), () -> terminal.toString());
  }
}
