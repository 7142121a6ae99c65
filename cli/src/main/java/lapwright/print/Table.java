package lapwright.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Rows in columns. Names give way where the width is short: those of the first column go on a line
 * of their own above their rows where that is shorter than wrapping them or saves a word from being
 * broken, others wrap, and after a few lines are shortened visibly. Numbers never do: where even
 * short names leave them no room, each row is written out cell below cell.
 */
final class Table {
  private static final int GAP = 2;
  private static final int NARROWEST_NAME = 8;
  private static final int MOST_LINES = 3;
  private static final Pattern SIGNED = Pattern.compile("\\d\"?[+-]( mm)?$");

  /** How a column is set. */
  enum Kind {
    /** Left; wraps and is shortened. */
    NAME,
    /** Left; wraps as often as it takes, never shortened. */
    LIST,
    /** Right; never broken. */
    NUMBER
  }

  private record Column(String head, Kind kind) {}

  /**
   * A line or more of the table; without cells and title, a rule.
   *
   * @param inset how far a title stands inside the table
   */
  private record Row(
      @Nullable List<String> cells, @Nullable String title, boolean strong, int inset) {
    Row(@Nullable List<String> cells, @Nullable String title, boolean strong) {
      this(cells, title, strong, 0);
    }

    boolean isSigned(int column) {
      return cells != null && SIGNED.matcher(cells.get(column)).find();
    }
  }

  private final Page page;
  private final List<Column> columns = new ArrayList<>();
  private List<Row> rows = new ArrayList<>();

  Table(Page page) {
    this.page = page;
  }

  Table column(String head, Kind kind) {
    columns.add(new Column(head, kind));
    return this;
  }

  /** Adds a column only where it says something. */
  Table columnIf(boolean wanted, String head, Kind kind) {
    return wanted ? column(head, kind) : this;
  }

  /** A line across all columns that names the rows below it. */
  void title(String text) {
    rows.add(new Row(null, page.words().clean(text), true));
  }

  /** A remark across all columns. */
  void note(String text) {
    rows.add(new Row(null, page.words().clean(text), false));
  }

  void row(List<String> cells) {
    add(cells, false);
  }

  /** A row of sums. */
  void sum(List<String> cells) {
    add(cells, true);
  }

  /** A line under the rows that are summed up below. */
  void rule() {
    rows.add(new Row(null, null, false));
  }

  private void add(List<String> cells, boolean strong) {
    if (cells.size() != columns.size()) {
      throw new IllegalArgumentException(cells + " for " + columns.size() + " columns");
    }
    rows.add(new Row(cells.stream().map(page.words()::clean).toList(), null, strong));
  }

  /** Writes the table, indented by {@code indent} columns. */
  void print(int indent) {
    alignSigns();
    int room = page.width() - indent - GAP * (columns.size() - 1);
    int @Nullable [] widths = widths(room);
    if (widths == null) {
      printStacked(indent);
      return;
    }
    if (columns.get(0).kind() == Kind.NAME) {
      List<Row> plain = rows;
      rows = headed();
      int[] headedWidths = widths(room);
      if (headedWidths != null
          && (tearsName(plain, widths) || height(rows, headedWidths) < height(plain, widths))) {
        widths = headedWidths;
      } else {
        rows = plain;
      }
    }
    String margin = " ".repeat(indent);
    if (columns.stream().anyMatch(column -> !column.head().isEmpty())) {
      page.faint(
          margin + line(columns.stream().map(Column::head).toList(), widths).stripTrailing());
    }
    int total = Arrays.stream(widths).sum() + GAP * (columns.size() - 1);
    for (Row row : rows) {
      if (row.cells() != null) {
        printRow(row.cells(), row.strong(), margin, widths);
      } else if (row.title() != null) {
        titleLine(row.title(), row.strong(), indent + row.inset());
      } else {
        page.faint(margin + page.rule(total));
      }
    }
  }

  /** The rows with each name of the first column on a line above those that it names. */
  private List<Row> headed() {
    List<Row> headed = new ArrayList<>();
    String named = "";
    for (Row row : rows) {
      if (row.cells() == null || row.strong()) {
        named = "";
        headed.add(row);
        continue;
      }
      String name = row.cells().get(0);
      if (!name.isEmpty() && !name.equals(named)) {
        headed.add(new Row(null, name, false, titledIndent()));
      }
      named = name;
      List<String> cells = new ArrayList<>(row.cells());
      cells.set(0, "");
      headed.add(new Row(cells, null, false));
    }
    return headed;
  }

  /** Whether a word of the first column is broken in the middle. */
  private boolean tearsName(List<Row> all, int[] widths) {
    for (Row row : all) {
      if (row.cells() != null) {
        int room = inside(0, row.strong(), widths);
        for (String word : row.cells().get(0).split(" ", -1)) {
          if (Words.columns(word) > room) {
            return true;
          }
        }
      }
    }
    return false;
  }

  /** Lines that the rows would take if no name were shortened. */
  private int height(List<Row> all, int[] widths) {
    int height = 0;
    for (Row row : all) {
      height += row.cells() == null ? 1 : height(row.cells(), row.strong(), widths);
    }
    return height;
  }

  private int height(List<String> cells, boolean strong, int[] widths) {
    int height = 1;
    for (int i = 0; i < widths.length; i++) {
      if (columns.get(i).kind() != Kind.NUMBER) {
        height = Math.max(height, Words.wrap(cells.get(i), inside(i, strong, widths)).size());
      }
    }
    return height;
  }

