package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapwright.check.Heaviest.Item;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class HeaviestTest {

  /** A length as generators make it: length, weight and quantity from one number. */
  private static List<Item> items(List<Integer> seeds, int kerf, int hold) {
    List<Item> items = new ArrayList<>();
    for (int seed : seeds) {
      int length = 1 + seed % 23;
      items.add(new Item(length + kerf, seed / 23 % 17, 1 + seed / 23 / 17 % 3, length >= hold));
    }
    return items;
  }

  /** Every pattern, straight from the rules of one stick. */
  private static long byEnumeration(List<Item> items, Stick stick, int next, long[] counts) {
    if (next == items.size()) {
      long finished = 0;
      long pieces = 0;
      long weight = 0;
      boolean held = false;
      for (int i = 0; i < counts.length; i++) {
        finished += counts[i] * (items.get(i).size() - stick.kerf());
        pieces += counts[i];
        weight += counts[i] * items.get(i).weight();
        held |= counts[i] > 0 && items.get(i).held();
      }
      if (pieces == 0) {
        return 0;
      }
      long needed = finished + (pieces - 1) * stick.kerf() + stick.startTrim() + stick.farCut();
      if (needed > stick.counted()) {
        return 0;
      }
      long afterLastPiece =
          stick.counted() - stick.startTrim() - finished - (pieces - 1) * stick.kerf();
      boolean whole =
          pieces == 1 && afterLastPiece == 0 && stick.startTrim() == 0 && stick.farCut() == 0;
      boolean offcutHeld = Math.max(0, afterLastPiece - stick.kerf()) >= stick.hold();
      return whole || held || offcutHeld ? weight : 0;
    }
    long best = 0;
    for (long count = 0; count <= items.get(next).quantity(); count++) {
      counts[next] = count;
      best = Math.max(best, byEnumeration(items, stick, next + 1, counts));
    }
    counts[next] = 0;
    return best;
  }

  @Property(tries = 2000, seed = "11")
  void isTheBestOfAllPatterns(
      @ForAll @Size(min = 1, max = 5) List<@IntRange(min = 0, max = 23 * 17 * 3 - 1) Integer> seeds,
      @ForAll @IntRange(min = 0, max = 60) int counted,
      @ForAll @IntRange(min = 0, max = 2) int kerf,
      @ForAll @IntRange(min = 0, max = 2) int ends,
      @ForAll @IntRange(min = 0, max = 12) int hold) {
    int startTrim = ends == 2 ? kerf + 1 : 0;
    int farCut = ends >= 1 ? kerf : 0;
    Stick stick = new Stick(counted, startTrim, farCut, kerf, hold);
    List<Item> items = items(seeds, kerf, hold);
    long expected = byEnumeration(items, stick, 0, new long[items.size()]);
    assertEquals(expected, Heaviest.of(items, stick));
    assertEquals(expected, Heaviest.of(items, stick, 0, 1_000), "by table");
    assertTrue(expected <= Heaviest.of(items, stick, 0, 20), "by a coarse table");
  }

  @Property(tries = 100, seed = "11")
  void listAndTableAgreeOnManyLengths(@ForAll long seed) {
    Random random = new Random(seed);
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      long size = 20 + random.nextInt(900);
      long weight = seed % 2 == 0 ? size * 10 + random.nextInt(60) : size;
      items.add(new Item(size, weight, 1 + random.nextInt(9), size > 100));
    }
    Stick stick = new Stick(1_900, 5, 3, 3, 97);
    assertEquals(Heaviest.of(items, stick, 0, 2_000), Heaviest.of(items, stick));
  }

  @Test
  void nothingFitsOnAStickShorterThanItsTrims() {
    Stick stick = new Stick(5, 6, 2, 2, 3);
    assertEquals(0, Heaviest.of(List.of(new Item(3, 7, 4, true)), stick));
  }

  @Test
  void noMorePiecesThanAreNeededCount() {
    Stick stick = new Stick(100, 0, 0, 0, 0);
    assertEquals(14, Heaviest.of(List.of(new Item(10, 7, 2, true)), stick));
  }

  @Test
  void aStickUsedWholeNeedsNoHold() {
    List<Item> post = List.of(new Item(10, 7, 2, false));
    assertEquals(7, Heaviest.of(post, new Stick(10, 0, 0, 0, 50)));
    assertEquals(0, Heaviest.of(post, new Stick(11, 0, 0, 0, 50)));
  }
}
