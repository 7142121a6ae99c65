package lapwright.paperwork;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.check.CheckedPlan;
import lapwright.compare.BesideWeek;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.Percent;
import lapwright.plan.Account;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * What a bid costs by itself, and what it adds to the order of the week: for the estimator.
 *
 * @param shop the shop's own facts
 * @param bids names of the jobs that are asked about
 * @param weekJobs how many other jobs there are
 * @param withStock materials that cannot be bought new
 * @param rows materials that the bid needs, as the shop lists them
 * @param items what the priced items of each cost, in the order of the three sides; null where none
 *     of the jobs needs any
 * @param missing items that nobody sells enough of; in no cost
 * @param alone the bid by itself, bought new
 * @param week the other jobs
 * @param together all jobs
 */
public record BesideWeekPaper(
    Shop shop,
    List<String> bids,
    int weekJobs,
    List<String> withStock,
    List<Row> rows,
    @Nullable Items items,
    List<String> missing,
    Side alone,
    Side week,
    Side together) {
  public BesideWeekPaper {
    Objects.requireNonNull(shop);
    bids = List.copyOf(bids);
    withStock = List.copyOf(withStock);
    rows = List.copyOf(rows);
    missing = List.copyOf(missing);
  }

  /** What counted goods cost in each plan. */
  public record Items(Money alone, Money week, Money together) {}

  /** One material that the bid needs. */
  public record Row(String material, String name, Side alone, Side week, Side together) {
    /** The weakest of the three plans. */
    public Proof proof() {
      return alone.plus(week).plus(together).proof();
    }
  }

  /**
   * What a plan comes to.
   *
   * @param priced true where {@code cost} and {@code cash} say something
   * @param cost of the material, sticks on hand at today's price
   * @param cash the part of it that is spent now
   * @param sticks bought
   * @param bought their stock lengths
   * @param account where the material goes
   * @param proof the weakest of its materials
   */
  public record Side(
      boolean priced,
      Money cost,
      Money cash,
      int sticks,
      Length bought,
      Account account,
      Proof proof) {
    static final Side NOTHING =
        new Side(false, Money.ZERO, Money.ZERO, 0, Length.ZERO, Account.NOTHING, Proof.PROVED);

    /** Stock bought for what is finished; nothing where nothing is finished. */
    public Percent boughtToFinished() {
      return account.finished().isZero()
          ? new Percent(0)
          : WasteFigures.of(bought, account).boughtToFinished();
    }

    public Length waste() {
      return account.kerf().plus(account.endTrim()).plus(account.scrap());
    }

    Side plus(Side other) {
      return new Side(
          priced || other.priced,
          cost.plus(other.cost),
          cash.plus(other.cash),
          Math.addExact(sticks, other.sticks),
          bought.plus(other.bought),
          account.plus(other.account),
          proof.compareTo(other.proof) > 0 ? proof : other.proof);
    }
  }

  /** What the bid adds to the cost of the week's order. */
  public Money adds() {
    return together.cost().minus(week.cost());
  }

  public boolean isProved() {
    return List.of(alone, week, together).stream().allMatch(side -> side.proof() == Proof.PROVED);
  }

  public static BesideWeekPaper of(BesideWeek plans) {
    Map<String, Side> alone = sides(plans.alone());
    Map<String, Side> week = sides(plans.week());
    Map<String, Side> together = sides(plans.together());
    List<Row> rows = new ArrayList<>();
    for (MaterialPlan material : plans.alone().plan().materials()) {
      String id = material.material();
      rows.add(
          new Row(
              id,
              material.order().material().name(),
              Objects.requireNonNull(alone.get(id)),
              week.getOrDefault(id, Side.NOTHING),
              Objects.requireNonNull(together.get(id))));
    }
    List<ItemPlan> needed = plans.alone().plan().items();
    Items items =
        plans.together().plan().items().isEmpty()
            ? null
            : new Items(items(plans.alone()), items(plans.week()), items(plans.together()));
    return new BesideWeekPaper(
        plans.together().plan().shop(),
        plans.bids(),
        PlannedJob.firstDueFirst(plans.week().plan()).size(),
        plans.withStock(),
        rows,
        items,
        needed.stream().filter(item -> item.missing() > 0).map(ItemPlan::item).toList(),
        all(alone, plans.alone()),
        all(week, plans.week()),
        all(together, plans.together()));
  }

  private static Money items(CheckedPlan plan) {
    return new Money(
        plan.plan().items().stream()
            .filter(ItemPlan::isPriced)
            .mapToLong(ItemPlan::cost)
            .reduce(0, Math::addExact));
  }

  /** All materials, and what the items cost. */
  private static Side all(Map<String, Side> sides, CheckedPlan plan) {
    Money items = items(plan);
    boolean priced = plan.plan().items().stream().anyMatch(ItemPlan::isPriced);
    return sides.values().stream()
        .reduce(Side.NOTHING, Side::plus)
        .plus(new Side(priced, items, items, 0, Length.ZERO, Account.NOTHING, Proof.PROVED));
  }

  private static Map<String, Side> sides(CheckedPlan checked) {
    List<WastePaper.MaterialPart> parts = WastePaper.of(checked).materials();
    Map<String, Side> sides = new LinkedHashMap<>();
    for (int i = 0; i < parts.size(); i++) {
      WastePaper.MaterialPart part = parts.get(i);
      MaterialPlan plan = checked.plan().materials().get(i);
      boolean priced = plan.order().isPriced();
      sides.put(
          part.material(),
          new Side(
              priced,
              priced ? new Money(plan.cost()) : Money.ZERO,
              priced ? new Money(plan.cash()) : Money.ZERO,
              part.sticksBought(),
              part.bought(),
              part.account(),
              part.proof()));
    }
    return sides;
  }
}
