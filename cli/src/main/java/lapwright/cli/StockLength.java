package lapwright.cli;

import lapwright.measure.Length;
import lapwright.measure.LengthText;
import lapwright.measure.Reading;
import lapwright.measure.SafeSide;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the length of a stick. */
final class StockLength implements ITypeConverter<Length> {
  @Override
  public Length convert(String text) {
    Reading<Length> reading = LengthText.read(text, SafeSide.SHORTER);
    if (reading instanceof Reading.Refused<Length> refused) {
      throw new TypeConversionException(
          "'" + text + "': " + refused.wrong() + ". " + refused.remedy());
    }
    Length length = ((Reading.Value<Length>) reading).value();
    if (length.units() <= 0) {
      throw new TypeConversionException("'" + text + "' is not the length of a stick");
    }
    return length;
  }
}
