package lapwright.splice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapwright.effort.Effort;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceSolution.Split;
import lapwright.splice.SplitProgram.SplitColumn;
import org.jspecify.annotations.Nullable;

/**
 * Fixes the splits of all lines: whole parts of the linear program's solution and everything close
 * to the next whole number, at least one line at a time, the columns generated anew in between.
 */
final class Dive {
  private static final double WHOLE = 1e-6;
  private static final int ROUNDS = 4;

  private final SpliceProblem problem;
  private final SplitProgram master;

  Dive(SpliceProblem problem, SplitProgram master) {
    this.problem = problem;
    this.master = master;
  }

  /**
   * Dives, and frees all splits again.
   *
   * @param close fractions from here are rounded up
   * @param given lines whose splits are fixed already
   * @return for each group its splits; null when the engine failed
   */
  @Nullable List<List<Split>> run(double close, Map<SplitColumn, Integer> given, Effort effort) {
    Map<SplitColumn, Integer> fixed = new HashMap<>(given);
    try {
      int lines = problem.groups().stream().mapToInt(SpliceProblem.Group::lines).sum();
      int done = given.values().stream().mapToInt(Integer::intValue).sum();
      given.forEach(master::fix);
      while (done < lines) {
        if (!master.converge(ROUNDS, effort) && effort.spent()) {
          close = 0;
        }
        int more = fixMore(fixed, close);
        if (more == 0) {
          return null;
        }
        done += more;
      }
      return collected(fixed);
    } finally {
      fixed.keySet().forEach(split -> master.fix(split, 0));
    }
  }

  private int fixMore(Map<SplitColumn, Integer> fixed, double close) {
    int[] free = new int[problem.groups().size()];
    for (int g = 0; g < free.length; g++) {
      free[g] = problem.groups().get(g).lines();
    }
    fixed.forEach((split, lines) -> free[split.group()] -= lines);
    int more = 0;
    SplitColumn nearest = null;
    double nearestFraction = -1;
    List<SplitColumn> rounded = new ArrayList<>();
    for (SplitColumn split : master.splits()) {
      double open = master.value(split) - fixed.getOrDefault(split, 0);
      int whole = (int) Math.floor(open + WHOLE);
      int taken = Math.min(whole, free[split.group()]);
      if (taken > 0) {
        fixed.merge(split, taken, Integer::sum);
        free[split.group()] -= taken;
        more += taken;
      }
      double fraction = open - whole;
      if (fraction >= close && fraction > WHOLE) {
        rounded.add(split);
      }
      if (fraction > nearestFraction && free[split.group()] > 0) {
        nearest = split;
        nearestFraction = fraction;
      }
    }
    rounded.sort(
        (a, b) ->
            Double.compare(
                master.value(b) - Math.floor(master.value(b)),
                master.value(a) - Math.floor(master.value(a))));
    if (rounded.isEmpty() && more == 0 && nearest != null) {
      rounded.add(nearest);
    }
    for (SplitColumn split : rounded) {
      if (free[split.group()] > 0) {
        fixed.merge(split, 1, Integer::sum);
        free[split.group()]--;
        more++;
      }
    }
    fixed.forEach(master::fix);
    return more;
  }

  private List<List<Split>> collected(Map<SplitColumn, Integer> fixed) {
    List<List<Split>> splits = new ArrayList<>();
    for (int g = 0; g < problem.groups().size(); g++) {
      splits.add(new ArrayList<>());
    }
    // In the order of the columns, so that no hash order reaches the solution.
    for (SplitColumn split : master.splits()) {
      int lines = fixed.getOrDefault(split, 0);
      if (lines > 0) {
        splits.get(split.group()).add(new Split(split.lengths(), lines));
      }
    }
    return splits;
  }
}
