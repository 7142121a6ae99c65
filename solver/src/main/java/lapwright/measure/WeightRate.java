package lapwright.measure;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * Weight of linear stock per length, such as 4.31 lb/ft, exact as typed.
 *
 * @param amount how many {@code weight} units one {@code length} unit weighs; positive
 * @param weight pounds or kilograms
 * @param length feet or metres
 */
public record WeightRate(BigDecimal amount, WeightUnit weight, LengthUnit length) {
  public WeightRate {
    Objects.requireNonNull(weight);
    Objects.requireNonNull(length);
    if (amount.signum() <= 0) {
      throw new IllegalArgumentException("weight of " + amount + " is not positive");
    }
  }

  /**
   * Units of weight in which rates are given; 1 lb = 0.45359237 kg exactly (as in {@link Length}).
   */
  public enum WeightUnit {
    POUND("lb", 45_359_237),
    KILOGRAM("kg", 100_000_000);

    private final String symbol;
    private final long hundredMillionthsOfKg;

    WeightUnit(String symbol, long hundredMillionthsOfKg) {
      this.symbol = symbol;
      this.hundredMillionthsOfKg = hundredMillionthsOfKg;
    }

    public String symbol() {
      return symbol;
    }

    /** One of this unit in 1/100,000,000 kg. */
    public long hundredMillionthsOfKg() {
      return hundredMillionthsOfKg;
    }
  }

  /** Units of length in which rates are given. */
  public enum LengthUnit {
    FOOT("ft", Length.UNITS_PER_FOOT),
    METRE("m", 1000 * Length.UNITS_PER_MM);

    private final String symbol;
    private final long units;

    LengthUnit(String symbol, long units) {
      this.symbol = symbol;
      this.units = units;
    }

    public String symbol() {
      return symbol;
    }

    /** One of this unit in the units of {@link Length}. */
    public long units() {
      return units;
    }
  }
}
