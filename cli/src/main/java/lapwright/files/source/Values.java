package lapwright.files.source;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import lapwright.measure.DecimalText;
import lapwright.measure.Length;
import lapwright.measure.LengthText;
import lapwright.measure.Reading;
import lapwright.measure.SafeSide;
import lapwright.measure.WeightRate;
import org.jspecify.annotations.Nullable;

/**
 * Turns typed texts into values. Each method gives null when the text is not taken, and has
 * reported the fault then.
 */
public final class Values {
  /** The largest quantity that is taken. */
  public static final int MOST = 1_000_000;

  public static final Map<String, Boolean> YES_OR_NO = ordered("yes", true, "no", false);

  private static final int LONGEST_WORDS = 200;
  private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");
  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

  private final Findings findings;

  public Values(Findings findings) {
    this.findings = findings;
  }

  /** Two words and what they mean, in the order in which messages list them. */
  public static <T> Map<String, T> ordered(String first, T one, String second, T two) {
    Map<String, T> words = new LinkedHashMap<>();
    words.put(first, one);
    words.put(second, two);
    return Collections.unmodifiableMap(words);
  }

  /** A length above 0. */
  public @Nullable Length positive(Place place, String field, String text, SafeSide side) {
    Length length = length(place, field, text, side);
    if (length != null && length.isZero()) {
      findings.fault(place, field, text, "a length of 0", "Give a length above 0.");
      return null;
    }
    return length;
  }

  /** A length, possibly 0. */
  public @Nullable Length length(Place place, String field, String text, SafeSide side) {
    return taken(place, field, text, LengthText.read(text, side));
  }

  public @Nullable BigDecimal money(Place place, String field, String text) {
    return taken(place, field, text, DecimalText.money(text));
  }

  public @Nullable WeightRate weight(Place place, String field, String text) {
    return taken(place, field, text, DecimalText.weight(text));
  }

  /** The value of a reading; its notes become notes, its refusal a fault. */
  public <T> @Nullable T taken(Place place, String field, String text, Reading<T> reading) {
    if (reading instanceof Reading.Refused<T> refused) {
      findings.fault(place, field, text, refused.wrong(), refused.remedy());
      return null;
    }
    Reading.Value<T> value = (Reading.Value<T>) reading;
    for (String note : value.notes()) {
      boolean rounded = note.startsWith("counted");
      findings.note(
          rounded ? Note.Kind.ROUNDED : Note.Kind.WARNING, place, field, text + " is " + note);
    }
    return value.value();
  }

  /** A quantity from {@code least} to a million, digits only. */
  public @Nullable Integer quantity(Place place, String field, String text, int least) {
    String digits = text.strip();
    if (digits.matches("-\\s*\\d.*")) {
      findings.fault(place, field, text, "a negative number", "Leave the minus sign out.");
      return null;
    }
    if (digits.matches(".*\\d,\\d.*")) {
      findings.fault(place, field, text, "a comma in a number", "Write digits only, such as 1200.");
      return null;
    }
    if (!WHOLE.matcher(digits).matches()) {
      boolean huge = digits.matches("\\d{10,}");
      findings.fault(
          place,
          field,
          text,
          huge ? "more than 1,000,000" : "not a whole number",
          huge ? "Is the number right?" : "Write digits only, such as 12.");
      return null;
    }
    if (digits.length() > 1 && digits.startsWith("0")) {
      findings.fault(
          place, field, text, "a zero before the number", "Write it without, such as 10 for 010.");
      return null;
    }
    int number = Integer.parseInt(digits);
    if (number < least) {
      findings.fault(
          place, field, text, "less than " + least, "Write a whole number from " + least + ".");
      return null;
    }
    if (number > MOST) {
      findings.fault(place, field, text, "more than 1,000,000", "Is the number right?");
      return null;
    }
    return number;
  }

  public @Nullable LocalDate day(Place place, String field, String text) {
    String day = text.strip();
    if (DAY.matcher(day).matches()) {
      try {
        return LocalDate.parse(day);
      } catch (DateTimeParseException e) {
        findings.fault(place, field, text, "no such day", "Is the month before the day?");
        return null;
      }
    }
    findings.fault(place, field, text, "not a day", "Write year-month-day, such as 2026-12-04.");
    return null;
  }

  /** One of a few words. */
  public <T> @Nullable T word(Place place, String field, String text, Map<String, T> words) {
    T value = words.get(text.strip());
    if (value == null) {
      String all = String.join(", ", words.keySet());
      findings.fault(
          place,
          field,
          text,
          "not one of " + all,
          Nearest.advice(text, words.keySet(), "Write one of them."));
      return null;
    }
    return value;
  }

  /** Words of people: names, marks, places. No control characters, not endless. */
  public @Nullable String words(Place place, String field, String text) {
    String words = text.strip();
    if (words.length() > LONGEST_WORDS) {
      findings.fault(
          place, field, text, "longer than " + LONGEST_WORDS + " characters", "Shorten it.");
      return null;
    }
    if (words.chars().anyMatch(c -> Character.isISOControl(c) || Character.isSurrogate((char) c))
        || words.chars().anyMatch(c -> Character.getType(c) == Character.FORMAT)) {
      findings.fault(
          place,
          field,
          text,
          "a line break or a character that cannot be printed",
          "Type it again on one line.");
      return null;
    }
    return words;
  }

  /** Words that are not empty. */
  public @Nullable String name(Place place, String field, String text) {
    String name = words(place, field, text);
    if (name != null && name.isEmpty()) {
      findings.fault(place, field, text, "no " + field, "Fill it in.");
      return null;
    }
    return name;
  }
}
