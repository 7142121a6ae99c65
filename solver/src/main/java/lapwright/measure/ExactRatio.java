package lapwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * A rational number that is not negative.
 *
 * @param denominator positive
 */
record ExactRatio(BigInteger numerator, BigInteger denominator) {
  static final ExactRatio ZERO = new ExactRatio(BigInteger.ZERO, BigInteger.ONE);

  ExactRatio {
    if (numerator.signum() < 0 || denominator.signum() <= 0) {
      throw new IllegalArgumentException(numerator + "/" + denominator);
    }
  }

  static ExactRatio of(BigDecimal decimal) {
    return decimal.scale() > 0
        ? new ExactRatio(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()))
        : new ExactRatio(decimal.toBigIntegerExact(), BigInteger.ONE);
  }

  ExactRatio plus(ExactRatio other) {
    return new ExactRatio(
        numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
        denominator.multiply(other.denominator));
  }

  ExactRatio times(long factor) {
    return new ExactRatio(numerator.multiply(BigInteger.valueOf(factor)), denominator);
  }

  boolean isZero() {
    return numerator.signum() == 0;
  }

  boolean isWhole() {
    return numerator.mod(denominator).signum() == 0;
  }

  boolean isMoreThan(long whole) {
    return numerator.compareTo(denominator.multiply(BigInteger.valueOf(whole))) > 0;
  }

  long roundedDown() {
    return numerator.divide(denominator).longValueExact();
  }

  long roundedUp() {
    return numerator.add(denominator).subtract(BigInteger.ONE).divide(denominator).longValueExact();
  }
}
