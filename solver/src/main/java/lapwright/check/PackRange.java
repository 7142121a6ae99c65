package lapwright.check;

import java.util.List;

/** How many packs of each stock the decisions above a leaf leave. Immutable. */
final class PackRange {
  private final int[] least;
  private final int[] most;

  private PackRange(int[] least, int[] most) {
    this.least = least;
    this.most = most;
  }

  /** From none to all that can be had; {@link Integer#MAX_VALUE} without a limit. */
  static PackRange upTo(List<Integer> most) {
    return new PackRange(new int[most.size()], most.stream().mapToInt(Integer::intValue).toArray());
  }

  PackRange withAtMost(int stock, int packs) {
    int[] fewer = most.clone();
    fewer[stock] = Math.min(fewer[stock], packs);
    return new PackRange(least, fewer);
  }

  PackRange withMoreThan(int stock, int packs) {
    int[] more = least.clone();
    more[stock] = Math.max(more[stock], Math.addExact(packs, 1));
    return new PackRange(more, most);
  }

  int least(int stock) {
    return least[stock];
  }

  int most(int stock) {
    return most[stock];
  }

  boolean isLimited(int stock) {
    return most[stock] != Integer.MAX_VALUE;
  }

  /** True when some stock would need more packs than are left. */
  boolean isEmpty() {
    for (int i = 0; i < least.length; i++) {
      if (least[i] > most[i]) {
        return true;
      }
    }
    return false;
  }
}
