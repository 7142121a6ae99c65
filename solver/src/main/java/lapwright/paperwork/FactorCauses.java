package lapwright.paperwork;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.Percent;
import lapwright.plan.Account;

/**
 * The factor of stock for one finished, and its causes, which add up to it as printed: each is
 * rounded down to 1/100 %, and what is missing goes to those that lost most, equal ones by their
 * order here (largest remainder).
 *
 * @param cut stock cut for one finished: the sum of the first six
 * @param bought stock bought for one finished: {@code cut} and the last three
 * @param fromStock what rack and sticks on hand gave, as a part below 0
 */
public record FactorCauses(
    Percent finished,
    Percent laps,
    Percent offcutsKept,
    Percent kerf,
    Percent endTrim,
    Percent scrap,
    Percent cut,
    Percent fromStock,
    Percent surplus,
    Percent shortAllowance,
    Percent bought) {

  /** The causes of an account; all 0 where nothing is finished. */
  public static FactorCauses of(Length bought, Account account) {
    Length finished = account.finished();
    if (finished.isZero()) {
      Percent none = new Percent(0);
      return new FactorCauses(none, none, none, none, none, none, none, none, none, none, none);
    }
    Percent cut = Percent.of(account.drawn().units(), finished.units());
    Percent all = Percent.of(bought.units(), finished.units());
    List<Percent> causes =
        divide(
            cut,
            List.of(
                finished,
                account.laps(),
                account.offcutsKept(),
                account.kerf(),
                account.endTrim(),
                account.scrap()),
            finished);
    Length fromStock =
        bought.minus(account.surplus()).minus(account.shortAllowance()).minus(account.drawn());
    List<Percent> rest =
        divide(
            new Percent(all.hundredths() - cut.hundredths()),
            List.of(fromStock, account.surplus(), account.shortAllowance()),
            finished);
    return new FactorCauses(
        causes.get(0),
        causes.get(1),
        causes.get(2),
        causes.get(3),
        causes.get(4),
        causes.get(5),
        cut,
        rest.get(0),
        rest.get(1),
        rest.get(2),
        all);
  }

  private record Rest(int part, BigInteger rest) {}

  private static List<Percent> divide(Percent total, List<Length> parts, Length finished) {
    BigInteger whole = BigInteger.valueOf(finished.units());
    List<Long> shares = new ArrayList<>();
    List<Rest> rests = new ArrayList<>();
    long left = total.hundredths();
    for (int i = 0; i < parts.size(); i++) {
      BigInteger exact =
          BigInteger.valueOf(parts.get(i).units()).multiply(BigInteger.valueOf(10_000));
      BigInteger rest = exact.mod(whole);
      long share = exact.subtract(rest).divide(whole).longValueExact();
      shares.add(share);
      left -= share;
      rests.add(new Rest(i, rest));
    }
    rests.sort(Comparator.comparing(Rest::rest).reversed().thenComparing(Rest::part));
    for (int i = 0; i < left; i++) {
      int part = rests.get(i).part();
      shares.set(part, shares.get(part) + 1);
    }
    return shares.stream().map(Percent::new).toList();
  }
}
