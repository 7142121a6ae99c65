package lapwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapwright.bench.instance.Instance;
import lapwright.bench.instance.Known;
import lapwright.bench.method.Answer;
import lapwright.bench.method.Answer.Outcome;
import org.junit.jupiter.api.Test;

class TablesTest {
  private static final Instance INSTANCE =
      Instance.ofDemands("g", "i", 10, Map.of(5L, 4), Known.NOTHING);

  @Test
  void countsAnUnsolvedInstanceWithTheLimit() {
    Statistics statistics =
        Statistics.of(
            List.of(
                run("a", Outcome.PROVED, 1),
                run("a", Outcome.CLAIMED, 2),
                run("a", Outcome.OPEN, 3),
                run("a", Outcome.NOTHING, 61)));

    assertEquals(2, statistics.solved());
    assertEquals(1, statistics.claimed());
    assertEquals((1 + 2 + 60 + 60) / 4.0, statistics.mean());
    assertEquals((2 + 60) / 2.0, statistics.median());
    assertEquals(60, statistics.maximum());
    assertEquals(100, statistics.worstGapPercent());
  }

  @Test
  void doesNotCountAsSolvedWhatCameAfterTheLimit() {
    assertEquals(0, Statistics.of(List.of(run("a", Outcome.PROVED, 60.5))).solved());
  }

  @Test
  void takesThe95thPercentileByNearestRank() {
    List<Run> runs = new ArrayList<>();
    for (int i = 1; i <= 20; i++) {
      runs.add(run("a", Outcome.PROVED, i));
    }
    assertEquals(19, Statistics.of(runs).percentile95());
  }

  @Test
  void showsTheRatioToTheFirstMethodAndWhoRanOut() {
    List<String> lines =
        ClassTable.lines(
            List.of(run("quick", Outcome.PROVED, 0.5), run("slow", Outcome.OPEN, 60)), 60);

    assertEquals(3, lines.size());
    assertTrue(lines.get(1).matches("g +quick +1/1 +0 +0[.]500 .* 1[.]00"), lines.get(1));
    assertTrue(lines.get(2).matches("g +slow +0/1 +0 +>= 60[.]000 +> limit .*> 120"), lines.get(2));
  }

  @Test
  void fitsTheExponentOfAPower() {
    double[] x = {1, 10, 100, 1000};
    double[] y = {2, 2 * Math.pow(10, 1.5), 2 * Math.pow(100, 1.5), 2 * Math.pow(1000, 1.5)};
    assertEquals(1.5, GrowthCurve.exponent(x, y), 1e-9);
  }

  @Test
  void alignsColumns() {
    TextTable table = new TextTable("name", "by", "n");
    table.add("long name", "a", "1");
    table.add("x", "b", "100");
    assertEquals(
        List.of("name       by    n", "long name  a     1", "x          b   100"), table.lines());
  }

  private static Run run(String method, Outcome outcome, double seconds) {
    Answer answer =
        outcome.isSolved()
            ? new Answer(outcome, List.of(), List.of(), 2, 2, "")
            : outcome == Outcome.OPEN
                ? new Answer(outcome, List.of(), List.of(), 4, 2, "")
                : Answer.nothing(0, "");
    return new Run(INSTANCE, method, answer, seconds, seconds, 1, 60, List.of());
  }
}
