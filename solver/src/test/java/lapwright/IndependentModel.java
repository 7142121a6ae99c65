package lapwright;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import lapwright.measure.Length;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Supply;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * The least cost of a small order, from the rules of a stick alone: every way to cut every stick is
 * tried at the saw, and ojAlgo's integer solver chooses among them. Shares nothing with the
 * planner.
 */
final class IndependentModel {
  private final MaterialOrder order;
  private final List<Length> lengths;
  private final List<Integer> demand = new ArrayList<>();

  IndependentModel(MaterialOrder order) {
    this.order = order;
    Map<Length, Integer> total = new LinkedHashMap<>();
    for (Need need : order.needs()) {
      total.merge(need.length(), need.qty() * need.copies(), Integer::sum);
    }
    this.lengths = List.copyOf(total.keySet());
    this.demand.addAll(total.values());
  }

  /** In 1/10,000 of the currency or units of length; empty when no plan exists. */
  OptionalLong leastCost() {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    List<Expression> rows = new ArrayList<>();
    for (int i = 0; i < demand.size(); i++) {
      rows.add(model.newExpression("piece " + i).level(demand.get(i)));
    }
    int pieces = demand.stream().mapToInt(Integer::intValue).sum();
    BigDecimal unit = BigDecimal.ONE;
    boolean anything = false;
    for (Supply supply : order.supplies()) {
      if (order.saw().longestStick() != null
          && supply.length().units() > order.saw().longestStick().units()) {
        continue;
      }
      int packSize = supply instanceof Supply.Offer offer ? offer.soldIn() : 1;
      int sticks = Math.min(pieces, supply.atMost() / packSize * packSize);
      int packs = (sticks + packSize - 1) / packSize;
      if (supply.atMost() != Integer.MAX_VALUE) {
        packs = Math.min(packs, supply.atMost() / packSize);
      }
      Variable pack =
          model
              .newVariable("packs " + supply.key())
              .lower(0)
              .upper(packs)
              .integer(true)
              .weight(packCost(supply).multiply(unit));
      Expression fromPacks = model.newExpression("sticks " + supply.key()).upper(0);
      fromPacks.set(pack, -packSize);
      for (int[] counts : ways(supply)) {
        anything = true;
        Variable use =
            model.newVariable(supply.key() + List.of(counts)).lower(0).upper(pieces).integer(true);
        fromPacks.set(use, 1);
        for (int i = 0; i < counts.length; i++) {
          if (counts[i] > 0) {
            rows.get(i).set(use, counts[i]);
          }
        }
      }
    }
    if (!anything) {
      return OptionalLong.empty();
    }
    Optimisation.Result result = model.minimise();
    if (!result.getState().isFeasible()) {
      return OptionalLong.empty();
    }
    return OptionalLong.of(
        BigDecimal.valueOf(result.getValue()).setScale(0, RoundingMode.HALF_EVEN).longValueExact());
  }

  private List<int[]> ways(Supply supply) {
    List<int[]> ways = new ArrayList<>();
    int[] counts = new int[lengths.size()];
    while (next(counts)) {
      if (SawWalk.along(order, supply, lengths, counts).isPresent()) {
        ways.add(counts.clone());
      }
    }
    return ways;
  }

  private boolean next(int[] counts) {
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] < demand.get(i)) {
        counts[i]++;
        return true;
      }
      counts[i] = 0;
    }
    return false;
  }

  /** What a pack, a stick on hand or an offcut costs. */
  BigDecimal packCost(Supply supply) {
    boolean priced =
        order.supplies().stream().anyMatch(s -> s instanceof Supply.Offer o && o.price() != null);
    if (supply instanceof Supply.Offer offer) {
      return priced ? price(offer) : length(offer).multiply(BigDecimal.valueOf(offer.soldIn()));
    }
    if (supply instanceof Supply.RackOffcut || !order.onHandValued()) {
      return BigDecimal.ZERO;
    }
    if (!priced) {
      return length(supply);
    }
    BigDecimal sameLength = null;
    BigDecimal anyLength = null;
    for (Supply other : order.supplies()) {
      if (other instanceof Supply.Offer offer) {
        BigDecimal worth =
            price(offer)
                .multiply(length(supply))
                .divide(
                    length(offer).multiply(BigDecimal.valueOf(offer.soldIn())),
                    0,
                    RoundingMode.HALF_UP);
        if (offer.length().equals(supply.length())) {
          sameLength = sameLength == null ? worth : sameLength.min(worth);
        }
        anyLength = anyLength == null ? worth : anyLength.min(worth);
      }
    }
    return sameLength != null ? sameLength : anyLength;
  }

  private static BigDecimal length(Supply supply) {
    return BigDecimal.valueOf(supply.length().units());
  }

  private static BigDecimal price(Supply.Offer offer) {
    return offer.price().amount().movePointRight(4).multiply(BigDecimal.valueOf(offer.soldIn()));
  }
}
