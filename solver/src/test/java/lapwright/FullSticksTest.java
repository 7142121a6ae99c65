package lapwright;

import static lapwright.RunShop.inches;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/**
 * Runs laid in full sticks: all pieces of a line but the closing one are sticks used uncut. Every
 * plan has passed the check.
 */
class FullSticksTest {
  private static final int SHOPS = 60;

  private static JointRules fullSticks(JointRules rules, Where closing) {
    return rules.with(new ClosingPiece(closing, true, Length.ZERO));
  }

  /**
   * By hand: 40' in pieces of at most 10', from 10' at $20 and 20' at $21. Four pieces cut from two
   * of 20' would be $42, but three of them must be uncut: $60, and $20 for the closing one.
   */
  @Test
  void aFullStickIsNotCutFromALongerOne() {
    RunShop shop =
        new RunShop()
            .offer("pellbrook", inches(120), "20.00")
            .offer("pellbrook", inches(240), "21.00");
    JointRules rules = fullSticks(RunShop.butt(Length.ZERO), Where.END).with(upTo(inches(120)));
    shop.run("A", "E1", 1, inches(480), rules);
    MaterialPlan plan = shop.plan();
    assertEquals(800_000, plan.cost());
    assertUncut(plan);
  }

  /**
   * By hand: 16'-8" joined at 10' is 10' uncut, $12, and 6'-8"; that and three plain pieces of 10'
   * are 36'-8" and take two sticks of 20', $42.
   */
  @Test
  void aPlainPieceAsLongAsAFullStickLeavesItToTheRun() {
    RunShop shop =
        new RunShop()
            .offer("pellbrook", inches(120), "12.00")
            .offer("pellbrook", inches(240), "21.00");
    shop.needs.add(new Need("A", null, 1, "P", inches(120), 3, ""));
    JointRules rules = RunShop.butt(Length.ZERO).at(new JointPlaces.At(List.of(inches(120))));
    shop.run("A", "E1", 1, inches(200), fullSticks(rules, Where.END).with(upTo(inches(120))));
    MaterialPlan plan = shop.plan();
    assertEquals(540_000, plan.cost());
    assertUncut(plan);
  }

  private static JointRules.Pieces upTo(Length longest) {
    return new JointRules.Pieces(Length.ZERO, null, longest, RunShop.STEP);
  }

  @Test
  void plansOfAnyShopPassTheCheck() {
    int planned = 0;
    List<String> wrong = new ArrayList<>();
    for (int seed = 0; seed < SHOPS; seed++) {
      try {
        PlanResult result = shop(new Random(seed)).result();
        if (result instanceof PlanResult.Planned done) {
          planned++;
          assertUncut(done.plan().plan().materials().get(0));
        } else if (!(result instanceof PlanResult.Impossible)) {
          wrong.add("shop " + seed + ": " + result);
        }
      } catch (RuntimeException | AssertionError e) {
        wrong.add("shop " + seed + ": " + e);
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(planned > SHOPS / 2, planned + " planned");
  }

  static RunShop shop(Random random) {
    RunShop shop = new RunShop();
    if (random.nextBoolean()) {
      shop.saw = RunShop.coldSaw(Length.ZERO);
    }
    shop.oneLotPer = OneLotPer.values()[random.nextInt(OneLotPer.values().length)];
    List<String> suppliers = List.of("pellbrook", "ostermoor");
    int kinds = 1 + random.nextInt(3);
    for (int j = 0; j < kinds; j++) {
      int feet = 8 + 2 * random.nextInt(9);
      Length length = Length.ofFeet(feet, 0);
      if (shop.supplies.stream().anyMatch(supply -> supply.length().equals(length))) {
        continue;
      }
      shop.offer(
          suppliers.get(random.nextInt(2)),
          Length.ofFeet(feet, 0),
          (feet + random.nextInt(9)) + ".00");
    }
    if (random.nextInt(3) == 0) {
      shop.supplies.add(
          new Supply.OnHand(
              Length.ofFeet(8 + 2 * random.nextInt(5), 0), 1 + random.nextInt(3), "", ""));
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      shop.needs.add(
          new Need(
              random.nextBoolean() ? "A" : "B",
              null,
              1,
              "P" + i,
              Length.ofFeet(2 + random.nextInt(7), 0),
              1 + random.nextInt(4),
              ""));
    }
    for (int i = 1 + random.nextInt(2); i > 0; i--) {
      JointRules rules =
          random.nextBoolean()
              ? RunShop.butt(random.nextBoolean() ? Length.ZERO : Length.ofSixteenths(4))
              : RunShop.lap(inches(2), inches(12 * random.nextInt(3)));
      int feet = 10 + random.nextInt(32);
      rules = rules.with(new JointCount.BeyondFewest(random.nextInt(2)));
      boolean full = random.nextInt(6) > 0;
      if (!full || random.nextInt(3) == 0) {
        rules = rules.at(new JointPlaces.Bearings(Length.ZERO, Length.ofFeet(2, 0)));
      }
      if (random.nextInt(4) == 0) {
        rules = rules.staggered(Length.ofFeet(1, 0));
      }
      rules =
          rules.with(
              new ClosingPiece(
                  Where.values()[random.nextInt(3)],
                  full,
                  random.nextInt(4) == 0 ? inches(1) : Length.ZERO));
      shop.run(
          random.nextBoolean() ? "A" : "B",
          "E" + i,
          1 + random.nextInt(3),
          Length.ofFeet(feet, 6 * random.nextInt(2)),
          rules);
    }
    return shop;
  }

  /** All pieces of a line but the closing one lie alone on a stick of their own length. */
  private static void assertUncut(MaterialPlan plan) {
    Map<String, Pattern> tickets = new HashMap<>();
    plan.patterns()
        .forEach(
            pattern ->
                pattern.cuts().forEach(cut -> tickets.put(cut.job() + "/" + cut.mark(), pattern)));
    Map<String, Length> lengths = new HashMap<>();
    plan.order().supplies().forEach(supply -> lengths.put(supply.key(), supply.length()));
    Map<String, JointRules> rules = new HashMap<>();
    plan.order()
        .runs()
        .forEach(need -> rules.put(need.job() + "/" + need.run().mark(), need.run().rules()));
    for (RunLine line : plan.runs()) {
      ClosingPiece closing = rules.get(line.job() + "/" + line.mark()).closing();
      int last = line.closingAt() == Where.START ? 0 : line.pieces().size() - 1;
      for (int i = 0; i < line.pieces().size() && closing.othersWhole(); i++) {
        Pattern ticket = tickets.get(line.job() + "/" + line.pieceMark(line.pieces().get(i)));
        if (i != last) {
          assertEquals(1, ticket.cuts().size());
          assertEquals(1, ticket.cuts().get(0).qty());
          assertEquals(lengths.get(ticket.supply()), line.pieces().get(i).length());
        }
      }
    }
  }
}
