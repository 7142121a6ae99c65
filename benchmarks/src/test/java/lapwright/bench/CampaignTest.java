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
import lapwright.bench.method.Method;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import org.junit.jupiter.api.Test;

class CampaignTest {
  /** Two pieces of 6 out of sticks of 10: two sticks. */
  private static final Instance INSTANCE =
      Instance.ofDemands("g", "i", 10, Map.of(6L, 2), Known.NOTHING);

  private static final List<PatternUse> PATTERNS =
      List.of(new PatternUse(0, List.of(new Count(0, 1)), 2));

  @Test
  void takesAMethodThatFailsForAWrongAnswerAndGoesOn() {
    Method failing = method("failing", null);
    Method right = method("right", new Answer(Outcome.PROVED, PATTERNS, List.of(2), 2, 2, ""));

    List<Run> heard = new ArrayList<>();
    List<Run> runs = campaign(failing, right).run(List.of(INSTANCE), heard::add);

    assertEquals(runs, heard);
    assertTrue(runs.get(0).faults().get(0).contains("no luck"));
    assertEquals(List.of(), runs.get(1).faults());
  }

  @Test
  void seesThatTwoMethodsContradictEachOther() {
    Method boastful = method("boastful", Answer.nothing(3, ""));
    Method right = method("right", new Answer(Outcome.PROVED, PATTERNS, List.of(2), 2, 2, ""));

    List<Run> runs = campaign(boastful, right).run(List.of(INSTANCE), run -> {});

    assertTrue(runs.get(1).faults().get(0).contains("boastful has bound 3"));
  }

  @Test
  void tellsWhatWentWrongWhileWarmingUp() {
    List<Run> wrong = new Campaign(List.of(method("failing", null)), 1, 10, 10).warmUp();

    assertTrue(wrong.get(0).faults().get(0).contains("no luck"));
  }

  private static Campaign campaign(Method... methods) {
    return new Campaign(List.of(methods), 1, 10, 0);
  }

  private static Method method(String name, Answer answer) {
    return new Method() {
      @Override
      public String name() {
        return name;
      }

      @Override
      public String description() {
        return "";
      }

      @Override
      public Answer solve(StickProblem problem, Effort effort, int threads) {
        if (answer == null) {
          throw new IllegalStateException("no luck");
        }
        return answer;
      }
    };
  }
}
