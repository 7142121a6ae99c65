package lapwright.files.jobs;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.files.source.Table;
import lapwright.files.source.Values;
import lapwright.measure.Angle;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import lapwright.shop.CutRules;
import lapwright.shop.Measured;
import lapwright.shop.PieceEnds;
import org.jspecify.annotations.Nullable;

/**
 * How a piece is to be cut: {@code ends}, {@code long-points}, {@code measured}, {@code depth},
 * {@code one-way} and {@code may-be-short}, of a piece's fields or of a table's row.
 */
final class PieceRules {
  private static final Map<String, Boolean> LONG_POINTS =
      Values.ordered("same-edge", false, "opposite-edges", true);
  private static final Map<String, Measured> MEASURED = measured();
  private static final String ENDS_ADVICE =
      "Write the angle of each end in degrees from square: 45/45, 45/0 or 22.5/square.";

  private final Values values;
  private final Findings findings;
  private final Function<String, @Nullable String> texts;
  private final Function<String, Place> places;
  private final Function<String, String> ways;
  private boolean atFault;

  /**
   * What was read.
   *
   * @param measured between which points the length is given
   */
  record Rules(CutRules cutting, Measured measured) {}

  private PieceRules(
      Findings findings,
      Function<String, @Nullable String> texts,
      Function<String, Place> places,
      Function<String, String> ways) {
    this.values = new Values(findings);
    this.findings = findings;
    this.texts = texts;
    this.places = places;
    this.ways = ways;
  }

  private static Map<String, Measured> measured() {
    Map<String, Measured> words = new LinkedHashMap<>();
    for (Measured measured : Measured.values()) {
      words.put(measured.word(), measured);
    }
    return words;
  }

  /** The rules in a piece's fields; null, and a fault, when they are wrong. */
  static @Nullable Rules of(Fields fields, Findings findings) {
    return new PieceRules(findings, fields::words, fields::placeOf, fields::way).read();
  }

  /** The rules in a table's row; null, and a fault, when they are wrong. */
  static @Nullable Rules of(Table.Row row, Findings findings) {
    return new PieceRules(
            findings,
            column -> row.cell(column).isEmpty() ? null : row.cell(column),
            column -> row.place(),
            column -> column)
        .read();
  }

  private @Nullable Rules read() {
    PieceEnds ends = ends();
    Measured measured = word("measured", MEASURED);
    Length depth = length("depth", SafeSide.LONGER);
    Boolean oneWay = word("one-way", Values.YES_OR_NO);
    Length mayBeShort = length("may-be-short", SafeSide.SHORTER);
    if (!ends.isSquare() && measured == null && texts.apply("measured") == null) {
      fault(
          "measured",
          "",
          "missing: a length with angled ends means nothing without it",
          "Say between which points the length is given: measured: long-point, short-point or"
              + " centre.");
    }
    if (atFault) {
      return null;
    }
    return new Rules(
        new CutRules(
            ends,
            depth == null || ends.isSquare() ? Length.ZERO : depth,
            oneWay != null && oneWay,
            mayBeShort == null ? Length.ZERO : mayBeShort),
        measured == null ? Measured.LONG_POINT : measured);
  }

  private PieceEnds ends() {
    String text = texts.apply("ends");
    Boolean across = word("long-points", LONG_POINTS);
    if (text == null || text.strip().equals("square")) {
      if (across != null && across) {
        fault(
            "long-points", "opposite-edges", "the ends are square", "Give the ends, or delete it.");
      }
      return PieceEnds.SQUARE;
    }
    String[] both = text.split("/", -1);
    if (both.length != 2) {
      fault("ends", text, "not the angles of two ends", ENDS_ADVICE);
      return PieceEnds.SQUARE;
    }
    Angle first = angle(text, both[0]);
    Angle second = angle(text, both[1]);
    if (first == null || second == null) {
      return PieceEnds.SQUARE;
    }
    if (across != null && across && (first.isSquare() || second.isSquare())) {
      fault(
          "long-points",
          "opposite-edges",
          "one end is square",
          "Delete it: it is about two angles.");
      return PieceEnds.SQUARE;
    }
    return new PieceEnds(first, second, across != null && across);
  }

  private @Nullable Angle angle(String all, String one) {
    return noted(values.taken(places.apply("ends"), ways.apply("ends"), all, Angle.read(one)));
  }

  private <T> @Nullable T word(String field, Map<String, T> words) {
    String text = texts.apply(field);
    return text == null
        ? null
        : noted(values.word(places.apply(field), ways.apply(field), text, words));
  }

  private @Nullable Length length(String field, SafeSide side) {
    String text = texts.apply(field);
    return text == null
        ? null
        : noted(values.length(places.apply(field), ways.apply(field), text, side));
  }

  /** Keeps in mind that a value was not taken. */
  private <T> @Nullable T noted(@Nullable T value) {
    atFault |= value == null;
    return value;
  }

  private void fault(String field, String value, String wrong, String remedy) {
    atFault = true;
    findings.fault(places.apply(field), ways.apply(field), value, wrong, remedy);
  }
}
