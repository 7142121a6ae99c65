package lapwright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LengthTextTest {
  private static final long IN = Length.UNITS_PER_INCH;

  /** Sixty-fourths of an inch that each way of writing stands for; 1 in = 25.4 mm exactly. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "20'            | 15360",
        "24\"           | 1536",
        "3/32\"         | 6",
        "7-1/4\"        | 464",
        "7 1/4\"        | 464",
        "10'-6\"        | 8064",
        "10' 6\"        | 8064",
        "10' 6 1/2\"    | 8096",
        "10'-6-1/2\"    | 8096",
        "10'-6 1/2\"    | 8096",
        "10'6           | 8064",
        "10'6\"         | 8064",
        "10'-6          | 8064",
        "10'-6-1/2      | 8096",
        "10' - 6\"      | 8064",
        "126.5\"        | 8096",
        "10.5'          | 8064",
        "10 ft 6 in     | 8064",
        "10ft 6in       | 8064",
        "10 FT. 6 IN.   | 8064",
        "10 feet 6 inches | 8064",
        "10 ft          | 7680",
        "1 foot         | 768",
        "10\u2019-6\u201d | 8064",
        "10\u2032\u20136\u2033 | 8064",
        "10\u2032 6\u2032\u2032 | 8064",
        "10'-6''        | 8064",
        "24''           | 1536",
        "10'-6½\"       | 8096",
        "10' 6 ½\"      | 8096",
        "¾\"            | 48",
        "10'-¼\"        | 7696",
        "10'-0\"        | 7680",
        "7-1\u20444\"   | 464",
        "635 mm         | 1600",
        "635mm          | 1600",
        "63.5 cm        | 1600",
        "0.635 m        | 1600",
        ".5\"           | 32",
        "0              | 0",
        "0\"            | 0",
        " 20'           | 15360",
      })
  void readsEveryWayOfWritingExactly(String text, long sixtyFourths) {
    var value = assertInstanceOf(Reading.Value.class, LengthText.read(text, SafeSide.LONGER), text);
    assertEquals(Length.ofUnits(sixtyFourths * 6350), value.value());
    assertEquals(java.util.List.of(), value.notes());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "``           | no length",
        "10           | a number without a unit",
        "126.5        | a number without a unit",
        "6 1/2        | a number without a unit",
        "0.0          | a number without a unit",
        "10' 6        | is the 6 after the feet inches, or a mark?",
        "10 ft 6      | is the 6 after the feet inches, or a mark?",
        "10' - 6      | is the 6 after the feet inches, or a mark?",
        "10.5'-6\"    | feet with a decimal point and inches as well",
        "-5'          | a length is not negative",
        "10 1/2'      | a fraction of a foot, or is a mark missing?",
        "10-6         | a dash between two numbers, and no foot mark",
        "1 200 mm     | a space inside a number, or no unit",
        "1,200 mm     | a comma in a number",
        "10,5'        | a comma in a number",
        "3/0\"        | the fraction 3/0 has no value",
        "9/8\"        | the fraction 9/8 is one or more",
        "10' 5'       | feet are followed by inches only",
        "10'-4 mm     | feet are followed by inches only",
        "10'x         | 'x' is not understood after the length",
        "10'-6\" B1   | not understood after '10'-6\"'",
        "20', 24'     | ',' is not understood after the length",
        "long         | not a length",
        "$10          | not a length",
        "1001 m       | longer than 1,000 m",
        "6-Oct        | a date where a length belongs: spreadsheets turn 10-6 into a date",
        "Oct-06       | a date where a length belongs: spreadsheets turn 10-6 into a date",
        "2026-10-06   | a date where a length belongs: spreadsheets turn 10-6 into a date",
        "10/6/2026    | a date where a length belongs: spreadsheets turn 10-6 into a date",
      })
  void refusesWhatCouldMeanSomethingElse(String text, String wrong) {
    var refused =
        assertInstanceOf(Reading.Refused.class, LengthText.read(text, SafeSide.LONGER), text);
    assertEquals(wrong, refused.wrong());
    assertTrue(refused.remedy().length() > 10);
  }

  @Test
  void warnsOfMoreInchesThanAFootHas() {
    var value = assertInstanceOf(Reading.Value.class, LengthText.read("9'-14\"", SafeSide.LONGER));
    assertEquals(Length.ofFeet(9, 14), value.value());
    assertEquals(1, value.notes().size());
    assertEquals(
        0,
        ((Reading.Value<Length>) LengthText.read("9'-11-3/4\"", SafeSide.LONGER)).notes().size());
  }

  @Test
  void roundsWhatIsOffTheUnitToTheSafeSideAndSaysSo() {
    // 0.063 in = 1.6002 mm = 25,603.2 units; 10.333 ft = 3,149.4984 mm = 50,391,974.4 units
    assertRounded("0.063\"", 25_604, 25_603);
    assertRounded("10.333'", 50_391_975, 50_391_974);
    assertRounded("1/3\"", 135_467, 135_466);
  }

  private static void assertRounded(String text, long longer, long shorter) {
    var up = assertInstanceOf(Reading.Value.class, LengthText.read(text, SafeSide.LONGER));
    var down = assertInstanceOf(Reading.Value.class, LengthText.read(text, SafeSide.SHORTER));
    assertEquals(Length.ofUnits(longer), up.value());
    assertEquals(Length.ofUnits(shorter), down.value());
    assertEquals(1, up.notes().size());
    assertEquals(1, down.notes().size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`9'-6\"  P1  post`     | 3648 | `  P1  post`",
        "`10' 6 1/2\" P1`       | 4048 | ` P1`",
        "`10 ft 6 in P1`        | 4032 | ` P1`",
        "`10' P1 post`          | 3840 | ` P1 post`",
        "`10' - post`           | 3840 | ` - post`",
        "`10' 2E1 post`         | 3840 | ` 2E1 post`",
        "`10' 007 post`         | 3840 | ` 007 post`",
        "`10' 3A`               | 3840 | ` 3A`",
        "`24\" - 1/2 inch plate`| 768  | ` - 1/2 inch plate`",
        "`635 mm M1`            | 800  | ` M1`",
      })
  void findsWhereALengthEndsAndWordsBegin(String text, long thirtySeconds, String rest) {
    LengthText.Prefix prefix = LengthText.readPrefix(text, 0, SafeSide.LONGER);
    var value = assertInstanceOf(Reading.Value.class, prefix.reading());
    assertEquals(Length.ofUnits(thirtySeconds * IN / 32), value.value());
    assertEquals(rest, text.substring(prefix.end()));
  }

  @Property(seed = "11")
  void whatIsPrintedExactlyIsReadBackAsItWas(
      @ForAll @LongRange(min = 0, max = 16_000_000_000L) long units, @ForAll boolean onInches) {
    Length length = Length.ofUnits(onInches ? units / 6350 * 6350 : units);
    for (LengthStyle style : LengthStyle.values()) {
      for (SafeSide side : SafeSide.values()) {
        assertEquals(Reading.of(length), LengthText.read(style.exact(length), side));
      }
    }
  }

  @Property(seed = "11")
  void feetInchesAndFractionsAddUp(
      @ForAll @IntRange(max = 3000) int feet,
      @ForAll @IntRange(max = 11) int inches,
      @ForAll @IntRange(max = 63) int rest) {
    String text = feet + "'-" + inches + (rest == 0 ? "" : "-" + rest + "/64") + "\"";
    assertEquals(
        Reading.of(Length.ofFeet(feet, inches).plus(Length.ofUnits(6350L * rest))),
        LengthText.read(text, SafeSide.SHORTER));
  }

  @Property(tries = 5000, seed = "11")
  void anyTextIsReadOrRefusedAndNeverThrows(@ForAll("scraps") String text) {
    for (SafeSide side : SafeSide.values()) {
      if (LengthText.read(text, side) instanceof Reading.Value<Length> value) {
        assertTrue(value.value().units() >= 0 && !value.value().isLongerThan(LengthText.LONGEST));
      }
      int end = LengthText.readPrefix(text, 0, side).end();
      assertTrue(end >= 0 && end <= text.length());
    }
  }

  @net.jqwik.api.Provide
  net.jqwik.api.Arbitrary<String> scraps() {
    return net.jqwik.api.Arbitraries.strings()
        .withChars("0123456789'\"-/. ,½\u2019\u201dftinmc\u0000\t@#é")
        .ofMaxLength(14);
  }
}
