package lapwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Scans one length from left to right: a quantity with its unit, or feet followed by inches. Gives
 * the length in 1/16,000 mm.
 */
final class LengthScanner {
  private static final String SINGLE_QUOTES = "'\u2018\u2019\u201b\u2032\u02b9\u02bc";
  private static final String DOUBLE_QUOTES = "\"\u201c\u201d\u201f\u2033\u02ba";
  private static final String DASHES = "-\u2010\u2011\u2012\u2013\u2014\u2212";
  private static final String SLASHES = "/\u2044\u2215";
  private static final String VULGAR_FRACTIONS = "¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞";
  private static final int[] VULGAR_NUMERATORS = {1, 1, 3, 1, 2, 1, 2, 3, 4, 1, 5, 1, 3, 5, 7};
  private static final int[] VULGAR_DENOMINATORS = {4, 2, 4, 3, 3, 5, 5, 5, 5, 6, 6, 8, 8, 8, 8};

  private final String text;
  private int at;

  LengthScanner(String text, int from) {
    this.text = text;
    this.at = from;
  }

  int position() {
    return at;
  }

  /** A number as typed: whole or decimal, a fraction, or a whole number and a fraction. */
  private record Quantity(ExactRatio value, boolean whole, boolean mixed, String typed) {}

  private enum Unit {
    NONE(0),
    FOOT(Length.UNITS_PER_FOOT),
    INCH(Length.UNITS_PER_INCH),
    MILLIMETRE(Length.UNITS_PER_MM),
    CENTIMETRE(10 * Length.UNITS_PER_MM),
    METRE(1000 * Length.UNITS_PER_MM);

    private final long units;

    Unit(long units) {
      this.units = units;
    }
  }

  /** What stops the scan; it never leaves this class. */
  private static final class Stop extends Exception {
    private static final long serialVersionUID = 1L;
    private final String wrong;
    private final String remedy;

    Stop(String wrong, String remedy) {
      super(wrong, null, false, false);
      this.wrong = wrong;
      this.remedy = remedy;
    }
  }

  Reading<ExactRatio> scan() {
    try {
      skipSpaces();
      if (at < text.length() && isOneOf(DASHES, at)) {
        throw new Stop("a length is not negative", "Leave the minus sign out.");
      }
      Quantity first = quantity();
      if (first == null) {
        throw new Stop("not a length", "Write a length with its unit, such as 10'-6\" or 3200 mm.");
      }
      Unit unit = unit();
      return switch (unit) {
        case NONE -> withoutUnit(first);
        case FOOT -> feetAndMaybeInches(first);
        default -> ended(new Reading.Value<>(first.value().times(unit.units), List.of()));
      };
    } catch (Stop stop) {
      return Reading.refused(stop.wrong, stop.remedy);
    }
  }

  private Reading<ExactRatio> withoutUnit(Quantity number) throws Stop {
    int mark = at;
    int spaces = skipSpaces();
    boolean dashed = spaces == 0 && at < text.length() && isOneOf(DASHES, at);
    if (dashed) {
      at++;
    }
    boolean digitsFollow = at < text.length() && isDigit(at);
    if (digitsFollow && dashed) {
      throw new Stop(
          "a dash between two numbers, and no foot mark", "Write feet and inches as 10'-6\".");
    }
    if (digitsFollow && spaces > 0) {
      throw new Stop("a space inside a number, or no unit", "Write 3200 mm, 10'-6\" or 126\".");
    }
    at = mark;
    if (number.value().isZero() && number.whole()) {
      return ended(Reading.of(ExactRatio.ZERO));
    }
    String n = number.typed();
    throw new Stop(
        "a number without a unit",
        number.mixed()
            ? "Write " + n + "\" for inches, or give mm."
            : "Write " + n + "' for feet, " + n + "\" for inches or " + n + " mm.");
  }

