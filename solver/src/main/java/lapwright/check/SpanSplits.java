package lapwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.LongUnaryOperator;
import lapwright.check.StepFunction.Pair;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;

/**
 * The permitted splits of a stretch: how few pieces there may be, and the least weight of a split.
 *
 * <p>Joints at given places: a table over (place, pieces so far). Joints anywhere: pieces from one
 * listed length up to the next weigh the same, so the least weight of k pieces is found among sums
 * of the greatest lengths of such ranges (pairs of reach and weight, dominated ones dropped). Where
 * all pieces but one fill a stick by the rules, or by an exchange of pieces all but one or two lose
 * nothing when they do, only such splits are weighed: let pieces a, b of one line come from sticks
 * that give U1 and U2, beside others X and Y; then a' = U1 alone from the first and a + b - U1
 * beside X and Y from the second do as well, as long as a + b - U1 is a permitted piece. So in some
 * best plan two pieces that do not fill their sticks are together shorter than U + s, the longest
 * that a stick gives and the shortest piece; and m of them shorter than m / 2 (U + s). With c left
 * of the line beside all pieces but one of length U, they are at least c + (m - 1) U long.
 */
final class SpanSplits {
  private static final int MOST_SPLITS = 400_000;

  private final RunSpan span;
  private final List<Long> wholes;
  private final long usable;
  private final long hold;
  private final int mostPieces;

  /**
   * @param usableOfStocks what the sticks give from which the pieces may come
   * @param mostPieces see {@link #mostPieces}
   */
  SpanSplits(RunSpan span, List<Long> usableOfStocks, long hold, int mostPieces) {
    this.span = span;
    this.hold = hold;
    this.mostPieces = mostPieces;
    this.wholes = new ArrayList<>(new TreeSet<>(usableOfStocks));
    this.usable = wholes.isEmpty() ? 0 : wholes.get(wholes.size() - 1);
  }

  /**
   * The most pieces that a stretch may have; 0 when no split keeps the rules.
   *
   * @param unlimited the longest piece from sticks without limit; 0 without any
   * @param longest the longest from any
   */
  static int mostPieces(RunSpan span, long unlimited, long longest, List<Long> wholes) {
    long usable = unlimited > 0 ? unlimited : longest;
    int fewest = fewestPieces(span, usable, wholes);
    if (span.rules().count() instanceof JointCount.AtMost atMost) {
      return fewest == 0 || atMost.joints() + 1 < fewest ? 0 : atMost.joints() + 1;
    }
    return fewest == 0 ? 0 : fewest + ((JointCount.BeyondFewest) span.rules().count()).extra();
  }

  private static int fewestPieces(RunSpan span, long usable, List<Long> wholes) {
    if (!span.anywhere()) {
      int places = span.places().size() + 1;
      for (int pieces = 1; pieces <= places; pieces++) {
        SpanSplits splits = new SpanSplits(span, wholes, 0, pieces);
        if (splits.atPlaces(length -> 0, span.longest(usable)) != Long.MAX_VALUE) {
          return pieces;
        }
      }
      return 0;
    }
    long longest = span.longest(usable);
    if (longest <= span.join()) {
      return 0;
    }
    int pieces = 1;
    while (span.leastSum(pieces) > Math.multiplyExact(longest, (long) pieces)) {
      pieces++;
    }
    long least =
        pieces == 1
            ? span.shortest(true)
            : 2 * span.shortest(true) + (pieces - 2L) * span.shortest(false);
    return least > span.leastSum(pieces) ? 0 : pieces;
  }

  /**
   * The least weight of a split; {@link Long#MAX_VALUE} when there is none.
   *
   * @param step by ascending length, weights not falling
   * @param perSize weight of each unit of a piece and its cut besides
   */
  long leastWeight(StepFunction step, long perSize, long kerf) {
    long longest = span.longest(usable);
    LongUnaryOperator weight =
        length ->
            Math.addExact(
                step.at(length), Math.multiplyExact(perSize, Math.addExact(length, kerf)));
    if (!span.anywhere()) {
      return atPlaces(weight, longest);
    }
    boolean byRule = span.rules().closing().othersWhole();
    int others = byRule ? 1 : others();
    if (others <= 2) {
      Weighing weighing = new Weighing(step, weight, longest, others == 2);
      weighing.lay(0, wholes.size() - 1, 0, 0);
      if (weighing.splits <= MOST_SPLITS) {
        return weighing.least;
      }
    }
    return reaching(step, perSize, kerf, longest);
  }

  /** How many pieces need not fill a stick, where that is known to be 1 or 2; else 3. */
  private int others() {
    long closing = span.leastSum(mostPieces) - (mostPieces - 1) * usable;
    long shortest = shortestCut();
    if (!span.rules().stagger().isZero()
        || span.longest(Long.MAX_VALUE) < usable
        || span.shortest(true) > span.shortest(false)
        || usable < span.join()) {
      return 3;
    }
    return closing >= shortest
        ? 1
        : 2 * closing + usable >= 3 * shortest && usable >= shortest ? 2 : 3;
  }

  /** What an exchange of pieces leaves at least. */
  private long shortestCut() {
    return Math.max(hold, span.shortest(false));
  }

  /** Whole sticks and one closing piece, or two where that may be needed. */
  private final class Weighing {
    private final LongUnaryOperator weight;
    private final long longest;
    private final List<Pair> ranges;
    private long least = Long.MAX_VALUE;
    private int splits;

