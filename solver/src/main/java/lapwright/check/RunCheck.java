package lapwright.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.plan.RunLine.RunPiece;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Where;
import lapwright.shop.OneLotPer;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;

/** The rules of runs, and of lots that must not mix within a run. */
final class RunCheck {
  private final MaterialPlan plan;
  private final Faults faults;
  private final List<Long> usableOfStocks = new ArrayList<>();
  private final Map<String, Supply> supplies = new HashMap<>();

  /** The ticket of each piece of a run, by job and mark. */
  private final Map<String, Pattern> ticketOf = new HashMap<>();

  /** Joints of the lines that were checked, by job, mark and number. */
  private final Map<String, List<Long>> jointsOf = new HashMap<>();

  private long unlimited;

  RunCheck(MaterialPlan plan, Faults faults) {
    this.plan = plan;
    this.faults = faults;
    for (Supply supply : plan.order().supplies()) {
      supplies.put(supply.key(), supply);
      if (Stick.fitsMachine(supply, plan.order().saw()) && supply.atMost() > 0) {
        long usable = stick(supply).usable();
        usableOfStocks.add(usable);
        if (supply.atMost() == Integer.MAX_VALUE) {
          unlimited = Math.max(unlimited, usable);
        }
      }
    }
    for (Pattern pattern : plan.patterns()) {
      for (Cut cut : pattern.cuts()) {
        ticketOf.put(cut.job() + "/" + cut.mark(), pattern);
      }
    }
  }

  private Stick stick(Supply supply) {
    return Stick.of(supply, plan.order().material(), plan.order().saw());
  }

  void run() {
    Map<String, List<RunLine>> stretchesOfLine = new TreeMap<>();
    for (RunLine line : plan.runs()) {
      stretchesOfLine.computeIfAbsent(key(line), key -> new ArrayList<>()).add(line);
    }
    for (RunNeed need : plan.order().runs()) {
      Map<Integer, List<List<Long>>> joints = new TreeMap<>();
      for (int line = need.firstLine(); line <= need.lastLine(); line++) {
        List<RunLine> stretches =
            stretchesOfLine.remove(need.job() + "/" + need.run().mark() + "/" + line);
        if (stretches == null) {
          fault(Rule.RUN_LINES, "line " + line + " of run " + need.run().mark(), "none");
          continue;
        }
        List<Long> places = checkLine(need, line, stretches);
        joints.put(line, List.of(places));
        jointsOf.put(key(stretches.get(0)), places);
      }
      checkStagger(need, joints);
    }
    for (List<RunLine> unknown : stretchesOfLine.values()) {
      fault(Rule.RUN_LINES, "no such line", name(unknown.get(0)));
    }
    checkLots();
  }

  /** Where a line is joined, from the start of its covered length; asked after {@link #run}. */
  List<Long> joints(RunNeed need, int line) {
    return jointsOf.getOrDefault(need.job() + "/" + need.run().mark() + "/" + line, List.of());
  }

  private static String key(RunLine line) {
    return line.job() + "/" + line.mark() + "/" + line.line();
  }

  private static String name(RunLine line) {
    return "line " + line.line() + " of run " + line.mark() + " of job " + line.job();
  }

  /** Positions of the line's joints. */
  private List<Long> checkLine(RunNeed need, int number, List<RunLine> stretches) {
    Run run = need.run();
    String name = name(stretches.get(0));
    int copy = need.firstCopy() + (number - need.firstLine()) / run.qty();
    int piece = 0;
    List<Long> joints = new ArrayList<>();
    List<Long> middles = new ArrayList<>();
    for (int s = 1; s < stretches.size(); s++) {
      middles.add(middle(run, stretches.get(s - 1), stretches.get(s), name));
    }
    checkExpansion(run, middles, name);
    long from = 0;
    for (int s = 0; s < stretches.size(); s++) {
      RunLine stretch = stretches.get(s);
      if (stretch.copy() != copy) {
        fault(Rule.RUN_LINES, name + " in copy " + copy, "copy " + stretch.copy());
      }
      for (RunPiece each : stretch.pieces()) {
        piece++;
        if (each.number() != piece) {
          fault(Rule.RUN_LINES, "piece " + piece + " of " + name, "piece " + each.number());
        }
      }
      long to = s < middles.size() ? middles.get(s) : run.length().units();
      if (to <= from) {
        fault(Rule.RUN_COVER, "stretches of " + name + " one after the other", "another order");
        return joints;
      }
      joints.addAll(checkStretch(RunSpan.between(run, from, to), stretch, name));
      from = to;
    }
    return joints;
  }

  /** The middle of the gap between two stretches, as wide as the run asks for. */
  private long middle(Run run, RunLine before, RunLine after, String name) {
    long left = run.rules().closing().leaveLong().units();
    long end = lastEnd(before) - (before.closingAt() == Where.END ? left : 0);
    long start =
        after.pieces().get(0).start().units() + (after.closingAt() == Where.START ? left : 0);
    long gap = expansionGap(run);
    if (start - end != gap) {
      fault(Rule.EXPANSION, "a gap of " + Faults.mm(gap) + " in " + name, Faults.mm(start - end));
    }
    return end + gap / 2;
  }

