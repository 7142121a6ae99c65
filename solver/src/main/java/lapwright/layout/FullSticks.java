package lapwright.layout;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Run;

/**
 * Where a man joins a run who lays full sticks of one length, then a closing piece. Where that
 * would be too short, the piece before it is shorter by as much. He leaves no gaps.
 */
public final class FullSticks {
  private FullSticks() {}

  /**
   * The joints of each line, from the start of the covered length, ascending; expansion gaps are
   * among them.
   *
   * @param stick the longest piece that the stick gives
   * @throws LayoutException when expansion gaps find no place
   */
  public static List<Length> joints(Run run, Length stick) {
    JointRules rules = run.rules();
    long lap = rules.joint() instanceof Joint.Lap overlap ? overlap.lap().units() : 0;
    Length longest = rules.pieces().longest();
    long full = longest == null ? stick.units() : Math.min(stick.units(), longest.units());
    List<Length> joints = new ArrayList<>(ExpansionGaps.of(run));
    if (full > lap) {
      for (Stretch stretch : Stretch.of(run)) {
        addJoints(run, stretch, full, lap, joints);
      }
    }
    return joints.stream().distinct().sorted().toList();
  }

  private static void addJoints(
      Run run, Stretch stretch, long full, long lap, List<Length> joints) {
    JointRules rules = run.rules();
    boolean fromEnd = rules.closing().where() == Where.START;
    long least = Math.max(1, rules.pieces().leastAtEnd().units());
    long open = stretch.length() + rules.closing().leaveLong().units();
    long laid = 0;
    while (open > full) {
      long piece = full;
      long rest = open - piece + lap;
      if (rest < least) {
        piece -= least - rest;
        rest = least;
      }
      if (piece <= lap) {
        return; // no full stick fits the rules; whoever asks finds no split then
      }
      laid += piece;
      long half = fromEnd ? lap / 2 : lap - lap / 2;
      joints.add(
          Length.ofUnits(fromEnd ? stretch.end() - laid + half : stretch.start() + laid - half));
      laid -= lap;
      open = rest;
    }
  }
}
