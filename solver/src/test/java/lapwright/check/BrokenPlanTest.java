package lapwright.check;

import static lapwright.check.PlanDraft.cut;
import static lapwright.check.PlanDraft.need;
import static lapwright.check.PlanDraft.offcut;
import static lapwright.check.PlanDraft.offer;
import static lapwright.check.PlanDraft.pattern;
import static lapwright.check.PlanDraft.sixtyFourths;
import static lapwright.check.PlanDraft.weights;
import static lapwright.check.TwoPosts.BRACE;
import static lapwright.check.TwoPosts.POST;
import static lapwright.check.TwoPosts.R7;
import static lapwright.check.TwoPosts.TUBE;
import static lapwright.check.TwoPosts.TWENTY_FEET;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** Each test spoils one thing in a sound plan and expects the fault that names it. */
class BrokenPlanTest {

  private static List<PlanFault> faultsOf(PlanDraft draft) {
    return faultsOf(draft.build());
  }

  private static List<PlanFault> faultsOf(OrderPlan plan) {
    return PlanCheck.check(plan) instanceof Verdict.Broken broken ? broken.faults() : List.of();
  }

  private static List<PlanFault> spoiled(Consumer<PlanDraft> how) {
    PlanDraft draft = TwoPosts.draft();
    assertEquals(List.of(), faultsOf(draft));
    how.accept(draft);
    return faultsOf(draft);
  }

  private static Set<Rule> rules(List<PlanFault> faults) {
    return faults.stream().map(PlanFault::rule).collect(Collectors.toCollection(TreeSet::new));
  }

  private static void assertBreaks(Rule rule, String ticket, Consumer<PlanDraft> how) {
    List<PlanFault> faults = spoiled(how);
    assertTrue(
        faults.stream()
            .anyMatch(
                fault ->
                    fault.rule() == rule
                        && fault.ticket().equals(ticket)
                        && fault.material().equals("tube")),
        () -> "no fault of " + rule + " at ticket '" + ticket + "' in " + faults);
  }

  private static void assertBreaksOnly(Rule rule, String ticket, Consumer<PlanDraft> how) {
    assertBreaks(rule, ticket, how);
    assertEquals(Set.of(rule), rules(spoiled(how)));
  }

  private static void replace(PlanDraft draft, int index, Pattern pattern) {
    draft.patterns.set(index, pattern);
  }

  private static Pattern posts(String ticket, int times, Length offcut, Cut... cuts) {
    return pattern(ticket, TUBE, times, offcut, List.of(), cuts);
  }

  @Test
  void aMissingPiece() {
    assertBreaks(Rule.PIECES, "", draft -> draft.patterns.remove(2));
  }

  @Test
  void aPieceTooMany() {
    assertBreaksOnly(Rule.PIECES, "", draft -> draft.needs.set(0, need("dock", "P", POST, 12)));
  }

  @Test
  void aPieceOfAJobThatNeedsNone() {
    assertBreaks(
        Rule.PIECES,
        "T3",
        draft ->
            replace(
                draft,
                2,
                pattern("T3", R7, 1, Length.ZERO, List.of(), cut("boathouse", "P", POST, 1))));
  }

  @Test
  void aPieceWithAnotherMark() {
    assertBreaks(
        Rule.PIECES,
        "T3",
        draft ->
            replace(
                draft,
                2,
                pattern("T3", R7, 1, Length.ZERO, List.of(), cut("dock", "P9", POST, 1))));
  }

  @Test
  void aPieceForTheWrongCopyOfARepeatedJob() {
    assertBreaksOnly(
        Rule.PIECES,
        "T3",
        draft ->
            replace(
                draft,
                2,
                pattern("T3", R7, 1, Length.ZERO, List.of(), new Cut("dock", 2, "P", POST, 1))));
  }

  @Test
  void eachCopyOfARepeatedJobNeedsItsOwnPieces() {
    assertBreaksOnly(
        Rule.PIECES, "", draft -> draft.needs.set(1, new Need("dock", null, 2, "B", BRACE, 5, "")));
  }

  @Test
  void aPieceOfAnotherLength() {
    assertBreaks(
        Rule.PIECES,
        "T1",
        draft ->
            replace(
                draft,
                0,
                posts(
                    "T1", 6, sixtyFourths(70), cut("dock", "P", POST.minus(sixtyFourths(1)), 2))));
  }

