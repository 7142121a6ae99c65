package lapwright.splice;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceSolution;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickCertificate;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;

/**
 * A solution stick by stick, with the pieces of the lines whose joints may be moved: lengths of
 * such pieces can be changed, and the solution told as it is then. Mutable.
 */
final class LaidSticks {
  private final SpliceProblem problem;
  private final SpliceSolution solution;
  private final StickSolution cutting;
  private final List<Stick> sticks = new ArrayList<>();
  private final List<List<Line>> linesOfGroups = new ArrayList<>();

  /** One stick and all that is cut from it. */
  static final class Stick {
    private final Stock stock;
    private final int number;
    private final List<Piece> pieces = new ArrayList<>();

    private Stick(Stock stock, int number) {
      this.stock = stock;
      this.number = number;
    }

    Stock stock() {
      return stock;
    }

    List<Piece> pieces() {
      return pieces;
    }
  }

  /** A piece on its stick. */
  static final class Piece {
    private static final int OF_A_LINE = -1;

    private final Stick stick;
    private final int plain;
    private final boolean small;
    private long length;

    private Piece(Stick stick, int plain, boolean small, long length) {
      this.stick = stick;
      this.plain = plain;
      this.small = small;
      this.length = length;
    }

    Stick stick() {
      return stick;
    }

    long length() {
      return length;
    }

    void cutTo(long newLength) {
      length = newLength;
    }

    /** True when it is too short to be held at the last cut. */
    boolean isSmall(long hold) {
      return plain == OF_A_LINE ? length < hold : small;
    }
  }

  /** A line whose joints may be moved. */
  record Line(Anywhere rules, List<Piece> pieces) {}

  LaidSticks(SpliceProblem problem, SpliceSolution solution, StickSolution cutting) {
    this.problem = problem;
    this.solution = solution;
    this.cutting = cutting;
    for (StickSolution.PatternUse use : cutting.patterns()) {
      for (int t = 0; t < use.times(); t++) {
        sticks.add(stick(use));
      }
    }
    Map<Long, Deque<Piece>> byLength = new HashMap<>();
    for (Stick stick : sticks) {
      for (Piece piece : stick.pieces) {
        if (piece.plain == Piece.OF_A_LINE) {
          byLength.computeIfAbsent(piece.length, key -> new ArrayDeque<>()).add(piece);
        }
      }
    }
    for (int g = 0; g < problem.groups().size(); g++) {
      List<Line> lines = new ArrayList<>();
      if (mayMove(problem.groups().get(g))) {
        Anywhere rules = (Anywhere) problem.groups().get(g).splits();
        for (Split split : solution.splits().get(g)) {
          for (int i = 0; i < split.lines(); i++) {
            lines.add(new Line(rules, pieces(split, byLength)));
          }
        }
      }
      linesOfGroups.add(lines);
    }
  }

  /** True when the joints of a group's lines may be moved wherever the lengths allow. */
  static boolean mayMove(Group group) {
    return group.splits() instanceof Anywhere rules
        && rules.closing() == Closing.ANY_CUT
        && rules.mostPieces() > 1
        && group.apart() == 0;
  }

  private Stick stick(StickSolution.PatternUse use) {
    Stick stick = new Stick(problem.stocks().get(use.stock()), use.stock());
    for (StickSolution.Count count : use.counts()) {
      boolean plain = count.item() < problem.plain().size();
      for (int c = 0; c < count.count(); c++) {
        stick.pieces.add(
            new Piece(
                stick,
                plain ? count.item() : Piece.OF_A_LINE,
                plain && problem.plain().get(count.item()).small(),
                solution.pieces().get(count.item())));
      }
    }
    return stick;
  }

  private static List<Piece> pieces(Split split, Map<Long, Deque<Piece>> byLength) {
    List<Piece> pieces = new ArrayList<>();
    for (long length : split.lengths()) {
      pieces.add(byLength.getOrDefault(length, new ArrayDeque<>()).remove());
    }
    return pieces;
  }

  /** The lines whose joints may be moved. */
  List<Line> lines() {
    return linesOfGroups.stream().flatMap(List::stream).toList();
  }

  /** The solution as it is now, its bound with it; what the cutting alone proved is left out. */
  SpliceSolution solution() {
    List<List<Split>> splits = new ArrayList<>();
    for (int g = 0; g < linesOfGroups.size(); g++) {
      List<Line> lines = linesOfGroups.get(g);
      splits.add(lines.isEmpty() ? solution.splits().get(g) : splitsOf(lines));
    }
    SortedMap<Long, Integer> items = new TreeMap<>(Collections.reverseOrder());
    for (Stick stick : sticks) {
      for (Piece piece : stick.pieces) {
        if (piece.plain == Piece.OF_A_LINE) {
          items.put(piece.length, 0);
        }
      }
    }
    List<Long> lengths = new ArrayList<>(solution.pieces().subList(0, problem.plain().size()));
    for (Map.Entry<Long, Integer> item : items.entrySet()) {
      item.setValue(lengths.size());
      lengths.add(item.getKey());
    }
    Map<StickSolution.PatternUse, Integer> times = new LinkedHashMap<>();
    for (Stick stick : sticks) {
      SortedMap<Integer, Integer> counts = new TreeMap<>();
      for (Piece piece : stick.pieces) {
        int item =
            piece.plain == Piece.OF_A_LINE ? items.getOrDefault(piece.length, -1) : piece.plain;
        counts.merge(item, 1, Integer::sum);
      }
      List<StickSolution.Count> list = new ArrayList<>();
      counts.forEach((item, count) -> list.add(new StickSolution.Count(item, count)));
      times.merge(new StickSolution.PatternUse(stick.number, list, 1), 1, Integer::sum);
    }
    List<StickSolution.PatternUse> uses = new ArrayList<>();
    times.forEach((use, n) -> uses.add(new StickSolution.PatternUse(use.stock(), use.counts(), n)));
    return new SpliceSolution(
        solution.status(),
        splits,
        lengths,
        new StickSolution(
            StickSolution.Status.OPEN,
            uses,
            cutting.packs(),
            cutting.cost(),
            0,
            new StickCertificate.Weights(1, Collections.nCopies(lengths.size(), 0L))),
        solution.cost(),
        solution.bound(),
        solution.certificate());
  }

  private static List<Split> splitsOf(List<Line> lines) {
    Map<List<Long>, Integer> counts = new LinkedHashMap<>();
    for (Line line : lines) {
      List<Long> lengths = new ArrayList<>();
      line.pieces().forEach(piece -> lengths.add(piece.length));
      lengths.sort(Collections.reverseOrder());
      counts.merge(lengths, 1, Integer::sum);
    }
    List<Split> splits = new ArrayList<>();
    counts.forEach((lengths, count) -> splits.add(new Split(lengths, count)));
    return splits;
  }
}
