package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;

/**
 * Sticks cut at uniform random places, so that nothing is left of them.
 *
 * @param capacity length of a stick
 * @param least pieces a stick
 * @param most pieces a stick
 * @param smallest length that no piece is shorter than
 * @param large length that one piece of each stick has at least
 */
record FullSticks(long capacity, int least, int most, long smallest, long large) {
  /** Parameters of a class whose sticks are cut so, with the pieces and the stick's length. */
  static final List<String> PARAMETERS = List.of("n", "c", "least", "most", "smallest", "large");

  private static final int ATTEMPTS = 1_000_000;

  FullSticks {
    if (least < 2
        || most < least
        || smallest * most > capacity * 9 / 10
        || large > (capacity - smallest * (most - 1)) * 99 / 100) {
      throw new IllegalArgumentException(
          "2 <= least <= most, smallest x most <= 900, large + smallest x (most - 1) < 990, please");
    }
  }

  /**
   * As parameters of a class say: least, most, and smallest and large in thousandths of the stick.
   */
  static FullSticks of(ClassSpec spec, long capacity, int usualMost, long usualLarge) {
    return new FullSticks(
        capacity,
        spec.getInt("least", 3),
        spec.getInt("most", usualMost),
        Math.max(1, capacity * spec.get("smallest", 0) / 1000),
        Math.max(1, capacity * spec.get("large", usualLarge) / 1000));
  }

  /**
   * Fills sticks with pieces of lengths that are not used yet, until so many are. The last two take
   * what is left to make that number.
   *
   * @return the number of sticks
   */
  int fill(Set<Long> used, int pieces, SplittableRandom random) {
    int sticks = 0;
    int attempts = 0;
    while (used.size() < pieces) {
      int left = pieces - used.size();
      int count = random.nextInt(least, most + 1);
      if (left <= most) {
        count = left;
      } else if (left - count < least) {
        count = left - least >= least ? left - least : (left + 1) / 2;
      }
      List<Long> stick = stick(count, random);
      if (stick.stream().anyMatch(length -> length >= large)
          && stick.stream().noneMatch(used::contains)
          && new TreeSet<>(stick).size() == count) {
        used.addAll(stick);
        sticks++;
      } else if (++attempts > ATTEMPTS) {
        throw new IllegalArgumentException("no distinct lengths are left; a larger c, please");
      }
    }
    return sticks;
  }

  /** Pieces of one stick, none below the smallest. */
  List<Long> stick(int count, SplittableRandom random) {
    // Marks on what is left when each piece has its smallest size but one unit.
    long free = capacity - count * (smallest - 1);
    TreeSet<Long> marks = new TreeSet<>();
    while (marks.size() < count - 1) {
      marks.add(random.nextLong(1, free));
    }
    List<Long> pieces = new ArrayList<>();
    long from = 0;
    for (long mark : marks) {
      pieces.add(mark - from + smallest - 1);
      from = mark;
    }
    pieces.add(free - from + smallest - 1);
    return pieces;
  }
}
