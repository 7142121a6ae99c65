package lapwright.files.papers;

import com.fasterxml.jackson.databind.SequenceWriter;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.Percent;

/**
 * A list for a spreadsheet: comma-separated, quoted and with line ends as RFC 4180 says. A text
 * that a spreadsheet would take for a formula gets an apostrophe before it. Where a character is
 * not ASCII, a byte order mark tells the spreadsheet that it is UTF-8.
 */
public final class CsvSheet {
  private static final CsvSchema SHAPE = CsvSchema.emptySchema().withLineSeparator("\r\n");
  private static final String FORMULA_STARTS = "=+-@\t\r\n|%";
  private static final char BYTE_ORDER_MARK = '\ufeff';

  private final List<List<String>> rows = new ArrayList<>();

  public CsvSheet(List<String> head) {
    rows.add(head);
  }

  /** Adds a row; one cell a column. */
  public void row(Row row) {
    if (row.cells.size() != rows.get(0).size()) {
      throw new IllegalArgumentException(
          row.cells.size() + " cells for the columns " + rows.get(0));
    }
    rows.add(row.cells);
  }

  public String text() {
    StringWriter text = new StringWriter();
    try (SequenceWriter writer = new CsvMapper().writer(SHAPE).writeValues(text)) {
      for (List<String> row : rows) {
        writer.write(row);
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    String sheet = text.toString();
    return sheet.chars().allMatch(character -> character < 128) ? sheet : BYTE_ORDER_MARK + sheet;
  }

  /** The cells of one row, from left to right. */
  public static final class Row {
    private final List<String> cells = new ArrayList<>();

    /** Somebody's words. */
    public Row text(String words) {
      boolean formula = !words.isEmpty() && FORMULA_STARTS.indexOf(words.charAt(0)) >= 0;
      cells.add(formula ? "'" + words : words);
      return this;
    }

    public Row number(long number) {
      cells.add(Long.toString(number));
      return this;
    }

    public Row number(BigDecimal number) {
      cells.add(number.toPlainString());
      return this;
    }

    /** Two cells: as the shop reads it, and in millimetres; both exact. */
    public Row length(LengthStyle units, Length length) {
      return exactLength(units, length).mm(length);
    }

    /** One cell, as the shop reads it; exact. */
    public Row exactLength(LengthStyle units, Length length) {
      cells.add(units.exact(length));
      return this;
    }

    /** Exact millimetres. */
    public Row mm(Length length) {
      return number(LengthStyle.exactMm(length));
    }

    /** An amount without its currency: in cents, or with as many decimals as it takes. */
    public Row money(Money amount) {
      BigDecimal exact = BigDecimal.valueOf(amount.tenThousandths(), 4).stripTrailingZeros();
      return number(exact.setScale(Math.max(2, exact.scale())));
    }

    /** A percentage without its sign, such as 3.25. */
    public Row percent(Percent share) {
      return number(BigDecimal.valueOf(share.hundredths(), 2));
    }

    /** A share as a factor, such as 1.0832. */
    public Row factor(Percent share) {
      return number(BigDecimal.valueOf(share.hundredths(), 4));
    }

    public Row empty(int cells) {
      for (int i = 0; i < cells; i++) {
        this.cells.add("");
      }
      return this;
    }
  }
}
