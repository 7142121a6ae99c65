package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceSolution;
import lapwright.splice.LaidSticks.Line;
import lapwright.splice.LaidSticks.Piece;
import lapwright.splice.LaidSticks.Stick;

/**
 * Moves joints that may stand anywhere within what the same sticks give: so that pieces are whole
 * sticks that nobody has to cut, else lengths that are easy to read on a tape, and offcuts are
 * worth keeping. The sticks stay, and so does what they cost.
 */
public final class NeatJoints {
  private static final int PASSES = 3;

  private final SpliceProblem problem;
  private final List<Long> marks;

  private NeatJoints(SpliceProblem problem, List<Long> marks) {
    this.problem = problem;
    this.marks = List.copyOf(marks);
  }

  /**
   * The solution with its joints moved, or itself where no move is of use.
   *
   * @param marks a length is the easier to read the earlier the first of these that divides it
   */
  public static SpliceSolution of(
      SpliceProblem problem, SpliceSolution solution, List<Long> marks) {
    if (solution.cutting() == null || problem.groups().stream().noneMatch(LaidSticks::mayMove)) {
      return solution;
    }
    LaidSticks laid = new LaidSticks(problem, solution, solution.cutting());
    return new NeatJoints(problem, marks).improve(laid.lines()) ? laid.solution() : solution;
  }

  private boolean improve(List<Line> lines) {
    boolean any = false;
    boolean more = true;
    for (int pass = 0; pass < PASSES && more; pass++) {
      more = false;
      for (Line line : lines) {
        for (int a = 0; a < line.pieces().size(); a++) {
          for (int b = a + 1; b < line.pieces().size(); b++) {
            more |= move(line, line.pieces().get(a), line.pieces().get(b));
          }
        }
      }
      any |= more;
    }
    return any;
  }

  /** Moves what one piece of a line is longer to the other, if that is any better. */
  private boolean move(Line line, Piece one, Piece other) {
    if (isUncut(one) || isUncut(other)) {
      return false;
    }
    long before = one.length();
    long sum = before + other.length();
    Merit now = merit(one, other);
    Merit best = now;
    long bestLength = before;
    for (long length : lengths(line, one, other)) {
      one.cutTo(length);
      other.cutTo(sum - length);
      if (isProper(line, one, other)) {
        Merit then = merit(one, other);
        if (Merit.WORTH.compare(then, now) > 0 && Merit.ORDER.compare(then, best) > 0) {
          best = then;
          bestLength = length;
        }
      }
    }
    one.cutTo(bestLength);
    other.cutTo(sum - bestLength);
    return bestLength != before;
  }

  /**
   * What the first of two pieces might be: the greatest and least, what it is now, and near there
   * what is easy to read.
   */
  private Set<Long> lengths(Line line, Piece one, Piece other) {
    long sum = one.length() + other.length();
    long longest = line.rules().longest();
    long greatest = Math.min(longest, sum - line.rules().least());
    long least = Math.max(line.rules().least(), sum - longest);
    if (!one.stick().equals(other.stick())) {
      greatest = Math.min(greatest, one.length() + rest(one.stick()));
      least = Math.max(least, one.length() - rest(other.stick()));
    }
    long anywhere = line.rules().leastAnywhere();
    Set<Long> found = new TreeSet<>(Collections.reverseOrder());
    for (long near : new long[] {greatest, least, one.length(), sum - anywhere, anywhere}) {
      found.add(near);
      for (long mark : marks) {
        long down = Math.floorDiv(near, mark) * mark;
        long otherDown = Math.floorDiv(sum - near, mark) * mark;
        Collections.addAll(found, down, down + mark, sum - otherDown, sum - otherDown - mark);
      }
    }
    Set<Long> within = new LinkedHashSet<>();
    for (long length : found) {
      if (length >= least && length <= greatest) {
        within.add(length);
      }
    }
    return within;
  }

  private boolean isProper(Line line, Piece one, Piece other) {
    List<Long> lengths = new ArrayList<>();
    int offSteps = 0;
    for (Piece piece : line.pieces()) {
      long length = piece.length();
      lengths.add(length);
      offSteps += length % line.rules().step() == 0 || problem.isWhole(length) ? 0 : 1;
    }
    return offSteps <= 1
        && line.rules().permits(lengths)
        && isProper(one.stick())
        && isProper(other.stick());
  }

  private boolean isProper(Stick stick) {
    boolean held = stick.pieces().stream().anyMatch(piece -> !piece.isSmall(problem.hold()));
    long least = held ? 0 : stick.stock().capacity() - stick.stock().smallCapacity();
    return rest(stick) >= least || isUncut(stick.pieces().get(0));
  }

  private long rest(Stick stick) {
    long rest = stick.stock().capacity();
    for (Piece piece : stick.pieces()) {
      rest -= piece.length() + problem.cut();
    }
    return rest;
  }

  /** True when a piece is all that its stick is. */
  private boolean isUncut(Piece piece) {
    return piece.stick().pieces().size() == 1
        && piece.stick().stock().wholeUse()
        && piece.length() + problem.cut() == piece.stick().stock().capacity();
  }

  /**
   * How well two pieces of a line lie; the greatest is best.
   *
   * @param uncut how many of them are whole sticks
   * @param readable 0 at most
   * @param kept length of offcuts that are kept
   * @param greatestOffcut decides between moves, and is not worth one
   */
  private record Merit(int uncut, int readable, long kept, long greatestOffcut) {
    private static final Comparator<Merit> WORTH =
        Comparator.comparingInt(Merit::uncut)
            .thenComparingInt(Merit::readable)
            .thenComparingLong(Merit::kept);
    private static final Comparator<Merit> ORDER = WORTH.thenComparingLong(Merit::greatestOffcut);
  }

  private Merit merit(Piece one, Piece other) {
    int uncut = 0;
    int readable = 0;
    for (Piece piece : List.of(one, other)) {
      if (isUncut(piece)) {
        uncut++;
      } else {
        readable -= firstMark(piece.length());
      }
    }
    long kept = 0;
    long greatest = 0;
    for (Stick stick : new LinkedHashSet<>(List.of(one.stick(), other.stick()))) {
      long offcut = Math.max(0, rest(stick) + stick.stock().tail());
      kept += offcut >= problem.keepFrom() ? offcut : 0;
      greatest = Math.max(greatest, offcut);
    }
    return new Merit(uncut, readable, kept, greatest);
  }

  private int firstMark(long length) {
    for (int m = 0; m < marks.size(); m++) {
      if (length % marks.get(m) == 0) {
        return m;
      }
    }
    return marks.size();
  }
}
