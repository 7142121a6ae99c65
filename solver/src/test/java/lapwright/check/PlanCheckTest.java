package lapwright.check;

import static lapwright.check.PlanDraft.account;
import static lapwright.check.PlanDraft.cut;
import static lapwright.check.PlanDraft.need;
import static lapwright.check.PlanDraft.offcut;
import static lapwright.check.PlanDraft.offer;
import static lapwright.check.PlanDraft.pattern;
import static lapwright.check.PlanDraft.sixtyFourths;
import static lapwright.check.PlanDraft.weights;
import static lapwright.check.TwoPosts.BRACE;
import static lapwright.check.TwoPosts.POST;
import static lapwright.check.TwoPosts.TUBE;
import static lapwright.check.TwoPosts.TWENTY_FEET;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.math.BigInteger;
import java.util.List;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** Plans worked out by hand, each with weights that prove it. */
class PlanCheckTest {

  static CheckedPlan sound(PlanDraft draft) {
    return SoundPlans.requireSound(draft.build());
  }

  private static void assertProved(long cost, PlanDraft draft) {
    draft.cost = cost;
    draft.cash = cost;
    draft.lowerBound = cost;
    draft.proof = Proof.PROVED;
    assertEquals(cost, sound(draft).bounds().get(0).bound());
  }

  private static Pattern tube(String ticket, int times, Length offcut, lapwright.plan.Cut... cuts) {
    return pattern(ticket, TUBE, times, offcut, List.of(), cuts);
  }

  @Test
  void twoPostsToAStickAreEightSticks() {
    OrderPlan plan = TwoPosts.draft().build();
    CheckedPlan checked = SoundPlans.requireSound(plan);
    assertSame(plan, checked.plan());
    MaterialBound bound = checked.bounds().get(0);
    assertEquals("tube", bound.material());
    assertEquals(3_280_000, bound.certified());
    assertEquals(3_280_000, bound.bound());
    assertEquals(1, bound.leaves());
    assertEquals(0, bound.emptyLeaves());
  }

  @Test
  void aLeafCanBeFollowedByHand() {
    LeafBound leaf = sound(TwoPosts.draft()).bounds().get(0).weakest();
    assertEquals(
        List.of(
            new LeafBound.PieceLine(POST, 13, 205_000), new LeafBound.PieceLine(BRACE, 10, 82_000)),
        leaf.pieces());
    assertEquals(List.of(), leaf.decisions());
    LeafBound.StockLine sticks = leaf.stock().get(0);
    assertEquals(List.of(TUBE.key()), sticks.supplies());
    // 240 - 1/4 short - 1/2 trim - 3/32 for the cut at the far mill end
    assertEquals(sixtyFourths(240 * 64 - 16 - 32 - 6), sticks.usable());
    assertEquals(410_000, sticks.heaviest());
    assertEquals(BigInteger.ZERO, sticks.term());
    LeafBound.StockLine rack = leaf.stock().get(1);
    assertEquals(205_000, rack.heaviest());
    assertEquals(1, rack.packs());
    assertEquals(BigInteger.valueOf(-205_000), rack.term());
    assertEquals(BigInteger.valueOf(13 * 205_000 + 10 * 82_000), leaf.weightSum());
    assertEquals(BigInteger.valueOf(3_280_000), leaf.total());
    assertEquals(BigInteger.valueOf(3_280_000), leaf.bound());
  }

