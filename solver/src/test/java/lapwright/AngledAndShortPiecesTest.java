package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.check.Rule;
import lapwright.check.Verdict;
import lapwright.effort.Effort;
import lapwright.measure.Angle;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.shop.CutRules;
import lapwright.shop.MaterialOrder;
import lapwright.shop.PieceEnds;
import org.junit.jupiter.api.Test;

/** Pieces with angled ends, pieces that may be short, and stacks: planned, told and checked. */
final class AngledAndShortPiecesTest {
  private static final Length DEPTH = OrderMaker.length("2\"");
  private static final CutRules SIXTY = angled(60, 0);

  private static CutRules angled(int first, int second) {
    return new CutRules(
        new PieceEnds(Angle.ofDegrees(first), Angle.ofDegrees(second), false),
        DEPTH,
        false,
        Length.ZERO);
  }

  private static CutRules mayBe(String shorter) {
    return new CutRules(PieceEnds.SQUARE, Length.ZERO, false, OrderMaker.length(shorter));
  }

  private static OrderMaker tube() {
    return new OrderMaker("tube").saw("1/8\"", "0", "0").offer("20'", "41.00");
  }

  private static CheckedPlan checked(MaterialOrder order) {
    return assertInstanceOf(
            PlanResult.Planned.class,
            OrderMaker.planner(1)
                .plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited()))
        .plan();
  }

  private static MaterialPlan planned(MaterialOrder order) {
    return checked(order).plan().materials().get(0);
  }

  private static List<Rule> faults(MaterialPlan plan) {
    Verdict verdict = PlanCheck.check(new OrderPlan(OrderMaker.shop(), List.of(plan)));
    return verdict instanceof Verdict.Broken broken
        ? broken.faults().stream().map(fault -> fault.rule()).distinct().toList()
        : List.of();
  }

  private static MaterialPlan with(MaterialPlan plan, List<Pattern> patterns) {
    return new MaterialPlan(
        plan.order(),
        plan.purchases(),
        patterns,
        plan.cost(),
        plan.cash(),
        plan.lowerBound(),
        plan.proof(),
        plan.certificate(),
        plan.account());
  }

  private static Pattern withCut(Pattern pattern, Cut cut) {
    return new Pattern(
        pattern.ticket(),
        pattern.supply(),
        pattern.times(),
        List.of(cut),
        pattern.offcut(),
        pattern.offcutNames());
  }

  @Test
  void aCutAt60TakesTwoKerfsSoOnePieceLessFits() {
    // Exact geometry: kerf / cos 60 = 2 x 1/8. Four of 59-7/8 take 4 x 60 = 240 square, and with a
    // quarter inch each 240-1/2, more than 240 and the one kerf past the end.
    MaterialOrder square = tube().need("barn", "B", 4, "59-7/8\"").make();
    assertEquals(410_000, planned(square).cost());
    MaterialOrder sloping = tube().need("barn", "B", 4, "59-7/8\"", SIXTY).make();
    MaterialPlan plan = planned(sloping);
    assertEquals(820_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
  }

  @Test
  void kerfFinishedAndWedgesAddUpToTheStick() {
    // One piece of 10' at 45 and square, depth 2": its slope is 2", half of that lies beside it.
    MaterialPlan plan = planned(tube().need("barn", "B", 1, "10'", angled(45, 0)).make());
    Length width = Angle.ofDegrees(45).cutWidth(OrderMaker.length("1/8\""));
    assertEquals(OrderMaker.length("9'-11\""), plan.account().finished());
    assertEquals(width, plan.account().kerf());
    Length left = plan.account().offcutsKept().plus(plan.account().scrap());
    assertEquals(OrderMaker.length("20'"), left.plus(width).plus(OrderMaker.length("9'-11\"")));
    assertEquals(OrderMaker.length("10'").minus(width), plan.patterns().get(0).offcut());
  }

  @Test
  void theTicketTellsTheSlopeThatTheOffcutIsLeftWith() {
    CheckedPlan plan = checked(tube().need("barn", "B", 1, "10'", angled(30, 45)).make());
    TicketPaper.Ticket ticket = TicketPaper.of(plan).tickets().get(0);
    assertEquals(Angle.ofDegrees(45), ticket.offcutAngle());
    assertTrue(ticket.isAngled());
  }

  @Test
  void aPieceWithSlopingEndsIsNeverAStickAsItComes() {
    CheckedPlan plan =
        checked(
            new OrderMaker("tube")
                .saw("0", "0", "0")
                .offer("20'", "41.00")
                .need("barn", "B", 1, "20'", angled(45, 45))
                .make());
    assertTrue(!TicketPaper.of(plan).tickets().get(0).uncut());
  }

  @Test
  void piecesAreCutShortWhereThatSavesAStickAndNoMoreOfThemThanItTakes() {
    // Four of 5' and three cuts of 1/8 are 3/8 too long for 20': two of them give 1/4 each.
    MaterialPlan plan = planned(tube().need("barn", "P", 4, "5'", mayBe("1/4\"")).make());
    assertEquals(410_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
    int shorter =
        plan.patterns().get(0).cuts().stream()
            .filter(cut -> !cut.shorter().isZero())
            .mapToInt(Cut::qty)
            .sum();
    assertEquals(2, shorter);
    List<TicketPaper.PieceLine> lines = TicketPaper.of(checked(plan.order())).jobs().get(0).lines();
    assertEquals(
        List.of(OrderMaker.length("5'"), OrderMaker.length("4'-11-3/4\"")),
        lines.stream().map(TicketPaper.PieceLine::length).toList());
  }

  @Test
  void piecesStayFullWhereShortOnesSaveNothing() {
    MaterialPlan plan = planned(tube().need("barn", "P", 5, "5'", mayBe("1/4\"")).make());
    assertEquals(820_000, plan.cost());
    assertEquals(Proof.PROVED, plan.proof());
    assertTrue(
        plan.patterns().stream()
            .flatMap(pattern -> pattern.cuts().stream())
            .allMatch(cut -> cut.shorter().isZero()));
  }

  @Test
  void aPieceThatFitsNoStickUnlessItIsShortIsCutShort() {
    MaterialPlan plan = planned(tube().need("barn", "P", 1, "20'-1/8\"", mayBe("1/4\"")).make());
    assertEquals(OrderMaker.length("1/4\""), plan.patterns().get(0).cuts().get(0).shorter());
  }

  @Test
  void sticksAreCutInPassesOfAStack() {
    CheckedPlan plan = checked(tube().stack(4, "0").need("barn", "P", 6, "15'").make());
    assertEquals(List.of(4, 2), TicketPaper.of(plan).tickets().get(0).passes());
  }

  @Test
  void aPieceShorterThanItsJobPermitsIsAFault() {
    MaterialPlan plan = planned(tube().need("barn", "P", 1, "5'", mayBe("1/4\"")).make());
    Pattern pattern = plan.patterns().get(0);
    Cut cut = pattern.cuts().get(0);
    Length half = OrderMaker.length("1/2\"");
    Cut broken = new Cut(cut.job(), 1, cut.mark(), cut.length().minus(half), 1, cut.rules(), half);
    assertTrue(faults(with(plan, List.of(withCut(pattern, broken)))).contains(Rule.SHORTER));
    Cut longer =
        new Cut(
            cut.job(),
            1,
            cut.mark(),
            cut.length().plus(half),
            1,
            cut.rules(),
            Length.ZERO.minus(half));
    assertTrue(faults(with(plan, List.of(withCut(pattern, longer)))).contains(Rule.SHORTER));
  }

  @Test
  void aTicketThatForgetsTheAngleIsAFault() {
    MaterialPlan plan = planned(tube().need("barn", "B", 1, "5'", SIXTY).make());
    Pattern pattern = plan.patterns().get(0);
    Cut square = new Cut("barn", 1, "B", OrderMaker.length("5'"), 1);
    List<Rule> faults = faults(with(plan, List.of(withCut(pattern, square))));
    assertTrue(faults.containsAll(List.of(Rule.PIECES, Rule.OFFCUT)), faults.toString());
  }

  @Test
  void anAngledCutCountedAsAPlainKerfIsAFault() {
    MaterialPlan plan = planned(tube().need("barn", "B", 2, "59-7/8\"", SIXTY).make());
    Pattern pattern = plan.patterns().get(0);
    Cut cut = pattern.cuts().get(0);
    List<Pattern> patterns = new ArrayList<>();
    patterns.add(withCut(pattern, cut.withQty(4)));
    assertTrue(faults(with(plan, patterns)).contains(Rule.CAPACITY));
  }

  @Test
  void aPieceShorterThanTheSawCutsIsAFault() {
    MaterialPlan plan = planned(tube().need("barn", "B", 1, "3\"").make());
    MaterialOrder order = tube().stack(1, "4\"").need("barn", "B", 1, "3\"").make();
    MaterialPlan broken =
        new MaterialPlan(
            order,
            plan.purchases(),
            plan.patterns(),
            plan.cost(),
            plan.cash(),
            plan.lowerBound(),
            plan.proof(),
            plan.certificate(),
            plan.account());
    assertEquals(List.of(Rule.SHORTEST_CUT), faults(broken));
  }
}
