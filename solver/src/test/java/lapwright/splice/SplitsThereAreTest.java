package lapwright.splice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import org.junit.jupiter.api.Test;

/** With joints anywhere a split is found wherever there is one, against a listing of all splits. */
class SplitsThereAreTest {
  private static final int SHOPS = 4_000;

  @Test
  void aSplitIsFoundWhereverThereIsOne() {
    Random random = new Random(7);
    int none = 0;
    int some = 0;
    for (int shop = 0; shop < SHOPS; shop++) {
      int step = 1 + random.nextInt(3);
      List<Long> wholes = new ArrayList<>();
      for (int w = 1 + random.nextInt(2); w > 0; w--) {
        wholes.add(8L + random.nextInt(12));
      }
      long usable = wholes.stream().mapToLong(Long::longValue).max().orElse(1);
      long longest = random.nextBoolean() ? usable : 6 + random.nextInt(12);
      int most = 1 + random.nextInt(7);
      long shortest = 1 + random.nextInt(9);
      long atEnd = random.nextInt(3) == 0 ? 1 + random.nextInt(9) : shortest;
      Anywhere rules =
          new Anywhere(
              (long) (most * (0.55 + 0.5 * random.nextDouble()) * Math.min(longest, usable)),
              random.nextInt(3),
              most,
              shortest,
              atEnd,
              longest,
              step,
              Closing.ANY_CUT);
      AnywhereChoice choice =
          new AnywhereChoice(
              rules,
              usable,
              wholes,
              new GridPrices(GridPrices.key(rules, usable)),
              new Reaches(AnywhereChoice.reachKey(rules, usable)));
      List<Long> found =
          choice.cheapest(length -> length <= usable ? length : Double.POSITIVE_INFINITY);
      boolean exists = exists(rules, new TreeSet<>(wholes), Math.min(longest, usable));
      assertEquals(exists, !found.isEmpty(), () -> rules + " of sticks " + wholes);
      if (exists) {
        some++;
        assertTrue(rules.permits(found), () -> rules + ": " + found);
        assertEquals(rules.sumOf(found.size()), found.stream().mapToLong(Long::longValue).sum());
      } else {
        none++;
      }
    }
    assertTrue(none > SHOPS / 20 && some > SHOPS / 3, none + " without, " + some + " with");
  }

  private static boolean exists(Anywhere rules, TreeSet<Long> wholes, long longest) {
    for (int pieces = 1; pieces <= rules.mostPieces(); pieces++) {
      for (long closing = rules.shortestAtEnd(); closing <= longest; closing++) {
        List<Long> laid = new ArrayList<>(List.of(closing));
        if (exists(rules, wholes, longest, pieces, rules.sumOf(pieces) - closing, laid)) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * All pieces but the closing one, which is the first and lies at an end, are whole sticks or on
   * the steps.
   */
  private static boolean exists(
      Anywhere rules, TreeSet<Long> wholes, long longest, int pieces, long left, List<Long> laid) {
    if (laid.size() == pieces) {
      return left == 0 && rules.permits(laid);
    }
    long from = laid.size() == 1 ? 1 : laid.get(laid.size() - 1);
    for (long length = from; length <= longest && length <= left; length++) {
      if (length % rules.step() == 0 || wholes.contains(length)) {
        laid.add(length);
        if (exists(rules, wholes, longest, pieces, left - length, laid)) {
          return true;
        }
        laid.remove(laid.size() - 1);
      }
    }
    return false;
  }
}
