package lapwright.check;

import java.util.Arrays;

/**
 * Ways to fill a stick so far, as (size, weight), without those that are no smaller than a way of
 * the same or a greater weight. Sorted by size, and so by weight.
 */
final class ParetoList {
  private long[] sizes;
  private long[] weights;
  private int count;

  private ParetoList(int room) {
    sizes = new long[room];
    weights = new long[room];
  }

  static ParetoList empty() {
    return new ParetoList(16);
  }

  /** The list of the one way that takes nothing. */
  static ParetoList ofNothing() {
    ParetoList list = empty();
    list.count = 1;
    return list;
  }

  int count() {
    return count;
  }

  long size(int index) {
    return sizes[index];
  }

  long weight(int index) {
    return weights[index];
  }

  /** The greatest weight of a size up to {@code limit}, or -1 when there is none. */
  long heaviest(long limit) {
    for (int i = count - 1; i >= 0; i--) {
      if (sizes[i] <= limit) {
        return weights[i];
      }
    }
    return -1;
  }

  /** These ways, and those of {@code other} with one more piece, up to {@code capacity}. */
  ParetoList with(ParetoList other, long addedSize, long addedWeight, long capacity) {
    ParetoList merged = new ParetoList(Math.max(16, count + other.count));
    long heaviest = -1;
    int mine = 0;
    int theirs = 0;
    while (true) {
      boolean otherLeft = theirs < other.count && other.sizes[theirs] <= capacity - addedSize;
      if (!otherLeft && mine == count) {
        return merged;
      }
      long size;
      long weight;
      if (!otherLeft || (mine < count && sizes[mine] <= other.sizes[theirs] + addedSize)) {
        size = sizes[mine];
        weight = weights[mine++];
      } else {
        size = other.sizes[theirs] + addedSize;
        weight = other.weights[theirs++] + addedWeight;
      }
      if (weight > heaviest) {
        heaviest = weight;
        if (merged.count > 0 && merged.sizes[merged.count - 1] == size) {
          merged.weights[merged.count - 1] = weight;
        } else {
          merged.append(size, weight);
        }
      }
    }
  }

  private void append(long size, long weight) {
    if (count == sizes.length) {
      sizes = Arrays.copyOf(sizes, 2 * count);
      weights = Arrays.copyOf(weights, 2 * count);
    }
    sizes[count] = size;
    weights[count++] = weight;
  }

  /**
   * Drops each way that cannot come to more than {@code beaten}: its weight and what its rest could
   * carry at {@code ratioWeight} for each {@code ratioSize} is no more, or its rest is smaller than
   * {@code smallest}.
   */
  void prune(long capacity, long beaten, long ratioWeight, long ratioSize, long smallest) {
    int kept = 0;
    for (int i = 0; i < count; i++) {
      long rest = capacity - sizes[i];
      if (rest >= smallest && Products.less(beaten - weights[i], ratioSize, rest, ratioWeight)) {
        sizes[kept] = sizes[i];
        weights[kept++] = weights[i];
      }
    }
    count = kept;
  }
}
