package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import lapwright.check.PlanCheck;
import lapwright.check.Rule;
import lapwright.check.Verdict;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.RunLine;
import lapwright.plan.RunLine.RunPiece;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Where;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;

/** Sound plans of runs, spoilt in one way each. */
class BrokenRunTest {
  private static void assertBreaks(Rule rule, OrderPlan sound, UnaryOperator<MaterialPlan> spoil) {
    assertInstanceOf(Verdict.Sound.class, PlanCheck.check(sound));
    OrderPlan spoilt = new OrderPlan(sound.shop(), List.of(spoil.apply(sound.materials().get(0))));
    Verdict.Broken broken = assertInstanceOf(Verdict.Broken.class, PlanCheck.check(spoilt));
    assertTrue(
        broken.faults().stream().anyMatch(fault -> fault.rule() == rule),
        () -> "no fault of " + rule + " in " + broken.faults());
  }

  private static MaterialPlan with(
      MaterialPlan plan, List<Pattern> patterns, List<RunLine> runs, long bound) {
    return new MaterialPlan(
        plan.order(),
        plan.purchases(),
        patterns,
        plan.cost(),
        plan.cash(),
        bound,
        plan.proof(),
        plan.certificate(),
        plan.account(),
        runs);
  }

  private static MaterialPlan withLine(
      MaterialPlan plan, int index, UnaryOperator<List<RunPiece>> change) {
    List<RunLine> runs = new ArrayList<>(plan.runs());
    RunLine line = runs.get(index);
    runs.set(
        index,
        new RunLine(
            line.job(),
            line.copy(),
            line.mark(),
            line.line(),
            line.closingAt(),
            change.apply(line.pieces())));
    return with(plan, plan.patterns(), runs, plan.lowerBound());
  }

  private static List<RunPiece> moved(List<RunPiece> pieces, int index, long by) {
    List<RunPiece> changed = new ArrayList<>(pieces);
    RunPiece piece = pieces.get(index);
    changed.set(
        index,
        new RunPiece(piece.number(), piece.start().plus(Length.ofUnits(by)), piece.length()));
    return changed;
  }

  @Test
  void jointOffItsBearing() {
    OrderPlan plan = RunOrdersTest.purlins(Length.ofSixteenths(2)).orderPlan();
    assertBreaks(
        Rule.JOINT_PLACE,
        plan,
        sound ->
            withLine(
                sound,
                0,
                pieces -> {
                  RunPiece first = pieces.get(0);
                  RunPiece second = pieces.get(1);
                  Length by = RunShop.inches(1);
                  return List.of(
                      new RunPiece(1, first.start(), first.length().minus(by)),
                      new RunPiece(2, second.start().minus(by), second.length().plus(by)));
                }));
  }

  @Test
  void gapWiderThanTheDrawingsAllow() {
    OrderPlan plan = RunOrdersTest.purlins(Length.ofSixteenths(2)).orderPlan();
    assertBreaks(
        Rule.JOINT,
        plan,
        sound -> withLine(sound, 0, pieces -> moved(pieces, 1, Length.UNITS_PER_INCH / 4)));
  }

  @Test
  void lapShortByASixtyFourth() {
    OrderPlan plan = RunOrdersTest.trimOfTwoJobs().orderPlan();
    assertBreaks(
        Rule.JOINT,
        plan,
        sound -> withLine(sound, 0, pieces -> moved(pieces, 1, Length.UNITS_PER_SIXTY_FOURTH)));
  }

  @Test
  void lineThatDoesNotReachItsEnd() {
    OrderPlan plan = RunOrdersTest.trimOfTwoJobs().orderPlan();
    assertBreaks(
        Rule.RUN_COVER,
        plan,
        sound -> withLine(sound, 0, pieces -> pieces.subList(0, pieces.size() - 1)));
  }

  /** The plan under other rules for its first run, which its joints were not chosen for. */
  private static MaterialPlan under(MaterialPlan plan, UnaryOperator<JointRules> change) {
    MaterialOrder order = plan.order();
    List<RunNeed> runs = new ArrayList<>(order.runs());
    runs.set(0, runs.get(0).withRules(change.apply(runs.get(0).run().rules())));
    return new MaterialPlan(
        order.withRuns(runs),
        plan.purchases(),
        plan.patterns(),
        plan.cost(),
        plan.cash(),
        0,
        Proof.OPEN,
        plan.certificate(),
        plan.account(),
        plan.runs());
  }

