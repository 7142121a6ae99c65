package lapwright.print;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Text as a terminal shows it: how many columns it takes, what may not be shown, where it breaks.
 * Names come from people's files and may hold anything.
 */
final class Words {
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private final boolean utf8;

  Words(boolean utf8) {
    this.utf8 = utf8;
  }

  String ellipsis() {
    return utf8 ? "\u2026" : "...";
  }

  /**
   * The text on one line: line breaks and tabs become spaces, other control characters and those
   * that turn the direction of text become question marks; without UTF-8 so does all that is not
   * ASCII, but letters lose their accents first.
   */
  String clean(String text) {
    String shown = utf8 ? text : MARKS.matcher(decomposed(text)).replaceAll("");
    StringBuilder line = new StringBuilder();
    shown
        .codePoints()
        .forEach(
            point -> {
              if (Character.isWhitespace(point) || Character.isSpaceChar(point)) {
                line.append(' ');
              } else if (isHidden(point) || (!utf8 && point > 126)) {
                line.append('?');
              } else {
                line.appendCodePoint(point);
              }
            });
    return line.toString().strip();
  }

  private static String decomposed(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD);
  }

  private static boolean isHidden(int point) {
    int type = Character.getType(point);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.PRIVATE_USE
        || type == Character.UNASSIGNED;
  }

  /** Columns that cleaned text takes. */
  static int columns(String text) {
    return text.codePoints().map(Words::columns).sum();
  }

  private static int columns(int point) {
    int type = Character.getType(point);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    return isWide(point) ? 2 : 1;
  }

  /** East Asian wide and fullwidth characters and pictures (Unicode Standard Annex 11). */
  private static boolean isWide(int point) {
    if (point < 0x1100) {
      return false;
    }
    return point <= 0x115F
        || (point >= 0x2E80 && point <= 0xA4CF)
        || (point >= 0xA960 && point <= 0xA97F)
        || (point >= 0xAC00 && point <= 0xD7A3)
        || (point >= 0xF900 && point <= 0xFAFF)
        || (point >= 0xFE30 && point <= 0xFE6F)
        || (point >= 0xFF00 && point <= 0xFF60)
        || (point >= 0xFFE0 && point <= 0xFFE6)
        || (point >= 0x1F000 && point <= 0x1FAFF)
        || (point >= 0x20000 && point <= 0x3FFFD)
        || isPicture(point);
  }

  private static boolean isPicture(int point) {
    return point == 0x231A
        || point == 0x231B
        || (point >= 0x23E9 && point <= 0x23F3)
        || (point >= 0x25FD && point <= 0x25FE)
        || (point >= 0x2600 && point <= 0x27BF);
  }

  /** Cleaned text, cut with an ellipsis where it takes more than {@code width} columns. */
  String shorten(String text, int width) {
    return columns(text) <= width
        ? text
        : head(text, width - columns(ellipsis())) + cut(ellipsis(), width);
  }

  private static String cut(String ellipsis, int width) {
    return columns(ellipsis) <= width ? ellipsis : ellipsis.substring(0, Math.max(0, width));
  }

  private static String head(String text, int width) {
    StringBuilder head = new StringBuilder();
    int used = 0;
    for (int point : text.codePoints().toArray()) {
      used += columns(point);
      if (used > width) {
        break;
      }
      head.appendCodePoint(point);
    }
    return head.toString();
  }

  /** Cleaned text in lines of at most {@code width} columns, broken at spaces where it can be. */
  static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      String rest = word;
      if (line.length() > 0 && columns(line.toString()) + 1 + columns(rest) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (columns(rest) > width) {
        String head = head(rest, width);
        lines.add(head);
        rest = rest.substring(head.length());
      }
      line.append(line.length() > 0 ? " " : "").append(rest);
    }
    lines.add(line.toString());
    return lines;
  }

  static String left(String text, int width) {
    return text + " ".repeat(Math.max(0, width - columns(text)));
  }

  static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - columns(text))) + text;
  }
}
