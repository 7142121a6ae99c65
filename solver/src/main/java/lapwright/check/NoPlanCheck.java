package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.plan.Refutation;
import org.jspecify.annotations.Nullable;

/**
 * Works out whether a refutation holds, in whole numbers: follows every step over the list of the
 * patterns that are possible, pattern by pattern, from where weights alone have made it short
 * enough; before that, weighs all patterns together. See {@link Refutation} for what the steps
 * claim.
 *
 * <p>The class is long because every step reads the same lengths, sticks and decisions.
 */
final class NoPlanCheck {
  private static final int MOST_LISTED = 200_000;
  private static final BigInteger GREATEST_SUM = BigInteger.ONE.shiftLeft(Long.SIZE - 2);

  private final List<Length> lengths;
  private final long[] quantities;
  private final long unit;
  private final long[] exact;
  private final int[] sizes;
  private List<Kind> kinds = List.of();
  private long sticks;
  private long waste;

  /**
   * Sticks that are alike.
   *
   * @param capacity see {@link NoPlanCheck#capacity}
   * @param sticks how many there are at most
   */
  record Kind(long capacity, long sticks) {}

  /**
   * What was worked out.
   *
   * @param fault what is wrong with the refutation, in words; empty when it holds
   * @param listed patterns that its lists begin with
   * @param steps sieves and decisions
   */
  record Outcome(String fault, long sticks, int listed, int steps) {
    static Outcome fault(String fault) {
      return new Outcome(fault, 0, 0, 0);
    }

    boolean holds() {
      return fault.isEmpty();
    }
  }

  /** A cut pattern: pairs of the place of a length and a count. */
  private static final class Listed {
    final int kind;
    final int[] pairs;

    Listed(int kind, int[] pairs) {
      this.kind = kind;
      this.pairs = pairs;
    }
  }

  private record Decision(Map<Integer, Integer> holding, long times, boolean atMost) {}

  /**
   * A node and what is known there.
   *
   * @param possible null as long as nothing is listed
   */
  private record Step(
      Refutation refutation, @Nullable List<Listed> possible, List<Decision> decided) {}

  /**
   * @param demanded how many of each length are needed
   * @param kerf the cut that each takes besides
   */
  NoPlanCheck(SortedMap<Length, Long> demanded, long kerf) {
    lengths = List.copyOf(demanded.keySet());
    quantities = demanded.values().stream().mapToLong(q -> q).toArray();
    long divisor = 0;
    for (Length length : lengths) {
      divisor =
          BigInteger.valueOf(divisor)
              .gcd(BigInteger.valueOf(Math.addExact(length.units(), kerf)))
              .longValueExact();
    }
    unit = Math.max(1, divisor);
    exact = new long[lengths.size()];
    for (int i = 0; i < exact.length; i++) {
      exact[i] = (lengths.get(i).units() + kerf) / unit;
    }
    sizes = new int[exact.length];
  }

  /** What pieces may take of a stick, in whole common divisors of their sizes. */
  long capacity(Stick stick) {
    return Math.floorDiv(stick.usableAndCut(), unit);
  }

  /** Follows the refutation of these sticks. */
  Outcome follow(Refutation root, List<Kind> all) {
    try {
      long smallest = Arrays.stream(exact).min().orElse(0);
      kinds = all.stream().filter(k -> k.capacity() >= smallest && k.sticks() > 0).toList();
      sticks = 0;
      waste = 0;
      for (Kind kind : kinds) {
        sticks = Math.addExact(sticks, kind.sticks());
        waste = Math.addExact(waste, Math.multiplyExact(kind.capacity(), kind.sticks()));
      }
      for (int i = 0; i < exact.length; i++) {
        waste = Math.subtractExact(waste, Math.multiplyExact(exact[i], quantities[i]));
        sizes[i] = (int) Math.min(exact[i], Math.min(longest(), Integer.MAX_VALUE - 1) + 1);
      }
      return waste < 0 ? new Outcome("", sticks, 0, 0) : followAll(root);
    } catch (ArithmeticException e) {
      return Outcome.fault("numbers beyond 63 bits");
    }
  }

