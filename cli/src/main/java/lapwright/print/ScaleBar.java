package lapwright.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A length drawn to scale as a bar of parts, with a mark below the far end of each. */
final class ScaleBar {
  private static final int MOST_MARK_LINES = 3;

  /**
   * A part of the length.
   *
   * @param hatched true where it is not to be read as a piece
   * @param labels longest first, what may be written in it
   * @param length how long it is, to scale
   * @param end mark at its far end; empty for none
   */
  record Part(boolean hatched, List<String> labels, long length, String end) {
    Part {
      labels = List.copyOf(labels);
    }
  }

  private final Page page;
  private final List<Part> parts;
  private final int width;

  private ScaleBar(Page page, List<Part> parts, int width) {
    this.page = page;
    this.parts = parts;
    this.width = width;
  }

  /**
   * Draws the parts over the width of the page.
   *
   * @param zeroAfter the 0 of the marks stands after so many parts
   * @param zero how it is written
   */
  static void draw(Page page, List<Part> parts, int zeroAfter, String zero, int indent) {
    new ScaleBar(page, parts, page.width() - 2 * indent - 1)
        .write(" ".repeat(indent), zeroAfter, zero);
  }

  private void write(String margin, int zeroAfter, String zero) {
    int[] ends = columns();
    StringBuilder top = new StringBuilder(glyph("\u250c", "+"));
    StringBuilder middle = new StringBuilder(glyph("\u2502", "|"));
    StringBuilder bottom = new StringBuilder(glyph("\u2514", "+"));
    int start = 0;
    for (int i = 0; i < parts.size(); i++) {
      int room = ends[i] - start - 1;
      boolean last = i == parts.size() - 1;
      top.append(glyph("\u2500", "-").repeat(room))
          .append(last ? glyph("\u2510", "+") : glyph("\u252c", "+"));
      middle.append(filled(parts.get(i), room)).append(glyph("\u2502", "|"));
      bottom
          .append(glyph("\u2500", "-").repeat(room))
          .append(last ? glyph("\u2518", "+") : glyph("\u2534", "+"));
      start = ends[i];
    }
    page.line(margin + top);
    page.line(margin + middle);
    page.line(margin + bottom);
    marks(ends, zeroAfter == 0 ? 0 : ends[zeroAfter - 1], zero)
        .forEach(line -> page.line((margin + line).stripTrailing()));
  }

  private String glyph(String box, String plain) {
    return page.style().boxes() ? box : plain;
  }

  private String filled(Part part, int room) {
    String fill = part.hatched() ? glyph("\u2591", "/") : " ";
    for (String label : part.labels()) {
      int columns = Words.columns(label);
      if (columns + 2 <= room || columns == room) {
        int before = (room - columns) / 2;
        return fill.repeat(before) + label + fill.repeat(room - columns - before);
      }
    }
    return fill.repeat(room);
  }

  /** The column of each part's far end, to scale, each part at least two columns wide. */
  private int[] columns() {
    int[] wide = new int[parts.size()];
    long left = parts.stream().mapToLong(Part::length).reduce(0, Math::addExact);
    int room = width - 2 * parts.size();
    for (int i = 0; i < wide.length; i++) {
      long length = parts.get(i).length();
      int share = left == 0 ? 0 : (int) ((length * room + left / 2) / left);
      wide[i] = 2 + share;
      room -= share;
      left -= length;
    }
    Arrays.parallelPrefix(wide, Integer::sum);
    return wide;
  }

  /** Each mark ends below its line; those that would touch go a line lower. */
  private List<String> marks(int[] ends, int zeroAt, String zero) {
    List<StringBuilder> lines = new ArrayList<>();
    for (int i = 0; i < MOST_MARK_LINES; i++) {
      lines.add(new StringBuilder());
    }
    lines.get(0).append(" ".repeat(zeroAt)).append(zero);
    for (int i = 0; i < parts.size(); i++) {
      String mark = parts.get(i).end();
      int from = ends[i] + 1 - mark.length();
      for (StringBuilder line : lines) {
        if (!mark.isEmpty() && from >= line.length() + (line.isEmpty() ? 0 : 1)) {
          line.append(" ".repeat(from - line.length())).append(mark);
          break;
        }
      }
    }
    return lines.stream().map(StringBuilder::toString).filter(line -> !line.isBlank()).toList();
  }
}
