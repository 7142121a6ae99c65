package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import lapwright.effort.Effort;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Status;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Worked examples of the literature, and open instances, with their published optima. */
class KnownOptimaTest {
  static Stream<Instances.Known> known() {
    return Stream.concat(Instances.workedExamples().stream(), Instances.binPacking().stream());
  }

  @ParameterizedTest
  @MethodSource("known")
  void theLeastCostIsFoundAndProved(Instances.Known known) {
    StickSolution solution = StickSolver.solve(known.problem(), List.of(), Effort.unlimited());
    assertEquals(known.leastCost(), solution.cost());
    assertEquals(Status.PROVED, solution.status());
    SolutionCheck.check(known.problem(), solution);
  }
}
