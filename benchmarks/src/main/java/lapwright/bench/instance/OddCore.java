package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;

/**
 * Fifteen pieces that fill three sticks by length, and by the linear program, but need four, among
 * full sticks of random pieces; all lengths distinct. The optimum is one above what the linear
 * program rounds up to.
 *
 * <p>The fifteen are the edges of the Petersen graph: every node has a random length, all ten
 * together a stick, and an edge is as long as both its nodes. So every perfect matching fills a
 * stick exactly. Half of each of the six matchings covers every edge once, but no three of them do,
 * because the edges cannot be coloured by three colours (J. Petersen, 1898). That colourings of
 * edges make such problems is from A. Caprara and others, Operations Research Letters 43, 2015; to
 * hide them among full sticks, from M. Delorme, M. Iori and S. Martello, EJOR 255, 2016.
 *
 * <p>Every other stick has a piece so large that none of the fifteen fits beside it. Since nothing
 * can be wasted, all smaller pieces go beside large ones, and three sticks are left for the
 * fifteen.
 */
final class OddCore implements InstanceClass {
  private static final int NODES = 10;
  private static final int CORE = 15;
  private static final int CORE_STICKS = 3;

  @Override
  public String name() {
    return "odd-core";
  }

  @Override
  public String description() {
    return "full sticks around 15 pieces that need one more than their length; optimum known";
  }

  @Override
  public List<String> parameters() {
    return FullSticks.PARAMETERS;
  }

  @Override
  public List<String> usual() {
    return List.of(
        "odd-core:c=2500,n=60",
        "odd-core:c=2500,n=201",
        "odd-core:c=10000,n=402",
        "odd-core:c=20000,n=600");
  }

  @Override
  public Instance generate(ClassSpec spec, long seed, int index) {
    SplittableRandom random = new SplittableRandom(Math.addExact(seed, index));
    int pieces = spec.getInt("n", 201);
    long capacity = spec.get("c", 2500);
    FullSticks full = FullSticks.of(spec, capacity, 3, 880);
    int around = pieces - CORE;
    if (around < 0 || (around > 0 && around < full.least()) || capacity < 4L * pieces) {
      throw new IllegalArgumentException(spec + ": n 15 or at least 15 + least, c >= 4 n, please");
    }
    Set<Long> used = core(capacity, (capacity - full.large()) / 2 + 1, random);
    int sticks = full.fill(used, pieces, random);
    return Instance.ofPieces(
        spec.toString(),
        spec.instanceName(seed, index),
        capacity,
        used,
        Known.optimum(sticks + CORE_STICKS + 1));
  }

  /** The fifteen, all different, from nodes of at least that length. */
  private static Set<Long> core(long capacity, long leastNode, SplittableRandom random) {
    if (leastNode * NODES > capacity * 9 / 10) {
      throw new IllegalArgumentException("large is to be at least 820, please");
    }
    FullSticks stick = new FullSticks(capacity, NODES, NODES, leastNode, 1);
    while (true) {
      List<Long> nodes = stick.stick(NODES, random);
      Set<Long> edges = new TreeSet<>();
      for (int[] edge : petersen()) {
        edges.add(nodes.get(edge[0]) + nodes.get(edge[1]));
      }
      if (edges.size() == CORE && !suffice(List.copyOf(edges), capacity)) {
        return edges;
      }
    }
  }

  /** A ring of five, a star of five, and five spokes. */
  private static List<int[]> petersen() {
    List<int[]> edges = new ArrayList<>();
    for (int v = 0; v < NODES / 2; v++) {
      edges.add(new int[] {v, (v + 1) % 5});
      edges.add(new int[] {5 + v, 5 + (v + 2) % 5});
      edges.add(new int[] {v, 5 + v});
    }
    return edges;
  }

  /** Whether three sticks are enough after all: by chance other pieces than matchings fill one. */
  private static boolean suffice(List<Long> edges, long capacity) {
    List<Integer> fills = new ArrayList<>();
    for (int set = 0; set < 1 << CORE; set++) {
      long length = 0;
      for (int e = 0; e < CORE; e++) {
        length += (set >> e & 1) * edges.get(e);
      }
      if (length == capacity) {
        fills.add(set);
      }
    }
    for (int one : fills) {
      for (int other : fills) {
        if ((one & other) == 0 && fills.contains((1 << CORE) - 1 - one - other)) {
          return true;
        }
      }
    }
    return false;
  }
}
