package lapwright.measure;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/** Amounts of money and weights as people write them, exact. */
public final class DecimalText {
  /** The highest price that is taken. */
  public static final BigDecimal MOST = new BigDecimal("1000000000");

  private static final Pattern PLAIN = Pattern.compile("\\d{1,12}(\\.\\d{1,10})?|\\.\\d{1,10}");
  private static final Pattern COMMA = Pattern.compile(".*\\d,\\d.*");
  private static final Pattern RATE =
      Pattern.compile("(\\S+?)\\s*(lb|lbs|kg)\\s*/\\s*(ft|m)", Pattern.CASE_INSENSITIVE);

  private DecimalText() {}

  /** An amount of money that is not negative, such as {@code 41.00}. */
  public static Reading<BigDecimal> money(String text) {
    String trimmed = text.strip();
    if (trimmed.startsWith("-")) {
      return Reading.refused("an amount is not negative", "Leave the minus sign out.");
    }
    if (COMMA.matcher(trimmed).matches()) {
      return Reading.refused(
          "a comma in a number", "Write a point for decimals and nothing between thousands.");
    }
    if (!PLAIN.matcher(trimmed).matches()) {
      return Reading.refused(
          "not an amount of money",
          "Write digits with a point, such as 41.00, without currency sign or letters.");
    }
    BigDecimal amount = new BigDecimal(trimmed);
    if (amount.compareTo(MOST) > 0) {
      return Reading.refused("more than 1,000,000,000", "Is the amount right?");
    }
    return Reading.of(amount);
  }

  /** A weight per length, such as {@code 4.31 lb/ft} or {@code 6.4 kg/m}. */
  public static Reading<WeightRate> weight(String text) {
    var matcher = RATE.matcher(text.strip());
    if (!matcher.matches()) {
      return Reading.refused("not a weight", "Write a weight per length, 4.31 lb/ft or 6.4 kg/m.");
    }
    String number = matcher.group(1);
    if (COMMA.matcher(number).matches()) {
      return Reading.refused("a comma in a number", "Write a point for decimals.");
    }
    if (!PLAIN.matcher(number).matches() || new BigDecimal(number).signum() == 0) {
      return Reading.refused("a weight is a number above 0", "Write it as 4.31 lb/ft or 6.4 kg/m.");
    }
    return Reading.of(
        new WeightRate(
            new BigDecimal(number),
            matcher.group(2).equalsIgnoreCase("kg")
                ? WeightRate.WeightUnit.KILOGRAM
                : WeightRate.WeightUnit.POUND,
            matcher.group(3).equalsIgnoreCase("m")
                ? WeightRate.LengthUnit.METRE
                : WeightRate.LengthUnit.FOOT));
  }
}