  @Test
  void aTicketWithoutCuts() {
    assertBreaks(Rule.PIECES, "T2", draft -> replace(draft, 1, posts("T2", 2, Length.ZERO)));
  }

  @Test
  void aTicketThatOverfillsItsStick() {
    assertBreaks(
        Rule.CAPACITY,
        "T2",
        draft -> replace(draft, 1, posts("T2", 2, Length.ZERO, cut("dock", "B", BRACE, 6))));
  }

  @Test
  void aStickThatFitsOnlyIfItIsNotShort() {
    // Two posts of 9'-11-1/2" take 239-11/16" with the trim and both cuts: a full 240" would do,
    // 239-1/2" would not.
    Length longer = Length.ofSixteenths(9 * 192 + 11 * 16 + 8);
    PlanDraft draft = twoAlone(longer, sixtyFourths(8));
    assertEquals(Set.of(), rules(faultsOf(draft)));
    draft.shortBy = sixtyFourths(32);
    assertTrue(rules(faultsOf(draft)).contains(Rule.CAPACITY));
  }

  /** Two posts of one length from one 20' stick that is never short. */
  private static PlanDraft twoAlone(Length post, Length expectedOffcut) {
    PlanDraft draft = new PlanDraft();
    draft.supplies.add(TUBE);
    draft.needs.add(need("dock", "P", post, 2));
    draft.purchases.add(new Purchase(TUBE.key(), 1));
    Length offcut =
        TWENTY_FEET.minus(sixtyFourths(32)).minus(post.times(2)).minus(sixtyFourths(12));
    assertEquals(expectedOffcut.units() > 0, offcut.units() > 0);
    draft.patterns.add(pattern("T1", TUBE, 1, offcut, List.of(), cut("dock", "P", post, 2)));
    draft.cost = 410_000;
    draft.cash = 410_000;
    Length none = Length.ZERO;
    draft.account =
        new Account(
            TWENTY_FEET,
            post.times(2),
            none,
            sixtyFourths(12),
            sixtyFourths(32),
            none,
            offcut,
            none,
            none);
    return draft;
  }

  @Test
  void aRackOffcutWithMillEndsThatIsExactlyAPieceIsTrimmedFirst() {
    assertBreaks(
        Rule.CAPACITY, "T3", draft -> draft.supplies.set(1, offcut("R7", POST, Ends.MILL)));
    assertBreaks(
        Rule.CAPACITY, "T3", draft -> draft.supplies.set(1, offcut("R7", POST, Ends.ONE_MILL)));
  }

  @Test
  void aHoldThatNeitherOffcutNorPieceReaches() {
    assertBreaksOnly(
        Rule.HOLD,
        "T2",
        draft ->
            draft.saw =
                new Saw("cold-saw", sixtyFourths(6), sixtyFourths(32), Length.ofInches(47), null));
  }

  @Test
  void aShortPieceLastWhereTheLongOneMustBeHeld() {
    PlanDraft draft = new PlanDraft();
    Length stub = Length.ofInches(2);
    Length long2 = Length.ofInches(236);
    draft.supplies.add(TUBE);
    draft.needs.addAll(List.of(need("dock", "L", long2, 1), need("dock", "S", stub, 1)));
    draft.purchases.add(new Purchase(TUBE.key(), 1));
    draft.cost = 410_000;
    draft.cash = 410_000;
    Length left = sixtyFourths(240 * 64 - 32 - 238 * 64 - 12);
    draft.account =
        PlanDraft.account(240 * 64, 238 * 64, 12, 32, 0, 240 * 64 - 32 - 238 * 64 - 12, 0, 0);
    draft.patterns.add(posts("T1", 1, left, cut("dock", "S", stub, 1), cut("dock", "L", long2, 1)));
    assertEquals(Set.of(), rules(faultsOf(draft)));
    replace(draft, 0, posts("T1", 1, left, cut("dock", "L", long2, 1), cut("dock", "S", stub, 1)));
    assertEquals(Set.of(Rule.HOLD), rules(faultsOf(draft)));
  }

  @Test
  void anOffcutThatIsNotWhatTheStickLeaves() {
    assertBreaksOnly(
        Rule.OFFCUT,
        "T1",
        draft -> replace(draft, 0, posts("T1", 6, sixtyFourths(69), cut("dock", "P", POST, 2))));
  }

