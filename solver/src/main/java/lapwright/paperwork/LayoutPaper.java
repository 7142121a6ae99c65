package lapwright.paperwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.check.CheckedPlan;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.plan.RunLine.RunPiece;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Material;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * How the lines of runs are laid, for whoever puts them up: which piece lies where, where pieces
 * meet, and which ticket each piece comes from.
 *
 * @param shop the shop's own facts
 * @param runs in the order of the plans
 */
public record LayoutPaper(Shop shop, List<RunLayout> runs) {
  public LayoutPaper {
    Objects.requireNonNull(shop);
    runs = List.copyOf(runs);
  }

  /**
   * All lines of one run.
   *
   * @param material what it is of
   * @param job whose run
   * @param due the day it leaves the shop; null when not given
   * @param need as the job lists it; its lines are counted on from copy to copy
   * @param groups lines that are laid alike, by their first line
   */
  public record RunLayout(
      Material material, String job, @Nullable LocalDate due, RunNeed need, List<Alike> groups) {
    public RunLayout {
      Objects.requireNonNull(material);
      Objects.requireNonNull(job);
      Objects.requireNonNull(need);
      groups = List.copyOf(groups);
    }

    public Run run() {
      return need.run();
    }

    /** Lines over all copies. */
    public int lines() {
      return groups.stream().mapToInt(group -> group.lines().size()).sum();
    }

    /** The name that is written on a piece. */
    public String pieceMark(int line, Laid piece) {
      return need.pieceMark(line, piece.number());
    }
  }

  /**
   * Lines whose pieces are as long and lie as far along.
   *
   * @param lines ascending, at least one
   * @param pieces in the order in which they lie
   * @param joints between each piece and the next, expansion gaps among them
   */
  public record Alike(List<Integer> lines, List<Laid> pieces, List<Meeting> joints) {
    public Alike {
      lines = List.copyOf(lines);
      pieces = List.copyOf(pieces);
      joints = List.copyOf(joints);
      if (lines.isEmpty() || joints.size() != pieces.size() - 1) {
        throw new IllegalArgumentException(
            lines + ": " + pieces.size() + " pieces, " + joints.size() + " joints");
      }
    }

    public Length start() {
      return pieces.get(0).start();
    }

    public Length end() {
      return pieces.get(pieces.size() - 1).end();
    }
  }

  /**
   * A piece where it lies.
   *
   * @param number along the line, from 1
   * @param start from the start of the covered length; less than 0 by what is added there
   * @param length as cut
   * @param closing true for the piece that is laid last, of its unbroken stretch
   * @param from the tickets that it comes from, the first line's first
   */
  public record Laid(
      int number, Length start, Length length, boolean closing, List<FromTicket> from) {
    public Laid {
      Objects.requireNonNull(start);
      Objects.requireNonNull(length);
      from = List.copyOf(from);
    }

    public Length end() {
      return start.plus(length);
    }
  }

  /** A ticket, and the lines whose piece it gives. */
  public record FromTicket(String ticket, List<Integer> lines) {
    public FromTicket {
      Objects.requireNonNull(ticket);
      lines = List.copyOf(lines);
    }
  }

  /** How two pieces meet. */
  public enum Kind {
    LAP("lap"),
    BUTT("butt"),
    EXPANSION_GAP("expansion-gap");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The word that files use. */
    public String word() {
      return word;
    }
  }

  /**
   * Where two pieces meet.
   *
   * @param at the place of the joint from the start of the covered length: the middle of a lap or
   *     an expansion gap, the bearing of a butt joint or else the middle of its gap
   * @param width the lap, or the gap that is left open
   */
  public record Meeting(Kind kind, Length at, Length width) {
    public Meeting {
      Objects.requireNonNull(kind);
      Objects.requireNonNull(at);
      Objects.requireNonNull(width);
    }
  }

  /** The paper of orders that were placed one after the other, the first first. */
  public static LayoutPaper of(List<CheckedPlan> placed) {
    List<RunLayout> runs = new ArrayList<>();
    for (CheckedPlan checked : placed) {
      for (MaterialPlan plan : checked.plan().materials()) {
        layouts(plan, runs);
      }
    }
    return new LayoutPaper(placed.get(placed.size() - 1).plan().shop(), runs);
  }

  /** The runs of some jobs. */
  public LayoutPaper only(Collection<String> someJobs) {
    return new LayoutPaper(
        shop, runs.stream().filter(run -> someJobs.contains(run.job())).toList());
  }

