package lapwright.files.source;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Slips that YAML takes for something else, found in the lines as typed. */
final class YamlAccidents {
  private static final Pattern LEADING_TAB = Pattern.compile("^ *\\t\\s*\\S.*");
  private static final Pattern COMMENT_IN_WORDS = Pattern.compile("\\S\\s+(#[^\\s#][^\\s]*)");
  private static final Pattern QUOTED_LENGTH =
      Pattern.compile("(?:[:,\\[{-]|^)\\s*['\"]\\s*\\.?\\d[^,\\]}]*['\"]");
  private static final Pattern NO_SPACE_AFTER_COLON =
      Pattern.compile("^\\s*(?:- )?\\{?\\s*[a-z][a-z-]*:[^\\s:/].*");
  private static final Pattern TWO_COLONS =
      Pattern.compile("[^:\\s]+:\\s+[^'\"\\[{\\s].*?:(\\s.*|$)");

  private YamlAccidents() {}

  /** A tab before the first word of a line; true when there is one. */
  static boolean reportTabs(String file, List<String> lines, Findings findings) {
    boolean found = false;
    for (int i = 0; i < lines.size(); i++) {
      if (LEADING_TAB.matcher(lines.get(i)).matches()) {
        found = true;
        findings.fault(
            new Place(file, i + 1, lines.get(i).indexOf('\t') + 1),
            "",
            "",
            "a tab at the start of the line",
            "Indent with spaces; YAML takes no tabs there.");
      }
    }
    return found;
  }

  /** {@code post #5}: all from the {@code #} on is a comment to YAML, and was not read. */
  static void reportComments(
      String file, List<String> lines, List<String> texts, Findings findings) {
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.indexOf('#') < 0 || line.stripLeading().startsWith("#")) {
        continue;
      }
      int comment = line.indexOf(" # ");
      Matcher matcher = COMMENT_IN_WORDS.matcher(line);
      if (matcher.find() && (comment < 0 || matcher.start(1) < comment)) {
        String word = matcher.group(1).replaceFirst("[\"',\\]}]+$", "");
        if (texts.stream().noneMatch(text -> text.contains(word))) {
          findings.fault(
              new Place(file, i + 1, matcher.start(1) + 1),
              "",
              word,
              "'" + word + "' after a space starts a comment and is not read",
              "Put the whole text in quotes, or a space after # if it is a comment.");
        }
      }
    }
  }

  /** A fault that says what probably happened where the parser gave up. */
  static Fault explained(Place place, List<String> lines, String message) {
    for (int line : new int[] {place.line(), place.line() - 1}) {
      if (line < 1 || line > lines.size()) {
        continue;
      }
      String typed = lines.get(line - 1);
      Place there = line == place.line() ? place : new Place(place.file(), line, 0);
      if (typed.strip().startsWith("#")) {
        continue;
      }
      if (message.contains("escape character")) {
        return fault(
            there,
            typed,
            "a backslash inside double quotes",
            "Leave the quotes out, or use single quotes.");
      }
      if (QUOTED_LENGTH.matcher(typed).find()) {
        return fault(
            there,
            typed,
            "quotes around a length: its own foot or inch mark ends the quotes",
            "Leave the quotes out and write 10'-6\" as it is.");
      }
      if (TWO_COLONS.matcher(typed).find()) {
        return fault(
            there, typed, "a colon inside words", "Put the words in quotes, or leave it out.");
      }
      if (NO_SPACE_AFTER_COLON.matcher(typed).matches()) {
        return fault(there, typed, "no space after the colon", "Write a space after each colon.");
      }
    }
    if (place.line() >= 0
        && place.line() < lines.size()
        && NO_SPACE_AFTER_COLON.matcher(lines.get(place.line())).matches()) {
      return fault(
          new Place(place.file(), place.line() + 1, 0),
          lines.get(place.line()),
          "no space after the colon",
          "Write a space after each colon.");
    }
    String typed =
        place.line() >= 1 && place.line() <= lines.size() ? lines.get(place.line() - 1) : "";
    return fault(
        place,
        typed,
        "not YAML: " + message,
        "Compare the indentation, dashes and braces with the lines above.");
  }

  private static Fault fault(Place place, String typed, String wrong, String remedy) {
    return new Fault(place, "", typed.strip(), wrong, remedy);
  }
}
