package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;

/**
 * Sticks filled exactly by random pieces, all lengths distinct, after the augmented instances of
 * Delorme, Iori and Martello (EJOR 255, 2016). The optimum is the number of sticks.
 *
 * <p>Each stick takes a number of pieces between {@code least} and {@code most}, cut at uniform
 * random places, none below {@code smallest} thousandths of the stick; a stick whose pieces
 * occurred before is drawn again. The last two sticks take what is left to make {@code n} pieces.
 */
final class ZeroWaste implements InstanceClass {
  private static final int ATTEMPTS = 1_000_000;

  @Override
  public String name() {
    return "zero-waste";
  }

  @Override
  public String description() {
    return "sticks filled exactly by 3 to 8 pieces, all lengths distinct; optimum known";
  }

  @Override
  public List<String> parameters() {
    return List.of("n", "c", "least", "most", "smallest");
  }

  @Override
  public List<String> usual() {
    return List.of(
        "zero-waste:c=2500,n=202",
        "zero-waste:c=10000,n=202,smallest=100",
        "zero-waste:c=2500,least=3,most=3,n=201",
        "zero-waste:c=10000,n=403",
        "zero-waste:c=10000,least=3,most=3,n=402",
        "zero-waste:c=20000,n=601",
        "zero-waste:c=20000,least=3,most=3,n=600");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int pieces = spec.getInt("n", 202);
    long capacity = spec.get("c", 2500);
    int least = spec.getInt("least", 3);
    int most = spec.getInt("most", 8);
    long smallest = Math.max(1, capacity * spec.get("smallest", 0) / 1000);
    if (least < 2
        || most < least
        || pieces < least
        || capacity < 4L * pieces
        || smallest * most > capacity * 9 / 10) {
      throw new IllegalArgumentException(
          spec + ": 2 <= least <= most, n >= least, c >= 4 n, smallest x most <= 900, please");
    }
    Set<Long> used = new TreeSet<>();
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
      List<Long> stick = fill(capacity, count, smallest, random);
      if (stick.stream().noneMatch(used::contains) && new TreeSet<>(stick).size() == count) {
        used.addAll(stick);
        sticks++;
      } else if (++attempts > ATTEMPTS) {
        throw new IllegalArgumentException(
            spec + ": no distinct lengths are left; a larger c, please");
      }
    }
    return Instance.ofPieces(
        spec.toString(), spec.instanceName(seed, index), capacity, used, Known.optimum(sticks));
  }

  private static List<Long> fill(long capacity, int count, long smallest, SplittableRandom random) {
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