  /** Room for a cell; rows stand a little inside the titles that name them. */
  private int inside(int column, boolean strong, int[] widths) {
    return widths[column] - (column == 0 && !strong ? titledIndent() : 0);
  }

  private void titleLine(String title, boolean strong, int indent) {
    String text = " ".repeat(indent) + page.words().shorten(title, page.width() - indent);
    if (strong) {
      page.strong(text);
    } else {
      page.line(text);
    }
  }

  private void printRow(List<String> cells, boolean strong, String margin, int[] widths) {
    List<List<String>> broken = new ArrayList<>();
    int height = 1;
    for (int i = 0; i < widths.length; i++) {
      int indent = i == 0 && !strong ? titledIndent() : 0;
      List<String> lines =
          broken(cells.get(i), columns.get(i).kind(), inside(i, strong, widths)).stream()
              .map(part -> " ".repeat(indent) + part)
              .toList();
      broken.add(lines);
      height = Math.max(height, lines.size());
    }
    for (int at = 0; at < height; at++) {
      List<String> parts = new ArrayList<>();
      for (List<String> lines : broken) {
        parts.add(at < lines.size() ? lines.get(at) : "");
      }
      String text = (margin + line(parts, widths)).stripTrailing();
      if (strong) {
        page.strong(text);
      } else {
        page.line(text);
      }
    }
  }

  private List<String> broken(String cell, Kind kind, int width) {
    if (kind == Kind.NUMBER) {
      return List.of(cell);
    }
    List<String> lines = Words.wrap(cell, width);
    if (kind == Kind.NAME && lines.size() > MOST_LINES) {
      String rest = String.join(" ", lines.subList(MOST_LINES - 1, lines.size()));
      lines = new ArrayList<>(lines.subList(0, MOST_LINES - 1));
      lines.add(page.words().shorten(rest, width));
    }
    return lines;
  }

  private String line(List<String> cells, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      line.append(i > 0 ? " ".repeat(GAP) : "");
      line.append(
          columns.get(i).kind() == Kind.NUMBER
              ? Words.right(cells.get(i), widths[i])
              : Words.left(cells.get(i), widths[i]));
    }
    return line.toString();
  }

  /** Digits stand below digits, also where some lengths carry a sign. */
  private void alignSigns() {
    for (int i = 0; i < columns.size(); i++) {
      int column = i;
      if (columns.get(i).kind() == Kind.NUMBER
          && rows.stream().anyMatch(row -> row.isSigned(column))) {
        rows.replaceAll(row -> withRoomForSign(row, column));
      }
    }
  }

  private static Row withRoomForSign(Row row, int column) {
    if (row.cells() == null || row.isSigned(column)) {
      return row;
    }
    String cell = row.cells().get(column);
    List<String> cells = new ArrayList<>(row.cells());
    if (cell.endsWith("\"")) {
      cells.set(column, cell + " ");
    } else if (cell.endsWith(" mm")) {
      cells.set(column, cell.replace(" mm", "  mm"));
    }
    return new Row(cells, null, row.strong());
  }

  private int @Nullable [] widths(int room) {
    int[] widths = new int[columns.size()];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = Words.columns(columns.get(i).head());
      for (Row row : rows) {
        widths[i] =
            Math.max(
                widths[i],
                row.cells() == null
                    ? 0
                    : Words.columns(row.cells().get(i))
                        + (i == 0 && !row.strong() ? titledIndent() : 0));
      }
    }
    int[] least = new int[widths.length];
    for (int i = 0; i < widths.length; i++) {
      least[i] = Math.min(widths[i], least(i, widths[i]));
    }
    for (int over = Arrays.stream(widths).sum() - room; over > 0; over--) {
      int widest = -1;
      for (int i = 0; i < widths.length; i++) {
        if (widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest])) {
          widest = i;
        }
      }
      if (widest < 0) {
        return null;
      }
      widths[widest]--;
    }
    return widths;
  }

  private int least(int column, int natural) {
    return switch (columns.get(column).kind()) {
      case NUMBER -> natural;
      case NAME -> Math.max(NARROWEST_NAME, headWidth(columns.get(column)));
      case LIST -> longestWord(column);
    };
  }

  /** Rows stand a little inside the titles that name them. */
  private int titledIndent() {
    return rows.stream().anyMatch(row -> row.title() != null && row.strong()) ? 2 : 0;
  }

  private static int headWidth(Column column) {
    return Words.columns(column.head());
  }

  private int longestWord(int column) {
    int longest = headWidth(columns.get(column));
    for (Row row : rows) {
      if (row.cells() != null) {
        for (String word : row.cells().get(column).split(" ", -1)) {
          longest = Math.max(longest, Words.columns(word));
        }
      }
    }
    return longest;
  }

  private void printStacked(int indent) {
    for (Row row : rows) {
      if (row.title() != null) {
        titleLine(row.title(), row.strong(), indent);
      } else if (row.cells() != null) {
        for (int i = 0; i < columns.size(); i++) {
          String head = columns.get(i).head();
          String cell = row.cells().get(i).strip();
          if (!cell.isEmpty()) {
            page.text(head.isEmpty() ? cell : head + ": " + cell, indent, indent + 2);
          }
        }
      }
    }
  }
}
