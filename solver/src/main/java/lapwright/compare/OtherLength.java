package lapwright.compare;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.Shortage;
import lapwright.demand.RunJoints;
import lapwright.demand.StickDemand;
import lapwright.demand.StickPrices;
import lapwright.effort.Effort;
import lapwright.layout.LayoutException;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** Plans as if stock came in one other length only. Not thread-safe. */
public final class OtherLength {
  private final Planner planner;
  private @Nullable Planned lastPlanned;

  private record Planned(List<MaterialOrder> orders, PlanResult result) {}

  public OtherLength(Planner planner) {
    this.planner = Objects.requireNonNull(planner);
  }

  /**
   * Compares the lengths on offer with one other length, material by material. Materials that
   * cannot be planned both ways are told and left out of both plans, which may leave them empty.
   *
   * @param orders one a material
   * @return null when the effort was spent before both plans were made
   */
  public @Nullable OtherLengthResult ask(
      Shop shop, List<MaterialOrder> orders, Length stockLength, Effort effort) {
    List<MaterialOrder> fitting = new ArrayList<>();
    List<Shortage> notThen = new ArrayList<>();
    for (MaterialOrder order : orders) {
      StickDemand demand = StickDemand.of(onlyIn(order, stockLength).withPieces(order.needs()));
      List<Need> tooLong = demand.needsThatFitNothing();
      Shortage unsplit = unsplit(onlyIn(order, stockLength));
      if (unsplit != null) {
        notThen.add(unsplit);
      } else if (tooLong.isEmpty()) {
        fitting.add(order);
      } else {
        notThen.add(
            new Shortage.FitsNothing(order.material().id(), tooLong, demand.longestUsable()));
      }
    }
    List<Shortage> notNow = new ArrayList<>();
    PlanResult now = planOffers(shop, fitting, effort);
    if (now instanceof PlanResult.Impossible impossible) {
      notNow.addAll(impossible.shortages());
      Set<String> out = new HashSet<>();
      notNow.forEach(shortage -> out.add(shortage.material()));
      fitting.removeIf(order -> out.contains(order.material().id()));
      now = planOffers(shop, fitting, effort);
    }
    PlanResult then =
        planner.plan(
            shop,
            fitting.stream().map(order -> onlyIn(order, stockLength)).toList(),
            Map.of(),
            effort);
    return now instanceof PlanResult.Planned plannedNow
            && then instanceof PlanResult.Planned plannedThen
        ? new OtherLengthResult(stockLength, plannedNow.plan(), plannedThen.plan(), notNow, notThen)
        : null;
  }

  /**
   * Each of several lengths, as if it were the only one.
   *
   * @param unanswered is told of lengths that a fault leaves out; where that would be all, a fault
   *     is thrown
   * @return null when the effort was spent before all plans were made
   */
  public @Nullable List<OtherLengthResult> ask(
      Shop shop,
      List<MaterialOrder> orders,
      List<Length> stockLengths,
      Unanswered unanswered,
      Effort effort) {
    List<OtherLengthResult> results = new ArrayList<>();
    for (Length length : stockLengths) {
      int before = unanswered.questions().size();
      OtherLengthResult result =
          unanswered.askOrNull("one of the stock lengths", () -> ask(shop, orders, length, effort));
      if (result != null) {
        results.add(result);
      } else if (unanswered.questions().size() == before) {
        return null;
      }
    }
    if (results.isEmpty()) {
      throw unanswered.questions().get(0).fault();
    }
    return results;
  }

  /** The first run that no split keeps to its rules; null when there is none. */
  private static @Nullable Shortage unsplit(MaterialOrder order) {
    for (RunNeed need : order.runs()) {
      try {
        RunJoints.mostJoints(order, need);
      } catch (LayoutException e) {
        return new Shortage.NoSplit(
            order.material().id(),
            need.job(),
            need.run().mark(),
            e.rule(),
            Objects.requireNonNull(e.getMessage()),
            e.advice(),
            e.length());
      }
    }
    return null;
  }

  /** The plan in the lengths of now, which is the same for each other length that all fit. */
  private PlanResult planOffers(Shop shop, List<MaterialOrder> orders, Effort effort) {
    Planned last = lastPlanned;
    if (last != null && last.orders().equals(orders)) {
      return last.result();
    }
    PlanResult result = planOffersAnew(shop, orders, effort);
    lastPlanned = new Planned(List.copyOf(orders), result);
    return result;
  }

  private PlanResult planOffersAnew(Shop shop, List<MaterialOrder> orders, Effort effort) {
    List<MaterialOrder> offersOnly =
        orders.stream()
            .map(
                order ->
                    order.withSupplies(
                        order.supplies().stream().filter(Supply.Offer.class::isInstance).toList()))
            .toList();
    return planner.plan(shop, offersOnly, Map.of(), effort);
  }

  /** The order bought in one length only, singly, at the cheapest price per length. */
  static MaterialOrder onlyIn(MaterialOrder order, Length length) {
    return onlyIn(order, List.of(length));
  }

  /** The same in several lengths. */
  static MaterialOrder onlyIn(MaterialOrder order, List<Length> lengths) {
    List<Supply> offers = new ArrayList<>();
    for (Length length : lengths) {
      Price price =
          order.isPriced()
              ? new Price(
                  BigDecimal.valueOf(new StickPrices(order).atCheapestRate(length), 4),
                  Price.Per.EACH)
              : null;
      offers.add(new Supply.Offer("", length, price, 1, Integer.MAX_VALUE, "", null, null));
    }
    return order.withSupplies(offers);
  }
}
