package lapwright.paperwork;

import java.math.BigInteger;
import lapwright.measure.Length;

/** Ratios of lengths as whole hundredths of a percent, rounded once. */
final class Ratio {
  private static final BigInteger HUNDREDTHS = BigInteger.valueOf(10_000);

  private Ratio() {}

  /** {@code part / whole} in hundredths of a percent, half up; 0 when both are 0. */
  static long hundredthsOfPercent(Length part, Length whole) {
    if (whole.isZero()) {
      if (part.isZero()) {
        return 0;
      }
      throw new IllegalArgumentException("a ratio to nothing");
    }
    BigInteger denominator = BigInteger.valueOf(whole.units());
    return BigInteger.valueOf(part.units())
        .multiply(HUNDREDTHS)
        .shiftLeft(1)
        .add(denominator)
        .divide(denominator.shiftLeft(1))
        .longValueExact();
  }

  /** {@code part / whole} in hundredths of a percent, rounded up, for what is promised. */
  static long hundredthsOfPercentUp(long part, long whole) {
    BigInteger[] quotient =
        BigInteger.valueOf(part)
            .multiply(HUNDREDTHS)
            .divideAndRemainder(BigInteger.valueOf(Math.max(1, whole)));
    return quotient[0].longValueExact() + (quotient[1].signum() > 0 ? 1 : 0);
  }
}
