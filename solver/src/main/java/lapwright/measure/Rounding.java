package lapwright.measure;

import java.math.BigInteger;

/** Exact division, rounded once. */
final class Rounding {
  private Rounding() {}

  /** {@code numerator / denominator} to the nearest whole number, half away from zero. */
  static BigInteger halfAway(BigInteger numerator, BigInteger denominator) {
    if (denominator.signum() <= 0) {
      throw new IllegalArgumentException("denominator " + denominator + " is not positive");
    }
    BigInteger twice = denominator.shiftLeft(1);
    BigInteger magnitude = numerator.abs().shiftLeft(1).add(denominator).divide(twice);
    return numerator.signum() < 0 ? magnitude.negate() : magnitude;
  }
}
