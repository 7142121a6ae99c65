package lapwright.paperwork;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import lapwright.check.CheckedPlan;
import lapwright.compare.Comparisons;
import lapwright.compare.JointChoice;
import lapwright.compare.Saving;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.ItemStock;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What to buy for all jobs together, and what that rests on: for the purchaser.
 *
 * @param shop the shop's own facts
 * @param jobs names of the jobs that are planned, first due first
 * @param suppliers what to buy from each, by name, without a name last
 * @param boughtBefore sticks of earlier orders that no ticket of theirs cuts
 * @param onHand whole sticks that are taken from stock
 * @param rack offcuts that are taken from the rack
 * @param itemsThere items of which some are there already
 * @param missingItems items that nobody sells, or too few of
 * @param kept offcuts that go to the rack
 * @param money cost, invoice and cash; null when no material has a price
 * @param deliveries what the suppliers bring, on their terms
 * @param proofs of the materials counted in money, then of those counted in length
 * @param saving against ordering job by job; null when that was not asked
 * @param joints what choosing the joints of runs is worth, by material; empty when that was not
 *     asked
 * @param leftOut jobs that are not planned
 * @param takenAsFirm jobs whose status nobody wrote
 * @param withoutDueDay planned jobs that have no due day and so come last
 * @param attention what somebody should look at
 */
