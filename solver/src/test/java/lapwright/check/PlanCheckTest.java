package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.math.BigInteger;
import java.util.List;
import org.junit.jupiter.api.Test;

class PlanCheckTest {

  static CheckedPlan sound(PlanDraft draft) {
    Verdict verdict = PlanCheck.check(draft.build());
    if (verdict instanceof Verdict.Sound sound) {
      return sound.plan();
    }
    return fail(
        String.join(
            "\n", ((Verdict.Broken) verdict).faults().stream().map(PlanFault::message).toList()));
  }

  @Test
  void twoPostsToAStickArePlannedAndProved() {
    MaterialBound bound = sound(TwoPosts.draft()).bounds().get(0);
    assertEquals(3_280_000, bound.certified());
    assertEquals(3_280_000, bound.bound());
    assertEquals(1, bound.leaves());
    LeafBound leaf = bound.weakest();
    assertEquals(BigInteger.valueOf(3_485_000), leaf.weightSum());
    assertEquals(
        List.of(410_000L, 205_000L),
        leaf.stock().stream().map(LeafBound.StockLine::heaviest).toList());
  }
}
