package lapwright;

import static lapwright.RunShop.inches;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicLong;
import lapwright.check.PlacedCheck;
import lapwright.check.PlacedVerdict;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.OrderPlan;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Expansion;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Pieces;
import lapwright.shop.JointRules.Where;
import lapwright.shop.RunNeed;
import org.junit.jupiter.api.Test;

/**
 * Every rule of a run beside every other: each shop has a plan that is sound, or is told why not.
 */
class AllRulesTogetherTest {
  private static final int SHOPS = 40;

  /**
   * By hand: lines of 40' lapped by 4" take four pieces of 10' and one of 2'-4", which can lie
   * anywhere but at an end if the ends must have 9'; two of them come off one stick.
   */
  @Test
  void theShortestPieceLiesWithinWhereTheEndsMustBeLonger() {
    RunShop shop = new RunShop().offer("pellbrook", inches(120), "20.00");
    JointRules rules =
        RunShop.lap(inches(4), Length.ZERO)
            .with(new Pieces(Length.ZERO, inches(108), null, RunShop.STEP));
    shop.run("A", "E1", 2, inches(480), rules);
    assertEquals(9, shop.plan().patterns().stream().mapToInt(p -> p.times()).sum());
  }

  @Test
  void everyShopHasASoundPlanOrIsToldWhyNot() {
    List<String> wrong = new ArrayList<>();
    int planned = 0;
    for (int seed = 0; seed < SHOPS; seed++) {
      RunShop shop = shop(new Random(seed));
      try {
        PlanResult result = shop.result(asking(2_000));
        if (result instanceof PlanResult.Planned) {
          planned++;
        } else {
          assertInstanceOf(PlanResult.Impossible.class, result);
        }
      } catch (RuntimeException | AssertionError e) {
        wrong.add("shop " + seed + ": " + e + " " + shop.runs);
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(planned > SHOPS / 3, planned + " planned");
  }

  /** Lines that are added to staggered runs keep their joints apart from those that are settled. */
  @Test
  void linesAddedToStaggeredRunsGoOnFromTheLastOne() {
    List<String> wrong = new ArrayList<>();
    int added = 0;
    for (int seed = 0; seed < SHOPS; seed++) {
      Random random = new Random(seed);
      RunShop shop = shop(random);
      shop.runs.replaceAll(need -> need.withRules(staggered(need.run().rules(), random)));
      try {
        if (shop.result(asking(500)) instanceof PlanResult.Planned first) {
          List<OrderPlan> placed = new ArrayList<>(List.of(first.plan().plan()));
          for (int more = 1 + random.nextInt(2); more > 0; more--) {
            shop.runs.replaceAll(need -> more(need, 1 + random.nextInt(2)));
            if (shop.more(placed, asking(500)) instanceof PlanResult.Planned next) {
              placed.add(next.plan().plan());
              added++;
              PlacedVerdict verdict = PlacedCheck.check(placed);
              assertInstanceOf(PlacedVerdict.Sound.class, verdict, verdict.toString());
            }
          }
        }
      } catch (RuntimeException | AssertionError e) {
        wrong.add("shop " + seed + ": " + e + " " + shop.runs);
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(added > SHOPS / 4, added + " planned");
  }

  private static JointRules staggered(JointRules rules, Random random) {
    JointRules staggered =
        rules
            .staggered(inches(3 + random.nextInt(40)))
            .with(
                new ClosingPiece(
                    Where.values()[random.nextInt(5) < 2 ? random.nextInt(2) : 2],
                    random.nextInt(3) == 0,
                    random.nextBoolean() ? inches(1 + random.nextInt(3)) : Length.ZERO));
    return random.nextInt(3) > 0
        ? staggered
        : staggered.expanding(
            new Expansion(inches(180 + random.nextInt(120)), Length.ofSixteenths(4)));
  }

  private static RunNeed more(RunNeed need, int lines) {
    return new RunNeed(
        need.job(), need.due(), need.copies(), need.run().withQty(need.run().qty() + lines));
  }

  /** Work that is over once its clock has been read so often, on any machine. */
  private static Effort asking(int times) {
    AtomicLong asked = new AtomicLong();
    return Effort.limited(
        () -> asked.incrementAndGet() * 1_000_000, times * 1_000_000L, () -> false, told -> {});
  }

  private static RunShop shop(Random random) {
    RunShop shop = new RunShop();
    if (random.nextBoolean()) {
      shop.saw = RunShop.coldSaw(inches(random.nextInt(2)));
      shop.millEndsGood = random.nextBoolean();
    }
    for (int j = 1 + random.nextInt(2); j > 0; j--) {
      int feet = 8 + 2 * random.nextInt(7);
      shop.offer("pellbrook" + j, Length.ofFeet(feet, 0), (feet + random.nextInt(5)) + ".00");
    }
    for (int i = 1 + random.nextInt(2); i > 0; i--) {
      Length length = Length.ofFeet(12 + random.nextInt(36), random.nextInt(12));
      shop.run("A", "E" + i, 1 + random.nextInt(3), length, rules(random, length));
    }
    return shop;
  }

  private static JointRules rules(Random random, Length length) {
    JointRules rules =
        random.nextBoolean()
            ? RunShop.butt(random.nextBoolean() ? Length.ZERO : Length.ofSixteenths(4))
            : RunShop.lap(inches(2 + random.nextInt(4)), Length.ZERO);
    rules =
        rules.with(
            new Pieces(
                inches(12 * random.nextInt(5)),
                random.nextBoolean() ? inches(12 * random.nextInt(9)) : null,
                random.nextInt(3) == 0 ? inches(96 + 12 * random.nextInt(6)) : null,
                random.nextBoolean() ? RunShop.STEP : Length.ofSixteenths(2)));
    switch (random.nextInt(4)) {
      case 0 ->
          rules =
              rules.at(
                  new JointPlaces.Bearings(
                      inches(12 * random.nextInt(4)), inches(24 + 12 * random.nextInt(4))));
      case 1 -> {
        TreeSet<Length> places = new TreeSet<>();
        for (int i = 0; i < 12; i++) {
          Length place = inches(12 + random.nextInt(560));
          if (place.compareTo(length) < 0) {
            places.add(place);
          }
        }
        rules = rules.at(new JointPlaces.At(List.copyOf(places)));
      }
      default -> {}
    }
    rules =
        rules.with(
            random.nextInt(4) == 0
                ? new JointCount.AtMost(random.nextInt(6))
                : new JointCount.BeyondFewest(random.nextInt(3)));
    if (random.nextInt(3) == 0) {
      rules = rules.staggered(inches(6 + random.nextInt(36)));
    }
    rules =
        rules.with(
            new ClosingPiece(
                Where.values()[random.nextInt(3)],
                random.nextInt(6) == 0,
                random.nextInt(3) == 0 ? inches(1 + random.nextInt(3)) : Length.ZERO));
    if (random.nextInt(5) == 0) {
      rules =
          rules.expanding(new Expansion(inches(180 + random.nextInt(120)), Length.ofSixteenths(4)));
    }
    return rules;
  }
}