  private static void layouts(MaterialPlan plan, List<RunLayout> runs) {
    Map<String, String> ticketOf = new HashMap<>();
    for (Pattern pattern : plan.patterns()) {
      for (Cut cut : pattern.cuts()) {
        ticketOf.put(cut.job() + "/" + cut.mark(), pattern.ticket());
      }
    }
    for (RunNeed need : plan.order().runs()) {
      SortedMap<Integer, List<RunLine>> stretches = new TreeMap<>();
      for (RunLine line : plan.runs()) {
        if (line.job().equals(need.job())
            && line.mark().equals(need.run().mark())
            && need.hasLine(line.line())) {
          stretches.computeIfAbsent(line.line(), number -> new ArrayList<>()).add(line);
        }
      }
      Map<List<Object>, List<Integer>> alike = new LinkedHashMap<>();
      stretches.forEach(
          (line, ofLine) ->
              alike.computeIfAbsent(likeness(ofLine), like -> new ArrayList<>()).add(line));
      List<Alike> groups =
          alike.values().stream()
              .map(
                  lines ->
                      alike(
                          need.run(),
                          lines,
                          Objects.requireNonNull(stretches.get(lines.get(0))),
                          (line, piece) ->
                              Objects.requireNonNull(
                                  ticketOf.get(need.job() + "/" + need.pieceMark(line, piece)))))
              .toList();
      runs.add(new RunLayout(plan.order().material(), need.job(), need.due(), need, groups));
    }
  }

  private static List<Object> likeness(List<RunLine> stretches) {
    List<Object> likeness = new ArrayList<>();
    stretches.forEach(stretch -> likeness.addAll(List.of(stretch.closingAt(), stretch.pieces())));
    return likeness;
  }

  /** The ticket of a piece, both counted from 1. */
  private interface TicketOfPiece {
    String ticket(int line, int piece);
  }

  private static Alike alike(
      Run run, List<Integer> lines, List<RunLine> stretches, TicketOfPiece tickets) {
    List<Laid> pieces = new ArrayList<>();
    for (RunLine stretch : stretches) {
      List<RunPiece> ofStretch = stretch.pieces();
      for (int i = 0; i < ofStretch.size(); i++) {
        RunPiece piece = ofStretch.get(i);
        boolean last = i == (stretch.closingAt() == Where.START ? 0 : ofStretch.size() - 1);
        Map<String, List<Integer>> from = new LinkedHashMap<>();
        for (int line : lines) {
          from.computeIfAbsent(tickets.ticket(line, piece.number()), ticket -> new ArrayList<>())
              .add(line);
        }
        pieces.add(
            new Laid(
                piece.number(),
                piece.start(),
                piece.length(),
                last,
                from.entrySet().stream()
                    .map(entry -> new FromTicket(entry.getKey(), entry.getValue()))
                    .toList()));
      }
    }
    return new Alike(lines, pieces, meetings(run, stretches));
  }

  /**
   * How the pieces of a line meet, in order. What a closing piece is left long is cut off on the
   * building, so that an expansion gap is told as it will be.
   *
   * @param stretches all that lies between two expansion gaps or ends of the line
   */
  public static List<Meeting> meetings(Run run, List<RunLine> stretches) {
    List<Meeting> meetings = new ArrayList<>();
    Length leftLong = run.rules().closing().leaveLong();
    Length end = null;
    for (RunLine stretch : stretches) {
      boolean closingAtStart = stretch.closingAt() == Where.START;
      for (int i = 0; i < stretch.pieces().size(); i++) {
        RunPiece piece = stretch.pieces().get(i);
        if (end != null && i == 0) {
          Length start = closingAtStart ? piece.start().plus(leftLong) : piece.start();
          long width = start.units() - end.units();
          meetings.add(
              new Meeting(
                  Kind.EXPANSION_GAP,
                  Length.ofUnits(end.units() + width / 2),
                  Length.ofUnits(width)));
        } else if (end != null) {
          meetings.add(meeting(run, end, piece.start()));
        }
        end = piece.end();
      }
      if (end != null && !closingAtStart) {
        end = end.minus(leftLong);
      }
    }
    return meetings;
  }

  private static Meeting meeting(Run run, Length end, Length start) {
    long width = start.units() - end.units();
    if (run.rules().joint() instanceof Joint.Lap lap) {
      long half = lap.lap().units() / 2;
      return new Meeting(Kind.LAP, start.plus(Length.ofUnits(half)), Length.ofUnits(-width));
    }
    Length at =
        run.rules().places().within(run.length()).stream()
            .filter(place -> !place.isShorterThan(end) && !place.isLongerThan(start))
            .findFirst()
            .orElse(Length.ofUnits(end.units() + width / 2));
    return new Meeting(Kind.BUTT, at, Length.ofUnits(width));
  }
}
