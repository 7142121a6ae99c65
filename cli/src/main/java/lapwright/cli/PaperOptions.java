package lapwright.cli;

import java.time.LocalDate;
import lapwright.measure.LengthStyle;
import lapwright.print.Style;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How a command tells its result. */
final class PaperOptions {
  @Option(
      names = "--units",
      paramLabel = "ft-in|mm",
      converter = Units.class,
      description = "Print lengths that way, not as the shop does.")
  private @Nullable LengthStyle units;

  @Option(
      names = "--date",
      paramLabel = "DAY",
      converter = Day.class,
      description = "The day it is, such as 2026-11-30 (default: today).")
  private @Nullable LocalDate date;

  @Option(names = "--all", description = "Show everything on a terminal too, however long.")
  private boolean all;

  @Option(names = "--json", description = "Print the result as JSON.")
  private boolean json;

  boolean isAll() {
    return all;
  }

  boolean isJson() {
    return json;
  }

  LocalDate day(Surroundings surroundings) {
    return date == null ? surroundings.today().get() : date;
  }

  Style style(Shop shop, Surroundings surroundings) {
    int lines = surroundings.screenLines();
    LengthStyle lengths = units == null ? usual(shop.units()) : units;
    return new Style(
        Style.USUAL_WIDTH,
        lines == 0 ? Integer.MAX_VALUE : Math.max(Style.SHORTEST, lines - 1),
        surroundings.colour(),
        !surroundings.plainCharacters(),
        lengths,
        all);
  }

  /** Everything, in these units, whatever the screen holds. */
  static Style styleOn(Surroundings surroundings, LengthStyle lengths) {
    return new Style(
        Style.USUAL_WIDTH,
        Integer.MAX_VALUE,
        surroundings.colour(),
        !surroundings.plainCharacters(),
        lengths,
        true);
  }

  /** For what is told before any shop is known. */
  static Style plain() {
    return Style.plain(LengthStyle.FEET_INCHES).withAll(true);
  }

  static LengthStyle usual(Shop.Units units) {
    return switch (units) {
      case FEET_INCHES -> LengthStyle.FEET_INCHES;
      case MILLIMETRES -> LengthStyle.MILLIMETRES;
    };
  }

  /** Reads the word that files use. */
  static final class Units implements ITypeConverter<LengthStyle> {
    @Override
    public LengthStyle convert(String text) {
      for (Shop.Units units : Shop.Units.values()) {
        if (units.word().equals(text)) {
          return usual(units);
        }
      }
      throw new TypeConversionException("'" + text + "' is neither ft-in nor mm");
    }
  }
}
