package lapwright.measure;

import java.math.BigInteger;

/**
 * A share, rounded once to hundredths of a percent.
 *
 * @param hundredths 1/100 %
 */
public record Percent(long hundredths) implements Comparable<Percent> {
  private static final BigInteger WHOLE = BigInteger.valueOf(10_000);

  /** {@code part / whole}, half away from zero; 0 of nothing is 0. */
  public static Percent of(long part, long whole) {
    if (part == 0) {
      return new Percent(0);
    }
    return new Percent(
        Rounding.halfAway(BigInteger.valueOf(part).multiply(WHOLE), BigInteger.valueOf(whole))
            .longValueExact());
  }

  /** Such as {@code 3.25 %}. */
  public String print() {
    long magnitude = Math.abs(hundredths);
    return (hundredths < 0 ? "-" : "")
        + magnitude / 100
        + (magnitude % 100 < 10 ? ".0" : ".")
        + magnitude % 100
        + " %";
  }

  @Override
  public int compareTo(Percent other) {
    return Long.compare(hundredths, other.hundredths);
  }
}
