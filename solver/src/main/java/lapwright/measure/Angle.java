package lapwright.measure;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How far a saw cut is turned from square: 0 is a square cut, 45 a miter of 45 degrees. Counted as
 * a saw's scale counts it, in whole thousandths of a degree, up to 60 degrees.
 *
 * @param thousandths of a degree, from 0 to 60,000
 */
public record Angle(int thousandths) implements Comparable<Angle> {
  /** The steepest cut that is planned. */
  public static final int MOST_DEGREES = 60;

  public static final Angle SQUARE = new Angle(0);

  private static final int PER_DEGREE = 1_000;
  private static final String REMEDY =
      "Write degrees from square, such as 45 or 22.5; 0 or square is a square end.";
  private static final Pattern TEXT =
      Pattern.compile("(\\d{1,3}(?:\\.\\d{1,12})?)\\s*(?:\u00b0|deg|degrees)?");

  public Angle {
    if (thousandths < 0 || thousandths > MOST_DEGREES * PER_DEGREE) {
      throw new IllegalArgumentException("an angle of " + thousandths + "/1000 degrees");
    }
  }

  public static Angle ofDegrees(int degrees) {
    return new Angle(Math.multiplyExact(degrees, PER_DEGREE));
  }

  /** Reads {@code 45}, {@code 22.5}, {@code 45 deg}, {@code square}. */
  public static Reading<Angle> read(String text) {
    String typed = text.strip();
    if (typed.equals("square")) {
      return Reading.of(SQUARE);
    }
    Matcher matcher = TEXT.matcher(typed);
    if (!matcher.matches()) {
      return Reading.refused("not an angle", REMEDY);
    }
    BigDecimal thousandths = new BigDecimal(matcher.group(1)).movePointRight(3);
    if (thousandths.compareTo(BigDecimal.valueOf((long) MOST_DEGREES * PER_DEGREE)) > 0) {
      return Reading.refused(
          "more than " + MOST_DEGREES + " degrees from square",
          "Is it counted from the length of the stick? 90 less the angle is what counts here.");
    }
    if (thousandths.stripTrailingZeros().scale() > 0) {
      return Reading.refused("finer than 0.001 degrees", "Write at most three decimals.");
    }
    return Reading.of(new Angle(thousandths.intValueExact()));
  }

  public boolean isSquare() {
    return thousandths == 0;
  }

  /**
   * What a cut at this angle takes along the stick: kerf / cos(angle), rounded up to the next unit.
   */
  public Length cutWidth(Length kerf) {
    return Length.ofUnits(Trigonometry.overCosineUp(kerf.units(), thousandths));
  }

  /**
   * How far the long point of an end at this angle lies before its short point: depth x tan(angle),
   * rounded up to the next unit.
   *
   * @param depth of the section in the plane in which the saw is turned
   */
  public Length skew(Length depth) {
    return Length.ofUnits(Trigonometry.timesTangentUp(depth.units(), thousandths));
  }

  /** Degrees as people write them, such as {@code 22.5}. */
  public String degrees() {
    return BigDecimal.valueOf(thousandths, 3).stripTrailingZeros().toPlainString();
  }

  @Override
  public int compareTo(Angle other) {
    return Integer.compare(thousandths, other.thousandths);
  }
}
