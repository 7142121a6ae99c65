package lapwright.bench.instance;

import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;

/**
 * Sticks filled exactly by random pieces, all lengths distinct, after the augmented instances of
 * Delorme, Iori and Martello (EJOR 255, 2016). The optimum is the number of sticks.
 *
 * <p>Each stick takes a number of pieces between {@code least} and {@code most}, cut at uniform
 * random places, none below {@code smallest} thousandths of the stick and one of at least {@code
 * large} thousandths; a stick whose pieces occurred before is drawn again. The last two sticks take
 * what is left to make {@code n} pieces.
 */
final class ZeroWaste implements InstanceClass {
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
    return FullSticks.PARAMETERS;
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
    FullSticks full = FullSticks.of(spec, capacity, 8, 0);
    if (pieces < full.least() || capacity < 4L * pieces) {
      throw new IllegalArgumentException(spec + ": n >= least, c >= 4 n, please");
    }
    Set<Long> used = new TreeSet<>();
    int sticks = full.fill(used, pieces, random);
    return Instance.ofPieces(
        spec.toString(), spec.instanceName(seed, index), capacity, used, Known.optimum(sticks));
  }
}
