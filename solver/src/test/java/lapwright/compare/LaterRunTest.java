package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointRules;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import org.junit.jupiter.api.Test;

/** Lines that are added to a run whose first ones are on tickets. */
class LaterRunTest {
  private static final JointRules RULES =
      JointRules.of(new JointRules.Joint.Butt(Length.ZERO), Length.ofSixteenths(1));

  private static RunNeed need(int copies, int qty, int firstCopy, int firstLine) {
    return need(copies, qty, firstCopy, firstLine, RULES);
  }

  private static RunNeed need(int copies, int qty, int firstCopy, int firstLine, JointRules rules) {
    Run run = new Run("trim", "T1", Length.ofFeet(30, 0), qty, Length.ZERO, Length.ZERO, rules, "");
    return new RunNeed("A", null, copies, run, firstCopy, firstLine);
  }

  private static LaterRun later(RunNeed now, List<RunNeed> placed) {
    return LaterRun.of(now, placed, SettledLines.of(now, List.of()));
  }

  @Test
  void whatIsOnTicketsIsNotPlannedAgain() {
    assertEquals(List.of(), later(need(2, 3, 1, 1), List.of(need(2, 3, 1, 1))).added());
  }

  @Test
  void aFurtherCopyCountsOnFromTheLastLine() {
    LaterRun later = later(need(4, 3, 1, 1), List.of(need(2, 3, 1, 1)));
    assertEquals(List.of(need(2, 3, 3, 7)), later.added());
    assertEquals(4, later.added().get(0).copyOf(10));
  }

  @Test
  void moreLinesACopyAndMoreCopiesAreAddedApart() {
    LaterRun later = later(need(3, 4, 1, 1), List.of(need(2, 3, 1, 1)));
    assertEquals(List.of(need(2, 1, 1, 7), need(1, 4, 3, 9)), later.added());
  }

  @Test
  void whatSeveralOrdersPlacedAddsUp() {
    LaterRun later = later(need(3, 4, 1, 1), List.of(need(2, 3, 1, 1), need(2, 1, 1, 7)));
    assertEquals(List.of(need(1, 4, 3, 9)), later.added());
  }

  @Test
  void fewerLinesAreToldAndNotTakenBack() {
    LaterRun later = later(need(1, 2, 1, 1), List.of(need(2, 3, 1, 1)));
    assertEquals(List.of(), later.added());
    assertEquals(6, later.placed());
    assertEquals(4, later.unneeded());
  }

  @Test
  void anotherLapIsAnotherRun() {
    JointRules lapped =
        JointRules.of(new JointRules.Joint.Lap(Length.ofInches(2)), Length.ofSixteenths(1));
    assertTrue(later(need(1, 1, 1, 1, lapped), List.of(need(1, 1, 1, 1))).isChanged());
  }
}
