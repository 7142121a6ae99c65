package lapwright.paperwork;

import java.util.Comparator;
import java.util.List;
import lapwright.compare.CostlyMark;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.plan.Purchase;
import lapwright.shop.Need;
import lapwright.shop.Shop;

/** Marks that alone cost two sticks or more, as lines of attention. */
final class CostlyMarks {
  private static final int MOST_LINES = 3;

  private CostlyMarks() {}

  /** What costs most first, priced materials before others; only a few. */
  static List<Attention> attention(Shop shop, List<CostlyMark> marks) {
    LengthStyle units = Units.of(shop);
    MoneyStyle money = new MoneyStyle(shop.currency());
    return marks.stream()
        .sorted(
            Comparator.comparing((CostlyMark mark) -> mark.now().order().isPriced())
                .thenComparingLong(CostlyMark::costs)
                .reversed())
        .limit(MOST_LINES)
        .map(mark -> attention(mark, units, money))
        .toList();
  }

  private static Attention attention(CostlyMark mark, LengthStyle units, MoneyStyle money) {
    Need need = mark.need();
    int pieces = need.total();
    String costs =
        mark.now().order().isPriced()
            ? money.print(new Money(mark.costs()))
            : units.nearest(Length.ofUnits(mark.costs()));
    return new Attention(
        mark.now().material()
            + ": "
            + (need.mark().isEmpty() ? "a piece list without a mark" : need.mark())
            + " of "
            + need.job()
            + " ("
            + (pieces == 1 ? "1 piece" : pieces + " pieces")
            + " of "
            + units.exact(need.length())
            + ") alone costs "
            + mark.sticks()
            + " sticks, "
            + costs
            + ", and would fill "
            + mark.fills()
            + " end to end",
        inPacks(mark)
            ? "ask for single sticks, or what else the rest of a pack could serve"
            : "ask whether it may be shorter or joined, or come in another stock length");
  }

  private static boolean inPacks(CostlyMark mark) {
    Supplies supplies = Supplies.of(mark.now().order());
    for (Purchase purchase : mark.now().purchases()) {
      if (supplies.offer(purchase.supply()).soldIn() > 1) {
        return true;
      }
    }
    return false;
  }
}
