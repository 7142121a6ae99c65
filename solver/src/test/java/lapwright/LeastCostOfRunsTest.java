package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapwright.SmallShop.Line;
import lapwright.SmallShop.Piece;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.JointRules;
import lapwright.shop.OneLotPer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Small shops of runs and pieces with several stock lengths, prices, limits, packs, offcuts and
 * lots, against ways that share nothing with the planner: a model for the general-purpose solver
 * CP-SAT of OR-Tools, and exhaustive search. What they cost must lie between bound and cost, and be
 * the cost where that is proved. Every plan has passed the check.
 */
class LeastCostOfRunsTest {
  private static final int SHOPS = 80;
  private static final int TINY_SHOPS = 60;
  private static final int THEOREM_SHOPS = 300;
  private static final int PAIRS = 16;
  private static final long DOLLAR = 10_000;

  /** The plan; null when there is none. */
  private static @Nullable MaterialPlan plan(SmallShop shop, boolean fullSticks) {
    return plan(shop.order(fullSticks));
  }

  private static @Nullable MaterialPlan plan(RunShop order) {
    PlanResult result = order.result();
    if (result instanceof PlanResult.Planned planned) {
      return planned.plan().plan().materials().get(0);
    }
    assertInstanceOf(PlanResult.Impossible.class, result);
    return null;
  }

  private static String name(int seed, SmallShop shop) {
    return "shop " + seed + ", " + shop;
  }

  @ParameterizedTest
  @EnumSource
  void anIndependentModelAgrees(OneLotPer oneLotPer) {
    int planned = 0;
    int proved = 0;
    int best = 0;
    for (int seed = 0; seed < SHOPS; seed++) {
      SmallShop shop = SmallShop.random(new Random(seed), oneLotPer);
      SmallShopModel.Answer answer = SmallShopModel.solve(shop);
      MaterialPlan plan = plan(shop, false);
      String name = name(seed, shop);
      if (plan == null) {
        assertEquals(Long.MAX_VALUE, answer.cost(), name);
        continue;
      }
      planned++;
      assertTrue(plan.cost() >= answer.bound() * DOLLAR, name);
      assertTrue(
          answer.cost() == Long.MAX_VALUE || plan.lowerBound() <= answer.cost() * DOLLAR, name);
      if (plan.proof() == Proof.PROVED) {
        proved++;
        assertTrue(!answer.isExact() || plan.cost() == answer.cost() * DOLLAR, name);
      }
      best += plan.cost() <= answer.cost() * DOLLAR ? 1 : 0;
    }
    assertTrue(planned > SHOPS / 2, planned + " planned");
    // What packs, limits and offcuts leave open, trees about lots and packs close for the most.
    assertTrue(5 * proved >= 4 * planned, proved + " proved of " + planned);
    assertTrue(10 * best >= 9 * planned, best + " cost the least, of " + planned);
  }

  @ParameterizedTest
  @EnumSource
  void exhaustiveSearchAgrees(OneLotPer oneLotPer) {
    int searched = 0;
    for (int seed = 0; searched < TINY_SHOPS; seed++) {
      SmallShop shop = SmallShop.random(new Random(1_000 + seed), oneLotPer);
      int lines = shop.lines().stream().mapToInt(Line::qty).sum();
      int pieces = shop.pieces().stream().mapToInt(Piece::qty).sum();
      if (lines > 2 || lines + pieces > 4 || shop.lines().stream().anyMatch(l -> l.length() > 28)) {
        continue;
      }
      searched++;
      long least = SmallShopSearch.leastCost(shop);
      MaterialPlan plan = plan(shop, false);
      String name = name(1_000 + seed, shop);
      assertEquals(least == Long.MAX_VALUE, plan == null, name);
      if (plan != null) {
        assertTrue(plan.lowerBound() <= least * DOLLAR && least * DOLLAR <= plan.cost(), name);
        assertTrue(plan.proof() != Proof.PROVED || plan.cost() == least * DOLLAR, name);
        SmallShopModel.Answer answer = SmallShopModel.solve(shop);
        assertTrue(answer.bound() <= least && least <= answer.cost(), name);
      }
    }
  }

