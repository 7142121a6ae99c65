package lapwright.files.lists;

import java.util.ArrayList;
import java.util.List;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.files.source.Table;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a list, before anybody knows what its columns mean. A cell in quotes may go over
 * several lines.
 *
 * @param separator comma, semicolon or tab
 */
record Sheet(char separator, List<Row> rows) {
  private static final int MOST_LINES_OF_A_ROW = 20;

  Sheet {
    rows = List.copyOf(rows);
  }

  /**
   * A row with any content.
   *
   * @param line in the file, from 1
   */
  record Row(int line, List<String> cells) {
    Row {
      cells = List.copyOf(cells);
    }

    String cell(int column) {
      return column < cells.size() ? cells.get(column) : "";
    }

    /** The cells that are not empty. */
    List<String> filled() {
      return cells.stream().filter(cell -> !cell.isEmpty()).toList();
    }
  }

  static Sheet of(SheetText text, String file, Findings findings) {
    List<String> lines = text.lines();
    int from = 0;
    Character told = toldSeparator(lines.get(0));
    if (told != null) {
      from = 1;
    }
    char separator = told == null ? likeliest(lines) : told;
    List<Row> rows = new ArrayList<>();
    for (int i = from; i < lines.size(); i++) {
      int first = i;
      StringBuilder row = new StringBuilder(lines.get(i));
      while (endsInQuotes(row, separator)
          && i + 1 < lines.size()
          && i - first < MOST_LINES_OF_A_ROW) {
        row.append(' ').append(lines.get(++i));
      }
      if (endsInQuotes(row, separator)) {
        i = first;
        row = new StringBuilder(lines.get(i));
      }
      if (row.toString().isBlank()) {
        continue;
      }
      List<String> cells =
          Table.cells(new Place(file, first + 1, 0), row.toString(), separator, findings);
      if (cells != null && cells.stream().anyMatch(cell -> !cell.isEmpty())) {
        rows.add(new Row(first + 1, cells));
      }
    }
    return new Sheet(separator, rows);
  }

  /** Some spreadsheets write {@code sep=;} into the first line. */
  private static @Nullable Character toldSeparator(String line) {
    String plain = line.strip();
    return plain.matches("(?i)\"?sep=[,;\\t]?\"?")
        ? plain.indexOf(';') >= 0 ? ';' : plain.indexOf(',') >= 0 ? ',' : '\t'
        : null;
  }

  /** The separator that stands in most lines, at best the same number of times in each. */
  private static char likeliest(List<String> lines) {
    char best = ',';
    long most = -1;
    for (char candidate : new char[] {',', ';', '\t'}) {
      long rows = lines.stream().filter(line -> line.indexOf(candidate) >= 0).count();
      boolean stronger = candidate != ',' && rows > 0 && rows == most;
      if (rows > most || stronger) {
        most = rows;
        best = candidate;
      }
    }
    return best;
  }

  /** True when a quote that opened at the beginning of a cell has not closed. */
  private static boolean endsInQuotes(CharSequence row, char separator) {
    boolean cellBegins = true;
    boolean inQuotes = false;
    for (int i = 0; i < row.length(); i++) {
      char c = row.charAt(i);
      if (inQuotes) {
        if (c == '"' && i + 1 < row.length() && row.charAt(i + 1) == '"') {
          i++;
        } else if (c == '"') {
          inQuotes = false;
        }
      } else if (c == '"' && cellBegins) {
        inQuotes = true;
        cellBegins = false;
      } else {
        cellBegins = c == separator || (cellBegins && c == ' ');
      }
    }
    return inQuotes;
  }
}
