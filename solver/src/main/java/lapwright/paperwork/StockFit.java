package lapwright.paperwork;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.shop.Ends;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * What the stock of one material calls for: sticks that the saw does not take, pieces that miss a
 * stick by a cut, and packs that cost less than the sticks that are bought.
 */
final class StockFit {
  private final MaterialPlan plan;
  private final MaterialOrder order;
  private final Supplies supplies;
  private final LengthStyle units;
  private final MoneyStyle money;
  private final List<Attention> attention = new ArrayList<>();

  private StockFit(Shop shop, MaterialPlan plan) {
    this.plan = plan;
    this.order = plan.order();
    this.supplies = Supplies.of(plan.order());
    this.units = Units.of(shop);
    this.money = new MoneyStyle(shop.currency());
  }

  static List<Attention> of(Shop shop, MaterialPlan plan) {
    StockFit fit = new StockFit(shop, plan);
    fit.passedOver();
    fit.lotNotWritten();
    fit.dearerThanMore();
    fit.narrowMisses();
    return fit.attention;
  }

  private void passedOver() {
    Length longest = order.saw().longestStick();
    if (longest == null) {
      return;
    }
    List<String> over = new ArrayList<>();
    for (Supply supply : order.supplies()) {
      if (supply.length().isLongerThan(longest)) {
        over.add(units.exact(supply.length()) + " " + place(supply));
      }
    }
    if (!over.isEmpty()) {
      attention.add(
          new Attention(
              plan.material()
                  + ": passed over, because "
                  + order.saw().id()
                  + " takes no stick longer than "
                  + units.exact(longest)
                  + ": "
                  + String.join(", ", over),
              "cut "
                  + (over.size() == 1 ? "it" : "them")
                  + " down first, or correct longest-stick in shop.yaml"));
    }
  }

  /** Stock that counts as a lot each because nobody wrote its lot down, and is not used. */
  private void lotNotWritten() {
    if (order.material().oneLotPer() == OneLotPer.NONE) {
      return;
    }
    List<String> unused = new ArrayList<>();
    for (Supply supply : order.supplies()) {
      boolean without =
          supply instanceof Supply.OnHand onHand
              ? onHand.lot().isEmpty()
              : supply instanceof Supply.RackOffcut offcut && offcut.lot().isEmpty();
      if (without
          && plan.patterns().stream().noneMatch(pattern -> pattern.supply().equals(supply.key()))) {
        unused.add(units.exact(supply.length()) + " " + place(supply));
      }
    }
    if (!unused.isEmpty()) {
      attention.add(
          new Attention(
              plan.material()
                  + ": not used, and no lot is written, so that each counts as a lot of its own: "
                  + String.join(", ", unused),
              "write the lot into on-hand.csv or rack.csv where it is known"));
    }
  }

  private static String place(Supply supply) {
    if (supply instanceof Supply.Offer offer) {
      return offer.supplier().isEmpty() ? "on offer" : "from " + offer.supplier();
    }
    return supply instanceof Supply.RackOffcut offcut ? "(rack " + offcut.id() + ")" : "on hand";
  }

  /**
   * As many sticks as are bought on a line, or more, of the same length or so much longer that any
   * piece can still be held, for less. The plan of least cost never leaves such a one, so it is
   * found only where nothing is proved.
   */
  private void dearerThanMore() {
    for (Purchase purchase : plan.purchases()) {
      Supply.Offer bought = supplies.offer(purchase.supply());
      Money pack = StockWorth.packPrice(order, bought);
      if (pack == null) {
        return;
      }
      int sticks = Math.multiplyExact(purchase.packs(), bought.soldIn());
      Money price = pack.times(purchase.packs());
      for (Supply supply : order.supplies()) {
        if (supply instanceof Supply.Offer other && replaces(other, bought)) {
          Money otherPack = StockWorth.packPrice(order, other);
          int packs = (sticks + other.soldIn() - 1) / other.soldIn();
          if (otherPack != null
              && packs <= other.atMostPacks() - packsBought(other)
              && otherPack.times(packs).compareTo(price) < 0) {
            attention.add(
                new Attention(
                    plan.material()
                        + ": "
                        + packs * other.soldIn()
                        + (packs * other.soldIn() == 1 ? " stick of " : " sticks of ")
                        + units.exact(other.length())
                        + " "
                        + place(other)
                        + " would cost "
                        + money.print(otherPack.times(packs))
                        + ", less than the "
                        + sticks
                        + " of "
                        + units.exact(bought.length())
                        + " for "
                        + money.print(price),
                    "buy those instead, or plan again with more --time"));
          }
        }
      }
    }
  }

  private int packsBought(Supply.Offer offer) {
    return plan.purchases().stream()
        .filter(purchase -> purchase.supply().equals(offer.key()))
        .mapToInt(Purchase::packs)
        .sum();
  }

