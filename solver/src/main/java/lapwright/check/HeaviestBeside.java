package lapwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToLongFunction;

/**
 * The greatest value of what can be cut from one stick so that no more than a given length of it is
 * wasted, where the value of some named lengths depends on which of them are together, and all
 * others have a weight each, of any sign.
 *
 * <p>G(p) is the greatest weight of other pieces that take exactly p of the stick. Every
 * combination of named pieces is tried, with the heaviest others beside it that end in the window.
 * Time is lengths x positions, and the number of combinations.
 */
final class HeaviestBeside {
  private static final long NONE = Long.MIN_VALUE;

  private final int[] sizes;
  private final int[] quantities;
  private final List<Integer> named = new ArrayList<>();
  private final long[] heaviest;

  /**
   * @param quantities no pattern holds more of a length
   * @param weights those of named lengths are passed over
   */
  HeaviestBeside(int[] sizes, int[] quantities, long[] weights, boolean[] isNamed, int longest) {
    this.sizes = sizes.clone();
    this.quantities = quantities.clone();
    heaviest = new long[longest + 1];
    Arrays.fill(heaviest, NONE);
    heaviest[0] = 0;
    for (int i = 0; i < sizes.length; i++) {
      if (isNamed[i]) {
        named.add(i);
      } else {
        add(sizes[i], Math.min(quantities[i], longest / sizes[i]), weights[i]);
      }
    }
  }

  private void add(int size, int most, long weight) {
    long[] before = most > 1 ? heaviest.clone() : heaviest;
    for (int p = heaviest.length - 1; p >= size; p--) {
      for (int count = 1; count <= most && count * size <= p; count++) {
        long rest = before[p - count * size];
        if (rest != NONE && rest + count * weight > heaviest[p]) {
          heaviest[p] = rest + count * weight;
        }
      }
    }
  }

  /**
   * What was found.
   *
   * @param isTooMuch true when there are more combinations than allowed
   * @param isNothing true when nothing ends in the window
   */
  record Found(long weight, boolean isNothing, boolean isTooMuch) {}

  /**
   * The greatest value of what takes {@code least} to {@code most}.
   *
   * @param value of a combination of named pieces, pairs of a place and a count
   */
  Found greatest(int least, int most, ToLongFunction<int[]> value, int mostCombinations) {
    Search search = new Search(besides(least, most), most, value, mostCombinations);
    search.extend(0, 0, new int[0]);
    return new Found(
        search.greatest, search.greatest == NONE, search.combinations > mostCombinations);
  }

  /** By length of a combination, the greatest weight of others beside it. */
  private long[] besides(int least, int most) {
    long[] besides = new long[most + 1];
    int[] falling = new int[most + 1];
    int first = 0;
    int count = 0;
    int next = 0;
    // From the longest combination to none, the window moves up; candidates stay in falling order.
    for (int taken = most; taken >= 0; taken--) {
      for (; next <= most - taken; next++) {
        while (count > first && heaviest[falling[count - 1]] <= heaviest[next]) {
          count--;
        }
        falling[count++] = next;
      }
      while (falling[first] < least - taken) {
        first++;
      }
      besides[taken] = heaviest[falling[first]];
    }
    return besides;
  }

  private final class Search {
    private final long[] besides;
    private final int longest;
    private final ToLongFunction<int[]> value;
    private final int mostCombinations;
    private long greatest = NONE;
    private int combinations;

    Search(long[] besides, int longest, ToLongFunction<int[]> value, int mostCombinations) {
      this.besides = besides;
      this.longest = longest;
      this.value = value;
      this.mostCombinations = mostCombinations;
    }

    /** Every combination of named lengths from {@code at} on beside those in {@code pairs}. */
    void extend(int at, int taken, int[] pairs) {
      if (combinations > mostCombinations) {
        return;
      }
      if (at == named.size()) {
        combinations++;
        if (besides[taken] != NONE) {
          greatest = Math.max(greatest, besides[taken] + value.applyAsLong(pairs));
        }
        return;
      }
      int place = named.get(at);
      extend(at + 1, taken, pairs);
      for (int count = 1;
          count <= quantities[place] && taken + (long) count * sizes[place] <= longest;
          count++) {
        int[] more = Arrays.copyOf(pairs, pairs.length + 2);
        more[pairs.length] = place;
        more[pairs.length + 1] = count;
        extend(at + 1, taken + count * sizes[place], more);
      }
    }
  }
}
