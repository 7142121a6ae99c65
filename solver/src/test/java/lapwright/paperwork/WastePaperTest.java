package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.Function;
import lapwright.OrderMaker;
import lapwright.RandomOrders;
import lapwright.measure.Length;
import lapwright.measure.Percent;
import lapwright.plan.Account;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

final class WastePaperTest {
  /** By hand: eight sticks of 19'-11-3/4" and one post off the rack. */
  @Test
  void figuresOfPostsAndBraces() {
    WastePaper paper = WastePaper.of(PlannedPapers.postsAndBraces());
    assertEquals(OrderMaker.length("160'"), paper.bought());
    // Finished 13 x 119 + 10 x 46 = 2007 in; drawn 8 x 239-3/4 + 119 = 2037 in.
    assertEquals(Length.ofInches(2007), paper.total().finished());
    assertEquals(Length.ofInches(2037), paper.total().drawn());
    WasteFigures figures = paper.figures();
    assertEquals(Percent.of(1920, 2007), figures.boughtToFinished());
    assertEquals(Percent.of(2037, 2007), figures.drawnToFinished());
    // All of the 30 in that are not finished are waste or kept.
    assertEquals(Percent.of(30, 2037), figures.wasteKeptLost());
    assertEquals(8, paper.materials().get(0).sticksBought());
    assertEquals(9, paper.materials().get(0).sticksDrawn());
  }

  /** Two jobs on one stick of 100 mm, kerf 1 mm, 60 and 30 mm, no trim: by hand. */
  @Test
  void oneStickIsSharedByFinishedLength() {
    WastePaper paper =
        WastePaper.of(
            PlannedPapers.plan(
                new OrderMaker("bar")
                    .saw("1 mm", "0", "0")
                    .keep("50 mm")
                    .offer("100 mm", "1.00")
                    .need("long", "A", 1, "60 mm")
                    .need("short", "B", 1, "30 mm")
                    .make()));
    assertEquals(
        List.of(
            new JobShare(
                "long",
                Length.ofMm(60),
                Length.ZERO,
                Length.ofUnits(21_333),
                Length.ZERO,
                Length.ofUnits(85_333)),
            new JobShare(
                "short",
                Length.ofMm(30),
                Length.ZERO,
                Length.ofUnits(10_667),
                Length.ZERO,
                Length.ofUnits(42_667))),
        paper.jobs());
  }

  @Property(tries = 200, seed = "7")
  void everyColumnAddsUpToTheUnit(@ForAll long seed) {
    PlannedPapers.planIfPossible(RandomOrders.small(new Random(seed)).make())
        .map(WastePaper::of)
        .ifPresent(WastePaperTest::assertAddsUp);
  }

  private static void assertAddsUp(WastePaper paper) {
    for (WastePaper.MaterialPart part : paper.materials()) {
      assertSums(part.account(), part.jobs());
      Account account = part.account();
      Length ofJobs = part.jobs().stream().map(JobShare::used).reduce(Length.ZERO, Length::plus);
      assertEquals(account.drawn(), ofJobs.plus(account.offcutsKept()));
      Length fromBought = part.bought().minus(account.surplus()).minus(account.shortAllowance());
      assertTrue(!fromBought.isLongerThan(account.drawn()), "bought and cut");
      assertTrue(!fromBought.isShorterThan(Length.ZERO), "bought");
    }
    assertSums(paper.total(), paper.jobs());
  }

  private static void assertSums(Account account, List<JobShare> jobs) {
    assertEquals(account.finished(), sum(jobs, JobShare::finished));
    assertEquals(account.laps(), sum(jobs, JobShare::laps));
    assertEquals(account.kerf(), sum(jobs, JobShare::kerf));
    assertEquals(account.endTrim(), sum(jobs, JobShare::endTrim));
    assertEquals(account.scrap(), sum(jobs, JobShare::scrap));
  }

  private static Length sum(List<JobShare> jobs, Function<JobShare, Length> part) {
    return jobs.stream().map(part).reduce(Length.ZERO, Length::plus);
  }
}
