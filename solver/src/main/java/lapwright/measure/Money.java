package lapwright.measure;

import java.math.BigInteger;

/**
 * An exact amount of money.
 *
 * @param tenThousandths the amount in 1/10,000 of the currency
 */
public record Money(long tenThousandths) implements Comparable<Money> {
  public static final long PER_UNIT = 10_000;
  public static final long PER_CENT = 100;

  public static final Money ZERO = new Money(0);

  public static Money ofCents(long cents) {
    return new Money(Math.multiplyExact(cents, PER_CENT));
  }

  /** {@code numerator / denominator} of 1/10,000, rounded once, half away from zero. */
  public static Money rounded(BigInteger numerator, BigInteger denominator) {
    return new Money(Rounding.halfAway(numerator, denominator).longValueExact());
  }

  public Money plus(Money other) {
    return new Money(Math.addExact(tenThousandths, other.tenThousandths));
  }

  public Money minus(Money other) {
    return new Money(Math.subtractExact(tenThousandths, other.tenThousandths));
  }

  public Money times(long count) {
    return new Money(Math.multiplyExact(tenThousandths, count));
  }

  /** The amount in whole cents, half a cent away from zero, as an invoice says it. */
  public Money toCent() {
    return ofCents(
        Rounding.halfAway(BigInteger.valueOf(tenThousandths), BigInteger.valueOf(PER_CENT))
            .longValueExact());
  }

  public boolean isZero() {
    return tenThousandths == 0;
  }

  @Override
  public int compareTo(Money other) {
    return Long.compare(tenThousandths, other.tenThousandths);
  }
}
