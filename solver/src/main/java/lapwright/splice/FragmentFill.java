package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Splits found by filling sticks one after the other, each with the longest pieces that fit; where
 * a stick has room left and joints of a line may go anywhere, the line is cut to fill it. Next fit
 * with fragmentation, in the words of bin packing with item fragmentation (Casazza and Ceselli,
 * Computers and Operations Research 46, 2014).
 *
 * <p>Begins from given splits: whole sticks stay, the rest of each line may be cut anew.
 */
final class FragmentFill {
  private final SpliceProblem problem;
  private final List<Line> lines = new ArrayList<>();
  private final List<Long> pieces = new ArrayList<>();
  private final List<List<Split>> fixed = new ArrayList<>();

  /** A line of which some is still to be laid. */
  private static final class Line {
    private final int group;
    private final Anywhere rules;
    private final List<Long> begun;
    private final List<Long> laid = new ArrayList<>();
    private long left;

    /** Pieces whose joints {@code left} holds already, and further ones that would add a joint. */
    private int counted;

    private int further;

    private Line(int group, Anywhere rules, List<Long> begun) {
      this.group = group;
      this.rules = rules;
      this.begun = begun;
    }

    /** As it was laid; as it was begun where that keeps no rule. */
    private List<Long> split() {
      boolean whole =
          laid.stream().mapToLong(Long::longValue).sum() == rules.sumOf(laid.size())
              && laid.size() <= rules.mostPieces();
      return whole && rules.permits(laid) ? laid : begun;
    }
  }

  private FragmentFill(SpliceProblem problem) {
    this.problem = problem;
  }

  /**
   * Splits of all lines; empty when none may be joined anywhere.
   *
   * @param begun splits to begin from
   * @param sticks how many of each stock to fill, about
   */
  static List<List<Split>> finished(
      SpliceProblem problem, List<Choice> choices, List<List<Split>> begun, double[] sticks) {
    FragmentFill fill = new FragmentFill(problem);
    fill.begin(choices, begun);
    if (fill.lines.isEmpty()) {
      return List.of();
    }
    fill.fill(sticks);
    for (Line line : fill.lines) {
      fill.fixed.get(line.group).add(new Split(line.split(), 1));
    }
    return fill.fixed;
  }

  private void begin(List<Choice> choices, List<List<Split>> begun) {
    for (int g = 0; g < begun.size(); g++) {
      fixed.add(new ArrayList<>());
      for (Split split : begun.get(g)) {
        if (choices.get(g).hasAnyLength()
            && problem.groups().get(g).splits() instanceof Anywhere rules) {
          for (int i = 0; i < split.lines(); i++) {
            lines.add(line(g, rules, split.lengths()));
          }
        } else {
          fixed.get(g).add(split);
          for (int i = 0; i < split.lines(); i++) {
            pieces.addAll(split.lengths());
          }
        }
      }
    }
    for (Item item : problem.plain()) {
      for (int i = 0; i < item.demand(); i++) {
        pieces.add(item.size() - problem.cut());
      }
    }
    pieces.sort(Collections.reverseOrder());
  }

  private Line line(int group, Anywhere rules, List<Long> lengths) {
    Line line = new Line(group, rules, lengths);
    for (long length : lengths) {
      if (isWhole(length) && line.laid.size() < lengths.size() - 1) {
        line.laid.add(length);
        pieces.add(length);
      } else {
        line.left += length;
        line.counted++;
      }
    }
    line.further = rules.mostPieces() - lengths.size();
    return line;
  }

  private boolean isWhole(long length) {
    return problem.stocks().stream().anyMatch(s -> s.capacity() - problem.cut() == length);
  }

  private void fill(double[] sticks) {
    List<Stock> stocks = new ArrayList<>();
    Stock cheapest = null;
    for (int j = 0; j < sticks.length; j++) {
      Stock stock = problem.stocks().get(j);
      stocks.addAll(Collections.nCopies((int) Math.ceil(sticks[j] - 1e-6), stock));
      if (!stock.isLimited() && (cheapest == null || perSize(stock) < perSize(cheapest))) {
        cheapest = stock;
      }
    }
    stocks.sort(Comparator.comparingLong(stock -> -stock.capacity()));
    for (Stock stock : stocks) {
      fillStick(stock.capacity() - problem.cut());
    }
    boolean filled = cheapest != null;
    while (filled && cheapest != null) {
      filled = fillStick(cheapest.capacity() - problem.cut());
    }
    // What no stick took stays as it would be without a cut.
    for (Line line : lines) {
      while (line.left > 0) {
        long most = Math.min(problem.longestUsable(), line.rules.longest());
        long piece = line.counted == 1 ? line.left : piece(line, most);
        lay(line, piece == 0 ? line.left : piece);
      }
    }
  }

  private static double perSize(Stock stock) {
    return (double) stock.packCost() / stock.packSize() / Math.max(1, stock.capacity());
  }

  /** Fills one stick; false when nothing could be put on it. */
  private boolean fillStick(long whole) {
    long room = whole;
    boolean any = false;
    while (true) {
      Line longest = null;
      for (Line line : lines) {
        if (line.left > 0 && line.counted == 1 && line.left <= room) {
          longest = longest == null || line.left > longest.left ? line : longest;
        }
      }
      int piece = firstUpTo(room);
      if (longest == null && piece == pieces.size()) {
        break;
      }
      any = true;
      if (longest == null || (piece < pieces.size() && pieces.get(piece) >= longest.left)) {
        room -= pieces.remove(piece) + problem.cut();
      } else {
        room -= longest.left + problem.cut();
        lay(longest, longest.left);
      }
    }
    return cutToFill(room) || any;
  }

  /** Index of the longest piece that is no longer. */
  private int firstUpTo(long room) {
    int from = 0;
    int to = pieces.size();
    while (from < to) {
      int middle = (from + to) >>> 1;
      if (pieces.get(middle) > room) {
        from = middle + 1;
      } else {
        to = middle;
      }
    }
    return from;
  }

  /** Cuts the line with the most left so that a piece of it fills the room. */
  private boolean cutToFill(long room) {
    Line best = null;
    for (Line line : lines) {
      if (piece(line, room) > 0 && (best == null || line.left > best.left)) {
        best = line;
      }
    }
    if (best == null) {
      return false;
    }
    lay(best, piece(best, room));
    return true;
  }

  private static void lay(Line line, long piece) {
    line.laid.add(piece);
    if (piece == line.left) {
      line.left = 0;
      return;
    }
    line.left -= piece;
    if (line.counted > 1) {
      line.counted--;
    } else {
      line.left += line.rules.join();
      line.further--;
    }
  }

  /** The longest piece that may be cut off the line and fits the room; 0 when there is none. */
  private long piece(Line line, long room) {
    if (line.left == 0 || line.counted + line.further < 2) {
      return 0;
    }
    boolean further = line.counted == 1;
    long whole = further ? line.left + line.rules.join() : line.left;
    int after = further ? 1 : line.counted - 1;
    long most = Math.min(problem.longestUsable(), line.rules.longest());
    long piece = Math.min(Math.min(room, most), whole - after * line.rules.leastAnywhere());
    piece -= Math.floorMod(piece, line.rules.step());
    boolean permitted = piece >= line.rules.leastAnywhere() && whole - piece <= after * most;
    return permitted && piece < line.left ? piece : 0;
  }
}
