package lapwright.splice;

import java.util.List;
import lapwright.effort.Effort;

/** A linear program that chooses splits, as a dive sees it. */
interface SplitProgram {
  /** A split of a group's lines in the program. */
  record SplitColumn(int group, List<Long> lengths, int column) {
    public SplitColumn {
      lengths = List.copyOf(lengths);
    }
  }

  /** All splits, in the order in which they came. */
  List<SplitColumn> splits();

  /** How many lines the last solution splits so. */
  double value(SplitColumn split);

  /** Lines that are to be split in a certain way at least. */
  void fix(SplitColumn split, int lines);

  /**
   * Generates columns until they improve nothing, or so little that other solutions do not come of
   * them.
   *
   * @param rounds how often new splits are sought at most
   * @return false when it did not converge
   */
  boolean converge(int rounds, Effort effort);
}
