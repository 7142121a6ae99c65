package lapwright.compare;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.BrokenPlanException;
import lapwright.ItemBuying;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.demand.StickPrices;
import lapwright.effort.Effort;
import lapwright.effort.Questions;
import lapwright.effort.SideBySide;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.plan.Division;
import lapwright.plan.Division.Alone;
import lapwright.plan.Division.JobPart;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Divides the cost of an order over its jobs, in proportion to what each would cost alone.
 *
 * <p>To the cent: each job gets the whole cents of its quota, what is left goes to the largest
 * remainders, equal ones by name, a job that would then pay more than alone after the others. The
 * work on each job alone is limited by questions asked, so that the division does not depend on the
 * machine.
 */
public final class Dividing {
  private static final int QUESTIONS = 2_000;

  private final Planner planner;

  public Dividing(Planner planner) {
    this.planner = Objects.requireNonNull(planner);
  }

  /**
   * The same; the plan itself also where a fault prevents it, of which {@code unanswered} tells.
   */
  public CheckedPlan divide(CheckedPlan plan, Unanswered unanswered, Effort effort) {
    return unanswered.ask("each job's part of the cost", plan, () -> divide(plan, effort));
  }

  /**
   * The same plan with its cost divided; the plan itself where nothing in it has a price.
   *
   * @throws BrokenPlanException if the divided plan does not pass the check: a defect
   */
  public CheckedPlan divide(CheckedPlan plan, Effort effort) {
    Shop shop = plan.plan().shop();
    List<MaterialPlan> priced =
        plan.plan().materials().stream().filter(each -> each.order().isPriced()).toList();
    List<ItemPlan> items = plan.plan().items().stream().filter(ItemPlan::isPriced).toList();
    if (priced.isEmpty() && items.isEmpty()) {
      return plan;
    }
    long cost = 0;
    List<MaterialOrder> parts = new ArrayList<>();
    for (MaterialPlan material : priced) {
      cost = Math.addExact(cost, material.cost());
      for (String job : jobs(material.order())) {
        parts.add(only(material.order(), job));
      }
    }
    List<Part> alone = SideBySide.map(planner.threads(), parts, part -> alone(shop, part, effort));
    SortedMap<String, Sum> sums = new TreeMap<>();
    for (Part part : alone) {
      sums.computeIfAbsent(part.job(), job -> new Sum()).add(part);
    }
    for (ItemPlan item : items) {
      cost = Math.addExact(cost, item.cost());
      item.order().needs().stream()
          .map(ItemOrder.Need::job)
          .distinct()
          .map(job -> alone(item.order(), job))
          .forEach(part -> sums.computeIfAbsent(part.job(), job -> new Sum()).add(part));
    }
    Verdict verdict =
        PlanCheck.check(plan.plan().divided(division(new Money(cost).toCent(), sums)));
    if (verdict instanceof Verdict.Sound sound) {
      return sound.plan();
    }
    throw new BrokenPlanException(((Verdict.Broken) verdict).faults());
  }

  /** A job's cost alone, over all materials. */
  private static final class Sum {
    private Money cost = Money.ZERO;
    private Alone how = Alone.BOUGHT_NEW;
    private boolean proved = true;

    private void add(Part part) {
      cost = cost.plus(new Money(part.cost()));
      how = part.how().compareTo(how) > 0 ? part.how() : how;
      proved &= part.proved();
    }
  }

  /** What a job costs alone, in one material. */
  private record Part(String job, long cost, Alone how, boolean proved) {}

  private static List<String> jobs(MaterialOrder order) {
    List<String> jobs = new ArrayList<>();
    order.needs().forEach(need -> jobs.add(need.job()));
    order.runs().forEach(need -> jobs.add(need.job()));
    return jobs.stream().distinct().toList();
  }

  private static MaterialOrder only(MaterialOrder order, String job) {
    return with(
        order,
        order.supplies(),
        order.needs().stream().filter(need -> need.job().equals(job)).toList(),
        order.runs().stream().filter(need -> need.job().equals(job)).toList());
  }

  private static MaterialOrder with(
      MaterialOrder order, List<Supply> supplies, List<Need> needs, List<RunNeed> runs) {
    return new MaterialOrder(
        order.material(), order.saw(), order.onHandValued(), supplies, needs, runs);
  }

