package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;

/** Lines of a paper as they are written, none wider than the style's width. */
final class Page {
  private static final String BOLD = "\u001b[1m";
  private static final String FAINT = "\u001b[2m";
  private static final String YELLOW = "\u001b[33m";
  private static final String PLAIN = "\u001b[0m";

  private final Style style;
  private final Words words;
  private final List<String> lines = new ArrayList<>();
  private boolean offGrid;

  Page(Style style) {
    this.style = style;
    words = new Words(style.boxes());
  }

  int width() {
    return style.width();
  }

  Style style() {
    return style;
  }

  Words words() {
    return words;
  }

  int size() {
    return lines.size();
  }

  /** A length to the nearest that a tape shows, signed where it lies beside it. */
  String length(Length length) {
    offGrid |= !style.units().isOnGrid(length);
    return style.units().nearest(length);
  }

  /** What the signs mean, where any was printed. */
  void explainSigns() {
    if (offGrid) {
      blank();
      text(
          "+ or - after a length: it is a little longer or shorter than the "
              + (style.units() == LengthStyle.FEET_INCHES ? "1/16\"" : "0.5 mm")
              + " printed.",
          0,
          0);
    }
  }

  void line(String text) {
    lines.add(text.stripTrailing());
  }

  void blank() {
    if (!lines.isEmpty() && !lines.get(lines.size() - 1).isEmpty()) {
      lines.add("");
    }
  }

  void strong(String text) {
    lines.add(inked(BOLD, text));
  }

  void faint(String text) {
    lines.add(inked(FAINT, text));
  }

  private String inked(String ink, String text) {
    String shown = text.stripTrailing();
    return style.colour() && !shown.isEmpty() ? ink + shown + PLAIN : shown;
  }

  /** Opens a part of the paper. */
  void heading(String text) {
    blank();
    strong(words.shorten(words.clean(text), width()));
  }

  /** Text in lines, the first indented by {@code first} columns, the others by {@code next}. */
  void text(String text, int first, int next) {
    text(text, first, next, "");
  }

  void strongText(String text) {
    strongText(text, 0);
  }

  void strongText(String text, int indent) {
    text(text, indent, indent, BOLD);
  }

  /** Text that somebody should look at. */
  void warning(String text, int first, int next) {
    text(text, first, next, YELLOW);
  }

  private void text(String text, int first, int next, String ink) {
    List<String> wrapped = Words.wrap(words.clean(text), width() - Math.max(first, next));
    for (int i = 0; i < wrapped.size(); i++) {
      String shown = " ".repeat(i == 0 ? first : next) + wrapped.get(i);
      lines.add(ink.isEmpty() ? shown.stripTrailing() : inked(ink, shown));
    }
  }

  String rule(int columns) {
    return (style.boxes() ? "\u2500" : "-").repeat(columns);
  }

  String heavyRule(int columns) {
    return (style.boxes() ? "\u2501" : "=").repeat(columns);
  }

  String printed() {
    return String.join("\n", lines) + "\n";
  }
}