  private boolean replaces(Supply.Offer other, Supply.Offer bought) {
    Saw saw = order.saw();
    boolean sameLot =
        order.material().oneLotPer() == OneLotPer.NONE
            || other.supplier().equals(bought.supplier());
    boolean longEnough =
        other.length().equals(bought.length())
            || !other
                .length()
                .isShorterThan(bought.length().plus(saw.kerf()).plus(saw.kerf()).plus(saw.hold()));
    return !other.key().equals(bought.key()) && sameLot && longEnough && sawTakes(other);
  }

  private boolean sawTakes(Supply supply) {
    Length longest = order.saw().longestStick();
    return longest == null || !supply.length().isLongerThan(longest);
  }

  /**
   * Pieces that take as much of a stick as others.
   *
   * @param words how the first of them is called
   * @param length of the first, as the job asks for it
   * @param held the least that the vise can grip of any
   */
  private record Equal(String words, Length length, Length held, int count) {
    Equal plus(Equal other) {
      Length least = held.isShorterThan(other.held) ? held : other.held;
      return new Equal(words, length, least, Math.addExact(count, other.count));
    }
  }

  /**
   * One more of a length would come from a stick, but for no more than a kerf. Pieces with angled
   * ends count with their cuts, pieces that may be short at their shortest, pieces of runs where
   * the joints' places are given and no gap may be left open, which would make them shorter.
   */
  private void narrowMisses() {
    Map<Length, Equal> equal = new TreeMap<>();
    for (Need need : order.needs()) {
      String words = need.mark().isEmpty() ? "pieces" : need.mark() + " of " + need.job();
      equal.merge(
          need.planned(order.saw().kerf()),
          new Equal(words, need.length(), need.held(), need.total()),
          Equal::plus);
    }
    for (RunLine line : plan.runs()) {
      if (hasGivenLengths(line)) {
        for (RunLine.RunPiece piece : line.pieces()) {
          equal.merge(
              piece.length(),
              new Equal(
                  line.pieceMark(piece) + " of " + line.job(), piece.length(), piece.length(), 1),
              Equal::plus);
        }
      }
    }
    equal.forEach(
        (planned, pieces) -> {
          Miss least = null;
          for (Supply supply : order.supplies()) {
            Miss miss = miss(planned, pieces, supply);
            if (miss != null && (least == null || miss.by().isShorterThan(least.by()))) {
              least = miss;
            }
          }
          if (least != null) {
            attention.add(least.attention(plan.material(), pieces, units));
          }
        });
  }

  private boolean hasGivenLengths(RunLine line) {
    return order.runs().stream()
        .anyMatch(
            need ->
                need.job().equals(line.job())
                    && need.run().mark().equals(line.mark())
                    && !need.run().rules().places().isAnywhere()
                    && !(need.run().rules().joint() instanceof Joint.Butt butt
                        && !butt.gap().isZero()));
  }

  /** One stick more: sum of (length + kerf) against usable length and one kerf. */
  private @Nullable Miss miss(Length planned, Equal pieces, Supply supply) {
    Saw saw = order.saw();
    if (!sawTakes(supply) || supply.atMost() == 0 || pieces.held().isShorterThan(saw.hold())) {
      return null;
    }
    boolean millEndsBad = !order.material().millEndsGood() && !saw.endTrim().isZero();
    Length capacity = StickCount.countedLength(order.material(), supply).plus(saw.kerf());
    if (millEndsBad && supply.ends() == Ends.MILL) {
      capacity = capacity.minus(saw.endTrim());
    }
    if (millEndsBad && supply.ends() != Ends.SAWN) {
      capacity = capacity.minus(saw.kerf());
    }
    Length size = planned.plus(saw.kerf());
    long more = Math.max(0, capacity.units()) / size.units() + 1;
    Length by = size.times(more).minus(capacity);
    return more <= pieces.count() && !by.isLongerThan(saw.kerf())
        ? new Miss(supply, more, by)
        : null;
  }

  private record Miss(Supply supply, long pieces, Length by) {
    Attention attention(String material, Equal equal, LengthStyle units) {
      Length shorter =
          Length.ofUnits(
              BigInteger.valueOf(by.units())
                  .add(BigInteger.valueOf(pieces - 1))
                  .divide(BigInteger.valueOf(pieces))
                  .longValueExact());
      return new Attention(
          material
              + ": "
              + equal.words()
              + " ("
              + units.exact(equal.length())
              + ") "
              + (pieces == 1 ? "fails" : pieces + " times fails")
              + " to fit "
              + units.exact(supply.length())
              + " "
              + place(supply)
              + " by "
              + units.exact(by)
              + ", no more than a cut",
          "ask whether each may be " + units.atLeast(shorter) + " shorter");
    }
  }
}
