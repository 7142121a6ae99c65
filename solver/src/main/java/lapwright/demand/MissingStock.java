package lapwright.demand;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import lapwright.measure.Length;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.shop.Supply;

/**
 * How many more sticks an order needs that asks for more than can be had: the same problem with as
 * many further sticks of one length as it takes, in which those cost 1 and everything else nothing.
 *
 * @param stockLength the longest limited length on offer that every piece fits which is not to be
 *     had without limit; else the longest such length on hand or on the rack; else a length just
 *     long enough for the longest piece
 * @param problem its last stock are the further sticks
 */
public record MissingStock(Length stockLength, StickProblem problem) {
  private static final int NO_LIMIT = Integer.MAX_VALUE;

  public MissingStock {
    Objects.requireNonNull(stockLength);
    Objects.requireNonNull(problem);
  }

  public static MissingStock of(StickDemand demand) {
    StickProblem asked = demand.problem();
    List<Item> limited =
        asked.items().stream()
            .filter(
                item ->
                    asked.stocks().stream()
                        .noneMatch(
                            stock -> !stock.isLimited() && StickDemand.gives(asked, stock, item)))
            .toList();
    Length length =
        candidates(demand)
            .filter(
                candidate -> {
                  Stock further = further(demand, candidate);
                  return limited.stream().allMatch(item -> StickDemand.gives(asked, further, item));
                })
            .findFirst()
            .orElseGet(() -> longEnough(demand, limited));
    List<Stock> stocks = new ArrayList<>();
    for (Stock stock : asked.stocks()) {
      stocks.add(
          new Stock(
              stock.length(),
              stock.capacity(),
              stock.smallCapacity(),
              stock.wholeUse(),
              stock.tail(),
              0,
              0,
              stock.packSize(),
              stock.mostPacks()));
    }
    stocks.add(further(demand, length));
    return new MissingStock(length, new StickProblem(asked.items(), stocks, asked.keepFrom()));
  }

  /** Index of the further sticks. */
  public int further() {
    return problem.stocks().size() - 1;
  }

  private static Stream<Length> candidates(StickDemand demand) {
    Comparator<Length> longest = Comparator.reverseOrder();
    List<Supply> supplies = demand.supplies();
    return Stream.concat(
        supplies.stream()
            .filter(supply -> supply instanceof Supply.Offer && supply.atMost() != NO_LIMIT)
            .map(Supply::length)
            .sorted(longest),
        supplies.stream()
            .filter(supply -> !(supply instanceof Supply.Offer))
            .map(Supply::length)
            .sorted(longest));
  }

  private static Length longEnough(StickDemand demand, List<Item> items) {
    UsableStick shortest =
        UsableStick.of(demand.order().material(), demand.order().saw(), offer(Length.ofUnits(1)));
    long size = items.stream().mapToLong(Item::size).max().orElse(0);
    boolean small = items.stream().anyMatch(Item::small);
    return Length.ofUnits(1 + size - (small ? shortest.smallCapacity() : shortest.capacity()));
  }

  private static Stock further(StickDemand demand, Length length) {
    UsableStick stick =
        UsableStick.of(demand.order().material(), demand.order().saw(), offer(length));
    return new Stock(
        stick.counted(),
        stick.capacity(),
        stick.smallCapacity(),
        stick.wholeUse(),
        stick.tail(),
        1,
        1,
        1,
        NO_LIMIT);
  }

  private static Supply offer(Length length) {
    return new Supply.Offer("", length, null, 1, NO_LIMIT, "", null, null);
  }
}
