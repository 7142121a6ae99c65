package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Sticks filled exactly by three pieces each: two from [0.25, 0.40] of the stick and their
 * complement. After the triplet class of E. Falkenauer (J. Heuristics 2, 1996). The optimum is the
 * number of sticks.
 */
final class Triplets implements InstanceClass {
  @Override
  public String name() {
    return "triplets";
  }

  @Override
  public String description() {
    return "three pieces fill a stick exactly; optimum n/3";
  }

  @Override
  public List<String> parameters() {
    return List.of("n", "c", "least");
  }

  @Override
  public List<String> usual() {
    return List.of("triplets:n=60", "triplets:n=120", "triplets:n=249", "triplets:n=501");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int pieces = spec.getInt("n", 60);
    long capacity = spec.get("c", 1000);
    long least = spec.get("least", capacity / 5);
    if (pieces < 3 || pieces % 3 != 0 || capacity < 20 || least > capacity / 3) {
      throw new IllegalArgumentException(
          spec + ": n is a multiple of 3, c at least 20, least at most a third of c");
    }
    long from = -Math.floorDiv(-capacity, 4);
    long to = capacity * 2 / 5;
    List<Long> sizes = new ArrayList<>();
    while (sizes.size() < pieces) {
      long first = random.nextLong(from, to + 1);
      long second = random.nextLong(from, to + 1);
      long third = capacity - first - second;
      if (third >= least) {
        sizes.addAll(List.of(first, second, third));
      }
    }
    return Instance.ofPieces(
        spec.toString(),
        spec.instanceName(seed, index),
        capacity,
        sizes,
        Known.optimum(pieces / 3));
  }
}