  private long longest() {
    return kinds.stream().mapToLong(Kind::capacity).max().orElse(0);
  }

  /**
   * A sieve where nothing is listed yet: what it leaves of all patterns, null where the sticks do
   * not suffice.
   *
   * @throws Unfollowed when it does not hold, or is too much work
   */
  private @Nullable List<Listed> siftAll(Refutation.Sieve sieve, List<Decision> decided)
      throws Unfollowed {
    if (!PossiblePatterns.isFeasible(sizes.length, longest())) {
      throw new Unfollowed("lengths too fine to weigh all patterns");
    }
    Valuation valuation = new Valuation(sieve, decided);
    if (valuation.absolute().compareTo(GREATEST_SUM) > 0) {
      throw new Unfollowed("weights that sum to " + valuation.absolute());
    }
    int[] most = new int[sizes.length];
    Arrays.setAll(most, i -> (int) Math.min(quantities[i], Integer.MAX_VALUE));
    HeaviestBeside beside =
        new HeaviestBeside(
            sizes, most, valuation.weights, valuation.named(), Math.toIntExact(longest()));
    BigInteger reserve = valuation.ofAll().negate();
    List<Long> greatest = new ArrayList<>();
    for (Kind kind : kinds) {
      HeaviestBeside.Found found =
          beside.greatest(least(kind), (int) kind.capacity(), valuation::of, MOST_LISTED);
      if (found.isTooMuch()) {
        throw new Unfollowed("cuts and decisions about more than " + MOST_LISTED + " combinations");
      }
      if (found.isNothing()) {
        return null;
      }
      greatest.add(found.weight());
      reserve = reserve.add(product(found.weight(), kind.sticks()));
    }
    if (reserve.signum() < 0) {
      return null;
    }
    if (sieve.rest() == null) {
      throw new Unfollowed("weights under which the sticks suffice, by " + reserve);
    }
    if (!sieve.cuts().isEmpty() || sieve.decided().stream().anyMatch(w -> w != 0)) {
      throw new Unfollowed("a first list by more than weights alone");
    }
    PossiblePatterns table =
        new PossiblePatterns(sizes, most, valuation.weights, Math.toIntExact(longest()));
    List<Listed> possible = new ArrayList<>();
    for (int kind = 0; kind < kinds.size(); kind++) {
      long enough = BigInteger.valueOf(greatest.get(kind)).subtract(reserve).longValueExact();
      Optional<List<int[]>> patterns =
          table.list(
              least(kinds.get(kind)),
              (int) kinds.get(kind).capacity(),
              enough,
              MOST_LISTED - possible.size());
      if (patterns.isEmpty()) {
        throw new Unfollowed("weights that leave more than " + MOST_LISTED + " patterns");
      }
      for (int[] pairs : patterns.get()) {
        possible.add(new Listed(kind, pairs));
      }
    }
    return possible;
  }

  /** Says why a refutation does not hold. */
  private static final class Unfollowed extends Exception {
    private static final long serialVersionUID = 1;

    Unfollowed(String fault) {
      super(fault);
    }

    String fault() {
      return Objects.requireNonNull(getMessage());
    }
  }

  private int least(Kind kind) {
    return (int) Math.max(0, kind.capacity() - waste);
  }

