package lapwright.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.RunLine;
import lapwright.plan.RunLine.RunPiece;
import lapwright.shop.RunNeed;

/** Where the lines of one run that tickets give already are joined. */
final class SettledLines {
  private static final int NEIGHBOURS = 2;

  /** The stretches of each line, by its number. */
  private final NavigableMap<Integer, List<RunLine>> lines = new TreeMap<>();

  /** The lines of a run in the plans of a material. */
  static SettledLines of(RunNeed run, List<MaterialPlan> plans) {
    SettledLines settled = new SettledLines();
    for (MaterialPlan plan : plans) {
      for (RunLine line : plan.runs()) {
        if (line.job().equals(run.job()) && line.mark().equals(run.run().mark())) {
          settled.lines.computeIfAbsent(line.line(), number -> new ArrayList<>()).add(line);
        }
      }
    }
    return settled;
  }

  /** The joints of the last lines of a copy, the last line first. */
  List<List<Length>> lastOf(int copy) {
    return lines.descendingMap().values().stream()
        .filter(stretches -> stretches.get(0).copy() == copy)
        .limit(NEIGHBOURS)
        .map(SettledLines::joints)
        .toList();
  }

  /** In the middle of each lap or gap, an odd unit beyond it. */
  private static List<Length> joints(List<RunLine> stretches) {
    List<Length> joints = new ArrayList<>();
    for (RunLine stretch : stretches) {
      RunPiece before = stretch.pieces().get(0);
      for (RunPiece after : stretch.pieces().subList(1, stretch.pieces().size())) {
        long overlap = before.end().units() - after.start().units();
        joints.add(Length.ofUnits(before.end().units() - (overlap - overlap / 2)));
        before = after;
      }
    }
    return joints;
  }
}
