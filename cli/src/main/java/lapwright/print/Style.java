package lapwright.print;

import java.util.Objects;
import lapwright.measure.LengthStyle;

/**
 * How text is laid out.
 *
 * @param width most columns a line takes, at least {@link #NARROWEST}
 * @param lines most lines of a paper that is not shown whole, at least {@link #SHORTEST}
 * @param colour true when the terminal shows bold and colours; they never carry a meaning alone
 * @param boxes true when the terminal shows UTF-8, false for plain ASCII
 * @param units how lengths are printed
 * @param all true to show everything, however long
 */
public record Style(
    int width, int lines, boolean colour, boolean boxes, LengthStyle units, boolean all) {
  public static final int NARROWEST = 60;
  public static final int SHORTEST = 20;

  /** A screen of 80 columns, and 40 lines of which the last is for the prompt. */
  public static final int USUAL_WIDTH = 80;

  public static final int USUAL_LINES = 39;

  public Style {
    Objects.requireNonNull(units);
    if (width < NARROWEST || lines < SHORTEST) {
      throw new IllegalArgumentException(
          "a page of " + width + " columns and " + lines + " lines is too small");
    }
  }

  /** Plain ASCII of the usual size, without colour, shortened to a screen. */
  public static Style plain(LengthStyle units) {
    return new Style(USUAL_WIDTH, USUAL_LINES, false, false, units, false);
  }

  public Style withAll(boolean everything) {
    return new Style(width, lines, colour, boxes, units, everything);
  }

  public Style withBoxes(boolean utf8) {
    return new Style(width, lines, colour, utf8, units, all);
  }

  public Style withColour(boolean coloured) {
    return new Style(width, lines, coloured, boxes, units, all);
  }

  public Style withUnits(LengthStyle style) {
    return new Style(width, lines, colour, boxes, style, all);
  }

  /** As near to {@code columns} as can be printed in. */
  public Style withWidth(int columns) {
    return new Style(Math.max(NARROWEST, columns), lines, colour, boxes, units, all);
  }
}