  private Outcome followAll(Refutation root) {
    int steps = 0;
    int listed = 0;
    Deque<Step> open = new ArrayDeque<>();
    open.push(new Step(root, null, List.of()));
    while (!open.isEmpty()) {
      Step step = open.pop();
      steps++;
      if (step.refutation() instanceof Refutation.HoldingSplit split) {
        String unknown = unknownLength(split.holding());
        if (!unknown.isEmpty()) {
          return Outcome.fault(unknown);
        }
        open.push(new Step(split.more(), step.possible(), with(step.decided(), split, false)));
        open.push(new Step(split.fewer(), step.possible(), with(step.decided(), split, true)));
        continue;
      }
      Refutation.Sieve sieve = (Refutation.Sieve) step.refutation();
      String fault = unknownLength(sieve.weights());
      for (Refutation.CutTimes cut : sieve.cuts()) {
        fault = fault.isEmpty() ? unknownLength(cut.multipliers()) : fault;
      }
      if (fault.isEmpty() && sieve.decided().size() > step.decided().size()) {
        fault = "multipliers of more decisions than there are above";
      }
      if (!fault.isEmpty()) {
        return Outcome.fault(fault);
      }
      List<Listed> possible = step.possible();
      List<Listed> rest;
      try {
        rest =
            possible == null
                ? siftAll(sieve, step.decided())
                : sift(sieve, possible, step.decided());
      } catch (Unfollowed e) {
        return Outcome.fault(e.fault());
      }
      if (rest != null) {
        listed += possible == null ? rest.size() : 0;
        open.push(new Step(Objects.requireNonNull(sieve.rest()), rest, step.decided()));
      }
    }
    return new Outcome("", sticks, listed, steps);
  }

  private List<Decision> with(
      List<Decision> before, Refutation.HoldingSplit split, boolean atMost) {
    Map<Integer, Integer> holding = new TreeMap<>();
    split.holding().forEach((length, count) -> holding.put(lengths.indexOf(length), count));
    List<Decision> all = new ArrayList<>(before);
    all.add(new Decision(holding, atMost ? split.times() : split.times() + 1L, atMost));
    return all;
  }

  private String unknownLength(SortedMap<Length, ?> byLength) {
    TreeSet<Length> unknown = new TreeSet<>(byLength.keySet());
    unknown.removeAll(lengths);
    return unknown.isEmpty()
        ? ""
        : "something about " + Faults.mm(unknown.first().units()) + ", which no job needs";
  }

  /**
   * What a sieve leaves of a list; null where the sticks do not suffice.
   *
   * @throws Unfollowed when they do by a sieve that is the last
   */
  private @Nullable List<Listed> sift(
      Refutation.Sieve sieve, List<Listed> possible, List<Decision> decided) throws Unfollowed {
    Valuation valuation = new Valuation(sieve, decided);
    long[] values = new long[possible.size()];
    Long[] greatest = new Long[kinds.size()];
    for (int at = 0; at < values.length; at++) {
      Listed pattern = possible.get(at);
      values[at] = valuation.of(pattern.pairs);
      Long before = greatest[pattern.kind];
      greatest[pattern.kind] = before == null ? values[at] : Math.max(before, values[at]);
    }
    BigInteger reserve = valuation.ofAll().negate();
    for (int kind = 0; kind < greatest.length; kind++) {
      if (greatest[kind] == null) {
        return null;
      }
      reserve = reserve.add(product(greatest[kind], kinds.get(kind).sticks()));
    }
    if (reserve.signum() < 0) {
      return null;
    }
    if (sieve.rest() == null) {
      throw new Unfollowed("a branch in which the sticks suffice by its last weights");
    }
    List<Listed> rest = new ArrayList<>();
    for (int at = 0; at < values.length; at++) {
      Listed pattern = possible.get(at);
      long best = Objects.requireNonNull(greatest[pattern.kind]);
      if (BigInteger.valueOf(best).subtract(BigInteger.valueOf(values[at])).compareTo(reserve)
          <= 0) {
        rest.add(pattern);
      }
    }
    return rest;
  }

  /** The value of a pattern in one sieve, v(a), and what all sticks together have, V. */
  private final class Valuation {
    private final long[] weights = new long[sizes.length];
    private final List<Refutation.CutTimes> cuts;
    private final List<long[]> multipliers = new ArrayList<>();
    private final List<Long> times;
    private final List<Decision> decisions;

    Valuation(Refutation.Sieve sieve, List<Decision> decided) {
      for (int i = 0; i < weights.length; i++) {
        weights[i] = sieve.weights().getOrDefault(lengths.get(i), 0L);
      }
      cuts = sieve.cuts();
      for (Refutation.CutTimes cut : cuts) {
        long[] byPlace = new long[sizes.length];
        for (int i = 0; i < byPlace.length; i++) {
          byPlace[i] = cut.multipliers().getOrDefault(lengths.get(i), 0L);
        }
        multipliers.add(byPlace);
      }
      times = sieve.decided();
      decisions = decided;
    }

