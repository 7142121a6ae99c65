package lapwright.files.lists;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import org.jspecify.annotations.Nullable;

/**
 * Which column tells what.
 *
 * @param columns by role, from 0
 * @param kept columns that a job's table has under the same name, by that name
 * @param notRead names of the other columns
 * @param unit of bare numbers in the length column; null when the header names none
 */
record Header(
    Sheet.Row row,
    Map<Role, Integer> columns,
    Map<String, Integer> kept,
    List<String> notRead,
    @Nullable LengthUnit unit) {
  private static final Pattern UNIT_IN_BRACKETS = Pattern.compile("(.*?)[(\\[](.*)[)\\]]");

  /** A name without its unit, and the unit. */
  private record Name(String base, @Nullable LengthUnit unit) {}

  /** Null when the row is no header. */
  static @Nullable Header of(Sheet.Row row, List<String> known) {
    Map<Role, Integer> columns = new EnumMap<>(Role.class);
    Map<String, Integer> kept = new LinkedHashMap<>();
    List<String> notRead = new ArrayList<>();
    LengthUnit unit = null;
    for (int i = 0; i < row.cells().size(); i++) {
      String typed = row.cells().get(i);
      Name name = name(typed);
      Role role = role(name.base());
      if (role != null && columns.putIfAbsent(role, i) == null) {
        unit = role == Role.LENGTH ? name.unit() : unit;
      } else if (role == null && known.contains(name.base())) {
        kept.putIfAbsent(name.base(), i);
      } else if (!typed.isEmpty()) {
        notRead.add(typed);
      }
    }
    boolean length = columns.containsKey(Role.LENGTH) || columns.containsKey(Role.FEET);
    return length && columns.containsKey(Role.QTY)
        ? new Header(row, columns, kept, notRead, unit)
        : null;
  }

  /** How many roles a row seems to name; for the message when none is a header. */
  static int rolesIn(Sheet.Row row) {
    return (int) row.cells().stream().filter(cell -> role(name(cell).base()) != null).count();
  }

  private static Name name(String typed) {
    String plain = typed.strip().toLowerCase(Locale.ROOT);
    Matcher brackets = UNIT_IN_BRACKETS.matcher(plain);
    if (brackets.matches()) {
      return new Name(tidy(brackets.group(1)), LengthUnit.of(brackets.group(2)));
    }
    String tidy = tidy(plain);
    int space = tidy.lastIndexOf(' ');
    if (space > 0 && role(tidy) == null) {
      LengthUnit unit = LengthUnit.of(tidy.substring(space + 1));
      if (unit != null) {
        return new Name(tidy.substring(0, space), unit);
      }
    }
    return new Name(tidy, null);
  }

  private static String tidy(String name) {
    return name.replaceAll("[._:,*/\\\\]+", " ").replaceAll("\\s+", " ").strip();
  }

  private static @Nullable Role role(String base) {
    for (Role role : Role.values()) {
      if (role.words().contains(base)) {
        return role;
      }
    }
    return null;
  }

  /** Faults of the header itself: two columns for the same. */
  void check(String file, Findings findings) {
    for (int i = 0; i < row.cells().size(); i++) {
      Role role = role(name(row.cells().get(i)).base());
      Integer first = role == null ? null : columns.get(role);
      if (role != null && role != Role.FOR && first != null && first != i) {
        findings.fault(
            new Place(file, row.line(), 0),
            column(i),
            row.cells().get(i),
            "two columns for the " + role.column() + "; the other is " + column(first),
            "Delete one of them, or give it a name that says what it is.");
      }
    }
    if (columns.containsKey(Role.LENGTH)
        && (columns.containsKey(Role.FEET) || columns.containsKey(Role.INCHES))) {
      Integer other = columns.getOrDefault(Role.FEET, columns.get(Role.INCHES));
      findings.fault(
          new Place(file, row.line(), 0),
          other == null ? "" : column(other),
          "",
          "a column of lengths, and another of feet or inches",
          "Keep one of the two ways.");
    }
  }

  String cell(Sheet.Row of, Role role) {
    Integer column = columns.get(role);
    return column == null ? "" : of.cell(column);
  }

  boolean has(Role role) {
    return columns.containsKey(role);
  }

  /** As a spreadsheet calls it, with its name: {@code column C, Length (in)}. */
  String column(Role role) {
    Integer column = columns.get(role);
    return column == null ? role.column() : column(column);
  }

  private String column(int index) {
    String letters = "";
    for (int n = index + 1; n > 0; n = (n - 1) / 26) {
      letters = (char) ('A' + (n - 1) % 26) + letters;
    }
    return "column " + letters + ", " + row.cell(index);
  }
}
