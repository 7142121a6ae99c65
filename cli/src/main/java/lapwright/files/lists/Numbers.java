package lapwright.files.lists;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.LengthText;
import lapwright.measure.Reading;
import lapwright.measure.SafeSide;
import org.jspecify.annotations.Nullable;

/**
 * Quantities and lengths as they stand in cells. A spreadsheet that separates cells by semicolons
 * writes decimals with a comma, one that separates them by commas with a point; what could be read
 * both ways is refused.
 */
final class Numbers {
  private static final Pattern COUNT =
      Pattern.compile(
          "(?i)(?:x\\s*)?([\\d.,]+)\\s*(?:x|ea|each|pc|pcs|piece|pieces|no|nos|off|req'?d)?\\.?");
  private static final Pattern THOUSANDS = Pattern.compile("[1-9]\\d{0,2}([.,])\\d{3}");
  private static final Pattern DIGITS = Pattern.compile("[\\d.,]+");
  private static final int MOST_DIGITS = 18;
  private static final int LEAST_DECIMALS = 3;
  private static final int SIXTEENTHS_PER_FOOT = 192;
  private static final int MOST_SIXTEENTHS = 600_000;
  private static final Length SIXTEENTH = Length.ofUnits(Length.ofInches(1).units() / 16);

  private final char separator;

  Numbers(char separator) {
    this.separator = separator;
  }

  /** {@code 4}, {@code 4 ea}, {@code 4.0}, {@code x4}; 0 is taken too. */
  Reading<Integer> quantity(String cell) {
    Matcher matcher = COUNT.matcher(cell.strip());
    if (!matcher.matches()) {
      return Reading.refused("not a quantity", "Write a whole number, such as 4 or 4 ea.");
    }
    String digits = matcher.group(1);
    String plain = plain(digits);
    if (plain == null) {
      return ambiguous(digits);
    }
    BigDecimal number = number(plain);
    if (number == null || number.stripTrailingZeros().scale() > 0) {
      return Reading.refused("not a whole number", "Write a whole number, such as 4 or 4 ea.");
    }
    return number.compareTo(BigDecimal.valueOf(1_000_000)) > 0
        ? Reading.refused("more than 1,000,000", "Is the number right?")
        : Reading.of(number.intValueExact());
  }

  /** A length with its own unit, or a bare number of {@code unit}. */
  Reading<Length> length(String cell, @Nullable LengthUnit unit) {
    String text = cell.strip();
    if (DIGITS.matcher(text).matches()) {
      String plain = plain(text);
      if (plain == null) {
        return ambiguous(text);
      }
      if (unit == null) {
        return Reading.refused(
            "a number without a unit, and none in the header",
            "Name the unit in the header, such as Length (in), or read it with --unit in.");
      }
      Length meant = unit == LengthUnit.FOOT ? sixteenths(plain) : null;
      return meant == null
          ? LengthText.read(plain + unit.sign(), SafeSide.LONGER)
          : new Reading.Value<>(
              meant, List.of("taken for " + LengthStyle.FEET_INCHES.exact(meant)));
    }
    boolean bareFraction = text.matches("(\\d+[ -])?\\d+\\s*/\\s*\\d+|\\d+\\s*[¼½¾]|[¼½¾]");
    if (bareFraction) {
      return unit == null
          ? Reading.refused(
              "a number without a unit, and none in the header",
              "Name the unit in the header, such as Length (in), or read it with --unit in.")
          : LengthText.read(text + unit.sign(), SafeSide.LONGER);
    }
    if (text.matches("\\d+\\s*-\\s*\\d+(\\.\\d+)?")) {
      return Reading.refused(
          "a dash between two numbers: feet and inches, or a date?",
          "Write it with its marks, such as 9'-6\".");
    }
    if (separator == ';') {
      text = text.replaceAll("(?<=\\d),(?=\\d)", ".");
    }
    return LengthText.read(text, SafeSide.LONGER);
  }

  /**
   * Decimals of a foot that a spreadsheet has rounded: 12.04166667 is 12'-0-1/2". With three
   * decimals or more there is at most one sixteenth of an inch that rounds to them; null when there
   * is none, or when the decimals are exact.
   */
  private static @Nullable Length sixteenths(String plain) {
    BigDecimal feet = number(plain);
    if (feet == null || feet.scale() < LEAST_DECIMALS) {
      return null;
    }
    BigDecimal exact = feet.multiply(BigDecimal.valueOf(SIXTEENTHS_PER_FOOT));
    BigDecimal nearest = exact.setScale(0, RoundingMode.HALF_UP);
    BigDecimal off = exact.subtract(nearest).abs();
    BigDecimal rounding =
        BigDecimal.valueOf(5, feet.scale() + 1).multiply(BigDecimal.valueOf(SIXTEENTHS_PER_FOOT));
    boolean tooLong = nearest.compareTo(BigDecimal.valueOf(MOST_SIXTEENTHS)) > 0;
    return off.signum() == 0 || off.compareTo(rounding) > 0 || tooLong
        ? null
        : Length.ofInches(1)
            .times(nearest.longValueExact() / 16)
            .plus(SIXTEENTH.times(nearest.longValueExact() % 16));
  }

  private static <T> Reading<T> ambiguous(String digits) {
    return Reading.refused(
        "is the sign in " + digits + " a decimal, or does it part thousands?",
        "Format the column without signs between thousands, and export it again.");
  }

  private static @Nullable BigDecimal number(String plain) {
    return plain.length() > MOST_DIGITS || !plain.matches("\\d+(\\.\\d*)?|\\.\\d+")
        ? null
        : new BigDecimal(plain);
  }

  /** With a point before decimals and nothing between thousands; null when that is not certain. */
  private @Nullable String plain(String digits) {
    int comma = digits.lastIndexOf(',');
    int point = digits.lastIndexOf('.');
    if (comma >= 0 && point >= 0) {
      String thousands = comma > point ? "." : ",";
      String whole = digits.substring(0, Math.max(comma, point)).replace(thousands, "");
      return whole + "." + digits.substring(Math.max(comma, point) + 1);
    }
    Matcher group = THOUSANDS.matcher(digits);
    if (group.matches()) {
      boolean sign = group.group(1).equals(",");
      if (separator == '\t' || (separator == ';')) {
        return null;
      }
      return sign ? digits.replace(",", "") : digits;
    }
    return comma >= 0 && digits.indexOf(',') == comma ? digits.replace(',', '.') : digits;
  }
}