  /** Two lines of 25' lapped by 4", joined where one 10' stick after the other ends. */
  private static OrderPlan twoEaves() {
    return new RunShop()
        .offer("pellbrook", RunShop.inches(120), "10.00")
        .run("A", "T1", 2, RunShop.inches(300), RunShop.lap(RunShop.inches(4), Length.ZERO))
        .orderPlan();
  }

  @Test
  void jointsOfNeighbouringLinesInOnePlace() {
    assertBreaks(
        Rule.STAGGER,
        twoEaves(),
        sound -> under(sound, rules -> rules.staggered(RunShop.inches(6))));
  }

  /** The lines close with 68 in. */
  @Test
  void piecesShorterThanTheShortest() {
    for (JointRules.Pieces limits :
        List.of(
            new JointRules.Pieces(Length.ofInches(69), null, null, RunShop.STEP),
            new JointRules.Pieces(Length.ZERO, Length.ofInches(69), null, RunShop.STEP),
            new JointRules.Pieces(Length.ZERO, null, Length.ofInches(119), RunShop.STEP))) {
      assertBreaks(
          Rule.PIECE_LENGTH, twoEaves(), sound -> under(sound, rules -> rules.with(limits)));
    }
  }

  @Test
  void moreJointsThanALineMayHave() {
    assertBreaks(
        Rule.JOINT_COUNT,
        twoEaves(),
        sound -> under(sound, rules -> rules.with(new JointRules.JointCount.AtMost(1))));
  }

  @Test
  void closingPieceAtTheOtherEndOrCutTooShort() {
    assertBreaks(
        Rule.CLOSING,
        twoEaves(),
        sound ->
            under(sound, rules -> rules.with(new ClosingPiece(Where.START, false, Length.ZERO))));
    assertBreaks(
        Rule.RUN_COVER,
        twoEaves(),
        sound ->
            under(
                sound, rules -> rules.with(new ClosingPiece(Where.END, false, RunShop.inches(1)))));
  }

  /** Two purlins of 36' over posts take a whole stick each and share one: the halves are cut. */
  @Test
  void fullSticksThatAreCut() {
    OrderPlan plan =
        new RunShop()
            .offer("pellbrook", RunShop.inches(240), "10.00")
            .run(
                "A",
                "U1",
                2,
                RunShop.inches(360),
                RunShop.butt(Length.ZERO)
                    .at(new JointPlaces.At(List.of(RunShop.inches(120), RunShop.inches(240))))
                    .with(new JointRules.JointCount.AtMost(2)))
            .orderPlan();
    assertBreaks(
        Rule.CLOSING,
        plan,
        sound ->
            under(
                withLine(
                    sound,
                    0,
                    pieces ->
                        List.of(
                            new RunPiece(1, Length.ZERO, RunShop.inches(120)),
                            new RunPiece(2, RunShop.inches(120), RunShop.inches(120)),
                            new RunPiece(3, RunShop.inches(240), RunShop.inches(120)))),
                rules -> rules.with(new ClosingPiece(Where.END, true, Length.ZERO))));
  }

  @Test
  void runThatHasNoGapToExpand() {
    assertBreaks(
        Rule.EXPANSION,
        twoEaves(),
        sound ->
            under(
                sound,
                rules ->
                    rules.expanding(
                        new JointRules.Expansion(RunShop.inches(200), RunShop.inches(1)))));
  }

  @Test
  void expansionGapThatIsTooNarrow() {
    OrderPlan plan =
        new RunShop()
            .offer("pellbrook", RunShop.inches(120), "10.00")
            .run(
                "A",
                "T1",
                1,
                RunShop.inches(300),
                RunShop.lap(RunShop.inches(4), Length.ZERO)
                    .expanding(new JointRules.Expansion(RunShop.inches(200), RunShop.inches(1))))
            .orderPlan();
    assertBreaks(
        Rule.EXPANSION,
        plan,
        sound -> withLine(sound, 1, pieces -> moved(pieces, 0, -Length.UNITS_PER_SIXTY_FOURTH)));
  }