  private Reading<ExactRatio> feetAndMaybeInches(Quantity feet) throws Stop {
    if (feet.mixed()) {
      throw new Stop(
          "a fraction of a foot, or is a mark missing?", "Write feet and inches, such as 10'-6\".");
    }
    int afterFeet = at;
    int spaces = skipSpaces();
    boolean dashed = at < text.length() && isOneOf(DASHES, at);
    if (dashed) {
      at++;
      spaces += skipSpaces();
    }
    boolean numberFollows = at < text.length() && startsNumber(at) && !isPartOfWord();
    Quantity inches = numberFollows ? quantity() : null;
    if (inches == null) {
      at = afterFeet;
      return ended(new Reading.Value<>(feet.value().times(Length.UNITS_PER_FOOT), List.of()));
    }
    Unit unit = unit();
    if (unit == Unit.NONE && spaces > 0 && inches.typed().matches("0\\d+")) {
      at = afterFeet; // Nobody writes inches as 007; it is a mark.
      return ended(new Reading.Value<>(feet.value().times(Length.UNITS_PER_FOOT), List.of()));
    }
    if (unit == Unit.NONE && spaces > 0) {
      throw new Stop(
          "is the " + inches.typed() + " after the feet inches, or a mark?",
          "Put an inch mark after inches, and a letter before a mark that is a number.");
    }
    if (unit != Unit.NONE && unit != Unit.INCH) {
      throw new Stop("feet are followed by inches only", "Write one length, such as 10'-6\".");
    }
    if (!feet.whole() && !inches.value().isZero()) {
      throw new Stop(
          "feet with a decimal point and inches as well", "Write either 10.5' or 10'-6\".");
    }
    List<String> notes =
        isFootOrMore(inches.value())
            ? List.of("a foot or more of inches after feet; is that meant?")
            : List.of();
    return ended(
        new Reading.Value<>(
            feet.value()
                .times(Length.UNITS_PER_FOOT)
                .plus(inches.value().times(Length.UNITS_PER_INCH)),
            notes));
  }

  private static boolean isFootOrMore(ExactRatio inches) {
    return inches.numerator().compareTo(inches.denominator().multiply(BigInteger.valueOf(12))) >= 0;
  }

  /** A length ends where the text does, or at a space. */
  private Reading<ExactRatio> ended(Reading<ExactRatio> reading) throws Stop {
    if (at < text.length() && !isSpace(at)) {
      int end = at;
      while (end < text.length() && !isSpace(end)) {
        end++;
      }
      String rest = text.substring(at, end);
      throw new Stop(
          "'" + rest + "' is not understood after the length",
          "Write one length, such as 10'-6-1/2\", 126.5\" or 3200 mm.");
    }
    return reading;
  }

  private @Nullable Quantity quantity() throws Stop {
    int start = at;
    ExactRatio fraction = fraction();
    if (fraction != null) {
      return new Quantity(fraction, false, true, text.substring(start, at));
    }
    String digits = digits();
    boolean decimal = at < text.length() && text.charAt(at) == '.';
    if (decimal) {
      at++;
      String decimals = digits();
      if (digits.isEmpty() && decimals.isEmpty()) {
        at = start;
        return null;
      }
      refuseComma();
      BigDecimal value = new BigDecimal("0" + digits + "." + (decimals.isEmpty() ? "0" : decimals));
      return new Quantity(ExactRatio.of(value), false, false, text.substring(start, at));
    }
    if (digits.isEmpty()) {
      return null;
    }
    refuseComma();
    ExactRatio whole = new ExactRatio(new BigInteger(digits), BigInteger.ONE);
    int afterWhole = at;
    if (skipSpaces() == 0 && at < text.length() && isOneOf(DASHES, at)) {
      at++;
    }
    ExactRatio rest = fraction();
    if (rest == null) {
      at = afterWhole;
      return new Quantity(whole, true, false, digits);
    }
    return new Quantity(whole.plus(rest), false, true, text.substring(start, at));
  }

  private void refuseComma() throws Stop {
    if (at + 1 < text.length() && text.charAt(at) == ',' && isDigit(at + 1)) {
      throw new Stop(
          "a comma in a number", "Write a point for decimals and nothing between thousands.");
    }
  }

