package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.LongStream;
import lapwright.check.NoPlanCheck.Kind;
import lapwright.measure.Length;
import lapwright.plan.Refutation;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Whatever a refutation says, it is never believed where trying every way of putting pieces on
 * sticks finds one; and known refutations hold.
 */
class NoPlanCheckTest {
  private static final List<Kind> FIVE_OF_30 = List.of(new Kind(30, 5));

  private static SortedMap<Length, Long> noRoundUp() {
    return needs(15, 3, 10, 5, 6, 9);
  }

  private static SortedMap<Length, Long> needs(long... lengthsAndCounts) {
    SortedMap<Length, Long> needs = new TreeMap<>();
    for (int k = 0; k < lengthsAndCounts.length; k += 2) {
      needs.put(Length.ofUnits(lengthsAndCounts[k]), lengthsAndCounts[k + 1]);
    }
    return needs;
  }

  private static Refutation.Sieve sieve(@Nullable Refutation rest, long... lengthsAndWeights) {
    return new Refutation.Sieve(needs(lengthsAndWeights), List.of(), List.of(), rest);
  }

  private static NoPlanCheck.Outcome follow(
      SortedMap<Length, Long> needs, List<Kind> kinds, Refutation refutation) {
    return new NoPlanCheck(needs, 0).follow(refutation, kinds);
  }

  /**
   * Three of 15, five of 10 and nine of 6 measure 149, and five sticks of 30 give them in parts,
   * but no five sticks do (a case after M. Fieldhouse, 1990).
   */
  @Test
  void aCaseWhereTheRoundedLinearProgramIsOneTooLow() {
    assertFalse(follow(noRoundUp(), FIVE_OF_30, sieve(null, 15, 15, 10, 10, 6, 6)).holds());
    // Every stick takes 29 or 30, which is 2 x 15, 3 x 10 or 5 x 6. Of three of 15 at most one pair
    // is cut: at 17, 10 and 6, less 4 a pair, each of them has 30, and all pieces have 151 of 150.
    Refutation.CutTimes halves = new Refutation.CutTimes(4, 2, 0, needs(15, 1));
    Refutation.Sieve cut =
        new Refutation.Sieve(needs(15, 17, 10, 10, 6, 6), List.of(halves), List.of(), null);
    NoPlanCheck.Outcome outcome = follow(noRoundUp(), FIVE_OF_30, sieve(cut, 15, 15, 10, 10, 6, 6));
    assertEquals("", outcome.fault());
    assertEquals(3, outcome.listed());
    assertEquals(2, outcome.steps());
  }

  @Test
  void cutsBeforeAnythingIsListed() {
    Refutation.CutTimes halves = new Refutation.CutTimes(4, 2, 0, needs(15, 1));
    Refutation cut =
        new Refutation.Sieve(needs(15, 17, 10, 10, 6, 6), List.of(halves), List.of(), null);
    NoPlanCheck.Outcome outcome = follow(noRoundUp(), FIVE_OF_30, cut);
    assertEquals("", outcome.fault());
    assertEquals(0, outcome.listed());
    assertEquals(1, outcome.steps());
    Refutation.CutTimes fewer = new Refutation.CutTimes(3, 2, 0, needs(15, 1));
    assertEquals(
        "weights under which the sticks suffice, by 3",
        follow(
                noRoundUp(),
                FIVE_OF_30,
                new Refutation.Sieve(needs(15, 17, 10, 10, 6, 6), List.of(fewer), List.of(), null))
            .fault());
  }

  @Test
  void weightsAloneWhereNoPatternWastesSoLittle() {
    // Four of 7 on two sticks of 15: nothing measures 14 or 15 but two of 7, which is a solution.
    assertFalse(follow(needs(7, 4), List.of(new Kind(15, 2)), sieve(null, 7, 1)).holds());
    // With a piece of 2: a stick holds 7 + 7 or, with 2 to waste, nothing else that is enough.
    assertTrue(follow(needs(7, 4, 2, 1), List.of(new Kind(15, 2)), sieve(null, 2, 1)).holds());
    // A negative weight: no stick of those that measure enough goes without a piece of 8.
    assertTrue(
        follow(needs(8, 1, 5, 3), List.of(new Kind(13, 2)), sieve(null, 8, -1, 5, 2))
            .fault()
            .startsWith("weights under which the sticks suffice"));
  }

