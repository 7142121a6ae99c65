package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import lapwright.OrderMaker;
import lapwright.PlanResult;
import lapwright.RandomOrders;
import lapwright.allot.Allotment;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.demand.StickDemand;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.plan.Certificate;
import lapwright.plan.LengthPattern;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/** What ordering together saves against ordering job by job. */
final class CombiningTest {
  private static Saving saving(MaterialOrder order) {
    CombinedResult result =
        new Combining(OrderMaker.planner(1), 1)
            .plan(OrderMaker.shop(), List.of(order), Effort.unlimited());
    return assertSavingPresent(result);
  }

  private static Saving assertSavingPresent(CombinedResult result) {
    assertNotNull(result.saving(), result.result().toString());
    return result.saving();
  }

  private static OrderMaker posts(String keep) {
    return new OrderMaker("tube")
        .keep(keep)
        .offer("20'", "41.00")
        .need("a", "P", 1, "9'-6\"")
        .need("b", "P", 1, "9'-6\"")
        .need("c", "P", 1, "9'-6\"");
  }

  /** By hand: the second post comes out of the first job's offcut, so nothing is saved. */
  @Example
  void anOffcutThatTheNextJobUsesLeavesNothingToSave() {
    Saving saving = saving(posts("24\"").make());
    MaterialSaving tube = saving.materials().get(0);
    assertEquals(Money.ofCents(8200).tenThousandths(), tube.together());
    assertEquals(Money.ofCents(8200).tenThousandths(), tube.jobByJob().cost());
    assertTrue(saving.cost().isZero());
    assertTrue(saving.proved());
    assertEquals(List.of("a", "b", "c"), tube.jobs());
  }

  /** By hand: without a rack each job buys a stick of its own. */
  @Example
  void offcutsThatAreScrappedMakeCombiningWorthAStick() {
    Saving saving = saving(posts("12'").make());
    assertEquals(Money.ofCents(4100), saving.cost());
    assertEquals(Money.ofCents(4100), saving.cash());
  }

  /** By hand: three 6 ft pieces of three jobs come out of one stick, cut on three days. */
  @Example
  void anOffcutIsCutAgainAndAgain() {
    MaterialOrder order =
        new OrderMaker("tube")
            .saw("1/8\"", "1/2\"", "3\"")
            .keep("24\"")
            .offer("20'", "41.00")
            .need("a", "P", 1, "6'")
            .need("b", "P", 1, "6'")
            .need("c", "P", 1, "6'")
            .make();
    JobByJobPlan jobByJob = JobByJobPlan.of(order, Effort.unlimited());
    assertEquals(1, jobByJob.patterns().size());
    assertEquals(Money.ofCents(4100).tenThousandths(), jobByJob.total().cost());
    assertPassesCheck(order, jobByJob.patterns());
  }

  /** By hand: the first job's pack serves the second job, which pays nothing for it. */
  @Example
  void surplusOfAPackServesTheNextJob() {
    MaterialOrder order =
        new OrderMaker("tube")
            .keep("24\"")
            .offer("20'", "10.00", 5, OrderMaker.NO_LIMIT)
            .need("a", "P", 3, "19'")
            .need("b", "P", 3, "19'")
            .make();
    MaterialSaving tube = saving(order).materials().get(0);
    assertEquals(Money.ofCents(10_000).tenThousandths(), tube.jobByJob().cost());
    assertEquals(0, tube.saved());
  }

  /** By hand: the early job takes the one long stick, for it is cheap; the late job needs it. */
  @Example
  void aLaterJobThatHasNoPlanIsTold() {
    MaterialOrder order =
        new OrderMaker("tube")
            .keep("24\"")
            .offer("20'", "41.00")
            .offer("24'", "10.00", 1, 1)
            .need("early", "P", 1, "19'")
            .need("late", "P", 1, "23'")
            .make();
    Saving saving = saving(order);
    MaterialSaving tube = saving.materials().get(0);
    assertNull(tube.jobByJob());
    assertEquals("late", tube.firstWithoutPlan());
    assertEquals(0, tube.saved());
    assertEquals(List.of(tube), saving.withoutComparison());
  }

  @Example
  void oneJobAloneSavesNothing() {
    MaterialOrder order =
        new OrderMaker("tube").offer("20'", "41.00").need("a", "P", 5, "9'-6\"").make();
    Saving saving = saving(order);
    assertTrue(saving.cost().isZero());
    assertTrue(saving.proved());
  }