  @Test
  void aScrapThatBearsAName() {
    assertBreaksOnly(
        Rule.OFFCUT_NAME,
        "T2",
        draft ->
            replace(
                draft,
                1,
                pattern(
                    "T2",
                    TUBE,
                    2,
                    sixtyFourths(8 * 64 + 50),
                    List.of("A1", "A2"),
                    cut("dock", "B", BRACE, 5))));
  }

  /** Offcuts of 8-25/32" are kept. */
  private static void keep(PlanDraft draft, List<String> names) {
    draft.keepFrom = Length.ofInches(8);
    Account a = draft.account;
    Length kept = sixtyFourths(2 * (8 * 64 + 50));
    draft.account =
        new Account(
            a.drawn(),
            a.finished(),
            a.laps(),
            a.kerf(),
            a.endTrim(),
            kept,
            a.scrap().minus(kept),
            a.surplus(),
            a.shortAllowance());
    replace(
        draft,
        1,
        pattern("T2", TUBE, 2, sixtyFourths(8 * 64 + 50), names, cut("dock", "B", BRACE, 5)));
  }

  @Test
  void aKeptOffcutNeedsANameOfItsOwn() {
    assertEquals(List.of(), spoiled(draft -> keep(draft, List.of("A1", "A2"))));
    assertBreaksOnly(Rule.OFFCUT_NAME, "T2", draft -> keep(draft, List.of()));
    assertBreaksOnly(Rule.OFFCUT_NAME, "T2", draft -> keep(draft, List.of("A1")));
    assertBreaksOnly(Rule.OFFCUT_NAME, "T2", draft -> keep(draft, List.of("A1", "A1")));
    assertBreaksOnly(Rule.OFFCUT_NAME, "T2", draft -> keep(draft, List.of("A1", " ")));
  }

  @Test
  void anOffcutNamedLikeOneThatStillLiesOnTheRack() {
    assertBreaksOnly(
        Rule.OFFCUT_NAME,
        "T2",
        draft -> {
          draft.supplies.add(offcut("R8", Length.ofInches(30), Ends.SAWN));
          draft.proof = Proof.OPEN;
          draft.lowerBound = 0;
          keep(draft, List.of("A1", "R8"));
        });
  }

  @Test
  void aKeptOffcutCountedAsScrap() {
    assertBreaksOnly(
        Rule.ACCOUNT,
        "",
        draft -> {
          Account before = draft.account;
          keep(draft, List.of("A1", "A2"));
          draft.account = before;
        });
  }

  @Test
  void anAccountThatIsOffByOneUnit() {
    for (int field = 0; field < 9; field++) {
      Length[] unit = new Length[9];
      Arrays.fill(unit, Length.ZERO);
      unit[field] = Length.ofUnits(1);
      Account off =
          new Account(
              unit[0], unit[1], unit[2], unit[3], unit[4], unit[5], unit[6], unit[7], unit[8]);
      assertBreaksOnly(Rule.ACCOUNT, "", draft -> draft.account = draft.account.plus(off));
    }
  }

  @Test
  void twoLotsOnOneJobWhereTheMaterialForbidsIt() {
    assertBreaksOnly(Rule.ONE_LOT, "", draft -> draft.oneLotPer = OneLotPer.JOB);
  }

  @Test
  void aSupplyThatTheShopDoesNotHave() {
    assertBreaks(
        Rule.SUPPLY,
        "T3",
        draft ->
            replace(
                draft,
                2,
                pattern(
                    "T3",
                    offcut("R9", POST, Ends.SAWN),
                    1,
                    Length.ZERO,
                    List.of(),
                    cut("dock", "P", POST, 1))));
  }

  @Test
  void anOffcutUsedTwice() {
    assertBreaks(
        Rule.AVAILABLE,
        "",
        draft ->
            replace(
                draft, 2, pattern("T3", R7, 2, Length.ZERO, List.of(), cut("dock", "P", POST, 1))));
  }

  @Test
  void moreSticksOnHandThanLieThere() {
    Supply.OnHand two = new Supply.OnHand(TWENTY_FEET, 2, "", "");
    Consumer<PlanDraft> onHand =
        draft -> {
          draft.supplies.add(two);
          draft.purchases.set(0, new Purchase(TUBE.key(), 6));
          draft.cash = 2_460_000;
          replace(
              draft,
              1,
              pattern(
                  "T2", two, 2, sixtyFourths(8 * 64 + 50), List.of(), cut("dock", "B", BRACE, 5)));
          Account a = draft.account;
          draft.account =
              new Account(
                  a.drawn(),
                  a.finished(),
                  a.laps(),
                  a.kerf(),
                  a.endTrim(),
                  a.offcutsKept(),
                  a.scrap(),
                  a.surplus(),
                  sixtyFourths(6 * 16));
        };
    assertEquals(List.of(), spoiled(onHand));
    assertBreaksOnly(
        Rule.AVAILABLE,
        "",
        onHand.andThen(draft -> draft.supplies.set(2, new Supply.OnHand(TWENTY_FEET, 1, "", ""))));
    assertBreaks(Rule.COST, "", onHand.andThen(draft -> draft.cost = draft.cash));
    assertBreaks(Rule.COST, "", onHand.andThen(draft -> draft.onHandValued = false));
  }

