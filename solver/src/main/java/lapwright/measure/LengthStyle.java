package lapwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * How lengths are printed. {@link #nearest} is for people: on the grid of a tape, with {@code +} or
 * {@code -} where the true length is longer or shorter than what is printed. {@link #exact} loses
 * nothing: {@link LengthText} reads it back as it was.
 */
public enum LengthStyle {
  /** Feet, inches and sixteenths: {@code 9'-6"}, {@code 11'-11-15/16"+}, {@code 3/4"}. */
  FEET_INCHES(Length.UNITS_PER_SIXTEENTH),
  /** Millimetres and halves: {@code 3200 mm}, {@code 2895.5+ mm}. */
  MILLIMETRES(Length.UNITS_PER_MM / 2);

  private final long grid;

  LengthStyle(long grid) {
    this.grid = grid;
  }

  /** The nearest length on the grid, with its unit and {@code +} or {@code -} where it is off. */
  public String nearest(Length length) {
    long steps = Math.floorDiv(Math.addExact(length.units(), grid / 2), grid);
    long onGrid = Math.multiplyExact(steps, grid);
    String sign = length.units() > onGrid ? "+" : length.units() < onGrid ? "-" : "";
    return this == MILLIMETRES ? mm(onGrid) + sign + " mm" : feetInches(onGrid, 16) + sign;
  }

  /** The shortest length on the grid that is at least {@code length}. */
  public String atLeast(Length length) {
    long onGrid = Math.multiplyExact(-Math.floorDiv(-length.units(), grid), grid);
    return this == MILLIMETRES ? mm(onGrid) + " mm" : feetInches(onGrid, 16);
  }

  /** True when {@link #nearest} hides nothing. */
  public boolean isOnGrid(Length length) {
    return length.units() % grid == 0;
  }

  /**
   * The length itself: in feet and inches where 64ths can say it, else in millimetres with as many
   * decimals as it takes (at most 7).
   */
  public String exact(Length length) {
    if (this == FEET_INCHES && length.units() % Length.UNITS_PER_SIXTY_FOURTH == 0) {
      return feetInches(length.units(), 64);
    }
    return exactMm(length).toPlainString() + " mm";
  }

  /** The exact length in millimetres, without trailing zeros. */
  public static BigDecimal exactMm(Length length) {
    BigDecimal mm =
        new BigDecimal(length.units())
            .divide(BigDecimal.valueOf(Length.UNITS_PER_MM)) // 16,000 = 2^7 x 5^3 divides exactly
            .stripTrailingZeros();
    return mm.scale() < 0 ? mm.setScale(0) : mm;
  }

  private static String mm(long units) {
    return exactMm(Length.ofUnits(units)).toPlainString();
  }

  private static String feetInches(long units, int denominator) {
    String sign = units < 0 ? "-" : "";
    long parts = Math.abs(units) / (Length.UNITS_PER_INCH / denominator);
    long feet = parts / (12L * denominator);
    long inches = parts / denominator % 12;
    long rest = parts % denominator;
    StringBuilder text = new StringBuilder(sign);
    if (feet > 0) {
      text.append(feet).append("'-");
    }
    if (feet > 0 || inches > 0 || rest == 0) {
      text.append(inches);
      if (rest > 0) {
        text.append('-');
      }
    }
    if (rest > 0) {
      int divisor = BigInteger.valueOf(rest).gcd(BigInteger.valueOf(denominator)).intValueExact();
      text.append(rest / divisor).append('/').append(denominator / divisor);
    }
    return text.append('"').toString();
  }
}
