package lapwright.exact;

import java.util.Arrays;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;

/** Least and most packs of each stock: all that can be had, or a part of it within a tree. */
public final class PackLimits {
  private final int[] least;
  private final int[] most;

  private PackLimits(int[] least, int[] most) {
    this.least = least;
    this.most = most;
  }

  /** Everything that can be had. */
  public static PackLimits of(StickProblem problem) {
    List<Stock> stocks = problem.stocks();
    int[] most = new int[stocks.size()];
    for (int j = 0; j < most.length; j++) {
      most[j] = stocks.get(j).mostPacks();
    }
    return new PackLimits(new int[most.length], most);
  }

  public int least(int stock) {
    return least[stock];
  }

  /** {@link Integer#MAX_VALUE} without a limit. */
  public int most(int stock) {
    return most[stock];
  }

  public boolean isLimited(int stock) {
    return most[stock] != Integer.MAX_VALUE;
  }

  public boolean isFixed(int stock) {
    return least[stock] == most[stock];
  }

  public PackLimits atMost(int stock, int packs) {
    int[] lower = most.clone();
    lower[stock] = Math.min(lower[stock], packs);
    return new PackLimits(least, lower);
  }

  public PackLimits atLeast(int stock, int packs) {
    int[] higher = least.clone();
    higher[stock] = Math.max(higher[stock], packs);
    return new PackLimits(higher, most);
  }

  /** Exactly these packs. */
  PackLimits exactly(List<Integer> packs) {
    int[] fixed = packs.stream().mapToInt(p -> p).toArray();
    return new PackLimits(fixed, fixed.clone());
  }

  @Override
  public String toString() {
    return Arrays.toString(least) + ".." + Arrays.toString(most);
  }
}
