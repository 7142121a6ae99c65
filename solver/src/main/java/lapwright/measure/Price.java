package lapwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a supplier asks: an amount per stick, pack, length or weight, exact as typed.
 *
 * @param amount in the shop's currency, not negative
 * @param per what the amount buys
 */
public record Price(BigDecimal amount, Per per) {
  private static final BigInteger HUNDREDWEIGHT_IN_POUNDS = BigInteger.valueOf(100);

  public Price {
    Objects.requireNonNull(per);
    if (amount.signum() < 0) {
      throw new IllegalArgumentException("price of " + amount + " is negative");
    }
  }

  /** What an amount of money buys; {@code cwt} is 100 lb. */
  public enum Per {
    EACH("each"),
    PACK("pack"),
    FOOT("ft"),
    METRE("m"),
    POUND("lb"),
    KILOGRAM("kg"),
    HUNDREDWEIGHT("cwt"),
    SQUARE("square");

    private final String word;

    Per(String word) {
      this.word = word;
    }

    /** The word that files use. */
    public String word() {
      return word;
    }

    public boolean isByWeight() {
      return this == POUND || this == KILOGRAM || this == HUNDREDWEIGHT;
    }
  }

  /**
   * The price of what is sold at once: {@code sticks} sticks of {@code each} length. Worked out
   * exactly and rounded once, to 1/10,000, half up.
   *
   * @param sticks sticks in a pack, at least 1
   * @param weight needed when the price is by weight
   * @throws IllegalArgumentException if the price is by weight and no weight is given, or by area
   */
  public Money ofSticks(Length each, int sticks, @Nullable WeightRate weight) {
    BigInteger length = BigInteger.valueOf(each.units()).multiply(BigInteger.valueOf(sticks));
    BigInteger amountUnscaled = amount.unscaledValue().multiply(BigInteger.valueOf(Money.PER_UNIT));
    BigInteger amountScale = BigInteger.ONE;
    if (amount.scale() > 0) {
      amountScale = BigInteger.TEN.pow(amount.scale());
    } else {
      amountUnscaled = amountUnscaled.multiply(BigInteger.TEN.pow(-amount.scale()));
    }
    return switch (per) {
      case EACH -> Money.rounded(amountUnscaled.multiply(BigInteger.valueOf(sticks)), amountScale);
      case PACK -> Money.rounded(amountUnscaled, amountScale);
      case FOOT ->
          Money.rounded(
              amountUnscaled.multiply(length),
              amountScale.multiply(BigInteger.valueOf(Length.UNITS_PER_FOOT)));
      case METRE ->
          Money.rounded(
              amountUnscaled.multiply(length),
              amountScale.multiply(BigInteger.valueOf(1000 * Length.UNITS_PER_MM)));
      case POUND, KILOGRAM, HUNDREDWEIGHT -> byWeight(amountUnscaled, amountScale, length, weight);
      case SQUARE -> throw new IllegalArgumentException("sticks are not priced by the square");
    };
  }

  /**
   * The price of what is sold at once: so many pieces, whatever their length. Rounded once, to
   * 1/10,000, half up.
   *
   * @param pieces in a pack, at least 1
   * @throws IllegalArgumentException if the price is not by the piece or the pack
   */
  public Money ofPieces(int pieces) {
    if (per != Per.EACH && per != Per.PACK) {
      throw new IllegalArgumentException("pieces are not priced by the " + per.word());
    }
    return ofSticks(Length.ZERO, pieces, null);
  }

  private Money byWeight(
      BigInteger amountUnscaled,
      BigInteger amountScale,
      BigInteger length,
      @Nullable WeightRate weight) {
    if (weight == null) {
      throw new IllegalArgumentException(
          "price per " + per.word() + " needs the material's weight");
    }
    BigDecimal rate = weight.amount();
    BigInteger rateUnscaled = rate.unscaledValue();
    BigInteger rateScale = BigInteger.ONE;
    if (rate.scale() > 0) {
      rateScale = BigInteger.TEN.pow(rate.scale());
    } else {
      rateUnscaled = rateUnscaled.multiply(BigInteger.TEN.pow(-rate.scale()));
    }
    BigInteger perUnitOfWeight =
        switch (per) {
          case KILOGRAM ->
              BigInteger.valueOf(WeightRate.WeightUnit.KILOGRAM.hundredMillionthsOfKg());
          case HUNDREDWEIGHT ->
              BigInteger.valueOf(WeightRate.WeightUnit.POUND.hundredMillionthsOfKg())
                  .multiply(HUNDREDWEIGHT_IN_POUNDS);
          default -> BigInteger.valueOf(WeightRate.WeightUnit.POUND.hundredMillionthsOfKg());
        };
    BigInteger numerator =
        amountUnscaled
            .multiply(rateUnscaled)
            .multiply(BigInteger.valueOf(weight.weight().hundredMillionthsOfKg()))
            .multiply(length);
    BigInteger denominator =
        amountScale
            .multiply(rateScale)
            .multiply(perUnitOfWeight)
            .multiply(BigInteger.valueOf(weight.length().units()));
    return Money.rounded(numerator, denominator);
  }
}
