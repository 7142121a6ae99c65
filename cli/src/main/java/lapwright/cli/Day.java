package lapwright.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a day as files write it. */
final class Day implements ITypeConverter<LocalDate> {
  @Override
  public LocalDate convert(String text) {
    try {
      return LocalDate.parse(text.strip());
    } catch (DateTimeParseException e) {
      throw new TypeConversionException(
          "'" + text + "' is not a day; write year-month-day, such as 2026-11-30");
    }
  }
}
