package lapwright.cli;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;

/** Plans in front of somebody: with a time limit, a line of progress, and Ctrl-C. */
final class Planning {
  private final Surroundings surroundings;

  Planning(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** Does {@code work}, which ends early after {@code limitNanos} or at Ctrl-C. */
  <T> T within(long limitNanos, Shop shop, List<MaterialOrder> orders, Function<Effort, T> work) {
    surroundings.interruption().catchFromProcess();
    try (ProgressLine line =
        new ProgressLine(
            surroundings.err(),
            surroundings.nanoClock(),
            orders.stream().map(order -> order.material().id()).collect(Collectors.toSet()),
            costAndBound(shop, orders),
            surroundings.interruption()::isWanted)) {
      if (surroundings.progressShown()) {
        line.start();
      }
      return work.apply(
          Effort.limited(
              surroundings.nanoClock(),
              limitNanos,
              surroundings.interruption()::isWanted,
              line::tell));
    }
  }

  /** Money and lengths are never added up: materials of both kinds have no sum. */
  private static BiFunction<Long, Long, String> costAndBound(
      Shop shop, List<MaterialOrder> orders) {
    long priced = orders.stream().filter(MaterialOrder::isPriced).count();
    if (priced == orders.size()) {
      MoneyStyle style = new MoneyStyle(shop.currency());
      return (cost, bound) ->
          style.print(new Money(cost)) + ", at least " + style.print(new Money(bound));
    }
    if (priced == 0) {
      LengthStyle style = PaperOptions.usual(shop.units());
      return (cost, bound) ->
          style.nearest(Length.ofUnits(cost))
              + ", at least "
              + style.nearest(Length.ofUnits(bound));
    }
    return (cost, bound) -> "";
  }
}
