package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How many of each free piece come from each lot, at least and at most, within a tree. What the
 * other lots leave open is drawn tight. Immutable.
 */
final class FreeLimits {
  private final int[] wanted;
  private final int[][] least;
  private final int[][] most;

  private FreeLimits(int[] wanted, int[][] least, int[][] most) {
    this.wanted = wanted;
    this.least = least;
    this.most = most;
  }

  /** All that lots can give. */
  static FreeLimits of(LotParts parts) {
    int[] wanted = new int[parts.free().size()];
    int[][] least = new int[wanted.length][parts.lots()];
    int[][] most = new int[wanted.length][parts.lots()];
    for (int i = 0; i < wanted.length; i++) {
      wanted[i] = parts.free().get(i).demand();
      for (int l = 0; l < parts.lots(); l++) {
        most[i][l] = parts.gives(l, i) ? wanted[i] : 0;
      }
    }
    return new FreeLimits(wanted, least, most).tight();
  }

  private FreeLimits tight() {
    int[][] higher = new int[least.length][];
    int[][] lower = new int[least.length][];
    for (int i = 0; i < least.length; i++) {
      int sumOfLeast = Arrays.stream(least[i]).sum();
      long sumOfMost = Arrays.stream(most[i]).asLongStream().sum();
      higher[i] = least[i].clone();
      lower[i] = most[i].clone();
      for (int l = 0; l < least[i].length; l++) {
        higher[i][l] = (int) Math.max(least[i][l], wanted[i] - (sumOfMost - most[i][l]));
        lower[i][l] = Math.min(most[i][l], wanted[i] - (sumOfLeast - least[i][l]));
      }
    }
    return new FreeLimits(wanted, higher, lower);
  }

  int least(int item, int lot) {
    return least[item][lot];
  }

  int most(int item, int lot) {
    return most[item][lot];
  }

  /** True when no numbers obey the limits. */
  boolean isEmpty() {
    for (int i = 0; i < least.length; i++) {
      int sumOfLeast = 0;
      long sumOfMost = 0;
      for (int l = 0; l < least[i].length; l++) {
        if (least[i][l] > most[i][l]) {
          return true;
        }
        sumOfLeast += least[i][l];
        sumOfMost += most[i][l];
      }
      if (sumOfLeast > wanted[i] || sumOfMost < wanted[i]) {
        return true;
      }
    }
    return false;
  }

  boolean isDecided(int item, int lot) {
    return least[item][lot] == most[item][lot];
  }

  FreeLimits atMost(int item, int lot, int pieces) {
    int[][] lower = copy(most);
    lower[item][lot] = Math.min(lower[item][lot], pieces);
    return new FreeLimits(wanted, least, lower).tight();
  }

  FreeLimits atLeast(int item, int lot, int pieces) {
    int[][] higher = copy(least);
    higher[item][lot] = Math.max(higher[item][lot], pieces);
    return new FreeLimits(wanted, higher, most).tight();
  }

  private static int[][] copy(int[][] numbers) {
    return Arrays.stream(numbers).map(int[]::clone).toArray(int[][]::new);
  }

  /** For each lot the least numbers by item. */
  List<List<Integer>> leastByLot(int lots) {
    List<List<Integer>> byLot = new ArrayList<>();
    for (int l = 0; l < lots; l++) {
      List<Integer> ofLot = new ArrayList<>();
      for (int[] ofItem : least) {
        ofLot.add(ofItem[l]);
      }
      byLot.add(ofLot);
    }
    return byLot;
  }

  /** About how many ways are left to obey the limits, no more than {@code enough} counted. */
  long ways(long enough) {
    long ways = 1;
    for (int i = 0; i < least.length && ways < enough; i++) {
      int open = 0;
      for (int l = 0; l < least[i].length; l++) {
        if (least[i][l] < most[i][l] && ++open > 1) {
          ways = Math.min(enough, ways * (most[i][l] - least[i][l] + 1L));
        }
      }
    }
    return ways;
  }
}
