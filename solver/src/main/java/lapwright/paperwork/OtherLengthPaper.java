package lapwright.paperwork;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lapwright.Shortage;
import lapwright.check.CheckedPlan;
import lapwright.compare.OtherLengthResult;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.plan.Account;
import lapwright.plan.Proof;
import lapwright.shop.Shop;

/**
 * What if stock came only in another length, for the estimator. Rack and sticks on hand are left
 * aside on both sides.
 *
 * @param shop the shop's own facts
 * @param stockLength the only length
 * @param rows materials that can be bought both ways
 * @param now all of them, in the lengths that are on offer
 * @param then all of them, in that length only
 * @param notNow materials that what is on offer cannot give
 * @param notThen materials with pieces that do not fit that length
 */
public record OtherLengthPaper(
    Shop shop,
    Length stockLength,
    List<Row> rows,
    Side now,
    Side then,
    List<Shortage> notNow,
    List<Shortage> notThen) {
  public OtherLengthPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(stockLength);
    rows = List.copyOf(rows);
    notNow = List.copyOf(notNow);
    notThen = List.copyOf(notThen);
  }

  /**
   * One material.
   *
   * @param material id
   * @param name what people call it
   * @param now in the lengths that are on offer
   * @param then in the one length only
   */
  public record Row(String material, String name, Side now, Side then) {}

  /**
   * What a plan comes to.
   *
   * @param sticks bought
   * @param bought their stock lengths
   * @param priced true where {@code cost} says something
   * @param cost of the material, unrounded
   * @param account where the material goes
   * @param proof the weakest of its materials
   */
  public record Side(
      int sticks, Length bought, boolean priced, Money cost, Account account, Proof proof) {
    static final Side NOTHING =
        new Side(0, Length.ZERO, false, Money.ZERO, Account.NOTHING, Proof.PROVED);

    public WasteFigures figures() {
      return WasteFigures.of(bought, account);
    }

    Side plus(Side other) {
      return new Side(
          Math.addExact(sticks, other.sticks),
          bought.plus(other.bought),
          priced || other.priced,
          cost.plus(other.cost),
          account.plus(other.account),
          proof.compareTo(other.proof) > 0 ? proof : other.proof);
    }
  }

  /** The paper of a comparison whose two plans were both checked. */
  public static OtherLengthPaper of(OtherLengthResult result) {
    List<Side> now = sides(result.now());
    List<Side> then = sides(result.then());
    List<WastePaper.MaterialPart> parts = WastePaper.of(result.now()).materials();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      rows.add(new Row(parts.get(i).material(), parts.get(i).name(), now.get(i), then.get(i)));
    }
    return new OtherLengthPaper(
        result.now().plan().shop(),
        result.stockLength(),
        rows,
        now.stream().reduce(Side.NOTHING, Side::plus),
        then.stream().reduce(Side.NOTHING, Side::plus),
        result.notNow(),
        result.notThen());
  }

  private static List<Side> sides(CheckedPlan checked) {
    List<WastePaper.MaterialPart> parts = WastePaper.of(checked).materials();
    List<Side> sides = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      WastePaper.MaterialPart part = parts.get(i);
      boolean priced = checked.plan().materials().get(i).order().isPriced();
      sides.add(
          new Side(
              part.sticksBought(),
              part.bought(),
              priced,
              priced ? new Money(checked.plan().materials().get(i).cost()) : Money.ZERO,
              part.account(),
              part.proof()));
    }
    return sides;
  }
}
