package lapwright.splice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import lapwright.effort.Effort;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceSolution;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A few runs with joints anywhere. The numbers of sticks follow from the bound by length, or were
 * found with an independent general-purpose solver.
 */
class FewRunsTest {
  private static Stock stick(long length) {
    return new Stock(length, length, length, true, 0, 1, 1, 1, Integer.MAX_VALUE);
  }

  private static Group lines(
      int lines, long length, long lap, long stick, long shortest, int extra) {
    long fewest = length <= stick ? 1 : -Math.floorDiv(-(length - lap), stick - lap);
    return new Group(
        lines,
        new Anywhere(
            length, lap, (int) fewest + extra, shortest, shortest, stick, 1, Closing.ANY_CUT),
        0);
  }

  private static SpliceSolution solve(long stick, List<Group> groups) {
    return SpliceSolver.solve(
        new SpliceProblem(List.of(), List.of(stick(stick)), 0, 0, 0, groups), Effort.unlimited());
  }

  @ParameterizedTest
  @CsvSource({"2,2100,3", "4,2100,5", "2,3600,4", "2,4500,5", "4,4000,9"})
  void linesOfOneLengthShareSticks(int lines, long length, long sticks) {
    SpliceSolution solution = solve(2000, List.of(lines(lines, length, 50, 2000, 100, 0)));
    assertEquals(sticks, solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  /** The same when each line is cut from sticks of its own. */
  @ParameterizedTest
  @CsvSource({"2,2100,4", "4,2100,8", "2,3600,4", "2,4500,6", "4,4000,12"})
  void linesThatShareNothingTakeMore(int lines, long length, long sticks) {
    SpliceSolution solution = solve(2000, List.of(lines(1, length, 50, 2000, 100, 0)));
    assertEquals(sticks, lines * solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  @ParameterizedTest
  @CsvSource({"0,0", "200,0", "0,1", "200,1"})
  void linesOfSeveralLengthsThatShareNothingTakeMore(long lap, int extra) {
    long sticks =
        4 * solve(6100, List.of(lines(1, 7300, lap, 6100, 900, extra))).cost()
            + 3 * solve(6100, List.of(lines(1, 9150, lap, 6100, 900, extra))).cost()
            + 5 * solve(6100, List.of(lines(1, 4270, lap, 6100, 900, extra))).cost();
    assertEquals(19, sticks);
  }

  @ParameterizedTest
  @CsvSource({"0,0,14", "200,0,15", "0,1,13", "200,1,14"})
  void oneMoreJointSavesAStick(long lap, int extra, long sticks) {
    List<Group> groups = new ArrayList<>();
    groups.add(lines(4, 7300, lap, 6100, 900, extra));
    groups.add(lines(3, 9150, lap, 6100, 900, extra));
    groups.add(lines(5, 4270, lap, 6100, 900, extra));
    SpliceSolution solution = solve(6100, groups);
    assertEquals(sticks, solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  @Test
  void lineShorterThanTheStickIsOnePiece() {
    SpliceSolution solution = solve(2000, List.of(lines(3, 900, 50, 2000, 100, 0)));
    assertEquals(2, solution.cost());
    assertEquals(List.of(900L), solution.splits().get(0).get(0).lengths());
  }
}
