package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Splits found by filling sticks one after the other: whole sticks first, then what is left of each
 * line and the plain pieces, longest first; where a stick has room left and a line may have one
 * more joint, the line is cut to fill it. Next fit with fragmentation, in the words of bin packing
 * with item fragmentation (Casazza and Ceselli, Computers and Operations Research 46, 2014).
 */
final class FragmentFill {
  private final SpliceProblem problem;
  private final List<Choice> choices;
  private final long whole;
  private final List<Line> lines = new ArrayList<>();
  private final List<Long> plain = new ArrayList<>();

  /** A line of which some is still to be laid. */
  private static final class Line {
    private final int group;
    private final Anywhere rules;
    private final List<Long> laid = new ArrayList<>();
    private long left;
    private int piecesLeft;

    private Line(int group, Anywhere rules) {
      this.group = group;
      this.rules = rules;
    }

    private long least() {
      return Math.max(rules.shortest(), rules.shortestAtEnd());
    }
  }

  private FragmentFill(SpliceProblem problem, List<Choice> choices, long whole) {
    this.problem = problem;
    this.choices = choices;
    this.whole = whole;
  }

  /**
   * Splits of all lines.
   *
   * @return null when there is no unlimited stock or a line cannot be laid that way
   */
  static @Nullable List<List<Split>> splits(SpliceProblem problem, List<Choice> choices) {
    Stock best = null;
    for (Stock stock : problem.stocks()) {
      if (!stock.isLimited() && (best == null || perLength(stock) < perLength(best))) {
        best = stock;
      }
    }
    return best == null
        ? null
        : new FragmentFill(problem, choices, best.capacity() - problem.cut()).run();
  }

  private static double perLength(Stock stock) {
    return (double) stock.packCost() / stock.packSize() / stock.capacity();
  }

  private @Nullable List<List<Split>> run() {
    List<List<Split>> splits = new ArrayList<>();
    LengthPrices bySize =
        length -> length <= problem.longestUsable() ? length : Double.POSITIVE_INFINITY;
    for (int g = 0; g < choices.size(); g++) {
      Group group = problem.groups().get(g);
      splits.add(new ArrayList<>());
      boolean fills =
          choices.get(g) instanceof AnywhereChoice && group.splits() instanceof Anywhere;
      if (!fills || group.apart() > 0) {
        List<Long> one = choices.get(g).cheapest(bySize);
        splits.get(g).add(new Split(one, group.lines()));
        for (int line = 0; line < group.lines(); line++) {
          plain.addAll(one);
        }
        continue;
      }
      for (int line = 0; line < group.lines(); line++) {
        Line started = start(g, (Anywhere) group.splits());
        if (started == null) {
          return null;
        }
        lines.add(started);
      }
    }
    for (Item item : problem.plain()) {
      for (int i = 0; i < item.demand(); i++) {
        plain.add(item.size() - problem.cut());
      }
    }
    plain.sort(Collections.reverseOrder());
    while (lines.stream().anyMatch(line -> line.left > 0)) {
      if (!fillStick()) {
        return null;
      }
    }
    for (Line line : lines) {
      splits.get(line.group).add(new Split(line.laid, 1));
    }
    return splits;
  }

  /** Whole sticks as far as what is left stays long enough to be laid. */
  private @Nullable Line start(int group, Anywhere rules) {
    Line line = new Line(group, rules);
    long cap = Math.min(whole, rules.longest());
    int fewest = 1;
    while (fewest < rules.mostPieces() && rules.sumOf(fewest) > fewest * cap) {
      fewest++;
    }
    long left = rules.sumOf(fewest);
    int pieces = fewest;
    while (pieces > 1 && left - cap >= line.least()) {
      line.laid.add(cap);
      left -= cap;
      pieces--;
    }
    line.left = left;
    line.piecesLeft = pieces + rules.mostPieces() - fewest;
    return left > pieces * cap || left < line.least() ? null : line;
  }

  /** Fills one stick; false when nothing could be put on it. */
  private boolean fillStick() {
    long room = whole;
    boolean any = false;
    while (true) {
      Line longest = null;
      for (Line line : lines) {
        if (line.left > 0 && line.left <= room && fitsWhole(line, line.left)) {
          longest = longest == null || line.left > longest.left ? line : longest;
        }
      }
      long roomNow = room;
      Long piece = plain.stream().filter(length -> length <= roomNow).findFirst().orElse(null);
      if (longest == null && piece == null) {
        break;
      }
      any = true;
      if (piece != null && (longest == null || piece >= longest.left)) {
        plain.remove(piece);
        room -= piece + problem.cut();
      } else {
        Line taken = java.util.Objects.requireNonNull(longest);
        room -= taken.left + problem.cut();
        taken.laid.add(taken.left);
        taken.left = 0;
      }
    }
    return cutToFill(room) || any;
  }

  private static boolean fitsWhole(Line line, long length) {
    return line.piecesLeft >= 1 && length <= line.rules.longest();
  }

  /** Cuts the line with the most left so that a piece of it fills the room. */
  private boolean cutToFill(long room) {
    Line best = null;
    for (Line line : lines) {
      long piece = pieceFor(line, room);
      if (piece > 0 && (best == null || line.left > best.left)) {
        best = line;
      }
    }
    if (best == null) {
      return false;
    }
    long piece = pieceFor(best, room);
    best.laid.add(piece);
    best.piecesLeft--;
    // The sum of the pieces that were counted on holds its joints already; one more adds a joint.
    best.left = rest(best, piece);
    return true;
  }

  private long rest(Line line, long piece) {
    long cap = Math.min(whole, line.rules.longest());
    boolean counted = line.left > cap;
    return line.left - piece + (counted ? 0 : line.rules.join());
  }

  /** The longest permitted piece of the line that fits the room; 0 when there is none. */
  private long pieceFor(Line line, long room) {
    if (line.left == 0 || line.piecesLeft < 2) {
      return 0;
    }
    long step = line.rules.step();
    long piece = Math.min(room, line.rules.longest()) / step * step;
    long short1 = rest(line, piece) - line.least();
    if (short1 < 0) {
      piece += Math.floorDiv(short1, step) * step;
    }
    long cap = Math.min(whole, line.rules.longest());
    long rest = rest(line, piece);
    return piece >= line.least() && rest >= line.least() && rest <= (line.piecesLeft - 1) * cap
        ? piece
        : 0;
  }
}
