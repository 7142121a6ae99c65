package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * Bin packing with sizes uniform in a range.
 *
 * <p>With other ranges this gives: Falkenauer's uniform class (J. Heuristics 2, 1996: capacity 150,
 * sizes 20 to 100); instances like those of Schwerin and Waescher (Int. Trans. Oper. Res. 4, 1997:
 * capacity 1,000, a narrow range of sizes); like the hardest classic class, in which nearly all
 * pieces differ (Schoenfield, 2002); and like the third class of Scholl, Klein and Juergens
 * (Computers and OR 24, 1997: capacity 100,000, sizes 20,000 to 35,000).
 */
final class RandomSizes implements InstanceClass {
  private final String name;
  private final String description;
  private final List<String> usual;
  private final ClassSpec standard;

  /**
   * @param standard values of n (least), n-most, c, from, to and distinct (0 or 1) where a
   *     specification gives none
   */
  RandomSizes(String description, List<String> usual, String standard) {
    this.standard = ClassSpec.parse(standard);
    this.name = this.standard.name();
    this.description = description;
    this.usual = List.copyOf(usual);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public String description() {
    return description;
  }

  @Override
  public List<String> parameters() {
    return List.of("n", "n-most", "c", "from", "to", "distinct");
  }

  @Override
  public List<String> usual() {
    return usual;
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int least = spec.getInt("n", standard.getInt("n", 100));
    int most = spec.getInt("n-most", spec.getInt("n", standard.getInt("n-most", least)));
    long capacity = spec.get("c", standard.get("c", 1000));
    long from = spec.get("from", standard.get("from", 1));
    long to = spec.get("to", standard.get("to", capacity));
    boolean distinct = spec.get("distinct", standard.get("distinct", 0)) == 1;
    if (least < 1 || most < least || from < 1 || to < from || to > capacity) {
      throw new IllegalArgumentException(
          spec + ": 1 <= n <= n-most and 1 <= from <= to <= c are required");
    }
    int pieces = random.nextInt(least, most + 1);
    if (distinct && to - from + 1 < pieces) {
      throw new IllegalArgumentException(
          spec + ": there are not " + pieces + " distinct sizes from " + from + " to " + to);
    }
    List<Long> sizes = new ArrayList<>();
    Set<Long> seen = new LinkedHashSet<>();
    while (sizes.size() < pieces) {
      long size = random.nextLong(from, to + 1);
      if (!distinct || seen.add(size)) {
        sizes.add(size);
      }
    }
    return Instance.ofPieces(
        spec.toString(), spec.instanceName(seed, index), capacity, sizes, Known.NOTHING);
  }
}
