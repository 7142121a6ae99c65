package lapwright.files.papers;

import java.util.List;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.LayoutPaper;
import lapwright.paperwork.LayoutPaper.Alike;
import lapwright.paperwork.LayoutPaper.FromTicket;
import lapwright.paperwork.LayoutPaper.Laid;
import lapwright.paperwork.LayoutPaper.Meeting;
import lapwright.paperwork.LayoutPaper.RunLayout;

/**
 * {@code layouts.csv}: how runs are laid, a piece of a line a row, in the order in which they lie.
 */
public final class LayoutsCsv {
  public static final String FILE = "layouts.csv";

  private static final List<String> HEAD =
      List.of(
          "job",
          "copy",
          "run",
          "material",
          "name",
          "line",
          "piece",
          "mark",
          "length",
          "length_mm",
          "from",
          "from_mm",
          "to",
          "to_mm",
          "closing",
          "left_long_mm",
          "joint",
          "joint_at",
          "joint_at_mm",
          "joint_width",
          "joint_width_mm",
          "ticket");

  private LayoutsCsv() {}

  /**
   * {@code from} and {@code to} are measured from the start of the covered length; the joint is the
   * one to the next piece, {@code joint_width} its lap or the gap that is left open.
   */
  public static String text(LayoutPaper paper, LengthStyle units) {
    CsvSheet sheet = new CsvSheet(HEAD);
    for (RunLayout layout : paper.runs()) {
      for (int line = layout.need().firstLine(); line <= layout.need().lastLine(); line++) {
        for (Alike group : layout.groups()) {
          if (group.lines().contains(line)) {
            line(sheet, layout, group, line, units);
          }
        }
      }
    }
    return sheet.text();
  }

  private static void line(
      CsvSheet sheet, RunLayout layout, Alike group, int line, LengthStyle units) {
    for (int i = 0; i < group.pieces().size(); i++) {
      Laid piece = group.pieces().get(i);
      CsvSheet.Row row =
          new CsvSheet.Row()
              .text(layout.job())
              .number(layout.need().copyOf(line))
              .text(layout.run().mark())
              .text(layout.material().id())
              .text(layout.material().name())
              .number(line)
              .number(piece.number())
              .text(layout.pieceMark(line, piece))
              .length(units, piece.length())
              .length(units, piece.start())
              .length(units, piece.end())
              .text(piece.closing() ? "yes" : "");
      if (piece.closing()) {
        row.mm(layout.run().rules().closing().leaveLong());
      } else {
        row.empty(1);
      }
      if (i < group.joints().size()) {
        Meeting joint = group.joints().get(i);
        row.text(joint.kind().word()).length(units, joint.at()).length(units, joint.width());
      } else {
        row.empty(5);
      }
      sheet.row(
          row.text(
              piece.from().stream()
                  .filter(from -> from.lines().contains(line))
                  .map(FromTicket::ticket)
                  .findFirst()
                  .orElseThrow()));
    }
  }
}
