package lapwright;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import lapwright.measure.Length;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The least cost of a small order, from the rules of a stick alone: every way to cut every stick is
 * tried at the saw, and every set of pieces that can be left is kept with the cheapest way to get
 * there, supply after supply. Exhaustive and exact; shares nothing with the planner.
 */
final class ExhaustiveSearch {
  private final MaterialOrder order;
  private final List<Length> lengths;
  private final List<Integer> demand = new ArrayList<>();

  ExhaustiveSearch(MaterialOrder order) {
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
    Map<List<Integer>, Long> cheapest = new HashMap<>();
    cheapest.put(demand, 0L);
    for (Supply supply : order.supplies()) {
      if (order.saw().longestStick() == null
          || supply.length().units() <= order.saw().longestStick().units()) {
        cheapest = after(supply, cheapest);
      }
    }
    Long cost = cheapest.get(Collections.nCopies(demand.size(), 0));
    return cost == null ? OptionalLong.empty() : OptionalLong.of(cost);
  }

  /** From the cheapest way to leave just these pieces, the same with one more supply. */
  private Map<List<Integer>, Long> after(Supply supply, Map<List<Integer>, Long> before) {
    Map<List<Integer>, Long> cheapest = new HashMap<>(before);
    List<int[]> ways = ways(supply);
    int packSize = supply instanceof Supply.Offer offer ? offer.soldIn() : 1;
    long packCost = packCost(supply).longValueExact();
    long most = supply.atMost() / packSize * (long) packSize;
    Map<List<Integer>, Long> withSticks = before;
    for (int sticks = 1; sticks <= most && !withSticks.isEmpty(); sticks++) {
      long anotherPack = sticks % packSize == 1 % packSize ? packCost : 0;
      Map<List<Integer>, Long> withOneMore = new HashMap<>();
      withSticks.forEach(
          (left, cost) -> {
            for (int[] way : ways) {
              List<Integer> rest = minus(left, way);
              if (rest != null) {
                withOneMore.merge(rest, cost + anotherPack, Math::min);
              }
            }
          });
      withOneMore.forEach((left, cost) -> cheapest.merge(left, cost, Math::min));
      withSticks = withOneMore;
    }
    return cheapest;
  }

  private static @Nullable List<Integer> minus(List<Integer> left, int[] way) {
    List<Integer> rest = new ArrayList<>(left);
    for (int i = 0; i < way.length; i++) {
      rest.set(i, rest.get(i) - way[i]);
      if (rest.get(i) < 0) {
        return null;
      }
    }
    return rest;
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