  private static long expansionGap(Run run) {
    JointRules.Expansion expansion = run.rules().expansion();
    return expansion == null ? 0 : expansion.gap().units();
  }

  private static long lastEnd(RunLine line) {
    return line.pieces().get(line.pieces().size() - 1).end().units();
  }

  private void checkExpansion(Run run, List<Long> middles, String name) {
    JointRules.Expansion expansion = run.rules().expansion();
    if (expansion == null) {
      if (!middles.isEmpty()) {
        fault(Rule.EXPANSION, "no gap in " + name, middles.size() + " gaps");
      }
      return;
    }
    long covered = run.length().units();
    long every = expansion.longestUnbroken().units();
    long whole = (covered - 1) / every;
    long needed = covered <= every ? 0 : 2 * (covered - whole * every) > every ? whole + 1 : whole;
    RunSpan unbroken = RunSpan.between(run, 0, covered);
    if (middles.size() < needed
        && (unbroken.anywhere() || middles.size() < unbroken.places().size())) {
      fault(Rule.EXPANSION, needed + " gaps in " + name, middles.size());
    }
    long from = 0;
    for (int i = 0; i <= middles.size(); i++) {
      long to = i < middles.size() ? middles.get(i) : covered;
      if (to - from > every) {
        fault(Rule.EXPANSION, "stretches of at most " + Faults.mm(every), Faults.mm(to - from));
      }
      if (i < middles.size() && !unbroken.anywhere() && !unbroken.places().contains(to)) {
        fault(Rule.JOINT_PLACE, "a gap of " + name + " at a permitted place", Faults.mm(to));
      }
      from = to;
    }
  }

  private List<Long> checkStretch(RunSpan span, RunLine line, String name) {
    long left = span.rules().closing().leaveLong().units();
    boolean closingAtStart = line.closingAt() == Where.START;
    Where asked = span.rules().closing().where();
    if (asked != Where.EITHER && asked != line.closingAt()) {
      fault(Rule.CLOSING, name + " closed at its " + asked.word(), line.closingAt().word());
    }
    List<RunPiece> pieces = line.pieces();
    long start = span.start() - (closingAtStart ? left : 0);
    long end = span.end() + (closingAtStart ? 0 : left);
    if (pieces.get(0).start().units() != start) {
      fault(
          Rule.RUN_COVER,
          name + " from " + Faults.mm(start),
          Faults.mm(pieces.get(0).start().units()));
    }
    if (lastEnd(line) != end) {
      fault(Rule.RUN_COVER, name + " up to " + Faults.mm(end), Faults.mm(lastEnd(line)));
    }
    List<Long> joints = new ArrayList<>();
    for (int i = 1; i < pieces.size(); i++) {
      joints.add(checkJoint(span, pieces.get(i - 1), pieces.get(i), name));
    }
    checkPieces(span, line, name);
    long longest = usableOfStocks.stream().mapToLong(Long::longValue).max().orElse(0);
    int most = SpanSplits.mostPieces(span, unlimited, longest, usableOfStocks);
    if (pieces.size() > most) {
      fault(
          Rule.JOINT_COUNT,
          "at most " + Math.max(0, most - 1) + " joints in " + name,
          pieces.size() - 1);
    }
    return joints;
  }

  /** The position of a joint; its lap or gap is checked. */
  private long checkJoint(RunSpan span, RunPiece before, RunPiece after, String name) {
    long overlap = before.end().units() - after.start().units();
    String which = "piece " + before.number() + " and " + after.number() + " of " + name;
    if (span.rules().joint() instanceof JointRules.Joint.Lap) {
      if (overlap != span.lap()) {
        fault(Rule.JOINT, which + " to lap " + Faults.mm(span.lap()), Faults.mm(overlap));
      }
      long at = before.end().units() - (span.lap() - span.lap() / 2);
      if (!span.anywhere() && !span.places().contains(at)) {
        fault(Rule.JOINT_PLACE, which + " to meet at a permitted place", Faults.mm(at));
      }
      return at;
    }
    if (overlap > 0 || -overlap > 2 * span.halfGap()) {
      fault(
          Rule.JOINT,
          which + " to leave a gap of at most " + Faults.mm(2 * span.halfGap()),
          Faults.mm(-overlap));
    }
    if (span.anywhere()) {
      return before.end().units() + -overlap / 2;
    }
    for (long place : span.places()) {
      long short1 = place - before.end().units();
      long short2 = after.start().units() - place;
      if (short1 >= 0 && short2 >= 0 && short1 <= span.halfGap() && short2 <= span.halfGap()) {
        return place;
      }
    }
    fault(
        Rule.JOINT_PLACE, which + " to meet at a permitted place", Faults.mm(before.end().units()));
    return before.end().units();
  }

