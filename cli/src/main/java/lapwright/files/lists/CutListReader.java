package lapwright.files.lists;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import lapwright.files.lists.CutList.Hints;
import lapwright.files.lists.CutList.Piece;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Reading;
import org.jspecify.annotations.Nullable;

/** Reads a list row by row. Each row is understood, or a fault, or said to be no piece and why. */
public final class CutListReader {
  private static final int HEADER_WITHIN = 40;
  private static final Pattern TOTAL =
      Pattern.compile("(?i)(grand\\s*|sub\\s*-?\\s*)?(totals?|sum)\\b.*");
  private static final List<String> DITTO = List.of("\"", "''", "do", "do.", "ditto", "same");

  private final String file;
  private final Hints hints;
  private final Findings findings = new Findings();
  private final Values values = new Values(findings);
  private final List<CutList.Row> understood = new ArrayList<>();
  private final Map<String, CutList.Row> marks = new HashMap<>();
  private String material;
  private long sum;

  private CutListReader(String file, Hints hints) {
    this.file = file;
    this.hints = hints;
    this.material = hints.material();
  }

  /** Reads a file. */
  public static CutList.Result read(Path path, Hints hints) {
    Path name = path.getFileName();
    CutListReader reader = new CutListReader(name == null ? "" : name.toString(), hints);
    CutList list = reader.list(path);
    return list != null && reader.findings.isSound()
        ? new CutList.Result.Understood(list)
        : new CutList.Result.Faulty(reader.findings.faults());
  }

  private @Nullable CutList list(Path path) {
    SheetText text = SheetText.read(path, file, findings);
    if (text == null) {
      return null;
    }
    Sheet sheet = Sheet.of(text, file, findings);
    int at = 0;
    Header header = null;
    for (; at < Math.min(HEADER_WITHIN, sheet.rows().size()); at++) {
      header = Header.of(sheet.rows().get(at), hints.kept());
      if (header != null) {
        break;
      }
    }
    if (header == null) {
      noHeader(sheet);
      return null;
    }
    header.check(file, findings);
    for (Sheet.Row title : sheet.rows().subList(0, at)) {
      say(title, "above the header, not read: " + String.join(" ", title.filled()));
    }
    Numbers numbers = new Numbers(sheet.separator());
    for (Sheet.Row row : sheet.rows().subList(at + 1, sheet.rows().size())) {
      row(row, header, numbers);
    }
    boolean anyPiece = understood.stream().anyMatch(row -> row.piece() != null);
    if (!anyPiece && findings.isSound()) {
      findings.fault(Place.whole(file), "", "", "no row is a piece", "Is this the right file?");
    }
    List<String> notes = new ArrayList<>();
    if (text.windows()) {
      notes.add("The text is not UTF-8; it was read as Windows-1252.");
    }
    if (!header.notRead().isEmpty()) {
      notes.add("Columns that were not read: " + String.join("; ", header.notRead()) + ".");
    }
    findings.notes().forEach(note -> notes.add(note.print() + "."));
    return new CutList(told(header), understood, notes);
  }

  private void noHeader(Sheet sheet) {
    Sheet.Row best = null;
    for (Sheet.Row row : sheet.rows()) {
      if (best == null || Header.rolesIn(row) > Header.rolesIn(best)) {
        best = row;
      }
    }
    findings.fault(
        best == null ? Place.whole(file) : new Place(file, best.line(), 0),
        "",
        best == null ? "" : String.join(", ", best.filled()),
        best == null
            ? "the file is empty"
            : "no row names a column for the quantity and the length",
        "Call the columns qty and length; material, mark and for are read too.");
  }

  private String told(Header header) {
    List<String> parts = new ArrayList<>();
    for (Role role : Role.values()) {
      if (header.has(role)) {
        LengthUnit unit = role == Role.LENGTH ? header.unit() : null;
        parts.add(
            header.column(role)
                + " = "
                + role.column()
                + (unit == null ? "" : ", bare numbers in " + unit.word()));
      }
    }
    header.kept().keySet().forEach(parts::add);
    return "line " + header.row().line() + ": " + String.join("; ", parts);
  }