  /** {@code 3/16} or {@code ½}; moves on only when it is there. */
  private @Nullable ExactRatio fraction() throws Stop {
    int start = at;
    if (at < text.length()) {
      int vulgar = VULGAR_FRACTIONS.indexOf(text.charAt(at));
      if (vulgar >= 0) {
        at++;
        return new ExactRatio(
            BigInteger.valueOf(VULGAR_NUMERATORS[vulgar]),
            BigInteger.valueOf(VULGAR_DENOMINATORS[vulgar]));
      }
    }
    String numerator = digits();
    if (numerator.isEmpty() || at >= text.length() || !isOneOf(SLASHES, at)) {
      at = start;
      return null;
    }
    at++;
    String denominator = digits();
    String typed = text.substring(start, at);
    if (denominator.isEmpty() || new BigInteger(denominator).signum() == 0) {
      throw new Stop("the fraction " + typed + " has no value", "Write it as 3/16.");
    }
    ExactRatio value = new ExactRatio(new BigInteger(numerator), new BigInteger(denominator));
    if (value.numerator().compareTo(value.denominator()) >= 0) {
      throw new Stop(
          "the fraction " + typed + " is one or more", "Write it as whole and part, like 1-1/8\".");
    }
    return value;
  }

  private String digits() {
    int start = at;
    while (at < text.length() && isDigit(at)) {
      at++;
    }
    return text.substring(start, at);
  }

  private Unit unit() {
    int mark = at;
    skipSpaces();
    if (at < text.length() && isOneOf(DOUBLE_QUOTES, at)) {
      return unitMark(mark, 1, Unit.INCH);
    }
    if (at < text.length() && isOneOf(SINGLE_QUOTES, at)) {
      boolean two = at + 1 < text.length() && isOneOf(SINGLE_QUOTES, at + 1);
      return two ? unitMark(mark, 2, Unit.INCH) : unitMark(mark, 1, Unit.FOOT);
    }
    int start = at;
    while (at < text.length() && Character.isLetter(text.charAt(at))) {
      at++;
    }
    Unit unit =
        switch (text.substring(start, at).toLowerCase(Locale.ROOT)) {
          case "ft", "foot", "feet" -> Unit.FOOT;
          case "in", "inch", "inches" -> Unit.INCH;
          case "mm" -> Unit.MILLIMETRE;
          case "cm" -> Unit.CENTIMETRE;
          case "m" -> Unit.METRE;
          default -> Unit.NONE;
        };
    if (unit == Unit.NONE) {
      at = mark;
    } else if (unit.units % Length.UNITS_PER_INCH == 0
        && at < text.length()
        && text.charAt(at) == '.') {
      at++;
    }
    return unit;
  }

  private Unit unitMark(int mark, int characters, Unit unit) {
    if (at > mark && at + characters < text.length() && !isSpace(at + characters)) {
      // A quote that stands before a word opens it; it is no unit of the number before.
      boolean joins = isOneOf(DASHES, at + characters) || startsNumber(at + characters);
      if (!joins) {
        at = mark;
        return Unit.NONE;
      }
    }
    at += characters;
    return unit;
  }

  private boolean startsNumber(int index) {
    return isDigit(index)
        || VULGAR_FRACTIONS.indexOf(text.charAt(index)) >= 0
        || (text.charAt(index) == '.' && index + 1 < text.length() && isDigit(index + 1));
  }

  /** A mark such as 2E1 or 3A is a word, though it starts with a digit. */
  private boolean isPartOfWord() {
    int end = at;
    while (end < text.length() && isDigit(end)) {
      end++;
    }
    if (end >= text.length() || !Character.isLetter(text.charAt(end))) {
      return false;
    }
    int wordEnd = end;
    while (wordEnd < text.length() && Character.isLetterOrDigit(text.charAt(wordEnd))) {
      wordEnd++;
    }
    return switch (text.substring(end, wordEnd).toLowerCase(Locale.ROOT)) {
      case "ft", "foot", "feet", "in", "inch", "inches", "mm", "cm", "m" -> false;
      default -> true;
    };
  }

  private int skipSpaces() {
    int start = at;
    while (at < text.length() && isSpace(at)) {
      at++;
    }
    return at - start;
  }

  private boolean isSpace(int index) {
    char c = text.charAt(index);
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  private boolean isDigit(int index) {
    char c = text.charAt(index);
    return c >= '0' && c <= '9';
  }

  private boolean isOneOf(String characters, int index) {
    return characters.indexOf(text.charAt(index)) >= 0;
  }
}