  @Test
  void pieceThatIsNotCut() {
    OrderPlan plan = RunOrdersTest.trimOfTwoJobs().orderPlan();
    assertBreaks(
        Rule.PIECES,
        plan,
        sound ->
            with(
                sound,
                sound.patterns().subList(1, sound.patterns().size()),
                sound.runs(),
                sound.lowerBound()));
  }

  @Test
  void lineThatIsNotLaid() {
    OrderPlan plan = RunOrdersTest.trimOfTwoJobs().orderPlan();
    assertBreaks(
        Rule.RUN_LINES,
        plan,
        sound ->
            with(
                sound,
                sound.patterns(),
                sound.runs().subList(1, sound.runs().size()),
                sound.lowerBound()));
  }

  @Test
  void twoLinesSwapped() {
    OrderPlan plan = RunOrdersTest.trimOfTwoJobs().orderPlan();
    assertBreaks(
        Rule.RUN_COVER,
        plan,
        sound -> {
          List<RunLine> runs = new ArrayList<>(sound.runs());
          RunLine eave = runs.get(0);
          RunLine rake = runs.get(2);
          runs.set(0, named(rake, eave));
          runs.set(2, named(eave, rake));
          return with(sound, sound.patterns(), runs, sound.lowerBound());
        });
  }

  private static RunLine named(RunLine pieces, RunLine name) {
    return new RunLine(
        name.job(), name.copy(), name.mark(), name.line(), name.closingAt(), pieces.pieces());
  }

  @Test
  void twoLotsOnOneJob() {
    RunShop mixed = RunOrdersTest.trimOfTwoJobs();
    MaterialPlan cheap = mixed.plan();
    RunShop apart = RunOrdersTest.trimOfTwoJobs();
    apart.oneLotPer = OneLotPer.JOB;
    OrderPlan plan = apart.orderPlan();
    assertBreaks(Rule.ONE_LOT, plan, sound -> cutLike(sound, cheap));
  }

  /** The cheaper maker has two sticks for a line that takes three. */
  private static RunShop twoMakers(OneLotPer oneLotPer) {
    RunShop shop = new RunShop().offer("ostermoor", RunShop.inches(120), "20.00");
    shop.supplies.add(
        new Supply.Offer(
            "pellbrook",
            RunShop.inches(120),
            new Price(new BigDecimal("15.00"), Price.Per.EACH),
            1,
            2,
            "",
            null,
            null));
    shop.oneLotPer = oneLotPer;
    shop.run("A", "E1", 1, RunShop.inches(300), RunShop.butt(Length.ZERO));
    shop.needs.add(new Need("A", null, 1, "P1", RunShop.inches(90), 2, ""));
    return shop;
  }

  @Test
  void twoLotsOnOneRun() {
    MaterialPlan cheap = twoMakers(OneLotPer.NONE).plan();
    OrderPlan plan = twoMakers(OneLotPer.RUN).orderPlan();
    assertBreaks(Rule.ONE_LOT, plan, sound -> cutLike(sound, cheap));
  }

  /** An order with what another plan buys and cuts. */
  private static MaterialPlan cutLike(MaterialPlan sound, MaterialPlan other) {
    return new MaterialPlan(
        sound.order(),
        other.purchases(),
        other.patterns(),
        other.cost(),
        other.cash(),
        0,
        Proof.OPEN,
        sound.certificate(),
        other.account(),
        other.runs());
  }

  private static MaterialPlan certified(MaterialPlan sound, Certificate certificate) {
    return new MaterialPlan(
        sound.order(),
        sound.purchases(),
        sound.patterns(),
        sound.cost(),
        sound.cash(),
        sound.lowerBound(),
        sound.proof(),
        certificate,
        sound.account(),
        sound.runs());
  }

