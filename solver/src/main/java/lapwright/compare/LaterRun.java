package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.RunNeed;

/**
 * What is still to be planned of one run once orders are placed. Lines on tickets keep their
 * numbers; what is added counts on from the last one, copy by copy, and stands beside the last one
 * of its copy, which tells where its joints may be if they are staggered.
 *
 * @param isChanged true when it is not the run that was placed
 * @param added lines that no ticket gives yet
 * @param placed lines that tickets give
 * @param unneeded how many of them no copy needs any more
 */
record LaterRun(boolean isChanged, List<RunNeed> added, int placed, int unneeded) {
  LaterRun {
    added = List.copyOf(added);
  }

  /**
   * @param placed the same run of the same job as orders before have it, the first first
   * @param settled how its lines are laid that tickets give
   */
  static LaterRun of(RunNeed now, List<RunNeed> placed, SettledLines settled) {
    if (placed.isEmpty()) {
      return new LaterRun(false, List.of(now), 0, 0);
    }
    int lines = placed.stream().mapToInt(RunNeed::lines).reduce(0, Math::addExact);
    if (placed.stream().anyMatch(before -> !isAlike(now, before))) {
      return new LaterRun(true, List.of(), lines, 0);
    }
    List<RunNeed> added = new ArrayList<>();
    int next = placed.stream().mapToInt(RunNeed::lastLine).max().orElse(0) + 1;
    int unneeded = 0;
    int lastCopy = placed.stream().mapToInt(RunNeed::lastCopy).max().orElse(0);
    for (int copy = 1; copy <= Math.max(lastCopy, now.lastCopy()); copy++) {
      int there = 0;
      for (RunNeed before : placed) {
        boolean forIt = before.firstCopy() <= copy && copy <= before.lastCopy();
        there += forIt ? before.run().qty() : 0;
      }
      int missing = (copy <= now.lastCopy() ? now.run().qty() : 0) - there;
      unneeded += Math.max(0, -missing);
      if (missing > 0) {
        RunNeed last = added.isEmpty() ? null : added.get(added.size() - 1);
        List<List<Length>> beside =
            now.run().rules().stagger().isZero() ? List.of() : settled.lastOf(copy);
        if (last != null
            && last.lastCopy() == copy - 1
            && last.run().qty() == missing
            && beside.isEmpty()
            && last.settled().isEmpty()) {
          added.remove(last);
          next = last.firstLine();
          added.add(lines(now, last.firstCopy(), last.copies() + 1, missing, next));
        } else {
          added.add(lines(now, copy, 1, missing, next).beside(beside));
        }
        next = added.get(added.size() - 1).lastLine() + 1;
      }
    }
    return new LaterRun(false, added, lines, unneeded);
  }

  private static RunNeed lines(RunNeed now, int firstCopy, int copies, int qty, int firstLine) {
    return new RunNeed(now.job(), now.due(), copies, now.run().withQty(qty), firstCopy, firstLine);
  }

  /** True when both ask for the same lines, but for their number. */
  private static boolean isAlike(RunNeed now, RunNeed before) {
    return now.run().withQty(1).equals(before.run().withQty(1));
  }
}
