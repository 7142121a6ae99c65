package lapwright.files.source;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * One thing that is wrong in the input.
 *
 * @param field the field or column, with the way to it; empty when it is about no field
 * @param value as typed; empty when there is none
 * @param wrong what is wrong
 * @param remedy what to do
 */
public record Fault(Place place, String field, String value, String wrong, String remedy) {
  /** By file, line and column, then by what is wrong. */
  public static final Comparator<Fault> BY_PLACE =
      Comparator.comparing(Fault::place)
          .thenComparing(Fault::field)
          .thenComparing(Fault::wrong)
          .thenComparing(Fault::remedy);

  private static final int LONGEST_SHOWN = 60;

  public Fault {
    Objects.requireNonNull(place);
    Objects.requireNonNull(field);
    Objects.requireNonNull(remedy);
    value = shown(value);
    wrong = shownAll(wrong);
  }

  /** All faults as people read them, three lines each. */
  public static String print(List<Fault> faults) {
    StringBuilder text = new StringBuilder();
    for (Fault fault : faults) {
      text.append(fault.place.print());
      if (!fault.field.isEmpty()) {
        text.append(", ").append(shownAll(fault.field));
      }
      if (!fault.value.isEmpty()) {
        text.append(": ").append(fault.value);
      }
      text.append("\n    ").append(sentence(fault.wrong));
      text.append("\n    ").append(fault.remedy).append('\n');
    }
    return text.toString();
  }

  private static String sentence(String words) {
    String first = words.substring(0, 1).toUpperCase(java.util.Locale.ROOT);
    return first + words.substring(1) + (words.endsWith(".") || words.endsWith("?") ? "" : ".");
  }

  private static String shown(String value) {
    String clean = shownAll(value);
    return clean.length() <= LONGEST_SHOWN ? clean : clean.substring(0, LONGEST_SHOWN - 3) + "...";
  }

  /** Control characters would spoil the terminal. */
  private static String shownAll(String value) {
    StringBuilder text = new StringBuilder(value.length());
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      boolean odd = Character.isISOControl(c) || Character.getType(c) == Character.FORMAT;
      text.append(odd ? c == '\n' ? ' ' : '?' : c);
    }
    return text.toString();
  }
}
