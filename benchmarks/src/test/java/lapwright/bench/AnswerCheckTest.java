package lapwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import lapwright.bench.instance.Instance;
import lapwright.bench.instance.Known;
import lapwright.bench.method.Answer;
import lapwright.bench.method.Answer.Outcome;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import org.junit.jupiter.api.Test;

class AnswerCheckTest {
  /** Four pieces of 5 and two of 3 out of sticks of 10: three sticks, the length bound. */
  private static final Instance INSTANCE =
      Instance.ofDemands("g", "i", 10, Map.of(5L, 4, 3L, 2), Known.optimum(3));

  private static final List<PatternUse> RIGHT =
      List.of(use(0, 2, new Count(0, 2)), use(0, 1, new Count(1, 2)));

  @Test
  void acceptsARightAnswer() {
    assertEquals(List.of(), faults(RIGHT, 3, 3, 3));
  }

  @Test
  void rejectsAStickThatIsOverfull() {
    assertFault(
        "does not fit",
        List.of(use(0, 1, new Count(0, 3)), use(0, 1, new Count(0, 1)), use(0, 1, new Count(1, 2))),
        3,
        3,
        3);
  }

  @Test
  void rejectsPiecesThatAreMissingOrTooMany() {
    assertFault(
        "2 pieces of size 5 are cut, not 4",
        List.of(use(0, 1, new Count(0, 2)), use(0, 1, new Count(1, 2))),
        3,
        3,
        3);
    assertFault(
        "3 pieces of size 3 are cut, not 2",
        List.of(use(0, 2, new Count(0, 2)), use(0, 1, new Count(1, 3))),
        3,
        3,
        3);
  }

  @Test
  void rejectsSticksThatWereNotBought() {
    assertFault("3 sticks of stock 0 are cut, 2 bought", RIGHT, 2, 2, 2);
  }

  @Test
  void rejectsACostThatIsNotThatOfThePacks() {
    assertFault("the packs cost 4, the answer says 3", RIGHT, 4, 3, 3);
  }

  @Test
  void rejectsABoundAboveTheCostOrTheOptimum() {
    assertFault("bound 4 above cost 3", RIGHT, 3, 3, 4);
    assertFault("bound 4 above a known solution of 3", RIGHT, 4, 4, 4);
  }

  @Test
  void rejectsAProofAboveTheOptimum() {
    assertFault("proved at 4, the optimum is 3", RIGHT, 4, 4, 4);
  }

  @Test
  void rejectsWhatBeatsTheOptimum() {
    Instance believed = INSTANCE.withKnown(Known.optimum(4));
    Answer answer = new Answer(Outcome.PROVED, RIGHT, List.of(3), 3, 3, "");
    assertTrue(AnswerCheck.faults(believed, answer).contains("cost 3 beats the known optimum 4"));
  }

  @Test
  void mayBeatABestKnownThatIsNoOptimum() {
    Instance believed = INSTANCE.withKnown(Known.reached(4));
    Answer answer = new Answer(Outcome.PROVED, RIGHT, List.of(3), 3, 3, "");
    assertEquals(List.of(), AnswerCheck.faults(believed, answer));
  }

  @Test
  void rejectsStockAndItemsThatDoNotExist() {
    assertFault("stock 1, which does not exist", List.of(use(1, 1, new Count(0, 1))), 3, 3, 3);
    assertFault("names item 7", List.of(use(0, 1, new Count(7, 1))), 3, 3, 3);
    assertFault("names item 0", List.of(use(0, 1, new Count(0, 1), new Count(0, 1))), 3, 3, 3);
  }

  @Test
  void rejectsMoreThanThereIs() {
    Instance scarce =
        new Instance(
            "g",
            "i",
            new StickProblem(List.of(new Item(5, 4, false)), List.of(Instance.stock(10, 1, 1)), 0),
            Known.NOTHING,
            0);
    Answer answer =
        new Answer(Outcome.OPEN, List.of(use(0, 2, new Count(0, 2))), List.of(2), 2, 1, "");
    assertTrue(AnswerCheck.faults(scarce, answer).toString().contains("of which there are 1"));
  }

  @Test
  void knowsWhatHoldForbids() {
    Stock stock = new Stock(10, 10, 6, false, 0, 1, 1, 1, Integer.MAX_VALUE);
    Instance instance =
        new Instance(
            "g",
            "i",
            new StickProblem(
                List.of(new Item(6, 1, false), new Item(4, 3, true)), List.of(stock), 0),
            Known.NOTHING,
            0);
    Answer tooFull =
        new Answer(
            Outcome.OPEN,
            List.of(use(0, 1, new Count(0, 1), new Count(1, 1)), use(0, 1, new Count(1, 2))),
            List.of(2),
            2,
            1,
            "");
    assertTrue(AnswerCheck.faults(instance, tooFull).toString().contains("does not fit"));
  }

  @Test
  void rejectsImpossibleWhereASolutionIsKnown() {
    Answer answer = new Answer(Outcome.IMPOSSIBLE, List.of(), List.of(), -1, 0, "");
    assertTrue(AnswerCheck.faults(INSTANCE, answer).toString().contains("called impossible"));
  }

  private static PatternUse use(int stock, int times, Count... counts) {
    return new PatternUse(stock, List.of(counts), times);
  }

  private static void assertFault(
      String expected, List<PatternUse> patterns, int packs, long cost, long bound) {
    List<String> faults = faults(patterns, packs, cost, bound);
    assertTrue(faults.toString().contains(expected), faults.toString());
  }

  private static List<String> faults(List<PatternUse> patterns, int packs, long cost, long bound) {
    return AnswerCheck.faults(
        INSTANCE, new Answer(Outcome.PROVED, patterns, List.of(packs), cost, bound, ""));
  }
}
