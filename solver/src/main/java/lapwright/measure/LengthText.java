package lapwright.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Lengths as people write them: {@code 20'}, {@code 7-1/4"}, {@code 10'-6-1/2"}, {@code 10'6},
 * {@code 10.5'}, {@code 10 ft 6 in}, {@code 3200 mm}, {@code 3.2 m}, with typographic quotes,
 * primes, {@code ½} and two single quotes for inches. Read exactly; what does not lie on 1/16,000
 * mm goes to the safe side, with a note. A number without a unit is refused, except 0.
 */
public final class LengthText {
  /** No length in a shop is longer; more is a slip of the unit. */
  public static final Length LONGEST = Length.ofMm(1_000_000);

  private static final int LONGEST_TEXT = 80;
  private static final Pattern DATE =
      Pattern.compile(
          "(?i)\\d{4}-\\d{1,2}-\\d{1,2}.*|\\d{1,2}[/.]\\d{1,2}[/.]\\d{2,4}"
              + "|\\d{1,4}[- ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*([- ]\\d{2,4})?"
              + "|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[- ]\\d{1,4}");

  private LengthText() {}

  /** A length at the start of a text, and where it ends. */
  public record Prefix(Reading<Length> reading, int end) {}

  /** Reads a text that is a length and nothing else. */
  public static Reading<Length> read(String text, SafeSide side) {
    String trimmed = text.strip();
    if (trimmed.isEmpty()) {
      return Reading.refused(
          "no length", "Give a length with its unit, such as 10'-6\" or 3200 mm.");
    }
    if (trimmed.length() > LONGEST_TEXT) {
      return Reading.refused("too long for a length", "Give one length, such as 10'-6\".");
    }
    if (DATE.matcher(trimmed).matches()) {
      return Reading.refused(
          "a date where a length belongs: spreadsheets turn 10-6 into a date",
          "Format the column as text and type 10'-6\".");
    }
    Prefix prefix = readPrefix(text, 0, side);
    if (prefix.reading() instanceof Reading.Value<Length>
        && !text.substring(prefix.end()).isBlank()) {
      return Reading.refused(
          "not understood after '" + text.substring(0, prefix.end()).strip() + "'",
          "Write one length, such as 10'-6-1/2\", 126.5\" or 3200 mm.");
    }
    return prefix.reading();
  }

  /**
   * Reads the length that {@code text} begins with at {@code from}; words may follow it after a
   * space.
   */
  public static Prefix readPrefix(String text, int from, SafeSide side) {
    LengthScanner scanner = new LengthScanner(text, from);
    Reading<ExactRatio> reading = scanner.scan();
    return new Prefix(onUnit(reading, side), scanner.position());
  }

  private static Reading<Length> onUnit(Reading<ExactRatio> reading, SafeSide side) {
    if (reading instanceof Reading.Refused<ExactRatio> refused) {
      return Reading.refused(refused.wrong(), refused.remedy());
    }
    Reading.Value<ExactRatio> value = (Reading.Value<ExactRatio>) reading;
    ExactRatio units = value.value();
    if (units.isMoreThan(LONGEST.units())) {
      return Reading.refused("longer than 1,000 m", "Is the unit right?");
    }
    List<String> notes = new ArrayList<>(value.notes());
    if (!units.isWhole()) {
      notes.add(
          side == SafeSide.LONGER
              ? "counted longer by less than 0.0001 mm, to the next exact length"
              : "counted shorter by less than 0.0001 mm, to the next exact length");
    }
    long whole = side == SafeSide.LONGER ? units.roundedUp() : units.roundedDown();
    return new Reading.Value<>(Length.ofUnits(whole), notes);
  }
}
