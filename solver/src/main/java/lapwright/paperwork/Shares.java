package lapwright.paperwork;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;

/**
 * Divides a length among jobs in proportion to their weights, to the unit: each gets the whole
 * units of its quota, and the units that are left go to the largest remainders, equal remainders by
 * name (the largest remainder method of apportionment).
 */
final class Shares {
  private Shares() {}

  private record Remainder(String name, BigInteger rest) {}

  /**
   * The shares, which add up to {@code total}.
   *
   * @param weights by name, none negative, at least one positive
   */
  static SortedMap<String, Length> divide(Length total, SortedMap<String, Length> weights) {
    BigInteger sum =
        weights.values().stream()
            .map(weight -> BigInteger.valueOf(weight.units()))
            .reduce(BigInteger.ZERO, BigInteger::add);
    if (sum.signum() <= 0) {
      throw new IllegalArgumentException("nothing to divide by: weights " + weights);
    }
    SortedMap<String, Length> shares = new TreeMap<>();
    List<Remainder> remainders = new ArrayList<>();
    long given = 0;
    for (Map.Entry<String, Length> entry : weights.entrySet()) {
      BigInteger[] quota =
          BigInteger.valueOf(total.units())
              .multiply(BigInteger.valueOf(entry.getValue().units()))
              .divideAndRemainder(sum);
      long whole = quota[0].longValueExact();
      given += whole;
      shares.put(entry.getKey(), Length.ofUnits(whole));
      remainders.add(new Remainder(entry.getKey(), quota[1]));
    }
    remainders.sort(
        Comparator.comparing(Remainder::rest).reversed().thenComparing(Remainder::name));
    long left = total.units() - given;
    for (int i = 0; i < left; i++) {
      shares.merge(remainders.get(i).name(), Length.ofUnits(1), Length::plus);
    }
    return shares;
  }
}
