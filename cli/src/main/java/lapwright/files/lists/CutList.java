package lapwright.files.lists;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.files.source.Fault;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * A list out of a spreadsheet, row by row as it was understood.
 *
 * @param header what the columns were taken for, in one sentence
 * @param rows in the order of the file; without its empty rows
 * @param notes about the file as a whole, such as its encoding
 */
public record CutList(String header, List<Row> rows, List<String> notes) {
  public CutList {
    Objects.requireNonNull(header);
    rows = List.copyOf(rows);
    notes = List.copyOf(notes);
  }

  /**
   * A row of the file.
   *
   * @param line in the file, from 1
   * @param piece null when the row is none
   * @param said how it was understood, where that is not plain from the piece; may be empty
   */
  public record Row(int line, @Nullable Piece piece, String said) {
    public Row {
      Objects.requireNonNull(said);
    }
  }

  /**
   * Pieces that are alike.
   *
   * @param other cells of columns that go into the job's table as they are, by column
   */
  public record Piece(
      String material,
      String mark,
      Length length,
      int qty,
      String purpose,
      Map<String, String> other) {
    public Piece {
      Objects.requireNonNull(material);
      Objects.requireNonNull(mark);
      Objects.requireNonNull(purpose);
      other = Map.copyOf(other);
      if (qty < 1 || length.units() <= 0) {
        throw new IllegalArgumentException("a piece without quantity or length");
      }
    }
  }

  /** What came of reading a list. */
  public sealed interface Result {
    /** All of it was understood. */
    record Understood(CutList list) implements Result {}

    /** Something is ambiguous or wrong; all of it, by row. */
    record Faulty(List<Fault> faults) implements Result {
      public Faulty {
        faults = List.copyOf(faults);
      }
    }
  }

  /**
   * What the file itself may leave open.
   *
   * @param material of all rows of a list without a column for it; empty when not given
   * @param unit of bare numbers under a header that names none; null when not given
   * @param kept names of columns that go into the job's table as they are
   */
  public record Hints(String material, @Nullable LengthUnit unit, List<String> kept) {
    public static final Hints NONE = new Hints("", null, List.of());

    public Hints {
      Objects.requireNonNull(material);
      kept = List.copyOf(kept);
    }
  }

  public List<Piece> pieces() {
    return rows.stream().map(Row::piece).filter(Objects::nonNull).toList();
  }
}
