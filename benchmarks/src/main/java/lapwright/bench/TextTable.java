package lapwright.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Rows of words under a head, aligned: the first two columns left, the others right. */
final class TextTable {
  private static final int LEFT_COLUMNS = 2;

  private final List<String[]> rows = new ArrayList<>();

  TextTable(String... head) {
    rows.add(head);
  }

  void add(String... row) {
    if (row.length != rows.get(0).length) {
      throw new IllegalArgumentException(Arrays.toString(row) + " under " + rows.get(0).length);
    }
    rows.add(row);
  }

  List<String> lines() {
    int[] widths = new int[rows.get(0).length];
    for (String[] row : rows) {
      for (int c = 0; c < row.length; c++) {
        widths[c] = Math.max(widths[c], row[c].length());
      }
    }
    return rows.stream().map(row -> line(row, widths)).toList();
  }

  /** One line of given widths. */
  static String line(String[] row, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int c = 0; c < row.length; c++) {
      String space = " ".repeat(Math.max(0, widths[c] - row[c].length()));
      line.append(c == 0 ? "" : "  ");
      line.append(c < LEFT_COLUMNS ? row[c] + space : space + row[c]);
    }
    return line.toString().stripTrailing();
  }
}
