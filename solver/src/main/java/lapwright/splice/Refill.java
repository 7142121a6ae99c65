package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import lapwright.problem.SpliceProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Fills sticks that are given with pieces of given lengths and with lines that may be cut anywhere:
 * bin packing with item fragmentation (Casazza and Ceselli, Computers and Operations Research 46,
 * 2014), for a few bins of several sizes.
 *
 * <p>Stick after stick takes pieces that fill it best (subset sums), or that leave room which a
 * piece of a line fills to the unit; first of lines that must be cut anyhow, then of others, which
 * costs a joint more. The last stick takes what is left. What is taken is drawn; a trial takes
 * little, so there may be many.
 */
final class Refill {
  private static final int MOST_CELLS = 4_000;
  private static final int MOST_IN_SUMS = 24;
  private static final int LONGEST_TAKEN = 50;
  private static final int FILLED_BY_LINE = 70;
  private static final int FILLED_BY_JOINT = 20;

  private final SpliceProblem problem;
  private final Draws draws;
  private final long unit;
  private final Set<Long> smallOnes = new HashSet<>();
  private final SubsetSums sums;
  private final int[] numbers = new int[MOST_IN_SUMS];
  private final List<Piece> pieces = new ArrayList<>();
  private final List<OpenLine> lines = new ArrayList<>();

  /**
   * A piece.
   *
   * @param line its number; -1 when it is of none
   */
  record Piece(int line, long length) {}

  Refill(SpliceProblem problem, Draws draws) {
    this.problem = problem;
    this.draws = draws;
    long divisor = problem.cut();
    long greatest = 1;
    for (Stock stock : problem.stocks()) {
      divisor = Knapsack.gcd(divisor, Math.max(0, stock.capacity()));
      greatest = Math.max(greatest, stock.capacity());
    }
    for (Item item : problem.plain()) {
      divisor = Knapsack.gcd(divisor, item.size());
      if (item.small()) {
        smallOnes.add(item.size() - problem.cut());
      }
    }
    unit = Math.max(Math.max(1, divisor), (greatest + MOST_CELLS - 1) / MOST_CELLS);
    sums = new SubsetSums(Math.toIntExact(greatest / unit), MOST_IN_SUMS);
  }

  /**
   * What each stick holds; null when this trial finds nothing.
   *
   * @param stocks of the sticks
   * @param given pieces
   * @param open lines, by the number of which their pieces are told
   */
  @Nullable List<List<Piece>> trial(int[] stocks, List<Piece> given, List<OpenLine> open) {
    pieces.clear();
    pieces.addAll(given);
    lines.clear();
    open.forEach(line -> lines.add(line.copy()));
    List<List<Piece>> held = new ArrayList<>();
    for (int s = 0; s < stocks.length - 1; s++) {
      List<Piece> onStick = new ArrayList<>();
      fill(problem.stocks().get(stocks[s]).capacity(), onStick);
      if (!isProper(stocks[s], onStick)) {
        return null;
      }
      held.add(onStick);
    }
    List<Piece> last = new ArrayList<>(pieces);
    for (int i = 0; i < lines.size(); i++) {
      int fewest = fewest(i);
      if (fewest > 1 || fewest < 0) {
        return null;
      }
      if (fewest == 1) {
        last.add(new Piece(i, lines.get(i).rest(1)));
      }
    }
    held.add(last);
    return isProper(stocks[stocks.length - 1], last) ? held : null;
  }

  /**
   * The fewest pieces that are still to come of a line; 0 when it is done, -1 when none will do.
   */
  private int fewest(int line) {
    return lines.get(line).rest(0) == 0 ? 0 : lines.get(line).fewest();
  }

  /** True when a stick of a stock gives these pieces. */
  private boolean isProper(int number, List<Piece> held) {
    Stock stock = problem.stocks().get(number);
    long size = 0;
    boolean small = !held.isEmpty();
    for (Piece piece : held) {
      size += piece.length() + problem.cut();
      small &= piece.length() < problem.hold() || smallOnes.contains(piece.length());
    }
    return size <= (small ? stock.smallCapacity() : stock.capacity())
        || (held.size() == 1 && stock.wholeUse() && size == stock.capacity());
  }

