package lapwright.measure;

/**
 * An exact length in units of 1/16,000 mm, in which 1/64 in, half of it, and 1/16,000 mm are whole
 * numbers (1 in = 25.4 mm exactly: NBS Circular 572 addendum, 1960).
 *
 * @param units the length in 1/16,000 mm; may be negative in intermediate results only
 */
public record Length(long units) implements Comparable<Length> {
  public static final long UNITS_PER_MM = 16_000;
  public static final long UNITS_PER_INCH = 406_400;
  public static final long UNITS_PER_FOOT = 12 * UNITS_PER_INCH;
  public static final long UNITS_PER_SIXTEENTH = UNITS_PER_INCH / 16;
  public static final long UNITS_PER_SIXTY_FOURTH = UNITS_PER_INCH / 64;

  public static final Length ZERO = new Length(0);

  public static Length ofUnits(long units) {
    return new Length(units);
  }

  public static Length ofInches(long inches) {
    return new Length(Math.multiplyExact(inches, UNITS_PER_INCH));
  }

  public static Length ofSixteenths(long sixteenths) {
    return new Length(Math.multiplyExact(sixteenths, UNITS_PER_SIXTEENTH));
  }

  /** {@code feet} feet and {@code inches} inches. */
  public static Length ofFeet(long feet, long inches) {
    return ofInches(Math.addExact(Math.multiplyExact(feet, 12), inches));
  }

  public static Length ofMm(long mm) {
    return new Length(Math.multiplyExact(mm, UNITS_PER_MM));
  }

  public Length plus(Length other) {
    return new Length(Math.addExact(units, other.units));
  }

  public Length minus(Length other) {
    return new Length(Math.subtractExact(units, other.units));
  }

  public Length times(long count) {
    return new Length(Math.multiplyExact(units, count));
  }

  public boolean isZero() {
    return units == 0;
  }

  public boolean isLongerThan(Length other) {
    return units > other.units;
  }

  public boolean isShorterThan(Length other) {
    return units < other.units;
  }

  @Override
  public int compareTo(Length other) {
    return Long.compare(units, other.units);
  }
}