  /**
   * Joints anywhere, the fewest of them, no stagger, no longest piece, and enough left for a
   * closing piece: whole sticks and one closing piece a line lose nothing (the exchange argument at
   * {@link lapwright.splice.SpliceSolver}'s whole sticks), with several stock lengths, prices,
   * limits, packs, offcuts and lots. Said twice: by the model, which tries all splits and only
   * those; and by the planner, whose orders with {@code full-sticks} must leave such sticks uncut.
   */
  @Test
  void fullSticksCostNoMoreWhereTheTheoremHolds() {
    int held = 0;
    int asked = 0;
    int compared = 0;
    for (int seed = 0; held < THEOREM_SHOPS; seed++) {
      OneLotPer oneLotPer = OneLotPer.values()[seed % OneLotPer.values().length];
      SmallShop drawn = SmallShop.random(new Random(10_000 + seed), oneLotPer);
      SmallShop shop =
          drawn.withLines(
              drawn.lines().stream()
                  .map(
                      line ->
                          new Line(
                              line.job(),
                              line.qty(),
                              line.length(),
                              line.lap(),
                              null,
                              line.shortest(),
                              -1))
                  .filter(drawn::wholeSticksLoseNothing)
                  .toList());
      if (shop.lines().isEmpty()) {
        continue;
      }
      held++;
      String name = name(10_000 + seed, shop);
      SmallShopModel.Answer all = SmallShopModel.solve(shop);
      SmallShopModel.Answer wholes = SmallShopModel.ofWholeSticks(shop);
      assertTrue(all.bound() <= wholes.cost() && wholes.bound() <= all.cost(), name);
      if (all.isExact() && wholes.isExact()) {
        assertEquals(all.cost(), wholes.cost(), name);
      }
      if (held % 3 != 0) {
        continue;
      }
      asked++;
      MaterialPlan chosen = plan(shop, false);
      MaterialPlan full = plan(shop, true);
      assertEquals(chosen == null, full == null, name);
      if (chosen != null && full != null) {
        assertTrue(chosen.lowerBound() <= full.cost() && full.lowerBound() <= chosen.cost(), name);
        if (chosen.proof() == Proof.PROVED && full.proof() == Proof.PROVED) {
          compared++;
          assertEquals(chosen.cost(), full.cost(), name);
        }
      }
    }
    assertTrue(2 * compared > asked, compared + " proved twice, of " + asked);
  }

  /** Plans for an order and for one that cannot cost more, or only what can be proved of them. */
  private static void assertNoDearer(
      String name, @Nullable MaterialPlan cheaper, @Nullable MaterialPlan dearer) {
    if (dearer == null) {
      return;
    }
    assertTrue(cheaper != null, name);
    assertTrue(cheaper.lowerBound() <= dearer.cost(), name);
    if (cheaper.proof() == Proof.PROVED) {
      assertTrue(cheaper.cost() <= dearer.cost(), name);
    }
  }

  private static void assertAsDear(
      String name, @Nullable MaterialPlan one, @Nullable MaterialPlan other) {
    assertNoDearer(name, one, other);
    assertNoDearer(name, other, one);
  }

  @Test
  void runsShorterThanTheSticksArePieces() {
    for (int seed = 0; seed < PAIRS; seed++) {
      OneLotPer oneLotPer = seed % 2 == 0 ? OneLotPer.NONE : OneLotPer.JOB;
      SmallShop drawn = SmallShop.random(new Random(20_000 + seed), oneLotPer);
      List<Line> lines = new ArrayList<>();
      List<Piece> pieces = new ArrayList<>(drawn.pieces());
      for (Line line : drawn.lines()) {
        int length = 2 + line.length() % 6;
        lines.add(new Line(line.job(), line.qty(), length, line.lap(), null, 1, -1));
        pieces.add(new Piece(line.job(), length, line.qty()));
      }
      SmallShop asRuns = drawn.withLines(lines);
      SmallShop asPieces =
          new SmallShop(drawn.kerf(), oneLotPer, drawn.sticks(), pieces, List.of());
      assertAsDear(name(20_000 + seed, asRuns), plan(asRuns, false), plan(asPieces, false));
    }
  }

  @Test
  void noLapIsAButtJoint() {
    for (int seed = 0; seed < PAIRS; seed++) {
      SmallShop drawn = SmallShop.random(new Random(25_000 + seed), OneLotPer.NONE);
      SmallShop shop = drawn.withLines(drawn.lines().stream().map(line -> line.lapped(0)).toList());
      RunShop lapped = shop.order(false);
      lapped.runs.replaceAll(need -> need.withRules(lappedByNothing(need.run().rules())));
      assertAsDear(name(25_000 + seed, shop), plan(shop, false), plan(lapped));
    }
  }