  @Test
  void aDecisionThatPiecesShareAStick() {
    SortedMap<Length, Long> needs = needs(6, 2, 5, 2, 4, 2);
    List<Kind> two = List.of(new Kind(15, 2));
    // Two of 6 + 5 + 4 is a solution: no tree may refute it.
    Refutation open = sieve(null, 6, 6, 5, 5, 4, 4);
    Refutation tree =
        new Refutation.HoldingSplit(new TreeMap<>(holding(6, 1, 5, 1)), 1, open, open);
    assertFalse(follow(needs, two, sieve(tree, 6, 6, 5, 5, 4, 4)).holds());
  }

  @Test
  void faultsAreNamed() {
    Refutation unknown = sieve(null, 7, 1);
    assertTrue(follow(noRoundUp(), FIVE_OF_30, unknown).fault().contains("which no job needs"));
    Refutation.CutTimes cut = new Refutation.CutTimes(1, 2, 0, needs(15, 1));
    Refutation withCut =
        new Refutation.Sieve(needs(15, 1), List.of(cut), List.of(), sieve(null, 15, 1));
    assertEquals(
        "a first list by more than weights alone",
        follow(noRoundUp(), FIVE_OF_30, withCut).fault());
    Refutation decided =
        sieve(
            new Refutation.Sieve(needs(15, 1), List.of(), List.of(3L), null), 15, 15, 10, 10, 6, 6);
    assertEquals(
        "multipliers of more decisions than there are above",
        follow(noRoundUp(), FIVE_OF_30, decided).fault());
    Refutation huge = sieve(null, 15, Long.MAX_VALUE / 2, 10, Long.MAX_VALUE / 2);
    assertFalse(follow(noRoundUp(), FIVE_OF_30, huge).holds());
  }

  private static SortedMap<Length, Integer> holding(int... lengthsAndCounts) {
    SortedMap<Length, Integer> holding = new TreeMap<>();
    for (int k = 0; k < lengthsAndCounts.length; k += 2) {
      holding.put(Length.ofUnits(lengthsAndCounts[k]), lengthsAndCounts[k + 1]);
    }
    return holding;
  }

  @Property(tries = 3000, seed = "11")
  void neverHoldsWhereTheSticksSuffice(@ForAll long seed) {
    Random random = new Random(seed);
    SortedMap<Length, Long> needs = randomNeeds(random);
    List<Kind> sticks = randomSticks(random);
    boolean suffice = fit(pieces(needs), 0, rooms(sticks));
    for (int trial = 0; trial < 6; trial++) {
      Refutation refutation = refutation(needs, random);
      NoPlanCheck.Outcome outcome = follow(needs, sticks, refutation);
      assertFalse(suffice && outcome.holds(), () -> needs + " on " + sticks + ": " + refutation);
    }
  }

  @Test
  void randomRefutationsHoldOftenEnoughForThatToMeanSomething() {
    int held = 0;
    for (int seed = 0; seed < 20_000; seed++) {
      Random random = new Random(seed);
      SortedMap<Length, Long> needs = randomNeeds(random);
      NoPlanCheck.Outcome outcome = follow(needs, randomSticks(random), refutation(needs, random));
      held += outcome.holds() && outcome.steps() > 0 ? 1 : 0;
    }
    assertTrue(held > 100, "only " + held);
  }

  /** The refutation by halves, of needs and sticks that are a little different. */
  @Test
  void aRefutationWithCutsElsewhere() {
    Refutation.CutTimes halves = new Refutation.CutTimes(4, 2, 0, needs(15, 1));
    Refutation.Sieve cut =
        new Refutation.Sieve(needs(15, 17, 10, 10, 6, 6), List.of(halves), List.of(), null);
    Refutation refutation = sieve(cut, 15, 15, 10, 10, 6, 6);
    int held = 0;
    for (int seed = 0; seed < 4_000; seed++) {
      Random random = new Random(seed);
      SortedMap<Length, Long> needs =
          needs(15, 1 + random.nextInt(4), 10, 1 + random.nextInt(4), 6, 1 + random.nextInt(5));
      List<Kind> sticks = List.of(new Kind(30, 1 + random.nextInt(3)));
      NoPlanCheck.Outcome outcome = follow(needs, sticks, refutation);
      if (outcome.holds() && outcome.steps() > 0) {
        held++;
        assertFalse(fit(pieces(needs), 0, rooms(sticks)), () -> needs + " on " + sticks);
      }
    }
    assertTrue(held > 30, "only " + held);
  }