    /** Lengths that cuts or decisions speak of. */
    boolean[] named() {
      boolean[] named = new boolean[sizes.length];
      for (long[] byPlace : multipliers) {
        for (int i = 0; i < named.length; i++) {
          named[i] |= byPlace[i] != 0;
        }
      }
      for (int e = 0; e < times.size(); e++) {
        if (times.get(e) != 0) {
          decisions.get(e).holding().keySet().forEach(i -> named[i] = true);
        }
      }
      return named;
    }

    /** No pattern's value exceeds this, nor any part of one, by absolute value. */
    BigInteger absolute() {
      BigInteger sum = BigInteger.ZERO;
      for (int i = 0; i < weights.length; i++) {
        sum = sum.add(product(weights[i], quantities[i]).abs());
      }
      for (int c = 0; c < cuts.size(); c++) {
        BigInteger rounded = BigInteger.valueOf(cuts.get(c).constant()).abs();
        for (int i = 0; i < weights.length; i++) {
          rounded = rounded.add(product(multipliers.get(c)[i], quantities[i]).abs());
        }
        sum =
            sum.add(rounded.add(BigInteger.ONE).multiply(BigInteger.valueOf(cuts.get(c).times())));
      }
      for (long w : times) {
        sum = sum.add(BigInteger.valueOf(w));
      }
      return sum;
    }

    /** Of pairs of the place of a length and a count. */
    long of(int[] pairs) {
      long value = sum(weights, pairs);
      for (int c = 0; c < cuts.size(); c++) {
        Refutation.CutTimes cut = cuts.get(c);
        long whole =
            Math.floorDiv(
                Math.addExact(sum(multipliers.get(c), pairs), cut.constant()), cut.divisor());
        value = Math.subtractExact(value, Math.multiplyExact(cut.times(), whole));
      }
      for (int e = 0; e < times.size(); e++) {
        Decision decision = decisions.get(e);
        if (holds(pairs, decision.holding())) {
          value = Math.addExact(value, decision.atMost() ? -times.get(e) : times.get(e));
        }
      }
      return value;
    }

    private static boolean holds(int[] pairs, Map<Integer, Integer> holding) {
      int held = 0;
      for (int k = 0; k < pairs.length; k += 2) {
        Integer needed = holding.get(pairs[k]);
        if (needed != null && pairs[k + 1] >= needed) {
          held++;
        }
      }
      return held == holding.size();
    }

    private static long sum(long[] byPlace, int[] pairs) {
      long sum = 0;
      for (int k = 0; k < pairs.length; k += 2) {
        sum = Math.addExact(sum, Math.multiplyExact(byPlace[pairs[k]], pairs[k + 1]));
      }
      return sum;
    }

    BigInteger ofAll() {
      BigInteger sum = ofAll(weights);
      for (int c = 0; c < cuts.size(); c++) {
        Refutation.CutTimes cut = cuts.get(c);
        BigInteger unrounded = ofAll(multipliers.get(c)).add(product(cut.constant(), sticks));
        BigInteger divisor = BigInteger.valueOf(cut.divisor());
        BigInteger whole = unrounded.subtract(unrounded.mod(divisor)).divide(divisor);
        sum = sum.subtract(whole.multiply(BigInteger.valueOf(cut.times())));
      }
      for (int e = 0; e < times.size(); e++) {
        BigInteger part = product(times.get(e), decisions.get(e).times());
        sum = decisions.get(e).atMost() ? sum.subtract(part) : sum.add(part);
      }
      return sum;
    }

    private BigInteger ofAll(long[] byPlace) {
      BigInteger sum = BigInteger.ZERO;
      for (int i = 0; i < byPlace.length; i++) {
        sum = sum.add(product(byPlace[i], quantities[i]));
      }
      return sum;
    }
  }

  private static BigInteger product(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }
}
