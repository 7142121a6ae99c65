package lapwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import lapwright.measure.Length;

/**
 * What is decided about plain pieces that may come from any lot: of each length, how many come from
 * some lots together. Immutable.
 */
final class SharedPieces {
  /** Nothing is decided. */
  static final SharedPieces UNDECIDED = new SharedPieces(new TreeMap<>());

  private final SortedMap<Length, List<Part>> decided;

  /**
   * How many pieces of a length come from some lots together.
   *
   * @param most {@link Long#MAX_VALUE} where nothing is decided
   */
  record Part(Set<String> lots, long least, long most) {
    Part {
      lots = Collections.unmodifiableSet(new TreeSet<>(lots));
    }
  }

  private SharedPieces(SortedMap<Length, List<Part>> decided) {
    this.decided = decided;
  }

  /** With another decision; empty where its lots share some with an earlier one, but not all. */
  Optional<SharedPieces> with(Length length, Set<String> lots, long least, long most) {
    List<Part> parts = new ArrayList<>();
    Part part = new Part(lots, least, most);
    for (Part other : decided.getOrDefault(length, List.of())) {
      if (other.lots().equals(part.lots())) {
        part =
            new Part(
                lots, Math.max(part.least(), other.least()), Math.min(part.most(), other.most()));
      } else if (Collections.disjoint(other.lots(), part.lots())) {
        parts.add(other);
      } else {
        return Optional.empty();
      }
    }
    parts.add(part);
    SortedMap<Length, List<Part>> all = new TreeMap<>(decided);
    all.put(length, List.copyOf(parts));
    return Optional.of(new SharedPieces(all));
  }

  /**
   * How many pieces of a length come from where: lots about which nothing is decided stand alone.
   * What the others leave open is drawn tight; empty where the decisions allow no numbers.
   *
   * @param gives whether a lot has a stick for a piece of a length
   */
  Optional<List<Part>> parts(
      Length length, long wanted, Set<String> lots, BiPredicate<String, Length> gives) {
    List<Part> parts = new ArrayList<>(decided.getOrDefault(length, List.of()));
    for (String lot : lots) {
      if (parts.stream().noneMatch(part -> part.lots().contains(lot))) {
        parts.add(new Part(Set.of(lot), 0, Long.MAX_VALUE));
      }
    }
    long sumOfLeast = 0;
    long sumOfMost = 0;
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      boolean any =
          part.lots().stream().anyMatch(lot -> lots.contains(lot) && gives.test(lot, length));
      parts.set(i, new Part(part.lots(), part.least(), any ? Math.min(wanted, part.most()) : 0));
      sumOfLeast = Math.addExact(sumOfLeast, part.least());
      sumOfMost = Math.addExact(sumOfMost, parts.get(i).most());
    }
    if (sumOfLeast > wanted || sumOfMost < wanted) {
      return Optional.empty();
    }
    List<Part> tight = new ArrayList<>();
    for (Part part : parts) {
      long least = Math.max(part.least(), wanted - (sumOfMost - part.most()));
      long most = Math.min(part.most(), wanted - (sumOfLeast - part.least()));
      if (least > most) {
        return Optional.empty();
      }
      tight.add(new Part(part.lots(), least, most));
    }
    return Optional.of(tight);
  }
}
