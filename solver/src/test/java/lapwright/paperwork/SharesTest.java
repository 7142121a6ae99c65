package lapwright.paperwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

final class SharesTest {
  /**
   * The 120 seats that Hamilton's bill gave to fifteen states after the census of 1790 (M. Balinski
   * and H. P. Young, Fair Representation, 1982; populations and seats from memory, populations
   * checked to add up to the 3,615,920 that the book gives).
   */
  @Test
  void hamiltonsSeatsOf1792() {
    SortedMap<String, Length> people = new TreeMap<>();
    people.put("Virginia", Length.ofUnits(630_560));
    people.put("Massachusetts", Length.ofUnits(475_327));
    people.put("Pennsylvania", Length.ofUnits(432_879));
    people.put("North Carolina", Length.ofUnits(353_523));
    people.put("New York", Length.ofUnits(331_589));
    people.put("Maryland", Length.ofUnits(278_514));
    people.put("Connecticut", Length.ofUnits(236_841));
    people.put("South Carolina", Length.ofUnits(206_236));
    people.put("New Jersey", Length.ofUnits(179_570));
    people.put("New Hampshire", Length.ofUnits(141_822));
    people.put("Vermont", Length.ofUnits(85_533));
    people.put("Georgia", Length.ofUnits(70_835));
    people.put("Kentucky", Length.ofUnits(68_705));
    people.put("Rhode Island", Length.ofUnits(68_446));
    people.put("Delaware", Length.ofUnits(55_540));
    assertEquals(
        3_615_920, people.values().stream().mapToLong(Length::units).sum(), "population in all");
    SortedMap<String, Length> seats = Shares.divide(Length.ofUnits(120), people);
    Map<String, Integer> expected =
        Map.ofEntries(
            Map.entry("Virginia", 21),
            Map.entry("Massachusetts", 16),
            Map.entry("Pennsylvania", 14),
            Map.entry("North Carolina", 12),
            Map.entry("New York", 11),
            Map.entry("Maryland", 9),
            Map.entry("Connecticut", 8),
            Map.entry("South Carolina", 7),
            Map.entry("New Jersey", 6),
            Map.entry("New Hampshire", 5),
            Map.entry("Vermont", 3),
            Map.entry("Georgia", 2),
            Map.entry("Kentucky", 2),
            Map.entry("Rhode Island", 2),
            Map.entry("Delaware", 2));
    expected.forEach(
        (state, number) -> assertEquals(Length.ofUnits(number), seats.get(state), state));
  }

  @Test
  void equalRemaindersGoByName() {
    SortedMap<String, Length> equal = new TreeMap<>();
    List.of("c", "a", "b").forEach(job -> equal.put(job, Length.ofUnits(7)));
    SortedMap<String, Length> shares = Shares.divide(Length.ofUnits(5), equal);
    assertEquals(
        List.of(Length.ofUnits(2), Length.ofUnits(2), Length.ofUnits(1)),
        List.copyOf(shares.values()));
  }

  @Test
  void nothingToDivideByIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Shares.divide(Length.ofUnits(5), new TreeMap<>(Map.of("a", Length.ZERO))));
  }

  @Property(seed = "11")
  void sharesAddUpAndLieWithinOneUnitOfTheQuota(
      @ForAll @LongRange(min = 0, max = 10_000_000_000_000L) long total,
      @ForAll @Size(min = 1, max = 12)
          List<@LongRange(min = 1, max = 10_000_000_000_000L) Long> weights) {
    SortedMap<String, Length> byName = new TreeMap<>();
    for (int i = 0; i < weights.size(); i++) {
      byName.put("job " + i, Length.ofUnits(weights.get(i)));
    }
    SortedMap<String, Length> shares = Shares.divide(Length.ofUnits(total), byName);
    assertEquals(total, shares.values().stream().mapToLong(Length::units).sum());
    BigInteger sum =
        weights.stream().map(BigInteger::valueOf).reduce(BigInteger.ZERO, BigInteger::add);
    byName.forEach(
        (job, weight) -> {
          BigInteger off =
              BigInteger.valueOf(shares.get(job).units())
                  .multiply(sum)
                  .subtract(BigInteger.valueOf(total).multiply(BigInteger.valueOf(weight.units())));
          assertTrue(off.abs().compareTo(sum) < 0, job);
        });
  }
}
