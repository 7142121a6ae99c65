package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.LayoutPaper;
import lapwright.paperwork.LayoutPaper.Alike;
import lapwright.paperwork.LayoutPaper.FromTicket;
import lapwright.paperwork.LayoutPaper.Laid;
import lapwright.paperwork.LayoutPaper.Meeting;
import lapwright.paperwork.LayoutPaper.RunLayout;
import lapwright.print.ScaleBar.Part;
import lapwright.print.Table.Kind;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;

/** How the lines of runs are laid, for whoever puts them up. */
final class LayoutText {
  private final Page page;
  private final String source;

  /**
   * @param source what tells where a piece comes from, such as {@code Ticket}
   */
  LayoutText(Page page, String source) {
    this.page = page;
    this.source = source;
  }

  /** Nothing where there are no runs. */
  void write(LayoutPaper paper) {
    if (paper.runs().isEmpty()) {
      return;
    }
    page.blank();
    page.faint(page.heavyRule(page.width()));
    page.strongText("How the runs are laid");
    RunLayout first = paper.runs().get(0);
    page.text(
        "Measured along the line from the start of the length that is covered, which is 0. A piece"
            + " bears the run's mark, its line and its place in it: "
            + first.pieceMark(
                first.groups().get(0).lines().get(0), first.groups().get(0).pieces().get(0))
            + " comes first in line "
            + first.groups().get(0).lines().get(0)
            + " of "
            + first.run().mark()
            + ". Where lines are alike, tickets stand line by line. "
            + Cautions.RUNS,
        0,
        0);
    paper.runs().forEach(this::run);
  }

  private void run(RunLayout layout) {
    Run run = layout.run();
    page.heading(
        "Run "
            + run.mark()
            + " of "
            + layout.job()
            + ": "
            + Phrases.count(layout.lines(), "line", "lines")
            + " of "
            + page.length(run.length()));
    page.text(
        layout.material().name()
            + (run.purpose().isEmpty() ? "" : ", " + run.purpose())
            + (layout.due() == null ? "" : ", due " + Phrases.day(layout.due())),
        1,
        1);
    lines(layout);
  }

  /** What holds for all lines of a run, then each kind of line. */
  void lines(RunLayout layout) {
    rules(layout);
    layout.groups().forEach(group -> group(layout, group));
  }

  /** What the erector must know of the run before he begins. */
  private void rules(RunLayout layout) {
    Run run = layout.run();
    JointRules rules = run.rules();
    List<String> parts = new ArrayList<>();
    if (rules.joint() instanceof JointRules.Joint.Lap lap) {
      parts.add("pieces lap " + exact(lap.lap()));
    } else {
      Length gap = ((JointRules.Joint.Butt) rules.joint()).gap();
      parts.add(
          gap.isZero() ? "pieces butt" : "pieces butt, with at most " + exact(gap) + " left open");
    }
    if (rules.places() instanceof JointPlaces.Bearings) {
      parts.add("each joint stands on a bearing");
    } else if (rules.places() instanceof JointPlaces.At) {
      parts.add("each joint stands where the drawing permits one");
    }
    added(parts, run.addAtStart(), "start");
    added(parts, run.addAtEnd(), "end");
    if (!rules.stagger().isZero()) {
      parts.add("joints of neighbouring lines are " + exact(rules.stagger()) + " apart or more");
    }
    copies(parts, layout.need());
    String sentence = String.join("; ", parts);
    page.text(Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + ".", 1, 1);
  }

  /** Which lines are for which copy, where that is not plain. */
  private static void copies(List<String> parts, RunNeed need) {
    int first = need.firstLine();
    int copy = need.firstCopy();
    int qty = need.run().qty();
    if (need.copies() == 1) {
      if (copy > 1) {
        parts.add((qty == 1 ? "it is" : "they are") + " for copy " + copy);
      }
      return;
    }
    String andSoOn = need.copies() > 2 ? " and so on" : "";
    parts.add(
        qty == 1
            ? "line "
                + first
                + " is for copy "
                + copy
                + ", line "
                + (first + 1)
                + " for copy "
                + (copy + 1)
                + andSoOn
            : "copy "
                + copy
                + " has lines "
                + first
                + " to "
                + (first + qty - 1)
                + ", copy "
                + (copy + 1)
                + " lines "
                + (first + qty)
                + " to "
                + (first + 2 * qty - 1)
                + andSoOn);
  }

  private void added(List<String> parts, Length length, String end) {
    if (!length.isZero()) {
      parts.add(exact(length) + " is added at the " + end);
    }
  }

  private void group(RunLayout layout, Alike group) {
    page.blank();
    int pieces = group.pieces().size();
    page.strongText(
        lines(layout, group)
            + Phrases.count(pieces, "piece", "pieces")
            + (group.lines().size() == 1 ? "." : " each."),
        1);
    draw(group);
    page.blank();
    table(layout, group);
    page.blank();
    closing(layout, group);
  }

  private static String lines(RunLayout layout, Alike group) {
    int count = group.lines().size();
    if (count == 1) {
      return layout.lines() == 1 ? "" : "Line " + group.lines().get(0) + ": ";
    }
    String all = count == layout.lines() ? count == 2 ? "Both lines" : "All lines" : "Lines";
    String which = count == layout.lines() ? "" : " " + ranges(group.lines());
    return all + which + " alike: ";
  }

