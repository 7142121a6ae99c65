package lapwright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

/**
 * Against exact geometry: the half-diagonals of squares and equilateral triangles give cosines and
 * tangents of 22.5, 30, 45 and 60 degrees as roots, which whole numbers compare without error.
 */
final class AngleTest {
  private static final Angle HALF_OF_45 = new Angle(22_500);

  @Property(seed = "11")
  void aMiterOf45TakesTheKerfTimesTheRootOfTwo(@ForAll @LongRange(min = 1, max = 400_000) long k) {
    long w = Angle.ofDegrees(45).cutWidth(Length.ofUnits(k)).units();
    assertJustAtLeast(square(w), square(w - 1), times(2, square(k)));
    assertEquals(k, Angle.ofDegrees(45).skew(Length.ofUnits(k)).units());
  }

  @Property(seed = "11")
  void aMiterOf30TakesTwoKerfsOverTheRootOfThree(
      @ForAll @LongRange(min = 1, max = 400_000) long k) {
    long w = Angle.ofDegrees(30).cutWidth(Length.ofUnits(k)).units();
    assertJustAtLeast(times(3, square(w)), times(3, square(w - 1)), times(4, square(k)));
    long t = Angle.ofDegrees(30).skew(Length.ofUnits(k)).units();
    assertJustAtLeast(times(3, square(t)), times(3, square(t - 1)), square(k));
  }

  @Property(seed = "11")
  void aMiterOf60TakesTwoKerfsAndSlopesTheRootOfThree(
      @ForAll @LongRange(min = 1, max = 16_000_000_000L) long k) {
    assertEquals(2 * k, Angle.ofDegrees(60).cutWidth(Length.ofUnits(k)).units());
    long t = Angle.ofDegrees(60).skew(Length.ofUnits(k)).units();
    assertJustAtLeast(square(t), square(t - 1), times(3, square(k)));
  }

  @Property(seed = "11")
  void aMiterOf22AndAHalfSlopesTheRootOfTwoLessOne(
      @ForAll @LongRange(min = 1, max = 16_000_000_000L) long d) {
    long t = HALF_OF_45.skew(Length.ofUnits(d)).units();
    assertJustAtLeast(square(t + d), square(t - 1 + d), times(2, square(d)));
  }

  @Property(seed = "11")
  void widthAndSlopeObeyPythagoras(
      @ForAll @IntRange(min = 1, max = 59_999) int thousandths,
      @ForAll @LongRange(min = 1, max = 4_000_000_000L) long side) {
    Angle angle = new Angle(thousandths);
    BigInteger width = BigInteger.valueOf(angle.cutWidth(Length.ofUnits(side)).units());
    BigInteger slope = BigInteger.valueOf(angle.skew(Length.ofUnits(side)).units());
    BigInteger less = width.pow(2).subtract(square(side)).subtract(slope.pow(2)).abs();
    BigInteger oneUnitEach = width.add(slope).add(BigInteger.TWO).multiply(BigInteger.TWO);
    assertTrue(less.compareTo(oneUnitEach) <= 0);
  }

  @Example
  void aSquareCutTakesTheKerf() {
    assertEquals(Length.ofMm(3), Angle.SQUARE.cutWidth(Length.ofMm(3)));
    assertEquals(Length.ZERO, Angle.SQUARE.skew(Length.ofMm(50)));
  }

  @Example
  void anglesAreReadAsTheSawsScaleShowsThem() {
    assertEquals(Reading.of(HALF_OF_45), Angle.read(" 22.5 "));
    assertEquals(Reading.of(Angle.ofDegrees(45)), Angle.read("45 deg"));
    assertEquals(Reading.of(Angle.SQUARE), Angle.read("square"));
    assertEquals("22.5", HALF_OF_45.degrees());
    for (String wrong : new String[] {"", "90", "60.001", "22.50001", "-5", "forty", "1e1"}) {
      assertInstanceOf(Reading.Refused.class, Angle.read(wrong), wrong);
    }
  }

  private static void assertJustAtLeast(BigInteger value, BigInteger oneLess, BigInteger exact) {
    assertTrue(value.compareTo(exact) >= 0 && oneLess.compareTo(exact) < 0);
  }

  private static BigInteger square(long number) {
    return BigInteger.valueOf(number).pow(2);
  }

  private static BigInteger times(long factor, BigInteger number) {
    return number.multiply(BigInteger.valueOf(factor));
  }
}