  @Test
  void moreBoughtThanAtMost() {
    assertBreaks(
        Rule.AVAILABLE, "", draft -> draft.supplies.set(0, offer(TWENTY_FEET, "41.00", 1, 7)));
  }

  @Test
  void sticksCutThatNobodyBought() {
    assertBreaks(Rule.PACKS, "", draft -> draft.purchases.set(0, new Purchase(TUBE.key(), 7)));
    assertBreaks(Rule.PACKS, "", draft -> draft.purchases.clear());
  }

  @Test
  void aPurchaseOfWhatIsNotOnOffer() {
    assertBreaksOnly(Rule.PURCHASE, "", draft -> draft.purchases.add(new Purchase(R7.key(), 1)));
    assertBreaksOnly(
        Rule.PURCHASE, "", draft -> draft.purchases.add(new Purchase("buy:nobody:1:1", 1)));
    assertBreaks(Rule.PURCHASE, "", draft -> draft.purchases.add(new Purchase(TUBE.key(), 8)));
  }

  @Test
  void surplusThatIsBoughtAndNotPaidFor() {
    assertEquals(
        Set.of(Rule.COST, Rule.CASH, Rule.ACCOUNT),
        rules(spoiled(draft -> draft.purchases.set(0, new Purchase(TUBE.key(), 9)))));
  }

  @Test
  void aStickLongerThanTheSawTakes() {
    assertBreaks(
        Rule.LONGEST_STICK,
        "T1",
        draft ->
            draft.saw =
                new Saw(
                    "cold-saw",
                    sixtyFourths(6),
                    sixtyFourths(32),
                    Length.ofInches(3),
                    TWENTY_FEET.minus(sixtyFourths(1))));
  }

  @Test
  void aStickAsLongAsTheSawTakes() {
    assertEquals(
        List.of(),
        spoiled(
            draft ->
                draft.saw =
                    new Saw(
                        "cold-saw",
                        sixtyFourths(6),
                        sixtyFourths(32),
                        Length.ofInches(3),
                        TWENTY_FEET)));
  }

  @Test
  void aCostOrCashThatIsNotThePrice() {
    assertBreaksOnly(
        Rule.COST,
        "",
        draft -> {
          draft.cost += 1;
          draft.proof = Proof.OPEN;
        });
    assertBreaksOnly(Rule.CASH, "", draft -> draft.cash -= 1);
    assertBreaks(Rule.COST, "", draft -> draft.supplies.set(0, offer(TWENTY_FEET, "41.01")));
  }

  @Test
  void ticketsOfOneName() {
    assertBreaksOnly(
        Rule.TICKET_NAME,
        "T1",
        draft ->
            replace(
                draft, 2, pattern("T1", R7, 1, Length.ZERO, List.of(), cut("dock", "P", POST, 1))));
  }

  @Test
  void aMaterialPlannedTwice() {
    OrderPlan once = TwoPosts.draft().build();
    PlanDraft second = TwoPosts.draft();
    second.patterns.replaceAll(
        p ->
            new Pattern(
                p.ticket() + "b", p.supply(), p.times(), p.cuts(), p.offcut(), p.offcutNames()));
    OrderPlan twice =
        new OrderPlan(once.shop(), List.of(once.materials().get(0), second.material()));
    assertEquals(Set.of(Rule.MATERIAL), rules(faultsOf(twice)));
  }

  @Test
  void quantitiesBeyondSixtyFourBitsAreAFaultAndNoCrash() {
    assertBreaks(
        Rule.ACCOUNT,
        "",
        draft ->
            replace(
                draft,
                2,
                pattern(
                    "T3",
                    R7,
                    Integer.MAX_VALUE,
                    Length.ZERO,
                    List.of(),
                    cut("dock", "P", Length.ofUnits(Long.MAX_VALUE / 2), Integer.MAX_VALUE))));
  }