  @Test
  void anOffcutThatMustBeTrimmedAgainIsNoPostAndCostsANinthStick() {
    PlanDraft draft = TwoPosts.draft();
    Supply.RackOffcut rack = offcut("R7", POST, Ends.MILL);
    draft.supplies.set(1, rack);
    draft.purchases.set(0, new Purchase(TUBE.key(), 9));
    draft.patterns.clear();
    draft.patterns.add(tube("T1", 6, sixtyFourths(68), cut("dock", "P", POST, 2)));
    // 239-3/4 - 1/2 - 119-3/32 - 2 x 46-3/32 leaves 27-31/32, kept
    draft.patterns.add(
        pattern(
            "T2",
            TUBE,
            1,
            sixtyFourths(27 * 64 + 62),
            List.of("A1"),
            cut("dock", "P", POST, 1),
            cut("dock", "B", BRACE, 2)));
    // 119 - 1/2 - 2 x 46-3/32 leaves 26-5/16, kept
    draft.patterns.add(
        pattern(
            "T3", rack, 1, sixtyFourths(26 * 64 + 20), List.of("A2"), cut("dock", "B", BRACE, 2)));
    draft.patterns.add(tube("T4", 1, sixtyFourths(8 * 64 + 50), cut("dock", "B", BRACE, 5)));
    // 239-3/4 - 1/2 - 46-3/32 leaves 193-5/32, kept
    draft.patterns.add(
        pattern(
            "T5", TUBE, 1, sixtyFourths(193 * 64 + 10), List.of("A3"), cut("dock", "B", BRACE, 1)));
    draft.account =
        account(
            9 * (239 * 64 + 48) + 119 * 64,
            2007 * 64,
            23 * 6,
            10 * 32,
            (27 * 64 + 62) + (26 * 64 + 20) + (193 * 64 + 10),
            6 * 68 + 8 * 64 + 50,
            0,
            9 * 16);
    assertProved(3_690_000, draft);
    // The weights give 3,485,000 less two braces on R7, raised to nine sticks.
    MaterialBound bound = sound(draft).bounds().get(0);
    assertEquals(3_321_000, bound.certified());
    assertEquals(3_690_000, bound.bound());
  }

  @Test
  void sticksThreeInchesShorterGiveOnePostEach() {
    PlanDraft draft = TwoPosts.draft();
    draft.shortBy = sixtyFourths(3 * 64 + 16);
    draft.purchases.set(0, new Purchase(TUBE.key(), 12));
    draft.patterns.clear();
    // 236-3/4 - 1/2 - 119-3/32 - 2 x 46-3/32 leaves 24-31/32; without braces 117-5/32
    draft.patterns.add(
        pattern(
            "T1",
            TUBE,
            5,
            sixtyFourths(24 * 64 + 62),
            List.of("A1", "A2", "A3", "A4", "A5"),
            cut("dock", "P", POST, 1),
            cut("dock", "B", BRACE, 2)));
    draft.patterns.add(
        pattern(
            "T2",
            TUBE,
            7,
            sixtyFourths(117 * 64 + 10),
            List.of("A6", "A7", "A8", "A9", "B1", "B2", "B3"),
            cut("dock", "P", POST, 1)));
    draft.patterns.add(
        pattern("T3", TwoPosts.R7, 1, Length.ZERO, List.of(), cut("dock", "P", POST, 1)));
    draft.certificate = weights(1, POST, 410_000);
    draft.account =
        account(
            12 * (236 * 64 + 48) + 119 * 64,
            2007 * 64,
            (5 * 3 + 7) * 6,
            12 * 32,
            5 * (24 * 64 + 62) + 7 * (117 * 64 + 10),
            0,
            0,
            12 * (3 * 64 + 16));
    assertProved(4_920_000, draft);
  }