  private Part alone(Shop shop, MaterialOrder job, Effort effort) {
    List<Supply> offers = job.supplies().stream().filter(Supply.Offer.class::isInstance).toList();
    MaterialOrder bought = with(job, offers, job.needs(), job.runs());
    Part part = planned(shop, bought, Alone.BOUGHT_NEW, effort);
    if (part == null) {
      part = planned(shop, job, Alone.WITH_STOCK, effort);
    }
    if (part != null) {
      return part;
    }
    Length length = Length.ZERO;
    for (Need need : job.needs()) {
      length = length.plus(need.length().times(need.total()));
    }
    for (RunNeed need : job.runs()) {
      length = length.plus(need.run().length().times(need.lines()));
    }
    return new Part(
        jobs(job).get(0), new StickPrices(job).atCheapestRate(length), Alone.BY_LENGTH, false);
  }

  /**
   * A job's items bought new; what the pieces on hand must give because too few can be bought costs
   * nothing. What nobody sells is in no cost.
   */
  private static Part alone(ItemOrder order, String job) {
    ItemOrder alone =
        new ItemOrder(
            order.stock(),
            0,
            order.needs().stream().filter(need -> need.job().equals(job)).toList());
    ItemPlan bought = ItemBuying.buy(alone.withoutStock());
    if (bought.missing() == 0) {
      return new Part(job, bought.cost(), Alone.BOUGHT_NEW, true);
    }
    boolean there = order.stock().onHand() > 0;
    return new Part(
        job, ItemBuying.buy(alone).cost(), there ? Alone.WITH_STOCK : Alone.BOUGHT_NEW, true);
  }

  private @Nullable Part planned(Shop shop, MaterialOrder order, Alone how, Effort effort) {
    Effort share = effort.alsoStoppedBy(new Questions(QUESTIONS)).tellingInstead(progress -> {});
    PlanResult result = planner.forQuestions().plan(shop, List.of(order), Map.of(), share);
    if (result instanceof PlanResult.Planned planned) {
      MaterialPlan plan = planned.plan().plan().materials().get(0);
      return new Part(jobs(order).get(0), plan.cost(), how, plan.proof() == Proof.PROVED);
    }
    return null;
  }

  private static Division division(Money total, SortedMap<String, Sum> sums) {
    SortedMap<String, Money> alone = new TreeMap<>();
    sums.forEach((job, sum) -> alone.put(job, sum.cost));
    Map<String, Money> shares = shares(total, alone);
    List<JobPart> parts = new ArrayList<>();
    sums.forEach(
        (job, sum) ->
            parts.add(
                new JobPart(
                    job, sum.cost, sum.how, sum.proved, Objects.requireNonNull(shares.get(job)))));
    return new Division(total, parts);
  }

  /**
   * Shares in whole cents, which add up to the total.
   *
   * @param total in whole cents
   * @param alone by job, none negative; all equal where they are all nothing
   */
  static SortedMap<String, Money> shares(Money total, SortedMap<String, Money> alone) {
    long cents = total.tenThousandths() / Money.PER_CENT;
    BigInteger sum =
        alone.values().stream()
            .map(each -> BigInteger.valueOf(each.tenThousandths()))
            .reduce(BigInteger.ZERO, BigInteger::add);
    boolean nothing = sum.signum() == 0;
    BigInteger whole = nothing ? BigInteger.valueOf(alone.size()) : sum;
    SortedMap<String, Money> shares = new TreeMap<>();
    List<Remainder> remainders = new ArrayList<>();
    long left = cents;
    for (Map.Entry<String, Money> each : alone.entrySet()) {
      long weight = nothing ? 1 : each.getValue().tenThousandths();
      BigInteger[] quota =
          BigInteger.valueOf(cents).multiply(BigInteger.valueOf(weight)).divideAndRemainder(whole);
      long share = quota[0].longValueExact();
      left -= share;
      shares.put(each.getKey(), Money.ofCents(share));
      boolean full = Money.ofCents(share).compareTo(each.getValue()) >= 0;
      remainders.add(new Remainder(each.getKey(), quota[1], full));
    }
    remainders.sort(
        Comparator.comparing(Remainder::full)
            .thenComparing(Comparator.comparing(Remainder::rest).reversed())
            .thenComparing(Remainder::job));
    for (int i = 0; i < left; i++) {
      shares.merge(remainders.get(i).job(), Money.ofCents(1), Money::plus);
    }
    return shares;
  }

  /**
   * @param full true when a cent more would be more than the job costs alone, rounded up
   */
  private record Remainder(String job, BigInteger rest, boolean full) {}
}
