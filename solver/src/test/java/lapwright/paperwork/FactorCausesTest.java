package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;

import lapwright.measure.Length;
import lapwright.measure.Percent;
import lapwright.plan.Account;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

final class FactorCausesTest {
  private static final long MOST = 1_000_000_000_000L;

  private static Length units(long units) {
    return Length.ofUnits(units);
  }

  /** By hand: thirds of 0.01 % are rounded so that 300 of 299 are still 1.0033. */
  @Test
  void causesAddUpAsPrinted() {
    Account account =
        new Account(
            units(300),
            units(299),
            units(0),
            units(1),
            units(0),
            units(0),
            units(0),
            units(0),
            units(0));
    FactorCauses causes = FactorCauses.of(units(300), account);
    assertEquals(new Percent(10_000), causes.finished());
    assertEquals(new Percent(33), causes.kerf());
    assertEquals(new Percent(10_033), causes.cut());
    assertEquals(new Percent(10_033), causes.bought());
  }

  @Property(seed = "11")
  void everySumIsExactAsPrinted(
      @ForAll @LongRange(min = 1, max = MOST) long finished,
      @ForAll @LongRange(min = 0, max = MOST) long laps,
      @ForAll @LongRange(min = 0, max = MOST) long kerf,
      @ForAll @LongRange(min = 0, max = MOST) long trim,
      @ForAll @LongRange(min = 0, max = MOST) long kept,
      @ForAll @LongRange(min = 0, max = MOST) long scrap,
      @ForAll @LongRange(min = 0, max = MOST) long surplus,
      @ForAll @LongRange(min = 0, max = MOST) long allowance,
      @ForAll @LongRange(min = 0, max = MOST) long bought) {
    Account account =
        new Account(
            units(finished + laps + kerf + trim + kept + scrap),
            units(finished),
            units(laps),
            units(kerf),
            units(trim),
            units(kept),
            units(scrap),
            units(surplus),
            units(allowance));
    FactorCauses causes = FactorCauses.of(units(bought), account);
    assertEquals(
        causes.cut().hundredths(),
        causes.finished().hundredths()
            + causes.laps().hundredths()
            + causes.offcutsKept().hundredths()
            + causes.kerf().hundredths()
            + causes.endTrim().hundredths()
            + causes.scrap().hundredths());
    assertEquals(
        causes.bought().hundredths(),
        causes.cut().hundredths()
            + causes.fromStock().hundredths()
            + causes.surplus().hundredths()
            + causes.shortAllowance().hundredths());
    assertEquals(Percent.of(bought, finished), causes.bought());
  }
}
