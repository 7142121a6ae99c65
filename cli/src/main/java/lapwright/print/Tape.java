package lapwright.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;

/**
 * A stick drawn as a tape: the pieces to scale, below each the running mark at its far end,
 * measured from the squared end.
 */
final class Tape {
  private static final int MOST_MARK_LINES = 3;

  private final Page page;
  private final Ticket ticket;
  private final int width;
  private final List<Part> parts = new ArrayList<>();

  /**
   * A stretch of the stick.
   *
   * @param kind what becomes of it
   * @param label longest first, what may be written in it
   * @param length how long it is, the cut after it included
   * @param end running mark at its far end; empty where nobody measures
   */
  private record Part(Kind kind, List<String> label, long length, String end) {}

  private enum Kind {
    TRIM,
    PIECE,
    KEPT,
    SCRAP
  }

  private Tape(Page page, Ticket ticket, int width) {
    this.page = page;
    this.ticket = ticket;
    this.width = width;
    addParts();
  }

  static void draw(Page page, Ticket ticket, int indent) {
    new Tape(page, ticket, page.width() - 2 * indent - 1).write(" ".repeat(indent));
  }

  private void addParts() {
    if (!ticket.endTrim().isZero()) {
      parts.add(new Part(Kind.TRIM, List.of(), ticket.endTrim().units(), ""));
    }
    // Where pieces are too narrow for their marks, equal ones are drawn as one stretch.
    boolean together = ticket.pieces() > width / 6;
    Length start = Length.ZERO;
    for (Step step : ticket.steps()) {
      List<Length> ends = step.ends();
      int each = together ? ends.size() : 1;
      for (int i = each - 1; i < ends.size(); i += each) {
        parts.add(
            new Part(
                Kind.PIECE,
                label(step, each),
                ends.get(i).minus(start).units(),
                page.length(ends.get(i))));
        start = ends.get(i);
      }
    }
    if (!ticket.offcut().isZero()) {
      String length = page.length(ticket.offcut());
      parts.add(
          ticket.kept()
              ? new Part(Kind.KEPT, List.of("keep " + length, "keep"), ticket.offcut().units(), "")
              : new Part(Kind.SCRAP, List.of(), ticket.offcut().units(), ""));
    }
  }

  private List<String> label(Step step, int times) {
    String mark = page.words().clean(step.cut().mark());
    String length = page.length(step.cut().length());
    String many = times > 1 ? times + " x " : "";
    return mark.isEmpty()
        ? List.of(many + length)
        : List.of(many + mark + "  " + length, many + mark, mark);
  }

  private void write(String margin) {
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
    marks(ends).forEach(line -> page.line((margin + line).stripTrailing()));
  }

  private String glyph(String box, String plain) {
    return page.style().boxes() ? box : plain;
  }

  private String filled(Part part, int room) {
    String fill =
        switch (part.kind()) {
          case TRIM, SCRAP -> glyph("\u2591", "/");
          case PIECE, KEPT -> " ";
        };
    for (String label : part.label()) {
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
  private List<String> marks(int[] ends) {
    List<StringBuilder> lines = new ArrayList<>();
    for (int i = 0; i < MOST_MARK_LINES; i++) {
      lines.add(new StringBuilder());
    }
    int zero = ticket.endTrim().isZero() ? 0 : ends[0];
    lines.get(0).append(" ".repeat(zero)).append("0");
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
