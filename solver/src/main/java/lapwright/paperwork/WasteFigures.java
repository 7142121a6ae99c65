package lapwright.paperwork;

import lapwright.measure.Length;
import lapwright.plan.Account;

/**
 * The figures of an account, never one alone: each in hundredths of a percent, so 10832 is 1.0832.
 *
 * @param boughtToFinished stock bought for each length finished; below 10000 where stock on hand or
 *     the rack gave much
 * @param drawnToFinished stock cut for each length finished
 * @param wasteKeptUsed kerf, end trims and scrap of what was drawn, when all kept offcuts are used
 *     one day
 * @param wasteKeptLost the same when no kept offcut is ever used
 */
public record WasteFigures(
    long boughtToFinished, long drawnToFinished, long wasteKeptUsed, long wasteKeptLost) {

  static WasteFigures of(Length bought, Account account) {
    Length waste = account.kerf().plus(account.endTrim()).plus(account.scrap());
    return new WasteFigures(
        Ratio.hundredthsOfPercent(bought, account.finished()),
        Ratio.hundredthsOfPercent(account.drawn(), account.finished()),
        Ratio.hundredthsOfPercent(waste, account.drawn()),
        Ratio.hundredthsOfPercent(waste.plus(account.offcutsKept()), account.drawn()));
  }
}