    Weighing(StepFunction step, LongUnaryOperator weight, long longest, boolean two) {
      this.weight = weight;
      this.longest = longest;
      this.ranges = two ? step.ranges(span.shortest(true), longest) : List.of();
    }

    void lay(int laid, int upTo, long sum, long soFar) {
      splits++;
      if (splits > MOST_SPLITS) {
        return;
      }
      long closing = span.leastSum(laid + 1) - sum;
      if (closing >= span.shortest(true) && closing <= longest) {
        least = Math.min(least, Math.addExact(soFar, weight.applyAsLong(closing)));
      }
      if (laid + 1 >= mostPieces) {
        return;
      }
      weighTwo(span.leastSum(laid + 2) - sum, soFar);
      for (int w = upTo; w >= 0; w--) {
        long whole = wholes.get(w);
        // One of them lies at an end; the longest is laid first.
        if (whole >= span.shortest(false)
            && (laid > 0 || whole >= span.shortest(true))
            && whole <= longest
            && sum + whole < span.leastSum(mostPieces)) {
          lay(laid + 1, w, sum + whole, Math.addExact(soFar, weight.applyAsLong(whole)));
        }
      }
    }

    /** Of two pieces of a sum one is as long as its weight lets it be. */
    private void weighTwo(long both, long soFar) {
      if (both >= usable + shortestCut()) {
        return;
      }
      for (Pair range : ranges) {
        splits++;
        long one = Math.min(range.reach(), both - span.shortest(true));
        long other = both - one;
        if (one >= span.shortest(true) && other >= span.shortest(true) && other <= longest) {
          least =
              Math.min(
                  least,
                  Math.addExact(
                      soFar, Math.addExact(weight.applyAsLong(one), weight.applyAsLong(other))));
        }
      }
    }
  }

  /** Least weight of splits whose joints stand at the given places. */
  private long atPlaces(LongUnaryOperator weight, long longest) {
    ClosingPiece closing = span.rules().closing();
    long least = Long.MAX_VALUE;
    if (closing.where() != Where.START) {
      least = atPlaces(weight, longest, false);
    }
    if (closing.where() != Where.END) {
      least = Math.min(least, atPlaces(weight, longest, true));
    }
    return least;
  }

  private long atPlaces(LongUnaryOperator weight, long longest, boolean closingAtStart) {
    int n = span.places().size();
    long[] best = new long[n + 2];
    Arrays.fill(best, Long.MAX_VALUE);
    best[0] = 0;
    long least = Long.MAX_VALUE;
    for (int pieces = 1; pieces <= mostPieces; pieces++) {
      long[] next = new long[n + 2];
      Arrays.fill(next, Long.MAX_VALUE);
      for (int from = 0; from <= n; from++) {
        if (best[from] == Long.MAX_VALUE) {
          continue;
        }
        for (int to = from + 1; to <= n + 1; to++) {
          long length = leastLength(from, to, longest, closingAtStart);
          if (length > 0) {
            next[to] = Math.min(next[to], Math.addExact(best[from], weight.applyAsLong(length)));
          }
        }
      }
      least = Math.min(least, next[n + 1]);
      best = next;
      best[n + 1] = Long.MAX_VALUE;
    }
    return least;
  }

  /** The least permitted length of a piece between two places; 0 when there is none. */
  private long leastLength(int from, int to, long longest, boolean closingAtStart) {
    int end = span.places().size() + 1;
    boolean first = from == 0;
    boolean last = to == end;
    long a = first ? span.start() : span.places().get(from - 1);
    long b = last ? span.end() : span.places().get(to - 1);
    boolean isClosing = closingAtStart ? first : last;
    long nominal = b - a + (isClosing ? span.rules().closing().leaveLong().units() : 0);
    if (!first) {
      nominal += span.lap() / 2;
    }
    if (!last) {
      nominal += span.lap() - span.lap() / 2;
    }
    long given = (first ? 0 : span.halfGap()) + (last ? 0 : span.halfGap());
    long shortest = span.shortest(first || last);
    long length = Math.max(nominal - given, shortest);
    if (span.rules().closing().othersWhole() && !isClosing) {
      length = 0;
      for (long whole : wholes) {
        if (whole >= nominal - given && whole <= nominal && whole >= shortest && length == 0) {
          length = whole;
        }
      }
    }
    return length > nominal || length > longest ? 0 : length;
  }

  /** Least weight of any split with joints anywhere, by how far pieces of a weight reach. */
  private long reaching(StepFunction step, long perSize, long kerf, long longest) {
    long shortest =
        mostPieces == 1 ? span.shortest(true) : Math.min(span.shortest(true), span.shortest(false));
    long least = Long.MAX_VALUE;
    for (int pieces = 1; pieces <= mostPieces; pieces++) {
      long needed = span.leastSum(pieces);
      if (needed < shortest * pieces) {
        break;
      }
      long bySize = Math.multiplyExact(perSize, Math.addExact(needed, pieces * kerf));
      for (Pair sum : step.reached(shortest, longest, pieces)) {
        if (sum.reach() >= needed) {
          least = Math.min(least, Math.addExact(sum.weight(), bySize));
          break;
        }
      }
    }
    return least;
  }
}