  @Test
  void packsAreProvedByADecisionAndByTheCostsThatCanBeReached() {
    // Eleven posts of 9' from 10' sticks in packs of five: three packs, 15 sticks, though 2.2 packs
    // would carry them. Four sticks are surplus.
    Length ten = Length.ofFeet(10, 0);
    Length nine = Length.ofFeet(9, 0);
    Supply.Offer packs = offer(ten, "10.00", 5, Integer.MAX_VALUE);
    PlanDraft draft = new PlanDraft();
    draft.supplies.add(packs);
    draft.needs.add(need("dock", "P", nine, 11));
    draft.purchases.add(new Purchase(packs.key(), 3));
    draft.patterns.add(
        pattern(
            "T1", packs, 11, sixtyFourths(12 * 64 - 32 - 6), List.of(), cut("dock", "P", nine, 1)));
    draft.account =
        account(
            11 * 120 * 64, 11 * 108 * 64, 11 * 6, 11 * 32, 0, 11 * (12 * 64 - 38), 4 * 120 * 64, 0);
    Certificate.Weights aStickEach = weights(1, nine, 100_000);
    draft.certificate = aStickEach;
    assertProved(1_500_000, draft);
    assertEquals(1_100_000, sound(draft).bounds().get(0).certified());

    // Two packs at most cannot carry eleven posts: that leaf holds no plan.
    draft.certificate =
        new Certificate.PackSplit(List.of(packs.key()), 2, weights(1, nine, 1), weights(1));
    assertProved(1_500_000, draft);
    MaterialBound bound = sound(draft).bounds().get(0);
    assertEquals(1_500_000, bound.certified());
    assertEquals(2, bound.leaves());
    assertEquals(1, bound.emptyLeaves());
    assertEquals(
        List.of(new LeafBound.Decision(List.of(packs.key()), 3, Long.MAX_VALUE)),
        bound.weakest().decisions());
  }

  @Test
  void withoutPricesALengthStandsForThePrice() {
    // Two 3 m rails from 6 m bars; a cut of 2 mm leaves no room for both, snips that take nothing
    // do.
    Length six = Length.ofMm(6000);
    Length three = Length.ofMm(3000);
    Supply.Offer bar = offer(six, "");
    PlanDraft draft = new PlanDraft();
    draft.saw = new Saw("shear", Length.ZERO, Length.ZERO, Length.ofMm(80), null);
    draft.supplies.add(bar);
    draft.needs.add(need("naust", "R", three, 2));
    draft.purchases.add(new Purchase(bar.key(), 1));
    draft.patterns.add(pattern("T1", bar, 1, Length.ZERO, List.of(), cut("naust", "R", three, 2)));
    Length none = Length.ZERO;
    draft.account = new lapwright.plan.Account(six, six, none, none, none, none, none, none, none);
    draft.certificate = weights(1, three, three.units());
    assertProved(six.units(), draft);
  }

  @Test
  void aStickOnHandIsWorthWhatItsLengthCostsToday() {
    // A pack of three 20' sticks at 125.00 makes one worth 41.6667; a 24' stick goes at the
    // cheapest
    // price per length, 125.00 for 60', so 50.00.
    for (boolean sameLength : List.of(true, false)) {
      PlanDraft draft = new PlanDraft();
      Length length = sameLength ? TWENTY_FEET : Length.ofFeet(24, 0);
      Supply.OnHand onHand = new Supply.OnHand(length, 2, "yard", "");
      draft.supplies.add(
          new Supply.Offer(
              "north",
              TWENTY_FEET,
              new lapwright.measure.Price(
                  new java.math.BigDecimal("125.00"), lapwright.measure.Price.Per.PACK),
              3,
              Integer.MAX_VALUE,
              "",
              null,
              null));
      draft.supplies.add(onHand);
      draft.needs.add(need("dock", "P", POST, 2));
      long left = length.units() / Length.UNITS_PER_SIXTY_FOURTH - 32 - 2 * 119 * 64 - 12;
      boolean kept = left >= 24 * 64;
      draft.patterns.add(
          pattern(
              "T1",
              onHand,
              1,
              sixtyFourths(left),
              kept ? List.of("A1") : List.of(),
              cut("dock", "P", POST, 2)));
      draft.account =
          account(
              length.units() / Length.UNITS_PER_SIXTY_FOURTH,
              2 * 119 * 64,
              12,
              32,
              kept ? left : 0,
              kept ? 0 : left,
              0,
              0);
      draft.cost = sameLength ? 416_667 : 500_000;
      sound(draft);
      draft.onHandValued = false;
      draft.cost = 0;
      sound(draft);
    }
  }
}
