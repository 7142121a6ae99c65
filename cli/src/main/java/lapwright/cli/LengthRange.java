package lapwright.cli;

import lapwright.measure.Length;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Lengths from the shortest to the longest. */
record LengthRange(Length from, Length to) {
  /** Reads {@code 8ft..14ft}. */
  static final class Converter implements ITypeConverter<LengthRange> {
    @Override
    public LengthRange convert(String text) {
      String[] ends = text.split("\\.\\.", -1);
      if (ends.length != 2) {
        throw new TypeConversionException(
            "'" + text + "' is not two lengths with two dots between, such as 8ft..14ft");
      }
      StockLength one = new StockLength();
      Length from = one.convert(ends[0].strip());
      Length to = one.convert(ends[1].strip());
      if (!from.isShorterThan(to)) {
        throw new TypeConversionException(
            "'" + text + "': the first length is not the shorter one");
      }
      return new LengthRange(from, to);
    }
  }
}
