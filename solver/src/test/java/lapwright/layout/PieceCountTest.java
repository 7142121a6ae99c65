package lapwright.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.Run;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PieceCountTest {
  private static final Length STEP = Length.ofSixteenths(1);

  /** Lengths in sixteenths of an inch; the counts follow from (L - lap)/(S - lap) by hand. */
  @ParameterizedTest
  @CsvSource({
    "7680, 64, 1920, 5", // 40 ft from 10 ft at a lap of 4 in
    "7680, 32, 1952, 4", // from 10'-2" at 2 in
    "7680, 64, 2016, 4", // from 10'-6" at 4 in
    "9824, 64, 2016, 5", // 614 in from 10'-6" at 4 in, exactly
    "9825, 64, 2016, 6", // a sixteenth more
    "38400, 384, 3840, 11", // 200 ft from 20 ft at 24 in, exactly
    "1920, 64, 1920, 1",
    "1921, 64, 1920, 2"
  })
  void piecesOfOneLengthThatCoverARun(long run, long lap, long piece, int pieces) {
    assertEquals(
        pieces,
        PieceCount.of(
            Length.ofSixteenths(run), Length.ofSixteenths(lap), Length.ofSixteenths(piece)));
  }

  /**
   * Corrugated sheets with an end lap of 6 in: weight per square grows as S/(S - 6 in), so 5 ft
   * sheets against 10 ft sheets weigh 1.0556 times as much (Cyclopedia of Architecture, Carpentry
   * and Building, about 1907, prints 1.054 to 1.060). Over a long slope the counts tell the same.
   */
  @Test
  void shorterSheetsWeighMoreByTheirLaps() {
    Length slope = Length.ofFeet(5_000, 0);
    Length lap = Length.ofInches(6);
    long shortSheets = 5L * PieceCount.of(slope, lap, Length.ofFeet(5, 0));
    long longSheets = 10L * PieceCount.of(slope, lap, Length.ofFeet(10, 0));
    long ratio = 10_000 * shortSheets / longSheets;
    assertTrue(10_540 <= ratio && ratio <= 10_600, "ratio " + ratio);
  }

  /**
   * Expansion joints every 40 ft (copper, stainless) or 32 ft (aluminium), and one more where the
   * last leg exceeds half an interval (guide specification UFGS 07 60 00).
   */
  @ParameterizedTest
  @CsvSource({
    "40, 40, 0",
    "41, 40, 1",
    "60, 40, 1",
    "61, 40, 2",
    "80, 40, 2",
    "100, 40, 2",
    "101, 40, 3",
    "32, 32, 0",
    "48, 32, 1",
    "49, 32, 2"
  })
  void gapsForExpansion(long feet, long every, int gaps) {
    assertEquals(gaps, ExpansionGaps.count(Length.ofFeet(feet, 0), Length.ofFeet(every, 0)));
  }

  private static Run run(long inches, JointRules rules) {
    return new Run("trim", "T1", Length.ofInches(inches), 1, Length.ZERO, Length.ZERO, rules, "");
  }

  @Test
  void gapsStandAtPermittedPlacesNextToEvenOnes() {
    JointRules rules =
        JointRules.of(new Joint.Butt(Length.ZERO), STEP)
            .at(new JointPlaces.Bearings(Length.ofInches(50), Length.ofInches(100)))
            .expanding(new JointRules.Expansion(Length.ofInches(450), Length.ofInches(1)));
    List<Length> gaps = ExpansionGaps.of(run(1_000, rules));
    assertEquals(ExpansionGaps.count(Length.ofInches(1_000), Length.ofInches(450)), gaps.size());
    for (Length gap : gaps) {
      assertEquals(50, gap.units() / Length.UNITS_PER_INCH % 100);
    }
  }

  @Test
  void placesTooFarApartForTheLongestUnbrokenStretchAreTold() {
    JointRules rules =
        JointRules.of(new Joint.Butt(Length.ZERO), STEP)
            .at(new JointPlaces.At(List.of(Length.ofInches(100), Length.ofInches(700))))
            .expanding(new JointRules.Expansion(Length.ofInches(450), Length.ofInches(1)));
    LayoutException told = assertThrows(LayoutException.class, () -> Stretch.of(run(1_000, rules)));
    assertEquals("longest-unbroken", told.rule());
    assertEquals(Length.ofInches(600), told.length());
  }

  @Test
  void lapsAreCentredOnTheirPlaces() {
    Length lap = Length.ofInches(4);
    JointRules rules =
        JointRules.of(new Joint.Lap(lap), STEP)
            .at(new JointPlaces.At(List.of(Length.ofInches(100), Length.ofInches(200))));
    Run run = run(300, rules);
    long stick = Length.ofInches(110).units();
    StretchSplits splits =
        StretchSplits.of(run, Stretch.of(run).get(0), stick, stick, List.of(stick), List.of(stick));
    assertEquals(3, splits.mostPieces());
    List<StretchSplits.Place> places =
        splits
            .lay(
                List.of(
                    Length.ofInches(102).units(),
                    Length.ofInches(104).units(),
                    Length.ofInches(102).units()),
                -1,
                1)
            .places();
    assertEquals(Length.ofInches(98).units(), places.get(1).start());
    assertEquals(Length.ofInches(202).units(), places.get(1).end());
  }
}
