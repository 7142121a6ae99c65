package lapwright.demand;

import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.plan.Refutation;

/** Refutations by size in the shop's words: a size is a length and a cut. */
record Refutations(Length kerf) {

  Refutation inLengths(lapwright.problem.Refutation refutation) {
    if (refutation instanceof lapwright.problem.Refutation.HoldingSplit split) {
      return new Refutation.HoldingSplit(
          byLength(split.holding()),
          split.times(),
          inLengths(split.fewer()),
          inLengths(split.more()));
    }
    lapwright.problem.Refutation.Sieve sieve = (lapwright.problem.Refutation.Sieve) refutation;
    return new Refutation.Sieve(
        byLength(sieve.weights()),
        sieve.cuts().stream()
            .map(
                cut ->
                    new Refutation.CutTimes(
                        cut.times(), cut.divisor(), cut.constant(), byLength(cut.multipliers())))
            .toList(),
        sieve.decided(),
        sieve.rest() == null ? null : inLengths(sieve.rest()));
  }

  private <T> SortedMap<Length, T> byLength(SortedMap<Long, T> bySize) {
    SortedMap<Length, T> byLength = new TreeMap<>();
    bySize.forEach((size, value) -> byLength.put(Length.ofUnits(size - kerf.units()), value));
    return byLength;
  }
}
