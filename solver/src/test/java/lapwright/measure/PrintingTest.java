package lapwright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PrintingTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "9'-6\"           | 9'-6\"",
        "24'              | 24'-0\"",
        "11'-11-61/64\"   | 11'-11-15/16\"+",
        "11'-11-63/64\"   | 12'-0\"-",
        "3/32\"           | 1/8\"-",
        "3/4\"            | 3/4\"",
        "7-1/4\"          | 7-1/4\"",
        "10'-1/2\"        | 10'-0-1/2\"",
        "0                | 0\"",
        "1 mm             | 1/16\"-",
      })
  void feetAndInchesToTheNearestSixteenthWithASignWhereItIsOff(String text, String printed) {
    assertEquals(printed, LengthStyle.FEET_INCHES.nearest(length(text)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "3200 mm | 3200 mm",
        "2895.5 mm | 2895.5 mm",
        "3/32\" | 2.5- mm",
        "1/16\" | 1.5+ mm",
        "0 | 0 mm",
      })
  void millimetresToTheNearestHalfWithASignWhereItIsOff(String text, String printed) {
    assertEquals(printed, LengthStyle.MILLIMETRES.nearest(length(text)));
  }

  @Test
  void theShortestStickIsRoundedUp() {
    assertEquals("19'-10-11/16\"", LengthStyle.FEET_INCHES.atLeast(length("19'-10-43/64\"")));
    assertEquals("19'-10-11/16\"", LengthStyle.FEET_INCHES.atLeast(length("19'-10-11/16\"")));
    assertEquals("2.5 mm", LengthStyle.MILLIMETRES.atLeast(length("3/32\"")));
  }

  @Property(seed = "11")
  void theSignTellsOnWhichSideThePrintedLengthLies(
      @ForAll @LongRange(min = 0, max = 16_000_000_000L) long units) {
    for (LengthStyle style : LengthStyle.values()) {
      String printed = style.nearest(Length.ofUnits(units));
      String bare = printed.replace("+", "").replaceFirst("-(?=$| mm)", "");
      long shown = length(bare).units();
      String sign = printed.contains("+") ? "+" : printed.length() > bare.length() ? "-" : "";
      assertEquals(units > shown ? "+" : units < shown ? "-" : "", sign, printed);
    }
  }

  @Test
  void exactMillimetresNeedAtMostSevenDecimals() {
    assertEquals("0.0000625", LengthStyle.exactMm(Length.ofUnits(1)).toPlainString());
    assertEquals("2895.6", LengthStyle.exactMm(length("9'-6\"")).toPlainString());
    assertEquals("3200", LengthStyle.exactMm(length("3200 mm")).toPlainString());
  }

  @Test
  void moneyToTheCentWithThousandsApart() {
    assertEquals("$1,093.40", new MoneyStyle("USD").print(Money.ofCents(109_340)));
    assertEquals("1,093.40 EUR", new MoneyStyle("EUR").print(Money.ofCents(109_340)));
    assertEquals("-$0.05", new MoneyStyle("USD").print(Money.ofCents(-5)));
    assertEquals("$0.13", new MoneyStyle("USD").print(new Money(1_250)));
    assertEquals("$1,234,567.00", new MoneyStyle("USD").print(Money.ofCents(123_456_700)));
  }

  @Test
  void percentToTheHundredthHalfUp() {
    assertEquals("3.25 %", Percent.of(13, 400).print());
    assertEquals("0.01 %", Percent.of(1, 20_000).print());
    assertEquals("100.00 %", Percent.of(7, 7).print());
    assertEquals("0.00 %", Percent.of(0, 0).print());
  }

  @ParameterizedTest
  @CsvSource({"41.00,41.00", "0,0", "1000000000,1000000000", ".5,0.5"})
  void pricesAreReadExactly(String text, BigDecimal amount) {
    assertEquals(Reading.of(amount), DecimalText.money(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "$41 | not an amount of money",
        "-1 | an amount is not negative",
        "1,000.00 | a comma in a number",
        "1e9 | not an amount of money",
        "1000000000.01 | more than 1,000,000,000",
      })
  void pricesThatAreNoneAreRefused(String text, String wrong) {
    var refused = assertInstanceOf(Reading.Refused.class, DecimalText.money(text));
    assertEquals(wrong, refused.wrong());
  }

  @Test
  void weightsPerLength() {
    assertEquals(
        Reading.of(
            new WeightRate(
                new BigDecimal("4.31"), WeightRate.WeightUnit.POUND, WeightRate.LengthUnit.FOOT)),
        DecimalText.weight("4.31 lb/ft"));
    assertEquals(
        Reading.of(
            new WeightRate(
                new BigDecimal("6.4"),
                WeightRate.WeightUnit.KILOGRAM,
                WeightRate.LengthUnit.METRE)),
        DecimalText.weight("6.4kg/m"));
    for (String text : new String[] {"4.31", "4.31 lb", "0 lb/ft", "4,31 lb/ft", "x kg/m"}) {
      assertInstanceOf(Reading.Refused.class, DecimalText.weight(text), text);
    }
  }

  private static Length length(String text) {
    return ((Reading.Value<Length>) LengthText.read(text, SafeSide.LONGER)).value();
  }
}
