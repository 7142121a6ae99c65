package lapwright.problem;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * Cutting stock in which some pieces may be chosen: plain items with demands, and groups of equal
 * lines, each line to be split into pieces in one of the ways that its group permits.
 *
 * <p>Choose a split for every line, and packs and patterns as in {@link StickProblem} that hold the
 * plain items and the pieces of all splits, so that the packs cost least. A chosen piece of length
 * l has size l + cut and is small when l is less than the hold.
 *
 * @param plain items with fixed demands; may be empty
 * @param stocks any order
 * @param cut width of a cut, at least 0
 * @param hold pieces shorter than this are small
 * @param keepFrom an offcut at least this long is kept
 * @param groups may be empty
 */
public record SpliceProblem(
    List<StickProblem.Item> plain,
    List<StickProblem.Stock> stocks,
    long cut,
    long hold,
    long keepFrom,
    List<Group> groups) {
  public SpliceProblem {
    plain = List.copyOf(plain);
    stocks = List.copyOf(stocks);
    groups = List.copyOf(groups);
    if (cut < 0 || hold < 0) {
      throw new IllegalArgumentException("cut " + cut + ", hold " + hold);
    }
  }

  /** The same cut from other stocks. */
  public SpliceProblem withStocks(List<StickProblem.Stock> others) {
    return new SpliceProblem(plain, others, cut, hold, keepFrom, groups);
  }

  /** The longest piece that some stick gives; 0 when there is no stick. */
  public long longestUsable() {
    long longest = 0;
    for (StickProblem.Stock stock : stocks) {
      if (stock.mostPacks() > 0) {
        longest = Math.max(longest, stock.capacity() - cut);
      }
    }
    return longest;
  }

  /**
   * Lines that are split alike.
   *
   * @param lines at least 1
   * @param apart neighbouring lines must keep their joints at least this far apart; 0 when that
   *     does not matter
   * @param beside what that is measured by
   */
  public record Group(int lines, Splits splits, long apart, Beside beside) {
    public Group {
      Objects.requireNonNull(splits);
      Objects.requireNonNull(beside);
      if (lines < 1 || apart < 0) {
        throw new IllegalArgumentException(lines + " lines, " + apart + " apart");
      }
    }

    /** Lines that all begin alike, none of them settled. */
    public Group(int lines, Splits splits, long apart) {
      this(lines, splits, apart, Beside.NOTHING);
    }
  }

  /**
   * What joints of neighbouring lines are measured by. A joint stands where the piece before it
   * ends, from the start of its line.
   *
   * @param earlier a line of whole sticks whose first piece may be cut begins so much before others
   * @param settled joints of lines that are settled, ascending, some perhaps beyond the ends of
   *     these lines; the first stands before the first line, and the splits of all are worth to be
   *     tried
   * @param from no joint may stand before it
   * @param to no joint may stand beyond it
   */
  public record Beside(long earlier, List<List<Long>> settled, long from, long to) {
    /** All lines begin alike, none is settled, and joints may stand up to the ends. */
    public static final Beside NOTHING = new Beside(0, List.of(), Long.MIN_VALUE, Long.MAX_VALUE);

    public Beside {
      settled = settled.stream().map(List::copyOf).toList();
    }
  }

  /**
   * Which piece of a line may be cut. The others are whole sticks: each is all that its stick
   * gives, and alone on it.
   */
  public enum Closing {
    /** No such rule. */
    ANY_CUT,
    FIRST,
    LAST,
    FIRST_OR_LAST
  }

  /**
   * Index of the piece of a split that may be cut where all others are whole sticks; -1 when the
   * split does not keep that rule.
   *
   * @param lengths in the order in which they lie where the order matters
   */
  public int closing(Group group, List<Long> lengths) {
    int last = lengths.size() - 1;
    if (!(group.splits() instanceof Splits.Graph) && group.apart() == 0) {
      List<Integer> cut =
          IntStream.rangeClosed(0, last).filter(i -> !isWhole(lengths.get(i))).boxed().toList();
      return switch (cut.size()) {
        case 0 -> lengths.indexOf(Collections.min(lengths));
        case 1 -> cut.get(0);
        default -> -1;
      };
    }
    Closing rule = group.splits().closing();
    if (rule != Closing.FIRST && lengths.subList(0, last).stream().allMatch(this::isWhole)) {
      return last;
    }
    return rule != Closing.LAST && lengths.subList(1, last + 1).stream().allMatch(this::isWhole)
        ? 0
        : -1;
  }

  /** The pieces of a split that must be whole sticks; empty where there is no such rule. */
  public List<Long> wholes(Group group, List<Long> lengths) {
    if (group.splits().closing() == Closing.ANY_CUT) {
      return List.of();
    }
    List<Long> wholes = new ArrayList<>(lengths);
    // Where a line in order may close at either end and all are whole, who lays it decides.
    boolean open =
        group.splits().closing() == Closing.FIRST_OR_LAST
            && group.splits() instanceof Splits.Graph
            && lengths.stream().allMatch(this::isWhole);
    int closing = closing(group, lengths);
    if (closing >= 0 && (lengths.size() == 1 || !open)) {
      wholes.remove(closing);
    }
    return wholes;
  }

  /** True when a piece is all that some stick gives. */
  public boolean isWhole(long length) {
    return stocks.stream()
        .anyMatch(stock -> stock.mostPacks() > 0 && stock.capacity() - cut == length);
  }

  /** The ways in which a line may be split. */
  public sealed interface Splits {
    /** Which piece may be cut where all others are whole sticks. */
    Closing closing();

    /**
     * Every path from node 0 to the last node; its arcs are the pieces in order.
     *
     * @param positions where a joint in this node stands, one a node; the first and last are the
     *     line's ends
     * @param arcs from a lower to a higher node
     * @param closing which piece may be cut where all others are whole sticks
     */
    record Graph(List<Long> positions, List<Arc> arcs, Closing closing) implements Splits {
      public Graph {
        Objects.requireNonNull(closing);
        positions = List.copyOf(positions);
        arcs = List.copyOf(arcs);
        for (Arc arc : arcs) {
          if (arc.from() < 0 || arc.to() >= positions.size()) {
            throw new IllegalArgumentException("arc " + arc + " leaves the graph");
          }
        }
      }
    }

    /**
     * Any k pieces, k at most {@code mostPieces}, whose lengths add up to total + (k - 1) join.
     *
     * @param total length of a line that is one piece
     * @param join what each joint adds: the lap, or less than 0 for a gap
     * @param mostPieces at least 1
     * @param shortest least length of a piece, positive
     * @param shortestAtEnd the same for two of the pieces (for the only one, when there is one)
     * @param longest greatest length of a piece
     * @param step all pieces are multiples of it but those that fill a stick and one more
     * @param closing which piece may be cut where all others are whole sticks; the order of the
     *     pieces matters only where neighbouring lines must keep their joints apart
     */
    record Anywhere(
        long total,
        long join,
        int mostPieces,
        long shortest,
        long shortestAtEnd,
        long longest,
        long step,
        Closing closing)
        implements Splits {
      public Anywhere {
        if (mostPieces < 1 || shortest < 1 || shortestAtEnd < 1 || step < 1) {
          throw new IllegalArgumentException("a run that cannot be split");
        }
        Objects.requireNonNull(closing);
      }

      /** True when all pieces but one are whole sticks. */
      public boolean othersWhole() {
        return closing != Closing.ANY_CUT;
      }

      /** What the lengths of k pieces add up to. */
      public long sumOf(int pieces) {
        return total + (pieces - 1) * join;
      }

      /** True when pieces of these lengths can be put in an order that keeps the limits. */
      public boolean permits(List<Long> lengths) {
        int n = lengths.size();
        int inner = 0;
        int ends = 0;
        for (long length : lengths) {
          if (length > longest) {
            return false;
          }
          inner += length >= shortest ? 1 : 0;
          ends += length >= shortestAtEnd ? 1 : 0;
        }
        return n == 1
            ? ends == 1
            : shortestAtEnd >= shortest ? inner == n && ends >= 2 : ends == n && inner >= n - 2;
      }

      /** The least length that a piece may have wherever it lies. */
      public long leastAnywhere() {
        return Math.max(shortest, shortestAtEnd);
      }

      /** The least length that any piece may have. */
      public long least() {
        return mostPieces == 1 ? shortestAtEnd : Math.min(shortest, shortestAtEnd);
      }
    }
  }

  /**
   * A piece that may be chosen.
   *
   * @param from node where it starts
   * @param to node where it ends, higher than {@code from}
   * @param length positive
   */
  public record Arc(int from, int to, long length) {
    public Arc {
      if (to <= from || length <= 0) {
        throw new IllegalArgumentException("arc " + from + " to " + to + ", " + length + " long");
      }
    }
  }
}