  private void say(Sheet.Row row, String said) {
    understood.add(new CutList.Row(row.line(), null, said));
  }

  private void fault(Sheet.Row row, String column, String value, String wrong, String remedy) {
    findings.fault(new Place(file, row.line(), 0), column, value, wrong, remedy);
  }

  private void row(Sheet.Row row, Header header, Numbers numbers) {
    List<String> filled = row.filled();
    if (row.cells().equals(header.row().cells())) {
      say(row, "the header again, not read");
    } else if (filled.stream().anyMatch(cell -> TOTAL.matcher(cell).matches())) {
      total(row, header, numbers);
    } else if (filled.size() == 1) {
      lone(row, header, numbers, filled.get(0));
    } else {
      piece(row, header, numbers);
    }
  }

  private void total(Sheet.Row row, Header header, Numbers numbers) {
    boolean same =
        numbers.quantity(header.cell(row, Role.QTY)) instanceof Reading.Value<Integer> told
            && told.value() != sum;
    say(
        row,
        "a total, not read: "
            + String.join(" ", row.filled())
            + (same ? " (the rows above make " + sum + ")" : ""));
  }

  /** One cell alone: a heading, a remark, or a sum that nobody named. */
  private void lone(Sheet.Row row, Header header, Numbers numbers, String text) {
    boolean inQty = header.cell(row, Role.QTY).equals(text);
    boolean inLength =
        header.cell(row, Role.LENGTH).equals(text)
            || header.cell(row, Role.FEET).equals(text)
            || header.cell(row, Role.INCHES).equals(text);
    if (inQty
        && numbers.quantity(text) instanceof Reading.Value<Integer> number
        && number.value() == sum) {
      say(row, "the sum of the rows above, not read: " + text);
    } else if (inQty || inLength) {
      Role missing = inQty ? Role.LENGTH : Role.QTY;
      fault(
          row,
          header.column(missing),
          "",
          "no " + missing.column() + " beside " + text,
          "Fill the cell in, or delete the row.");
    } else if (!header.has(Role.MATERIAL) && hints.material().isEmpty()) {
      material = text;
      say(row, "a heading: the material from here on is " + text);
    } else {
      say(row, "no quantity and no length, not read: " + text);
    }
  }

  private void piece(Sheet.Row row, Header header, Numbers numbers) {
    Place place = new Place(file, row.line(), 0);
    List<String> said = new ArrayList<>();
    String qtyCell = header.cell(row, Role.QTY);
    Integer qty = null;
    if (qtyCell.isEmpty()) {
      missing(row, header, Role.QTY);
    } else {
      qty = values.taken(place, header.column(Role.QTY), qtyCell, numbers.quantity(qtyCell));
    }
    if (qty != null && qty == 0) {
      say(row, "quantity 0, not read");
      return;
    }
    Length length = length(row, header, numbers);
    String of = material(row, header, said);
    String mark = values.words(place, header.column(Role.MARK), header.cell(row, Role.MARK));
    String purpose = values.words(place, header.column(Role.FOR), header.cell(row, Role.FOR));
    if (qty == null || length == null || of == null || mark == null || purpose == null) {
      return;
    }
    Map<String, String> other = new LinkedHashMap<>();
    header
        .kept()
        .forEach(
            (name, column) -> {
              if (!row.cell(column).isEmpty()) {
                other.put(name, row.cell(column));
              }
            });
    String plainMark = mark.equals("-") ? "" : mark;
    Piece piece = new Piece(of, plainMark, length, qty, purpose, other);
    CutList.Row done = new CutList.Row(row.line(), piece, String.join("; ", said));
    CutList.Row before = plainMark.isEmpty() ? null : marks.putIfAbsent(plainMark, done);
    if (before != null && !sameKind(piece, Objects.requireNonNull(before.piece()))) {
      fault(
          row,
          header.column(Role.MARK),
          plainMark,
          "the mark has another material or length in line " + before.line(),
          "Give one of them another mark.");
      return;
    }
    sum += qty;
    understood.add(done);
  }