public record OrderPaper(
    Shop shop,
    List<String> jobs,
    List<SupplierPart> suppliers,
    List<StockLine> boughtBefore,
    List<StockLine> onHand,
    List<StockLine> rack,
    List<ItemsThere> itemsThere,
    List<MissingItem> missingItems,
    Kept kept,
    @Nullable MoneyFigures money,
    Deliveries deliveries,
    List<ProofFigure> proofs,
    @Nullable Saving saving,
    List<JointChoice.Answer> joints,
    List<LeftOut> leftOut,
    List<String> takenAsFirm,
    List<String> withoutDueDay,
    List<Attention> attention) {
  public OrderPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(kept);
    Objects.requireNonNull(deliveries);
    jobs = List.copyOf(jobs);
    suppliers = List.copyOf(suppliers);
    boughtBefore = List.copyOf(boughtBefore);
    onHand = List.copyOf(onHand);
    rack = List.copyOf(rack);
    itemsThere = List.copyOf(itemsThere);
    missingItems = List.copyOf(missingItems);
    proofs = List.copyOf(proofs);
    joints = List.copyOf(joints);
    leftOut = List.copyOf(leftOut);
    takenAsFirm = List.copyOf(takenAsFirm);
    withoutDueDay = List.copyOf(withoutDueDay);
    attention = List.copyOf(attention);
  }

  /**
   * What is bought from one supplier.
   *
   * @param supplier name; empty when the materials name none
   * @param lines by material as the shop lists them, then by length
   * @param items by name, then by pack
   */
  public record SupplierPart(String supplier, List<BuyLine> lines, List<ItemLine> items) {
    public SupplierPart {
      Objects.requireNonNull(supplier);
      lines = List.copyOf(lines);
      items = List.copyOf(items);
    }

    /** What is bought from a supplier of whom no items are bought. */
    public SupplierPart(String supplier, List<BuyLine> lines) {
      this(supplier, lines, List.of());
    }

    public int sticks() {
      return lines.stream().mapToInt(BuyLine::sticks).reduce(0, Math::addExact);
    }

    /** What the invoice says; nothing for lines without a price. */
    public Money billed() {
      return Stream.concat(
              lines.stream().map(BuyLine::billed), items.stream().map(ItemLine::billed))
          .filter(Objects::nonNull)
          .reduce(Money.ZERO, Money::plus);
    }

    public boolean isPriced() {
      return lines.stream().anyMatch(line -> line.billed() != null)
          || items.stream().anyMatch(line -> line.billed() != null);
    }
  }

  /**
   * Sticks of one length that are bought.
   *
   * @param material id
   * @param name what people call it
   * @param offer whom from, at what price, in what packs
   * @param packs how many packs; sticks where they are sold singly
   * @param exact unrounded; null without a price
   * @param billed in cents, as the supplier rounds; null without a price
   */
  public record BuyLine(
      String material,
      String name,
      Supply.Offer offer,
      int packs,
      @Nullable Money exact,
      @Nullable Money billed) {
    public BuyLine {
      Objects.requireNonNull(material);
      Objects.requireNonNull(name);
      Objects.requireNonNull(offer);
    }

    public int sticks() {
      return Math.multiplyExact(packs, offer.soldIn());
    }

    /** Stock length of all its sticks. */
    public Length length() {
      return offer.length().times(sticks());
    }
  }

  /**
   * Packs of an item that are bought.
   *
   * @param packs how many packs; pieces where they are sold singly
   * @param exact unrounded; null without a price
   * @param billed in cents, as the supplier rounds; null without a price
   */
  public record ItemLine(
      String item,
      ItemStock.Offer offer,
      int packs,
      @Nullable Money exact,
      @Nullable Money billed) {
    public ItemLine {
      Objects.requireNonNull(item);
      Objects.requireNonNull(offer);
    }

    public int pieces() {
      return Math.multiplyExact(packs, offer.soldIn());
    }
  }

  /**
   * Pieces of an item that need not be bought.
   *
   * @param leftOver of orders placed before
   * @param onHand of those in the shop
   */
  public record ItemsThere(String item, int leftOver, int onHand) {
    public ItemsThere {
      Objects.requireNonNull(item);
    }
  }

  /**
   * Pieces of an item that cannot be had from anybody who is known.
   *
   * @param sold true when somebody sells it, but not so many
   * @param jobs that need it, by name
   */
  public record MissingItem(String item, int pieces, boolean sold, List<String> jobs) {
    public MissingItem {
      Objects.requireNonNull(item);
      jobs = List.copyOf(jobs);
    }
  }

  /**
   * Stock that is already there and is used.
   *
   * @param material id
   * @param name what people call it
   * @param supply the sticks on hand, or the offcut
   * @param sticks how many of it
   * @param worth all of them at today's prices; null when nothing of the material has a price
   */
  public record StockLine(
      String material, String name, Supply supply, int sticks, @Nullable Money worth) {
    public StockLine {
      Objects.requireNonNull(material);
      Objects.requireNonNull(name);
      Objects.requireNonNull(supply);
    }
  }

  /**
   * Offcuts that go to the rack.
   *
   * @param pieces how many
   * @param length all together
   * @param worth at the cheapest price per length, where there are prices
   */
  public record Kept(int pieces, Length length, Money worth) {}

  /**
   * The money of an order.
   *
   * @param cost what the plan was made cheapest in: material bought, unrounded, and sticks on hand
   * @param billed what the invoices say
   * @param cash the part of the cost that is spent now, unrounded
   */
  public record MoneyFigures(Money cost, Money billed, Money cash) {
    /** Sticks on hand that are used, at today's price. */
    public Money onHand() {
      return cost.minus(cash);
    }
  }

  /** The paper of a checked plan, and what it was held against. */
  public static OrderPaper of(CheckedPlan checked, Comparisons comparisons, OrderFacts facts) {
    OrderPlan plan = checked.plan();
    OrderLines lines = new OrderLines(plan.shop(), facts);
    plan.materials().forEach(lines::add);
    ItemLines items = new ItemLines(plan.shop(), facts.today());
    plan.items().forEach(items::add);
    List<SupplierPart> suppliers = lines.suppliers(items.bySupplier());
    List<MaterialPlan> priced =
        plan.materials().stream().filter(material -> material.order().isPriced()).toList();
    MoneyFigures money = null;
    List<ItemPlan> pricedItems = plan.items().stream().filter(ItemPlan::isPriced).toList();
    if (!priced.isEmpty() || !pricedItems.isEmpty()) {
      Money ofItems =
          new Money(pricedItems.stream().mapToLong(ItemPlan::cost).reduce(0, Math::addExact));
      money =
          new MoneyFigures(
              sum(priced, MaterialPlan::cost).plus(ofItems),
              suppliers.stream().map(SupplierPart::billed).reduce(Money.ZERO, Money::plus),
              sum(priced, MaterialPlan::cash).plus(ofItems));
    }
    List<ProofFigure> proofs = new ArrayList<>();
    ProofFigure.of(plan, true).ifPresent(proofs::add);
    ProofFigure.of(plan, false).ifPresent(proofs::add);
    Deliveries deliveries = Deliveries.of(checked, comparisons.alone());
    List<Attention> attention = new ArrayList<>(items.missingLines());
    attention.addAll(lines.attention());
    attention.addAll(items.outOfDate());
    attention.addAll(SupplierTerms.of(plan.shop(), deliveries, suppliers, facts.today()));
    plan.materials().forEach(material -> attention.addAll(StockFit.of(plan.shop(), material)));
    attention.addAll(CostlyMarks.attention(plan.shop(), comparisons.costly()));
    List<PlannedJob> jobs = PlannedJob.firstDueFirst(plan);
    return new OrderPaper(
        plan.shop(),
        jobs.stream().map(PlannedJob::job).toList(),
        suppliers,
        lines.boughtBefore(),
        lines.onHand(),
        lines.rack(),
        items.there(),
        items.missing(),
        lines.kept(),
        money,
        deliveries,
        proofs,
        comparisons.saving(),
        comparisons.joints(),
        facts.leftOut(),
        facts.takenAsFirm(),
        jobs.stream().filter(job -> job.due() == null).map(PlannedJob::job).toList(),
        attention);
  }

  private static Money sum(List<MaterialPlan> plans, ToLongFunction<MaterialPlan> figure) {
    return new Money(plans.stream().mapToLong(figure).reduce(0, Math::addExact));
  }

  public int sticksBought() {
    return suppliers.stream().mapToInt(SupplierPart::sticks).reduce(0, Math::addExact);
  }

  /** How many different items are bought. */
  public int itemsBought() {
    return (int)
        suppliers.stream()
            .flatMap(part -> part.items().stream())
            .map(ItemLine::item)
            .distinct()
            .count();
  }

  /** Stock length of what is bought of materials without a price. */
  public Length boughtWithoutPrice() {
    return suppliers.stream()
        .flatMap(part -> part.lines().stream())
        .filter(line -> line.billed() == null)
        .map(BuyLine::length)
        .reduce(Length.ZERO, Length::plus);
  }
}
