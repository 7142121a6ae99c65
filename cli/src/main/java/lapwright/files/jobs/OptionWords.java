package lapwright.files.jobs;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lapwright.files.source.Fault;

/** What is said of fields in a file, as it is said of options that are typed after a command. */
final class OptionWords {
  private static final Pattern FEET_AND_INCHES = Pattern.compile("(\\d[\\d.]*)'-?(\\d[\\d/-]*)\"");
  private static final Pattern INCHES = Pattern.compile("(\\d[\\d./-]*)\"");
  private static final Pattern FEET = Pattern.compile("(\\d[\\d.]*)'");
  private static final Pattern MILLIMETRES = Pattern.compile("(\\d) mm\\b");

  private final Pattern withValue;
  private final Pattern toBeDeleted;
  private final Pattern byName;

  /**
   * @param fields names of the fields, which are those of the options
   */
  OptionWords(List<String> fields) {
    List<String> longestFirst = new ArrayList<>(fields);
    longestFirst.sort((a, b) -> b.length() - a.length());
    String any = String.join("|", longestFirst);
    String twoWords =
        longestFirst.stream().filter(field -> field.contains("-")).collect(Collectors.joining("|"));
    withValue = Pattern.compile("(?<![\\w-])(" + any + "): ");
    toBeDeleted = Pattern.compile("\\bdelete (?=(" + any + ")\\b)");
    byName = Pattern.compile("(?<![\\w-])(" + twoWords + ")(?![\\w-])");
  }

  Fault fault(Fault fault) {
    String field = fault.field().split(" > ", 2)[0];
    return new Fault(
        fault.place(),
        field.isEmpty() ? "" : "--" + field,
        fault.value(),
        byName.matcher(fault.wrong()).replaceAll("--$1"),
        advice(fault.remedy()));
  }

  /** Options with their values, and lengths without marks that a shell takes for its own. */
  String advice(String text) {
    String advice = withValue.matcher(text).replaceAll("--$1 ");
    advice = toBeDeleted.matcher(advice).replaceAll("leave out --");
    advice = byName.matcher(advice).replaceAll("--$1");
    advice = FEET_AND_INCHES.matcher(advice).replaceAll("$1ft-$2in");
    advice = INCHES.matcher(advice).replaceAll("$1in");
    advice = FEET.matcher(advice).replaceAll("$1ft");
    return MILLIMETRES.matcher(advice).replaceAll("$1mm").replace("delete ", "leave out ");
  }
}