  private static JointRules lappedByNothing(JointRules rules) {
    return new JointRules(
        new JointRules.Joint.Lap(Length.ZERO),
        rules.places(),
        rules.pieces(),
        rules.count(),
        rules.closing(),
        rules.stagger(),
        rules.expansion());
  }

  /** Lines of four pieces and more, none of which may be much shorter than a stick. */
  @Test
  void linesOfManyPiecesNearlyAsLongAsAStick() {
    int planned = 0;
    int proved = 0;
    for (int seed = 0; seed < SHOPS; seed++) {
      Random random = new Random(40_000 + seed);
      SmallShop drawn = SmallShop.random(random, OneLotPer.NONE);
      int length = 8 + random.nextInt(4);
      List<Line> lines = new ArrayList<>();
      for (int i = 1 + random.nextInt(2); i > 0; i--) {
        int total = (int) (length * (2.7 + 2.2 * random.nextDouble()));
        int shortest = (int) Math.round(length * (0.55 + 0.4 * random.nextDouble()));
        lines.add(
            new Line(
                "A",
                1 + random.nextInt(2),
                total,
                random.nextInt(2),
                null,
                shortest,
                random.nextBoolean() ? -1 : -2));
      }
      SmallShop shop =
          new SmallShop(
              drawn.kerf(),
              OneLotPer.NONE,
              List.of(
                  new SmallShop.Stick("pellbrook", length, length, 1, SmallShop.NO_LIMIT),
                  new SmallShop.Stick("ostermoor", length - 1, length - 1, 1, 3)),
              List.of(),
              lines);
      String name = name(40_000 + seed, shop);
      MaterialPlan plan = plan(shop, false);
      if (lines.stream().anyMatch(line -> shop.splits(line).isEmpty())) {
        assertNull(plan, name);
        continue;
      }
      SmallShopModel.Answer answer = SmallShopModel.solve(shop);
      assertEquals(answer.cost() == Long.MAX_VALUE, plan == null, name);
      if (plan != null) {
        planned++;
        proved += plan.proof() == Proof.PROVED ? 1 : 0;
        assertTrue(plan.cost() >= answer.bound() * DOLLAR, name);
        assertTrue(plan.lowerBound() <= answer.cost() * DOLLAR, name);
      }
    }
    assertTrue(planned > SHOPS / 4 && planned < SHOPS, planned + " planned");
    assertTrue(3 * proved >= 2 * planned, proved + " proved of " + planned);
  }

  /** At the same most joints, without shortest piece and hold. */
  @Test
  void morePlacesNeverCostMoreAndLongerLapsNeverCostLess() {
    for (int seed = 0; seed < PAIRS; seed++) {
      OneLotPer oneLotPer = seed % 2 == 0 ? OneLotPer.NONE : OneLotPer.JOB;
      Random random = new Random(30_000 + seed);
      SmallShop drawn = SmallShop.random(random, oneLotPer);
      List<Line> few = new ArrayList<>();
      List<Line> many = new ArrayList<>();
      List<Line> anywhere = new ArrayList<>();
      List<Line> lapped = new ArrayList<>();
      List<Line> more = new ArrayList<>();
      for (Line line : drawn.lines()) {
        List<Integer> some = new ArrayList<>();
        List<Integer> all = new ArrayList<>();
        for (int at = 2; at < line.length() - 1; at++) {
          boolean given = random.nextInt(3) == 0;
          if (given || random.nextInt(3) == 0) {
            all.add(at);
          }
          if (given) {
            some.add(at);
          }
        }
        Line free =
            new Line(line.job(), line.qty(), line.length(), 0, null, 1, 1 + line.length() / 7);
        few.add(free.at(some));
        many.add(free.at(all));
        anywhere.add(free);
        lapped.add(free.lapped(1));
        more.add(free.lapped(2));
      }
      String name = name(30_000 + seed, drawn);
      MaterialPlan free = plan(drawn.withLines(anywhere), false);
      MaterialPlan given = plan(drawn.withLines(many), false);
      assertNoDearer(name, given, plan(drawn.withLines(few), false));
      assertNoDearer(name, free, given);
      MaterialPlan short1 = plan(drawn.withLines(lapped), false);
      assertNoDearer(name, free, short1);
      assertNoDearer(name, short1, plan(drawn.withLines(more), false));
    }
  }
}