  /**
   * By hand: 33' at $4 a foot cost at least $132, for which $140 buy 32'; the least whole sticks
   * that are long enough cost $160. No weight proves nothing.
   */
  @Test
  void wholePacksThatCarryAllWeights() {
    RunShop shop =
        new RunShop()
            .offer("pellbrook", RunShop.inches(240), "80.00")
            .offer("ostermoor", RunShop.inches(144), "60.00");
    shop.run("A", "E1", 1, RunShop.inches(396), RunShop.butt(Length.ZERO));
    OrderPlan plan = shop.orderPlan();
    MaterialPlan sound = plan.materials().get(0);
    assertEquals(1_600_000, sound.cost());
    long perDollars = RunShop.inches(240).units() / 800_000 + 1;
    Certificate bySize = new Certificate.RunWeights(perDollars, new TreeMap<>(), 1);
    assertInstanceOf(
        Verdict.Sound.class,
        PlanCheck.check(new OrderPlan(plan.shop(), List.of(certified(sound, bySize)))));
    assertBreaks(
        Rule.BOUND,
        plan,
        any -> certified(any, new Certificate.RunWeights(perDollars, new TreeMap<>(), 0)));
  }

  private static Certificate byLength(String lot) {
    return new Certificate.LotWeights(
        1, List.of(new Certificate.LotWeights.OfLots(List.of(lot), new TreeMap<>(), 1)));
  }

  @Test
  void weightsByLotThatDoNotProveTheBound() {
    assertBreaks(
        Rule.BOUND,
        twoMakers(OneLotPer.RUN).orderPlan(),
        sound -> certified(sound, byLength("to-buy:ostermoor")));
  }

  @Test
  void weightsByLotTwiceForALot() {
    Certificate.LotWeights once = (Certificate.LotWeights) byLength("to-buy:ostermoor");
    assertBreaks(
        Rule.CERTIFICATE,
        twoMakers(OneLotPer.RUN).orderPlan(),
        sound ->
            certified(
                sound,
                new Certificate.LotWeights(1, List.of(once.lots().get(0), once.lots().get(0)))));
  }

  @Test
  void decisionsAboutPiecesOfLotsThatOverlap() {
    Certificate leaf = byLength("to-buy:ostermoor");
    assertBreaks(
        Rule.CERTIFICATE,
        twoMakers(OneLotPer.RUN).orderPlan(),
        sound ->
            certified(
                sound,
                new Certificate.PieceSplit(
                    RunShop.inches(90),
                    List.of("to-buy:ostermoor", "to-buy:pellbrook"),
                    1,
                    leaf,
                    new Certificate.PieceSplit(
                        RunShop.inches(90), List.of("to-buy:ostermoor"), 1, leaf, leaf))));
  }

  /** What belongs to a job has no pieces to share out, and lots that may mix no weights. */
  @Test
  void weightsByLotWhereLotsMayMix() {
    assertBreaks(
        Rule.CERTIFICATE,
        twoMakers(OneLotPer.NONE).orderPlan(),
        sound -> certified(sound, byLength("to-buy:ostermoor")));
    Certificate leaf = byLength("to-buy:ostermoor");
    assertBreaks(
        Rule.CERTIFICATE,
        twoMakers(OneLotPer.JOB).orderPlan(),
        sound ->
            certified(
                sound,
                new Certificate.PieceSplit(
                    RunShop.inches(90), List.of("to-buy:ostermoor"), 1, leaf, leaf)));
  }

  @Test
  void boundAboveWhatTheCertificateProves() {
    OrderPlan plan = RunOrdersTest.purlins(Length.ZERO).orderPlan();
    assertBreaks(
        Rule.BOUND,
        plan,
        sound -> with(sound, sound.patterns(), sound.runs(), sound.lowerBound() + 1));
  }

  @Test
  void ticketThatCutsAPieceLongerThanTheLineHasIt() {
    OrderPlan plan = RunOrdersTest.trimOfTwoJobs().orderPlan();
    assertBreaks(
        Rule.PIECES,
        plan,
        sound -> {
          List<Pattern> patterns = new ArrayList<>(sound.patterns());
          Pattern first = patterns.get(0);
          List<Cut> cuts = new ArrayList<>(first.cuts());
          Cut cut = cuts.get(0);
          cuts.set(
              0,
              new Cut(
                  cut.job(),
                  cut.copy(),
                  cut.mark(),
                  cut.length().plus(Length.ofUnits(Length.UNITS_PER_SIXTY_FOURTH)),
                  cut.qty()));
          patterns.set(
              0,
              new Pattern(
                  first.ticket(),
                  first.supply(),
                  first.times(),
                  cuts,
                  first.offcut(),
                  first.offcutNames()));
          return with(sound, patterns, sound.runs(), sound.lowerBound());
        });
  }
}