  private static SortedMap<Length, Long> randomNeeds(Random random) {
    SortedMap<Length, Long> needs = new TreeMap<>();
    for (int i = random.nextInt(3); i >= 0; i--) {
      needs.put(Length.ofUnits(2 + random.nextInt(9)), 1L + random.nextInt(3));
    }
    return needs;
  }

  private static List<Kind> randomSticks(Random random) {
    List<Kind> sticks = new ArrayList<>();
    for (int j = random.nextInt(2); j >= 0; j--) {
      sticks.add(new Kind(8 + random.nextInt(8), random.nextInt(4)));
    }
    return sticks;
  }

  private static Refutation refutation(SortedMap<Length, Long> needs, Random random) {
    if (random.nextInt(3) == 0) {
      return sifting(needs, random, 0, null);
    }
    Refutation undecided = random.nextInt(3) == 0 ? tree(needs, random, 0, 3) : null;
    if (undecided != null) {
      return undecided;
    }
    return new Refutation.Sieve(
        weights(needs, random), List.of(), List.of(), tree(needs, random, 0, 3));
  }

  private static @Nullable Refutation tree(
      SortedMap<Length, Long> needs, Random random, int above, int depth) {
    if (depth == 0 || random.nextInt(4) == 0) {
      return random.nextBoolean() ? null : sifting(needs, random, above, null);
    }
    if (random.nextBoolean()) {
      return sifting(needs, random, above, tree(needs, random, above, depth - 1));
    }
    SortedMap<Length, Integer> holding = new TreeMap<>();
    for (Length length : needs.keySet()) {
      if (holding.isEmpty() || random.nextBoolean()) {
        holding.put(length, 1 + random.nextInt(2));
      }
    }
    Refutation fewer = tree(needs, random, above + 1, depth - 1);
    Refutation more = tree(needs, random, above + 1, depth - 1);
    return new Refutation.HoldingSplit(
        holding,
        random.nextInt(2),
        fewer == null ? sifting(needs, random, above + 1, null) : fewer,
        more == null ? sifting(needs, random, above + 1, null) : more);
  }

  private static Refutation sifting(
      SortedMap<Length, Long> needs, Random random, int above, @Nullable Refutation rest) {
    List<Refutation.CutTimes> cuts = new ArrayList<>();
    for (int c = random.nextInt(3); c > 0; c--) {
      cuts.add(
          new Refutation.CutTimes(
              1 + random.nextInt(30),
              1 + random.nextInt(4),
              random.nextInt(4) - 1,
              small(needs, random)));
    }
    List<Long> decided = new ArrayList<>();
    for (int e = random.nextInt(above + 1); e > 0; e--) {
      decided.add((long) random.nextInt(30));
    }
    return new Refutation.Sieve(weights(needs, random), cuts, decided, rest);
  }

  private static SortedMap<Length, Long> weights(SortedMap<Length, Long> needs, Random random) {
    SortedMap<Length, Long> weights = new TreeMap<>();
    boolean byLength = random.nextBoolean();
    for (Length length : needs.keySet()) {
      weights.put(length, byLength ? length.units() : (long) random.nextInt(25) - 5);
    }
    return weights;
  }

  private static SortedMap<Length, Long> small(SortedMap<Length, Long> needs, Random random) {
    SortedMap<Length, Long> multipliers = new TreeMap<>();
    needs.keySet().forEach(length -> multipliers.put(length, (long) random.nextInt(4) - 1));
    return multipliers;
  }

  private static List<Long> pieces(SortedMap<Length, Long> needs) {
    List<Long> pieces = new ArrayList<>();
    needs.forEach(
        (length, count) -> {
          for (int k = 0; k < count; k++) {
            pieces.add(0, length.units());
          }
        });
    return pieces;
  }

  private static long[] rooms(List<Kind> sticks) {
    return sticks.stream()
        .flatMapToLong(kind -> LongStream.generate(kind::capacity).limit(kind.sticks()))
        .toArray();
  }

  /** Puts pieces on sticks one after the other in every way. */
  private static boolean fit(List<Long> pieces, int next, long[] rooms) {
    if (next == pieces.size()) {
      return true;
    }
    for (int j = 0; j < rooms.length; j++) {
      if (rooms[j] >= pieces.get(next)) {
        rooms[j] -= pieces.get(next);
        boolean fits = fit(pieces, next + 1, rooms);
        rooms[j] += pieces.get(next);
        if (fits) {
          return true;
        }
      }
    }
    return false;
  }
}
