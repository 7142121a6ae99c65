package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** The least cost of whole packs, against all ways of taking packs. */
class LeastPacksTest {

  @Property(tries = 3000, seed = "11")
  void isTheLeastOfAllWays(@ForAll long seed) {
    Random random = new Random(seed);
    List<LeastPacks.Kind> kinds = new ArrayList<>();
    for (int k = random.nextInt(3); k >= 0; k--) {
      long least = random.nextInt(3) * (long) random.nextInt(2);
      long most = random.nextInt(3) == 0 ? PackGroups.UNLIMITED : least + random.nextInt(4);
      kinds.add(
          new LeastPacks.Kind(
              random.nextInt(4) == 0 ? 0 : random.nextInt(13),
              BigInteger.valueOf(random.nextInt(16)),
              least,
              most));
    }
    long weight = random.nextInt(45);
    long ceiling = 1 + random.nextInt(90);
    long least = leastOfAll(kinds, 0, 0, weight);
    assertEquals(
        OptionalLong.of(Math.min(ceiling, least)),
        LeastPacks.cost(kinds, BigInteger.valueOf(weight), ceiling).stream()
            .map(found -> Math.min(found, ceiling))
            .findAny(),
        () -> kinds + " for " + weight + " under " + ceiling);
  }

  /** Every number of packs that can matter; free and endless packs carry anything. */
  private static long leastOfAll(List<LeastPacks.Kind> kinds, int at, long spent, long rest) {
    if (at == kinds.size()) {
      return rest <= 0 ? spent : Long.MAX_VALUE;
    }
    LeastPacks.Kind kind = kinds.get(at);
    long most = Math.min(kind.most(), kind.least() + 50);
    long best = Long.MAX_VALUE;
    for (long packs = kind.least(); packs <= most; packs++) {
      best =
          Math.min(
              best,
              leastOfAll(
                  kinds,
                  at + 1,
                  spent + packs * kind.cost(),
                  rest - packs * kind.carries().longValueExact()));
    }
    return best;
  }

  @Test
  void hugeWeightsAndPricesDoNoHarm() {
    List<LeastPacks.Kind> kinds =
        List.of(
            new LeastPacks.Kind(1L << 50, BigInteger.ONE, 0, PackGroups.UNLIMITED),
            new LeastPacks.Kind(3, BigInteger.TWO, 0, 5));
    assertEquals(
        OptionalLong.of(1_000), LeastPacks.cost(kinds, BigInteger.ONE.shiftLeft(61), 1_000));
  }
}
