package lapwright.bench.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lapwright.bench.instance.ClassSpec;
import lapwright.bench.instance.Instance;
import lapwright.bench.instance.InstanceClasses;
import lapwright.bench.instance.InstanceReader;
import lapwright.bench.method.Answer.Outcome;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every method on instances small enough for all of them. */
class MethodsTest {
  static Stream<String> exactMethods() {
    return Stream.of(
        "lapwright", "lapwright-checked", "model-scip", "model-cbc", "model-cpsat", "arc-flow");
  }

  @ParameterizedTest
  @MethodSource("exactMethods")
  void reachesTheKnownOptimumOfSmallInstances(String name) {
    for (Instance instance : smallInstances()) {
      Answer answer = Methods.named(name).solve(instance.problem(), Effort.unlimited(), 1);
      assertTrue(answer.outcome().isSolved(), instance.name() + " " + answer.outcome());
      assertEquals(instance.known().optimum().orElseThrow(), answer.cost(), instance.name());
    }
  }

  /** The optimum is one above what the linear relaxation, rounded up, allows. */
  @ParameterizedTest
  @MethodSource("exactMethods")
  void findsWhatIsBestAboveTheRoundedRelaxation(String name) {
    Instance instance =
        new InstanceReader().read(Path.of("instances/worked-examples/no-round-up.txt")).get(0);
    Answer answer = Methods.named(name).solve(instance.problem(), Effort.unlimited(), 1);
    assertEquals(6, answer.cost());
  }

  @ParameterizedTest
  @MethodSource("exactMethods")
  void saysThatScarceSupplyIsNotEnough(String name) {
    StickProblem problem =
        new StickProblem(List.of(new Item(4, 5, false)), List.of(Instance.stock(10, 3, 2)), 0);

    Answer answer = Methods.named(name).solve(problem, Effort.unlimited(), 1);

    assertEquals(Outcome.IMPOSSIBLE, answer.outcome());
  }

  @ParameterizedTest
  @MethodSource("exactMethods")
  void paysForWholePacks(String name) {
    // Three sticks are needed; packs of two cost 5, single ones 3: one of each is cheapest.
    StickProblem problem =
        new StickProblem(
            List.of(new Item(6, 3, false)),
            List.of(
                new StickProblem.Stock(10, 10, 10, false, 0, 5, 5, 2, 4),
                new StickProblem.Stock(10, 10, 10, false, 0, 3, 3, 1, Integer.MAX_VALUE)),
            0);

    Answer answer = Methods.named(name).solve(problem, Effort.unlimited(), 1);

    assertEquals(8, answer.cost());
    assertEquals(List.of(1, 1), answer.packs());
  }

  @Test
  void fillsByHandAsByFirstFitOfSinglePieces() {
    for (ClassSpec spec :
        List.of(ClassSpec.parse("uniform:n=200"), ClassSpec.parse("gau-waescher:m=10"))) {
      for (Instance instance : InstanceClasses.generate(spec, 1, 5)) {
        Answer answer = new FirstFit().solve(instance.problem(), Effort.unlimited(), 1);
        assertEquals(pieceByPiece(instance.problem()), answer.cost(), instance.name());
      }
    }
  }

  @Test
  void fillsAMillionPiecesByHandAtOnce() {
    ClassSpec spec = ClassSpec.parse("demand-mix:pieces=1000000,types=100");
    Instance instance = InstanceClasses.generate(spec, 1, 1).get(0);

    Answer answer = new FirstFit().solve(instance.problem(), Effort.unlimited(), 1);

    assertTrue(answer.outcome().hasSolution());
    assertTrue(answer.patterns().size() < 1000);
  }

  @Test
  void namesTheMethodsThereAre() {
    IllegalArgumentException fault =
        assertThrows(IllegalArgumentException.class, () -> Methods.named("guess"));
    assertTrue(String.valueOf(fault.getMessage()).contains("first-fit"));
  }

  private static List<Instance> smallInstances() {
    InstanceReader reader = new InstanceReader();
    return Stream.of(
            "bin-packing/u20_00.bpa",
            "worked-examples/winston.txt",
            "worked-examples/glpk-bpp.txt",
            "worked-examples/or-tools-bins.txt",
            "several-stock-lengths/gilmore-gomory-1961.txt")
        .flatMap(name -> reader.read(Path.of("instances").resolve(name)).stream())
        .toList();
  }

  private static int pieceByPiece(StickProblem problem) {
    long capacity = problem.stocks().get(0).capacity();
    List<Long> room = new ArrayList<>();
    for (Item item : problem.items()) {
      for (int piece = 0; piece < item.demand(); piece++) {
        int stick = 0;
        while (stick < room.size() && room.get(stick) < item.size()) {
          stick++;
        }
        if (stick == room.size()) {
          room.add(capacity);
        }
        room.set(stick, room.get(stick) - item.size());
      }
    }
    return room.size();
  }
}