  // Certificates.

  @Test
  void aBoundAboveWhatTheCertificateGives() {
    assertBreaks(
        Rule.BOUND, "", draft -> draft.certificate = weights(1, POST, 205_000, BRACE, 41_000));
    assertBreaks(Rule.PROOF, "", draft -> draft.certificate = weights(1));
    assertBreaksOnly(
        Rule.BOUND,
        "",
        draft -> {
          draft.proof = Proof.CLAIMED;
          draft.certificate = weights(1);
        });
  }

  @Test
  void wholePacksProveTheCostWhateverTheScale() {
    assertEquals(
        List.of(), spoiled(draft -> draft.certificate = weights(1, POST, 205_001, BRACE, 82_000)));
  }

  @Test
  void weightsThatAStickCarriesBeyondItsPrice() {
    List<PlanFault> faults =
        spoiled(draft -> draft.certificate = weights(1, POST, 410_001, BRACE, 0));
    assertEquals(Set.of(Rule.BOUND, Rule.PROOF), rules(faults));
    assertTrue(faults.get(0).message().contains(TUBE.key()), () -> faults.get(0).message());
  }

  @Test
  void negativeWeights() {
    assertBreaksOnly(
        Rule.CERTIFICATE, "", draft -> draft.certificate = weights(1, POST, -1, BRACE, 82_000));
  }

  @Test
  void weightsOfALengthThatNobodyNeeds() {
    assertBreaksOnly(
        Rule.CERTIFICATE,
        "",
        draft -> draft.certificate = weights(1, POST, 205_000, Length.ofInches(47), 82_000));
  }

  @Test
  void weightsTooLargeToAddUp() {
    assertBreaksOnly(
        Rule.CERTIFICATE, "", draft -> draft.certificate = weights(1, POST, Long.MAX_VALUE));
  }

  @Test
  void aDecisionAboutASupplyThatIsNotThere() {
    assertBreaksOnly(
        Rule.CERTIFICATE,
        "",
        draft ->
            draft.certificate =
                new Certificate.PackSplit(
                    List.of("buy:nobody:1:1"), 3, TwoPosts.certificate(), TwoPosts.certificate()));
  }

  @Test
  void aDecisionAboutLotsThatMayMix() {
    assertBreaksOnly(
        Rule.CERTIFICATE,
        "",
        draft ->
            draft.certificate =
                new Certificate.LotSplit(
                    "quay", "", List.of("lot:7"), TwoPosts.certificate(), TwoPosts.certificate()));
  }

  @Test
  void decisionsAboutSetsOfSuppliesThatOverlap() {
    assertBreaksOnly(
        Rule.CERTIFICATE,
        "",
        draft ->
            draft.certificate =
                new Certificate.PackSplit(
                    List.of(TUBE.key()),
                    3,
                    TwoPosts.certificate(),
                    new Certificate.PackSplit(
                        List.of(TUBE.key(), R7.key()),
                        3,
                        TwoPosts.certificate(),
                        TwoPosts.certificate())));
  }

  @Test
  void aTreeIsAsWeakAsItsWeakestLeaf() {
    Certificate strong = TwoPosts.certificate();
    assertEquals(
        List.of(),
        spoiled(
            draft ->
                draft.certificate =
                    new Certificate.PackSplit(List.of(TUBE.key()), 7, strong, strong)));
    assertBreaks(
        Rule.BOUND,
        "",
        draft ->
            draft.certificate =
                new Certificate.PackSplit(List.of(TUBE.key()), 7, weights(1), strong));
    // The branch "more than 7" needs no weights: 8 sticks cost what the plan costs.
    assertEquals(
        List.of(),
        spoiled(
            draft ->
                draft.certificate =
                    new Certificate.PackSplit(List.of(TUBE.key()), 7, strong, weights(1))));
  }

  @Test
  void provedOnlyWhenTheStatedBoundIsTheCost() {
    assertBreaksOnly(Rule.PROOF, "", draft -> draft.lowerBound = 3_200_000);
    assertEquals(
        List.of(),
        spoiled(
            draft -> {
              draft.lowerBound = 3_200_000;
              draft.proof = Proof.OPEN;
            }));
  }

  @Test
  void aNegativeBound() {
    assertBreaksOnly(
        Rule.BOUND,
        "",
        draft -> {
          draft.lowerBound = -1;
          draft.proof = Proof.OPEN;
        });
  }
}
