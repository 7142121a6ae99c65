package lapwright;

import static lapwright.RunShop.inches;
import static lapwright.RunShop.lap;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import lapwright.measure.Price;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.Ends;
import lapwright.shop.JointRules;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** One lot a job against trying every choice of lots, each lot planned by itself. */
class LotChoiceTest {
  private static final String[] MAKERS = {"pellbrook", "ostermoor"};
  private static final String[] JOBS = {"A", "B"};

  /** Sticks of both makers, or of one; runs and pieces of both jobs, or of one. */
  private static RunShop shop(int seed, boolean[] makers, boolean[] jobs) {
    Random random = new Random(seed);
    RunShop shop = new RunShop();
    for (int m = 0; m < MAKERS.length; m++) {
      long length = 120 + random.nextInt(36);
      String price = "1" + random.nextInt(10) + ".50";
      if (makers[m]) {
        shop.offer(MAKERS[m], inches(length), price);
      }
    }
    for (int j = 0; j < JOBS.length; j++) {
      // Joints are limited outright: the fewest would depend on what is on offer.
      JointRules rules = lap(inches(2), inches(12)).with(new JointRules.JointCount.AtMost(3));
      long line = 130 + random.nextInt(250);
      long piece = 30 + random.nextInt(80);
      int lines = 1 + random.nextInt(2);
      if (jobs[j]) {
        shop.run(JOBS[j], "E1", lines, inches(line), rules);
        shop.needs.add(new Need(JOBS[j], null, 1, "P1", inches(piece), 2, ""));
      }
    }
    return shop;
  }

  private static boolean[] only(int index) {
    return new boolean[] {index == 0, index == 1};
  }

  @Test
  void choiceOfLotsIsTheCheapestOfAll() {
    boolean[] both = {true, true};
    for (int seed = 0; seed < 12; seed++) {
      RunShop mixed = shop(seed, both, both);
      mixed.oneLotPer = OneLotPer.JOB;
      MaterialPlan plan = mixed.plan();
      long least = Long.MAX_VALUE;
      for (int maker = 0; maker < MAKERS.length; maker++) {
        // Both jobs from one maker, and each job from another.
        least = Math.min(least, shop(seed, only(maker), both).plan().cost());
        least =
            Math.min(
                least,
                shop(seed, only(maker), only(0)).plan().cost()
                    + shop(seed, only(1 - maker), only(1)).plan().cost());
      }
      assertEquals(Proof.PROVED, plan.proof(), "shop " + seed);
      assertEquals(least, plan.cost(), "shop " + seed);
    }
  }

  /**
   * By hand: the run takes both sticks that it fills. Of three plain pieces of 4' the two offcuts
   * of 5', each a lot of its own, give one each, and the third takes a stick; from one lot all
   * three would take two.
   */
  @Test
  void plainPiecesBesideRunsComeFromAnyLotEachByItself() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "20.00");
    shop.supplies.add(new Supply.RackOffcut("R1", inches(60), Ends.SAWN, "", "spring"));
    shop.supplies.add(new Supply.RackOffcut("R2", inches(60), Ends.SAWN, "", "autumn"));
    shop.oneLotPer = OneLotPer.RUN;
    shop.run("A", "E1", 1, inches(240), RunShop.butt(inches(0)));
    shop.needs.add(new Need("A", null, 1, "P1", inches(48), 3, ""));
    MaterialPlan plan = shop.plan();
    assertEquals(Proof.PROVED, plan.proof());
    assertEquals(600_000, plan.cost());
    assertEquals(2, plan.patterns().stream().filter(p -> p.supply().startsWith("rack:")).count());
  }

  /** By hand: copies of a job keep their numbers when their pieces come from several lots. */
  @Test
  void copiesOfAJobShareOutTheirPieces() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "20.00");
    shop.supplies.add(new Supply.RackOffcut("R1", inches(110), Ends.SAWN, "", "spring"));
    shop.oneLotPer = OneLotPer.RUN;
    shop.run("A", "E1", 1, inches(240), RunShop.butt(inches(0)));
    shop.needs.add(new Need("A", null, 2, "P1", inches(50), 2, ""));
    MaterialPlan plan = shop.plan();
    assertEquals(Proof.PROVED, plan.proof());
    assertEquals(600_000, plan.cost());
  }

  /**
   * By hand: each maker has three sticks of 10'. The run of 40' fills four of one maker, so that
   * one is missing; a run of 60' takes six, so that three are.
   */
  @Test
  void howManySticksOfAMakerAreMissing() {
    for (OneLotPer per : List.of(OneLotPer.JOB, OneLotPer.RUN)) {
      for (int feet : new int[] {40, 60}) {
        RunShop shop = new RunShop();
        for (String maker : MAKERS) {
          shop.supplies.add(
              new Supply.Offer(
                  maker,
                  inches(120),
                  new Price(new BigDecimal("20.00"), Price.Per.EACH),
                  1,
                  3,
                  "",
                  null,
                  null));
        }
        shop.oneLotPer = per;
        shop.run("A", "E1", 1, inches(12L * feet), RunShop.butt(inches(0)));
        shop.needs.add(new Need("B", null, 1, "P1", inches(100), 2, ""));
        PlanResult.Impossible told = assertInstanceOf(PlanResult.Impossible.class, shop.result());
        Shortage.TooFewOfLots few =
            assertInstanceOf(Shortage.TooFewOfLots.class, told.shortages().get(0));
        assertEquals(1, few.further().size());
        assertEquals(feet / 10 - 3, few.further().get(0).sticks());
        assertEquals(inches(120), few.further().get(0).stockLength());
        assertTrue(few.fewestKnown());
      }
    }
  }
}
