package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.shop.JointRules.Where;

/**
 * How one unbroken stretch of one line of a run is laid.
 *
 * @param job whose run
 * @param copy which copy of a repeated job, from 1
 * @param mark the run's mark
 * @param line which line of the run, from 1
 * @param closingAt at which end its closing piece lies
 * @param pieces in the order in which they lie, at least one
 */
public record RunLine(
    String job, int copy, String mark, int line, Where closingAt, List<RunPiece> pieces) {
  public RunLine {
    Objects.requireNonNull(job);
    Objects.requireNonNull(mark);
    Objects.requireNonNull(closingAt);
    pieces = List.copyOf(pieces);
    if (copy < 1 || line < 1 || pieces.isEmpty()) {
      throw new IllegalArgumentException("line " + line + " of run " + mark + ", copy " + copy);
    }
  }

  /** The mark that the ticket bears for a piece. */
  public String pieceMark(RunPiece piece) {
    return mark + "/" + line + "." + piece.number();
  }

  /**
   * One piece of a line.
   *
   * @param number counted from 1 along the whole line, over all its stretches
   * @param start where it starts, from the start of the covered length; less than 0 by what is
   *     added at the start
   * @param length as cut
   */
  public record RunPiece(int number, Length start, Length length) {
    public RunPiece {
      Objects.requireNonNull(start);
      if (number < 1 || length.units() <= 0) {
        throw new IllegalArgumentException("piece " + number + " of " + length);
      }
    }

    /** Where it ends. */
    public Length end() {
      return start.plus(length);
    }
  }
}