  @Example
  void materialsWithoutPricesSaveLength() {
    MaterialOrder order =
        new OrderMaker("tube")
            .keep("12'")
            .offer("", OrderMaker.length("20'"), null, 1, OrderMaker.NO_LIMIT)
            .need("a", "P", 1, "9'")
            .need("b", "P", 1, "9'")
            .make();
    Saving saving = saving(order);
    assertEquals(OrderMaker.length("20'"), saving.length());
    assertTrue(saving.cost().isZero());
  }

  @Provide
  Arbitrary<MaterialOrder> orders() {
    return Arbitraries.randomValue(CombiningTest::severalJobs);
  }

  private static MaterialOrder severalJobs(Random random) {
    OrderMaker maker = RandomOrders.machineAndStock(random);
    for (int job = 0; job < 4; job++) {
      LocalDate due = random.nextInt(4) == 0 ? null : LocalDate.of(2026, 12, 1).plusDays(job);
      for (int piece = 0; piece < 1 + random.nextInt(3); piece++) {
        maker.need(
            "job " + job,
            due,
            1 + random.nextInt(2),
            "M" + piece,
            1 + random.nextInt(3),
            Length.ofMm(5 + random.nextInt(60)));
      }
    }
    return maker.make();
  }

  @Property(tries = 150, seed = "6", shrinking = ShrinkingMode.OFF)
  void savedIsNeverNegativeAndTheJobByJobPlanPassesTheCheck(@ForAll("orders") MaterialOrder order) {
    CombinedResult result =
        new Combining(OrderMaker.planner(1), 1)
            .plan(OrderMaker.shop(), List.of(order), Effort.unlimited());
    if (!(result.result() instanceof PlanResult.Planned)) {
      return;
    }
    MaterialSaving saving = assertSavingPresent(result).materials().get(0);
    assertTrue(saving.saved() >= 0);
    JobByJobPlan jobByJob = JobByJobPlan.of(order, Effort.unlimited());
    if (jobByJob.total() != null) {
      assertEquals(jobByJob.total().cost() - saving.together(), saving.saved());
      assertPassesCheck(order, jobByJob.patterns());
    }
  }

  private static void assertPassesCheck(MaterialOrder order, List<LengthPattern> patterns) {
    StickDemand demand = StickDemand.of(order);
    Supplier<String> names = new Names("t");
    List<Pattern> tickets =
        Allotment.tickets(order, patterns, Allotment.Uncut.NONE, names, new Names("o"));
    MaterialPlan plan =
        new MaterialPlan(
            order,
            demand.purchases(patterns),
            tickets,
            demand.cost(patterns),
            demand.cash(patterns),
            0,
            demand.cost(patterns) == 0 ? Proof.PROVED : Proof.OPEN,
            new Certificate.Weights(1, new TreeMap<>()),
            demand.account(tickets, demand.purchases(patterns)));
    Verdict verdict = PlanCheck.check(new OrderPlan(OrderMaker.shop(), List.of(plan)));
    assertTrue(verdict instanceof Verdict.Sound, verdict.toString());
  }

  private static final class Names implements Supplier<String> {
    private final String prefix;
    private final AtomicInteger last = new AtomicInteger();

    private Names(String prefix) {
      this.prefix = prefix;
    }

    @Override
    public String get() {
      return prefix + last.incrementAndGet();
    }
  }

  @Example
  void theSamePlanAndSavingForOneThreadAndTwo() {
    Random random = new Random(11);
    List<MaterialOrder> orders = new ArrayList<>();
    for (int m = 0; m < 6; m++) {
      OrderMaker maker =
          new OrderMaker("bar " + m).offer("20'", "41.00").offer("24'", "49.15").keep("24\"");
      for (int n = 0; n < 12; n++) {
        maker.need(
            "job " + n % 3, "M" + n, 1 + random.nextInt(5), (15 + random.nextInt(180)) + "\"");
      }
      orders.add(maker.make());
    }
    CombinedResult one =
        new Combining(OrderMaker.planner(1), 1).plan(OrderMaker.shop(), orders, Effort.unlimited());
    CombinedResult two =
        new Combining(OrderMaker.planner(2), 2).plan(OrderMaker.shop(), orders, Effort.unlimited());
    assertEquals(one.saving(), two.saving());
    assertEquals(
        ((PlanResult.Planned) one.result()).plan().plan(),
        ((PlanResult.Planned) two.result()).plan().plan());
  }
}
