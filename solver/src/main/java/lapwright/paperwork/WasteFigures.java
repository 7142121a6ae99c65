package lapwright.paperwork;

import lapwright.measure.Length;
import lapwright.measure.Percent;
import lapwright.plan.Account;

/**
 * The figures of an account, never one alone.
 *
 * @param boughtToFinished stock bought for what is finished; below 100 % where stock on hand or the
 *     rack gave much
 * @param drawnToFinished stock cut for what is finished
 * @param wasteKeptUsed kerf, end trims and scrap of what was drawn, when all kept offcuts are used
 *     one day
 * @param wasteKeptLost the same when no kept offcut is ever used
 */
public record WasteFigures(
    Percent boughtToFinished,
    Percent drawnToFinished,
    Percent wasteKeptUsed,
    Percent wasteKeptLost) {

  static WasteFigures of(Length bought, Account account) {
    Length waste = account.kerf().plus(account.endTrim()).plus(account.scrap());
    return new WasteFigures(
        percent(bought, account.finished()),
        percent(account.drawn(), account.finished()),
        percent(waste, account.drawn()),
        percent(waste.plus(account.offcutsKept()), account.drawn()));
  }

  private static Percent percent(Length part, Length whole) {
    return Percent.of(part.units(), whole.units());
  }
}
