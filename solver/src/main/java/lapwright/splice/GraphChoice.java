package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import lapwright.problem.SpliceProblem.Arc;
import lapwright.problem.SpliceProblem.Splits.Graph;

/** Splits that are the paths of a directed graph without cycles: shortest paths, O(arcs). */
final class GraphChoice implements Choice {
  private final int nodes;
  private final int[] from;
  private final int[] to;
  private final int[] lengthOf;
  private final long[] lengths;

  GraphChoice(Graph graph) {
    this(graph.positions().size(), graph.arcs());
  }

  GraphChoice(int nodes, List<Arc> arcs) {
    this.nodes = nodes;
    List<Arc> sorted = new ArrayList<>(arcs);
    sorted.sort(Comparator.comparingInt(Arc::from).thenComparingInt(Arc::to));
    lengths = arcs.stream().mapToLong(Arc::length).distinct().sorted().toArray();
    from = new int[sorted.size()];
    to = new int[sorted.size()];
    lengthOf = new int[sorted.size()];
    for (int a = 0; a < from.length; a++) {
      from[a] = sorted.get(a).from();
      to[a] = sorted.get(a).to();
      lengthOf[a] = Arrays.binarySearch(lengths, sorted.get(a).length());
    }
  }

  @Override
  public List<Long> cheapest(LengthPrices prices) {
    double[] price = new double[lengths.length];
    for (int l = 0; l < price.length; l++) {
      price[l] = prices.of(lengths[l]);
    }
    double[] best = new double[nodes];
    int[] last = new int[nodes];
    Arrays.fill(best, Double.POSITIVE_INFINITY);
    Arrays.fill(last, -1);
    best[0] = 0;
    for (int a = 0; a < from.length; a++) {
      double cost = best[from[a]] + price[lengthOf[a]];
      if (cost < best[to[a]]) {
        best[to[a]] = cost;
        last[to[a]] = a;
      }
    }
    List<Long> path = new ArrayList<>();
    int node = nodes - 1;
    if (last[node] < 0) {
      return List.of();
    }
    while (node > 0) {
      path.add(lengths[lengthOf[last[node]]]);
      node = from[last[node]];
    }
    Collections.reverse(path);
    return path;
  }

  @Override
  public List<Long> lightest(StepWeights weights, long cut) {
    return cheapest(length -> weights.of(length, cut));
  }

  @Override
  public long leastWeight(StepWeights weights, long cut) {
    long[] best = new long[nodes];
    Arrays.fill(best, Long.MAX_VALUE);
    best[0] = 0;
    for (int a = 0; a < from.length; a++) {
      if (best[from[a]] != Long.MAX_VALUE) {
        long weight = Math.addExact(best[from[a]], weights.of(lengths[lengthOf[a]], cut));
        best[to[a]] = Math.min(best[to[a]], weight);
      }
    }
    return best[nodes - 1];
  }

  @Override
  public List<Long> lengths() {
    return Arrays.stream(lengths).boxed().toList();
  }
}