  private static boolean sameKind(Piece one, Piece other) {
    return one.material().equals(other.material())
        && one.length().equals(other.length())
        && one.other().equals(other.other());
  }

  private void missing(Sheet.Row row, Header header, Role role) {
    fault(
        row,
        header.column(role),
        "",
        "no " + role.column() + " in a row with " + String.join(", ", row.filled()),
        "Fill the cell in, or delete the row.");
  }

  /** The material; an empty cell and a ditto mark say: as above. */
  private @Nullable String material(Sheet.Row row, Header header, List<String> said) {
    String cell = header.cell(row, Role.MATERIAL);
    boolean ditto = DITTO.contains(cell.toLowerCase(java.util.Locale.ROOT));
    if (header.has(Role.MATERIAL) && !cell.isEmpty() && !ditto) {
      String words =
          values.words(new Place(file, row.line(), 0), header.column(Role.MATERIAL), cell);
      material = words == null ? material : words;
      return words;
    }
    if (!material.isEmpty()) {
      if (header.has(Role.MATERIAL) && hints.material().isEmpty()) {
        said.add("material as in the row above");
      }
      return material;
    }
    fault(
        row,
        header.column(Role.MATERIAL),
        cell,
        "no material, and none above",
        "Fill the cell in, or read the list with --material NAME.");
    return null;
  }

  private @Nullable Length length(Sheet.Row row, Header header, Numbers numbers) {
    Place place = new Place(file, row.line(), 0);
    if (!header.has(Role.LENGTH)) {
      return feetAndInches(row, header, numbers);
    }
    String column = header.column(Role.LENGTH);
    String cell = header.cell(row, Role.LENGTH);
    if (cell.isEmpty()) {
      missing(row, header, Role.LENGTH);
      return null;
    }
    String unitCell = header.cell(row, Role.UNIT);
    LengthUnit own = unitCell.isEmpty() ? null : LengthUnit.of(unitCell);
    LengthUnit unit = own != null ? own : header.unit() != null ? header.unit() : hints.unit();
    Length length = values.taken(place, column, cell, numbers.length(cell, unit));
    if (length != null && length.isZero()) {
      fault(row, column, cell, "a length of 0", "Give a length above 0.");
      return null;
    }
    return length;
  }

  private @Nullable Length feetAndInches(Sheet.Row row, Header header, Numbers numbers) {
    Place place = new Place(file, row.line(), 0);
    String feet = header.cell(row, Role.FEET);
    String inches = header.cell(row, Role.INCHES);
    if (feet.isEmpty() && inches.isEmpty()) {
      missing(row, header, Role.FEET);
      return null;
    }
    Length whole =
        feet.isEmpty()
            ? Length.ZERO
            : values.taken(
                place, header.column(Role.FEET), feet, numbers.length(feet, LengthUnit.FOOT));
    Length rest =
        inches.isEmpty()
            ? Length.ZERO
            : values.taken(
                place, header.column(Role.INCHES), inches, numbers.length(inches, LengthUnit.INCH));
    if (whole == null || rest == null) {
      return null;
    }
    boolean overAFoot = !feet.isEmpty() && !rest.isShorterThan(Length.ofInches(12));
    Length sumOfBoth = whole.plus(rest);
    if (overAFoot || sumOfBoth.isZero()) {
      fault(
          row,
          header.column(Role.INCHES),
          inches,
          overAFoot ? "12 inches or more beside feet" : "a length of 0",
          "Correct feet and inches; they add up to "
              + LengthStyle.FEET_INCHES.exact(sumOfBoth)
              + ".");
      return null;
    }
    return sumOfBoth;
  }
}