  private void checkPieces(RunSpan span, RunLine line, String name) {
    List<RunPiece> pieces = line.pieces();
    int n = pieces.size();
    int offStep = 0;
    int cutPieces = 0;
    boolean closingAtStart = line.closingAt() == Where.START;
    for (int i = 0; i < n; i++) {
      long length = pieces.get(i).length().units();
      boolean atEnd = i == 0 || i == n - 1;
      if (length < span.shortest(atEnd) || length > span.longest(Long.MAX_VALUE)) {
        fault(
            Rule.PIECE_LENGTH,
            "piece "
                + pieces.get(i).number()
                + " of "
                + name
                + " from "
                + Faults.mm(span.shortest(atEnd))
                + " up to the longest permitted",
            Faults.mm(length));
      }
      if (length % span.rules().pieces().step().units() != 0 && !usableOfStocks.contains(length)) {
        offStep++;
      }
      boolean closing = i == (closingAtStart ? 0 : n - 1);
      if (!closing && !isWhole(line, pieces.get(i))) {
        cutPieces++;
      }
    }
    if (span.anywhere() && span.halfGap() == 0 && offStep > 1) {
      fault(
          Rule.PIECE_LENGTH,
          "at most one piece of "
              + name
              + " off the step of "
              + Faults.mm(span.rules().pieces().step().units()),
          offStep);
    }
    if (span.rules().closing().othersWhole() && cutPieces > 0) {
      fault(Rule.CLOSING, "whole sticks but for the closing piece of " + name, cutPieces + " cut");
    }
  }

  /** True when a piece is all that a stick gives. */
  private boolean isWhole(RunLine line, RunPiece piece) {
    Pattern ticket = ticketOf.get(line.job() + "/" + line.pieceMark(piece));
    if (ticket == null || ticket.cuts().size() != 1 || ticket.cuts().get(0).qty() != 1) {
      return false;
    }
    Supply supply = supplies.get(ticket.supply());
    return supply != null && stick(supply).usable() == piece.length().units();
  }

  private void checkStagger(RunNeed need, Map<Integer, List<List<Long>>> joints) {
    long apart = need.run().rules().stagger().units();
    if (apart == 0) {
      return;
    }
    if (!need.settled().isEmpty()) {
      List<Long> settled = need.settled().get(0).stream().map(Length::units).toList();
      List<List<Long>> first = joints.getOrDefault(need.firstLine(), List.of());
      first.forEach(
          places ->
              checkApart(need, "line " + need.firstLine() + " and one before", settled, places));
    }
    for (int line = need.firstLine() + 1; line <= need.lastLine(); line++) {
      boolean sameCopy = (line - need.firstLine()) % need.run().qty() != 0;
      List<List<Long>> before = joints.get(line - 1);
      List<List<Long>> after = joints.get(line);
      if (!sameCopy || before == null || after == null) {
        continue;
      }
      checkApart(need, "lines " + (line - 1) + " and " + line, before.get(0), after.get(0));
    }
  }

  /** Joints of neighbouring lines are as far apart as the run asks. */
  void checkApart(RunNeed need, String lines, List<Long> before, List<Long> after) {
    long apart = need.run().rules().stagger().units();
    for (long one : before) {
      for (long other : after) {
        if (Math.abs(one - other) < apart) {
          fault(
              Rule.STAGGER,
              "joints of "
                  + lines
                  + " of run "
                  + need.run().mark()
                  + " at least "
                  + Faults.mm(apart)
                  + " apart",
              Faults.mm(Math.abs(one - other)));
        }
      }
    }
  }

  private void checkLots() {
    if (plan.order().material().oneLotPer() != OneLotPer.RUN) {
      return;
    }
    Map<String, String> runOfPiece = new HashMap<>();
    for (RunLine line : plan.runs()) {
      line.pieces()
          .forEach(
              piece ->
                  runOfPiece.put(
                      line.job() + "/" + line.pieceMark(piece),
                      line.job() + ", run " + line.mark()));
    }
    Map<String, Set<String>> lotsOf = new TreeMap<>();
    for (Pattern pattern : plan.patterns()) {
      Supply supply = supplies.get(pattern.supply());
      if (supply == null) {
        continue;
      }
      for (Cut cut : pattern.cuts()) {
        String whose = runOfPiece.get(cut.job() + "/" + cut.mark());
        if (whose != null) {
          lotsOf.computeIfAbsent(whose, key -> new TreeSet<>()).add(supply.lotKey());
        }
      }
    }
    lotsOf.forEach(
        (whose, lots) -> {
          if (lots.size() > 1) {
            fault(Rule.ONE_LOT, "one lot for job " + whose, String.join(", ", lots));
          }
        });
  }

  private void fault(Rule rule, Object expected, Object found) {
    Objects.requireNonNull(rule);
    faults.ofMaterial(
        rule, expected, found instanceof Length length ? Faults.mm(length.units()) : found);
  }
}
