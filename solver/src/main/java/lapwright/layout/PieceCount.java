package lapwright.layout;

import lapwright.measure.Length;

/** How few pieces cover a length. */
public final class PieceCount {
  private PieceCount() {}

  /**
   * Pieces of a length that overlap by {@code lap}: 1 if it is no longer than one, else (length -
   * lap) / (piece - lap), rounded up.
   *
   * @param piece longer than the lap
   */
  public static int of(Length length, Length lap, Length piece) {
    if (!length.isLongerThan(piece)) {
      return 1;
    }
    long net = piece.minus(lap).units();
    if (net <= 0) {
      throw new IllegalArgumentException("pieces that are all lap");
    }
    return Math.toIntExact(-Math.floorDiv(-length.minus(lap).units(), net));
  }

  /**
   * The fewest pieces with joints anywhere, for which a split within the limits exists.
   *
   * @param total length of the line
   * @param join what each joint adds to it; less than 0 for gaps
   */
  static int anywhere(long total, long join, PieceLimits limits) {
    if (limits.longest() <= join) {
      throw new LayoutException(
          "lap",
          "the lap is as long as the longest piece that can be cut",
          "make the lap shorter than {}",
          Length.ofUnits(Math.max(0, limits.longest())));
    }
    int pieces = 1;
    while (sum(total, join, pieces) > Math.multiplyExact(limits.longest(), pieces)) {
      pieces++;
    }
    // More pieces never help against a least length, as long as each adds less than it takes.
    if (limits.leastSum(pieces) > sum(total, join, pieces)) {
      long each = Math.floorDiv(sum(total, join, pieces), pieces);
      throw new LayoutException(
          limits.shortest() > each ? "shortest-piece" : "shortest-at-end",
          "it takes " + pieces + " pieces, and not all of them can be as long as the shortest",
          "allow pieces of {}",
          Length.ofUnits(each));
    }
    return pieces;
  }

  private static long sum(long total, long join, int pieces) {
    return Math.addExact(total, Math.multiplyExact(pieces - 1L, join));
  }
}