  /** {@code 1 to 4, 6 and 8 to 9}. */
  private static String ranges(List<Integer> numbers) {
    List<String> ranges = new ArrayList<>();
    for (int i = 0; i < numbers.size(); ) {
      int end = i;
      while (end + 1 < numbers.size() && numbers.get(end + 1) == numbers.get(end) + 1) {
        end++;
      }
      if (end == i) {
        ranges.add(String.valueOf(numbers.get(i)));
      } else if (end == i + 1) {
        ranges.add(String.valueOf(numbers.get(i)));
        ranges.add(String.valueOf(numbers.get(end)));
      } else {
        ranges.add(numbers.get(i) + " to " + numbers.get(end));
      }
      i = end + 1;
    }
    return Phrases.list(ranges);
  }

  /** The line to scale: laps and expansion gaps hatched, the place of each joint below. */
  private void draw(Alike group) {
    List<Part> parts = new ArrayList<>();
    List<Laid> pieces = group.pieces();
    Length from = group.start();
    for (int i = 0; i < pieces.size(); i++) {
      Laid piece = pieces.get(i);
      boolean last = i == pieces.size() - 1;
      Length to = last ? piece.end() : earlier(piece.end(), pieces.get(i + 1).start());
      boolean hatchedNext = !last && isHatched(group.joints().get(i));
      String at = last ? page.length(group.end()) : page.length(group.joints().get(i).at());
      parts.add(
          new Part(
              false,
              List.of(
                  piece.number() + "  " + page.length(piece.length()),
                  String.valueOf(piece.number())),
              Math.max(0, to.minus(from).units()),
              hatchedNext ? "" : at));
      from = last ? to : later(piece.end(), pieces.get(i + 1).start());
      if (hatchedNext) {
        parts.add(new Part(true, List.of(), Math.max(0, from.minus(to).units()), at));
      }
    }
    ScaleBar.draw(page, parts, 0, page.length(group.start()), 1);
  }

  private static boolean isHatched(Meeting joint) {
    return joint.kind() != LayoutPaper.Kind.BUTT && !joint.width().isZero();
  }

  private static Length earlier(Length a, Length b) {
    return a.isShorterThan(b) ? a : b;
  }

  private static Length later(Length a, Length b) {
    return a.isLongerThan(b) ? a : b;
  }

  private void table(RunLayout layout, Alike group) {
    Table table =
        new Table(page)
            .column("Piece", Kind.NAME)
            .column("Length", Kind.NUMBER)
            .column("From", Kind.NUMBER)
            .column("To", Kind.NUMBER)
            .columnIf(!group.joints().isEmpty(), "Next joint", Kind.LIST)
            .column(group.lines().size() == 1 ? source : source + "s", Kind.LIST);
    for (int i = 0; i < group.pieces().size(); i++) {
      Laid piece = group.pieces().get(i);
      List<String> cells = new ArrayList<>();
      cells.add(
          group.lines().size() == 1
              ? layout.pieceMark(group.lines().get(0), piece)
              : String.valueOf(piece.number()));
      cells.add(page.length(piece.length()));
      cells.add(page.length(piece.start()));
      cells.add(page.length(piece.end()));
      if (!group.joints().isEmpty()) {
        cells.add(i < group.joints().size() ? joint(group.joints().get(i)) : "");
      }
      cells.add(tickets(piece, group.lines()));
      table.row(cells);
    }
    table.print(1);
  }

  private String joint(Meeting joint) {
    String at = page.length(joint.at());
    String width = page.length(joint.width());
    return switch (joint.kind()) {
      case LAP -> joint.width().isZero() ? "butt at " + at : "lap " + width + ", middle " + at;
      case BUTT -> "butt at " + at + (joint.width().isZero() ? "" : ", " + width + " open");
      case EXPANSION_GAP -> "expansion gap " + width + ", middle " + at;
    };
  }

  /** One ticket where it gives the piece of every line, else ticket by ticket, line after line. */
  private static String tickets(Laid piece, List<Integer> lines) {
    if (piece.from().size() == 1) {
      return piece.from().get(0).ticket();
    }
    List<String> ofLines =
        lines.stream()
            .map(
                line ->
                    piece.from().stream()
                        .filter(from -> from.lines().contains(line))
                        .map(FromTicket::ticket)
                        .findFirst()
                        .orElseThrow())
            .toList();
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < ofLines.size(); ) {
      int end = i + 1;
      while (end < ofLines.size() && Phrases.follow(ofLines.get(end - 1), ofLines.get(end))) {
        end++;
      }
      boolean range = end - i >= 3;
      parts.add(range ? ofLines.get(i) + " to " + ofLines.get(end - 1) : ofLines.get(i));
      i = range ? end : i + 1;
    }
    return String.join(", ", parts);
  }

  /** Which piece is laid last, where that says something. */
  private void closing(RunLayout layout, Alike group) {
    List<Laid> closing = group.pieces().stream().filter(Laid::closing).toList();
    Length left = layout.run().rules().closing().leaveLong();
    boolean chosen =
        layout.run().rules().places().isAnywhere() || layout.run().rules().closing().othersWhole();
    if (group.pieces().size() > closing.size() && (chosen || !left.isZero())) {
      page.text(
          "Lay "
              + (closing.size() == 1 ? "piece " : "pieces ")
              + Phrases.list(
                  closing.stream().map(piece -> MoneyStyle.grouped(piece.number())).toList())
              + " last"
              + (closing.size() == 1 ? "." : ", each in its stretch."),
          1,
          1);
    }
    if (!left.isZero()) {
      page.text(
          (closing.size() == 1 ? "The closing piece" : "The closing piece of each stretch")
              + " is left "
              + exact(left)
              + " too long: cut it on the building to what is open.",
          1,
          1);
    }
  }

  private String exact(Length length) {
    return page.style().units().exact(length);
  }
}
