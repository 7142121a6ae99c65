package lapwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.function.Function;

/**
 * Lengths divided by cosines and times tangents of rational angles, rounded up without error.
 *
 * <p>Sine and cosine are summed by their series to so many digits that the result lies between two
 * bounds that round up to the same unit; where they do not, twice the digits are taken. That ends:
 * for an angle of a rational number of degrees from 0 to 60, cosine and tangent are irrational
 * except cos 0 = 1, cos 60 = 1/2, tan 0 = 0 and tan 45 = 1 (I. Niven, Irrational Numbers, 1956,
 * corollary 3.12), which are worked out as they are, so no other result is a whole number.
 */
final class Trigonometry {
  private static final int SIXTY = 60_000;
  private static final int FORTY_FIVE = 45_000;
  private static final int FIRST_DIGITS = 50;

  /** Digits that the sums may lose: far fewer than 10^10 roundings of one unit each. */
  private static final int GUARD_DIGITS = 10;

  private Trigonometry() {}

  /** The least whole number that is at least {@code length} / cos(angle). */
  static long overCosineUp(long length, int thousandths) {
    if (length == 0 || thousandths == 0) {
      return length;
    }
    if (thousandths == SIXTY) {
      return Math.multiplyExact(length, 2L);
    }
    return roundedUp(
        sines ->
            new Bounds(
                over(length, sines.cosineHigh(), RoundingMode.FLOOR, sines.context()),
                over(length, sines.cosineLow(), RoundingMode.CEILING, sines.context())),
        thousandths);
  }

  /** The least whole number that is at least {@code length} x tan(angle). */
  static long timesTangentUp(long length, int thousandths) {
    if (length == 0 || thousandths == 0) {
      return 0;
    }
    if (thousandths == FORTY_FIVE) {
      return length;
    }
    return roundedUp(
        sines ->
            new Bounds(
                over(length, sines.cosineHigh(), RoundingMode.FLOOR, sines.context())
                    .multiply(sines.sineLow()),
                over(length, sines.cosineLow(), RoundingMode.CEILING, sines.context())
                    .multiply(sines.sineHigh())),
        thousandths);
  }

  private record Bounds(BigDecimal low, BigDecimal high) {}

  private static long roundedUp(Function<Sines, Bounds> value, int thousandths) {
    for (int digits = FIRST_DIGITS; ; digits *= 2) {
      Bounds bounds = value.apply(Sines.of(thousandths, digits));
      BigInteger low = up(bounds.low());
      if (low.equals(up(bounds.high()))) {
        return low.longValueExact();
      }
    }
  }

  private static BigInteger up(BigDecimal value) {
    return value.setScale(0, RoundingMode.CEILING).toBigIntegerExact();
  }

  private static BigDecimal over(
      long length, BigDecimal cosine, RoundingMode mode, MathContext context) {
    return BigDecimal.valueOf(length)
        .divide(cosine, new MathContext(context.getPrecision() + GUARD_DIGITS, mode));
  }

  /** Sine and cosine with bounds of their error. */
  private record Sines(
      BigDecimal sineLow,
      BigDecimal sineHigh,
      BigDecimal cosineLow,
      BigDecimal cosineHigh,
      MathContext context) {

    static Sines of(int thousandths, int digits) {
      MathContext context = new MathContext(digits + GUARD_DIGITS, RoundingMode.HALF_EVEN);
      BigDecimal arc =
          pi(context)
              .multiply(BigDecimal.valueOf(thousandths), context)
              .divide(BigDecimal.valueOf(180_000), context);
      BigDecimal least = BigDecimal.ONE.movePointLeft(digits + GUARD_DIGITS);
      BigDecimal sine = BigDecimal.ZERO;
      BigDecimal cosine = BigDecimal.ZERO;
      BigDecimal term = BigDecimal.ONE;
      for (int n = 0; term.abs().compareTo(least) > 0; n++) {
        boolean minus = n % 4 >= 2;
        if (n % 2 == 0) {
          cosine = minus ? cosine.subtract(term, context) : cosine.add(term, context);
        } else {
          sine = minus ? sine.subtract(term, context) : sine.add(term, context);
        }
        term = term.multiply(arc, context).divide(BigDecimal.valueOf(n + 1L), context);
      }
      BigDecimal error = BigDecimal.ONE.movePointLeft(digits);
      return new Sines(
          sine.subtract(error),
          sine.add(error),
          cosine.subtract(error),
          cosine.add(error),
          context);
    }

    /** 16 arctan(1/5) - 4 arctan(1/239): J. Machin, 1706. */
    private static BigDecimal pi(MathContext context) {
      return inverseTangentOfOneOver(5, context)
          .multiply(BigDecimal.valueOf(16))
          .subtract(inverseTangentOfOneOver(239, context).multiply(BigDecimal.valueOf(4)), context);
    }

    private static BigDecimal inverseTangentOfOneOver(int x, MathContext context) {
      BigDecimal least = BigDecimal.ONE.movePointLeft(context.getPrecision());
      BigDecimal square = BigDecimal.valueOf((long) x * x);
      BigDecimal power = BigDecimal.ONE.divide(BigDecimal.valueOf(x), context);
      BigDecimal sum = BigDecimal.ZERO;
      for (int n = 1; power.compareTo(least) > 0; n += 2) {
        BigDecimal term = power.divide(BigDecimal.valueOf(n), context);
        sum = n % 4 == 1 ? sum.add(term, context) : sum.subtract(term, context);
        power = power.divide(square, context);
      }
      return sum;
    }
  }
}