  private void fill(long capacity, List<Piece> onStick) {
    int by = draws.inHundred(FILLED_BY_LINE) ? lineToCut(capacity) : -1;
    int toCome = by < 0 ? 0 : Math.max(2, fewest(by));
    List<Piece> offered = offered(by, capacity);
    long left = capacity;
    if (!offered.isEmpty() && draws.inHundred(LONGEST_TAKEN)) {
      left -= take(offered.get(0), onStick);
      offered.remove(0);
    }
    int most = (int) (left / unit);
    sums.clear();
    int[] order = new int[offered.size()];
    Arrays.setAll(order, i -> i);
    draws.shuffle(order);
    for (int i : order) {
      int size = (int) ((offered.get(i).length() + problem.cut() + unit - 1) / unit);
      if (size <= most && !sums.isFull()) {
        numbers[sums.count()] = i;
        sums.add(size);
      }
    }
    int sum = by < 0 ? -1 : sumBeside(lines.get(by), toCome, left, most);
    if (sum < 0) {
      by = -1;
      sum = sums.greatest(0, most);
    }
    for (int i = sums.count() - 1; i >= 0 && sum > 0; i--) {
      if (sums.takes(i, sum)) {
        sum -= sums.size(i);
        left -= take(offered.get(numbers[i]), onStick);
      }
    }
    if (by >= 0) {
      cutToFill(by, toCome, left - problem.cut(), onStick);
    }
  }

  /** A sum that leaves room for a piece of a line; -1 when there is none. */
  private int sumBeside(OpenLine line, int toCome, long left, int most) {
    long beside = left - problem.cut();
    int least = (int) Math.max(0, (beside - line.longest(toCome)) / unit);
    int greatest = (int) Math.min(most, Math.floorDiv(beside - line.shortest(toCome), unit));
    if (greatest < least) {
      return -1;
    }
    // From a place that is drawn, so that not the same fill comes every time.
    int from = least + draws.below(greatest - least + 1);
    int found = sums.greatest(least, from);
    return found < 0 ? sums.greatest(from, greatest) : found;
  }

  /** A line to be cut further: one that must be, or at times one that may be; -1 for none. */
  private int lineToCut(long capacity) {
    int anyhow = drawn(true, capacity);
    if (anyhow >= 0 && !draws.inHundred(FILLED_BY_JOINT)) {
      return anyhow;
    }
    int further = drawn(false, capacity);
    return further < 0 ? anyhow : further;
  }

  /** A line that may give a piece beside others; -1 when there is none. */
  private int drawn(boolean anyhow, long capacity) {
    int found = -1;
    int seen = 0;
    for (int i = 0; i < lines.size(); i++) {
      int fewest = fewest(i);
      boolean fits =
          anyhow
              ? fewest > 1 && lines.get(i).shortest(fewest) + problem.cut() <= capacity
              : fewest == 1
                  && lines.get(i).mayBe(2)
                  && lines.get(i).shortest(2) + problem.cut() <= capacity;
      if (fits && draws.below(++seen) == 0) {
        found = i;
      }
    }
    return found;
  }

  /** Pieces and last pieces of lines that fit, the longest first, those of one line left out. */
  private List<Piece> offered(int without, long capacity) {
    List<Piece> offered = new ArrayList<>();
    for (Piece piece : pieces) {
      if (piece.length() + problem.cut() <= capacity) {
        offered.add(piece);
      }
    }
    for (int i = 0; i < lines.size(); i++) {
      if (i != without && fewest(i) == 1) {
        long length = lines.get(i).rest(1);
        if (length + problem.cut() <= capacity) {
          offered.add(new Piece(i, length));
        }
      }
    }
    offered.sort((a, b) -> Long.compare(b.length(), a.length()));
    return offered;
  }

  /** Puts a piece on a stick; tells its size. */
  private long take(Piece piece, List<Piece> onStick) {
    onStick.add(piece);
    if (piece.line() < 0) {
      pieces.remove(piece);
    } else {
      lines.get(piece.line()).lay(piece.length());
    }
    return piece.length() + problem.cut();
  }

  /** Cuts a line so that its piece fills the room, where that may be. */
  private void cutToFill(int number, int toCome, long room, List<Piece> onStick) {
    OpenLine line = lines.get(number);
    long length = Math.min(room, line.longest(toCome));
    boolean whole = onStick.isEmpty() && length == room;
    length -= whole ? 0 : Math.floorMod(length, line.step());
    if (length >= line.shortest(toCome)) {
      take(new Piece(number, length), onStick);
    }
  }
}
