package lapwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.OrderMaker;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Money;
import lapwright.plan.Division;
import lapwright.plan.Division.Alone;
import lapwright.plan.Division.JobPart;
import lapwright.shop.Ends;
import lapwright.shop.MaterialOrder;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

final class DividingTest {
  private static Division divide(MaterialOrder order) {
    Planner planner = OrderMaker.planner(1);
    PlanResult result =
        planner.plan(OrderMaker.shop(), List.of(order), Map.of(), Effort.unlimited());
    return Objects.requireNonNull(
        new Dividing(planner)
            .divide(((PlanResult.Planned) result).plan(), Effort.unlimited())
            .plan()
            .division());
  }

  private static OrderMaker tube() {
    return new OrderMaker("tube").saw("3/32\"", "1/2\"", "3\"");
  }

  private static OrderMaker threePosts() {
    return tube()
        .need("ash", "P1", 1, "9'-6\"")
        .need("birch", "P1", 1, "9'-6\"")
        .need("cedar", "P1", 1, "9'-6\"");
  }

  /** By hand: $41.00 each alone, $82.00 together, a third each, the odd cent to the first name. */
  @Test
  void threeJobsOfOnePostEach() {
    Division division = divide(threePosts().offer("20'", "41.00").make());
    assertEquals(Money.ofCents(8_200), division.total());
    assertEquals(
        List.of(
            new JobPart("ash", Money.ofCents(4_100), Alone.BOUGHT_NEW, true, Money.ofCents(2_734)),
            new JobPart(
                "birch", Money.ofCents(4_100), Alone.BOUGHT_NEW, true, Money.ofCents(2_733)),
            new JobPart(
                "cedar", Money.ofCents(4_100), Alone.BOUGHT_NEW, true, Money.ofCents(2_733))),
        division.jobs());
    assertFalse(division.isDearerThanAlone());
  }

  /** Alone each finds the one cheap stick; together only one of them does. */
  @Test
  void limitsCanMakeTheOrderDearerThanItsJobs() {
    MaterialOrder order =
        tube()
            .offer("20'", "20.00", 1, 1)
            .offer("21'", "50.00")
            .need("ash", "P1", 1, "19'")
            .need("birch", "P1", 1, "19'")
            .make();
    Division division = divide(order);
    assertEquals(Money.ofCents(7_000), division.total());
    assertEquals(Money.ofCents(4_000), division.alone());
    assertTrue(division.isDearerThanAlone());
  }

  @Test
  void aJobThatCannotBeBoughtNewIsMarked() {
    MaterialOrder order =
        tube()
            .offer("20'", "41.00")
            .rack("R1", "22'", Ends.SAWN)
            .need("ash", "P1", 1, "21'")
            .need("birch", "P1", 1, "9'-6\"")
            .make();
    Division division = divide(order);
    assertEquals(Alone.WITH_STOCK, division.jobs().get(0).how());
    assertEquals(Money.ZERO, division.jobs().get(0).pays());
    assertEquals(Money.ofCents(4_100), division.jobs().get(1).pays());
  }

  @Property(tries = 300, seed = "11")
  void sharesAddUpToTheCent(
      @ForAll @LongRange(min = 0, max = 9_999_999) long cents,
      @ForAll @Size(min = 1, max = 9) List<@LongRange(min = 0, max = 99_999_999) Long> costs) {
    SortedMap<String, Money> alone = alone(costs);
    SortedMap<String, Money> shares = Dividing.shares(Money.ofCents(cents), alone);
    assertEquals(Money.ofCents(cents), shares.values().stream().reduce(Money.ZERO, Money::plus));
    long sum = costs.stream().mapToLong(Long::longValue).sum();
    if (Money.ofCents(cents).compareTo(new Money(sum).toCent()) <= 0) {
      shares.forEach(
          (job, pays) -> {
            long most = (Objects.requireNonNull(alone.get(job)).tenThousandths() + 99) / 100;
            assertTrue(pays.compareTo(Money.ofCents(most)) <= 0, job + " pays " + pays);
          });
    }
  }

  private static SortedMap<String, Money> alone(List<Long> costs) {
    SortedMap<String, Money> alone = new TreeMap<>();
    for (int i = 0; i < costs.size(); i++) {
      alone.put("job " + i, new Money(costs.get(i)));
    }
    return alone;
  }

  /** A job without pieces has no needs; one whose pieces cost nothing pays nothing. */
  @Property(tries = 50, seed = "11")
  void aJobThatNeedsNothingChangesNothing(
      @ForAll @IntRange(min = 1, max = 99_999) int cents,
      @ForAll @Size(min = 1, max = 5) List<@LongRange(min = 1, max = 99_999) Long> costs) {
    SortedMap<String, Money> without = alone(costs);
    SortedMap<String, Money> with = new TreeMap<>(without);
    with.put("empty", Money.ZERO);
    long sum = costs.stream().mapToLong(Long::longValue).sum();
    Money total = Money.ofCents(Math.min(cents, sum / 100));
    SortedMap<String, Money> expected = new TreeMap<>(Dividing.shares(total, without));
    expected.put("empty", Money.ZERO);
    assertEquals(expected, Dividing.shares(total, with));
  }
}
