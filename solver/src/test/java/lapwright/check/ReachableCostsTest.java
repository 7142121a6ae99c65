package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.BitSet;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class ReachableCostsTest {
  private static final int CEILING = 400;

  @Property(tries = 500, seed = "11")
  void isTheNextSumOfPacks(
      @ForAll @Size(min = 1, max = 4) List<@IntRange(min = 0, max = 60) Integer> costs,
      @ForAll @Size(value = 4) List<@IntRange(min = 0, max = 5) Integer> mosts,
      @ForAll @IntRange(min = 0, max = CEILING) int bound) {
    ReachableCosts reachable = new ReachableCosts();
    BitSet sums = new BitSet();
    sums.set(0);
    for (int i = 0; i < costs.size(); i++) {
      boolean unlimited = mosts.get(i) == 5;
      reachable.add(costs.get(i), unlimited ? PackGroups.UNLIMITED : mosts.get(i));
      BitSet more = new BitSet();
      for (int packs = 0; packs <= (unlimited ? CEILING : mosts.get(i)); packs++) {
        for (int sum = sums.nextSetBit(0); sum >= 0; sum = sums.nextSetBit(sum + 1)) {
          if (sum + packs * costs.get(i) <= CEILING) {
            more.set(sum + packs * costs.get(i));
          }
        }
      }
      sums = more;
    }
    int next = sums.nextSetBit(bound);
    assertEquals(next < 0 ? CEILING + 1 : next, reachable.atLeast(bound, CEILING));
  }

  @Test
  void beyondTenMillionStepsOnlyTheCommonDivisorCounts() {
    ReachableCosts reachable = new ReachableCosts();
    reachable.add(6, PackGroups.UNLIMITED);
    reachable.add(10, PackGroups.UNLIMITED);
    assertEquals(6, reachable.atLeast(3, 100));
    assertEquals(4, reachable.atLeast(3, 30_000_000));
  }
}
