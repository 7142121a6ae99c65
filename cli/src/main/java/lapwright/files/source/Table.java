package lapwright.files.source;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A CSV file out of a spreadsheet or an editor: separated by commas, semicolons or tabs, as its
 * header is. Each line is parsed by itself, so that a bad quote costs its own row and no other; a
 * cell with a line break in it is a fault. Rows without any content are skipped.
 *
 * @param columns of the header, in its order
 */
public record Table(List<String> columns, List<Row> rows) {
  private static final CsvFactory CSV = new CsvFactory();

  /** Before these a cell has an apostrophe, so that no spreadsheet takes it for a formula. */
  private static final String FORMULA_STARTS = "=+-@|%";

  public Table {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /**
   * One row.
   *
   * @param cells by column, stripped; empty where nothing was typed
   */
  public record Row(Place place, Map<String, String> cells) {
    public Row {
      cells = Map.copyOf(cells);
    }

    /** The cell; empty when the column is absent. */
    public String cell(String column) {
      return cells.getOrDefault(column, "");
    }
  }

  /** Reads a table; null when its header is not usable, which is a fault then. */
  public static @Nullable Table read(
      FileText file, List<String> known, List<String> required, Findings findings) {
    List<String> lines = file.lines();
    int at = 0;
    while (at < lines.size()
        && (lines.get(at).isBlank()
            || lines.get(at).strip().startsWith("#")
            || lines.get(at).strip().matches("[,;\\t]+"))) {
      at++;
    }
    if (at == lines.size()) {
      findings.fault(
          Place.whole(file.name()),
          "",
          "",
          "the file is empty",
          "Begin with the header " + String.join(",", required) + ", or delete the file.");
      return null;
    }
    char separator = separator(lines.get(at));
    List<String> header =
        cells(new Place(file.name(), at + 1, 0), lines.get(at), separator, findings);
    if (header == null || !checkHeader(file.name(), at + 1, header, known, required, findings)) {
      return null;
    }
    List<String> columns = header.stream().map(Table::columnName).toList();
    List<Row> rows = new ArrayList<>();
    for (int i = at + 1; i < lines.size(); i++) {
      Row row = row(new Place(file.name(), i + 1, 0), lines.get(i), columns, separator, findings);
      if (row != null) {
        rows.add(row);
      }
    }
    return new Table(columns, rows);
  }

  private static String columnName(String typed) {
    return typed.strip().toLowerCase(Locale.ROOT);
  }

  private static char separator(String header) {
    char best = ',';
    long most = header.chars().filter(c -> c == ',').count();
    for (char candidate : new char[] {';', '\t'}) {
      long count = header.chars().filter(c -> c == candidate).count();
      if (count > most) {
        most = count;
        best = candidate;
      }
    }
    return best;
  }

  private static boolean checkHeader(
      String file,
      int line,
      List<String> header,
      List<String> known,
      List<String> required,
      Findings findings) {
    Place place = new Place(file, line, 0);
    Set<String> seen = new HashSet<>();
    boolean sound = true;
    for (String typed : header) {
      String column = columnName(typed);
      if (column.isEmpty()) {
        continue;
      }
      if (!known.contains(column)) {
        sound = false;
        String otherwise = "Known here: " + String.join(", ", known) + ".";
        findings.fault(
            place, typed, "", "unknown column", Nearest.advice(column, known, otherwise));
      } else if (!seen.add(column)) {
        sound = false;
        findings.fault(place, typed, "", "the column stands twice", "Delete one of the two.");
      }
    }
    for (String column : required) {
      if (!seen.contains(column)) {
        sound = false;
        findings.fault(
            place,
            column,
            "",
            "the column is missing from the header",
            "The first line names the columns: " + String.join(",", known) + ".");
      }
    }
    return sound;
  }

  private static @Nullable Row row(
      Place place, String line, List<String> columns, char separator, Findings findings) {
    if (line.isBlank()) {
      return null;
    }
    List<String> cells = cells(place, line, separator, findings);
    if (cells == null || cells.stream().allMatch(String::isEmpty)) {
      return null;
    }
    if (cells.size() < columns.size()) {
      findings.fault(
          place,
          "",
          line,
          "a short row: " + cells.size() + " cells under " + columns.size() + " columns",
          "Give every column its cell; leave it empty between two separators.");
      return null;
    }
    if (cells.size() > columns.size() && holdsSplitNumber(cells)) {
      findings.fault(
          place,
          "",
          line,
          "a number with a comma was taken for two cells",
          "Leave the comma between thousands out.");
      return null;
    }
    Map<String, String> byColumn = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      String column = i < columns.size() ? columns.get(i) : "";
      if (!column.isEmpty()) {
        byColumn.put(column, cells.get(i));
      } else if (!cells.get(i).isEmpty()) {
        findings.fault(
            place,
            "",
            cells.get(i),
            "a cell under no column; a comma inside a number or words?",
            "Put the cell with the comma in double quotes, or leave the comma out.");
        return null;
      }
    }
    return new Row(place, byColumn);
  }

  /** {@code 1,200} out of its quotes: one to three digits, then just three. */
  private static boolean holdsSplitNumber(List<String> cells) {
    for (int i = 1; i < cells.size(); i++) {
      if (cells.get(i - 1).matches("[1-9]\\d{0,2}") && cells.get(i).matches("\\d{3}")) {
        return true;
      }
    }
    return false;
  }

  /** The cells of one row, stripped; null when it is no row, which is a fault then. */
  public static @Nullable List<String> cells(
      Place row, String text, char separator, Findings findings) {
    CsvSchema schema = CsvSchema.emptySchema().withColumnSeparator(separator);
    try (CsvParser parser = CSV.createParser(text)) {
      parser.enable(CsvParser.Feature.WRAP_AS_ARRAY);
      parser.setSchema(schema);
      List<String> cells = new ArrayList<>();
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token == JsonToken.VALUE_STRING) {
          cells.add(text(parser));
        }
      }
      return cells;
    } catch (JsonProcessingException e) {
      findings.fault(
          row,
          "",
          text,
          "a quote that does not close, or text after a closing quote",
          "Inside double quotes write an inch mark twice, or leave the quotes out.");
      return null;
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory could not be read", e);
    }
  }

  private static String text(JsonParser parser) throws IOException {
    String text = parser.getText();
    String cell = text == null ? "" : text.strip();
    boolean inert = cell.length() > 1 && cell.charAt(0) == '\'';
    return inert && FORMULA_STARTS.indexOf(cell.charAt(1)) >= 0 ? cell.substring(1) : cell;
  }
}
