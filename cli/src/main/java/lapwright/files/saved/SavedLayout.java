package lapwright.files.saved;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.LayoutPaper;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.plan.RunLine.RunPiece;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;

/**
 * How lines are laid, in a saved plan: one entry a line, with its pieces in order and where they
 * meet. Joints and tickets follow from the rest and are written for readers only.
 */
final class SavedLayout {
  private SavedLayout() {}

  private record LineName(String job, String mark, int line) {}

  /** All stretches of one line. */
  private record Line(MaterialPlan plan, Map<String, String> ticketOf, List<RunLine> stretches) {}

  static void write(Json json, List<MaterialPlan> plans, LengthStyle style) {
    List<Line> lines = new ArrayList<>();
    for (MaterialPlan plan : plans) {
      Map<String, String> ticketOf = new HashMap<>();
      for (Pattern pattern : plan.patterns()) {
        for (Cut cut : pattern.cuts()) {
          ticketOf.put(cut.job() + "/" + cut.mark(), pattern.ticket());
        }
      }
      Map<LineName, Line> byName = new LinkedHashMap<>();
      for (RunLine stretch : plan.runs()) {
        byName
            .computeIfAbsent(
                new LineName(stretch.job(), stretch.mark(), stretch.line()),
                name -> new Line(plan, ticketOf, new ArrayList<>()))
            .stretches()
            .add(stretch);
      }
      lines.addAll(byName.values());
    }
    if (!lines.isEmpty()) {
      json.list("runs", lines, line -> line(json, line, style));
    }
  }

  private static void line(Json json, Line line, LengthStyle style) {
    RunLine first = line.stretches().get(0);
    json.words("mark", first.mark());
    json.words("job", first.job());
    json.number("copy", first.copy());
    json.number("line", first.line());
    json.words("material", line.plan().material());
    json.wordList(
        "closingAt", line.stretches().stream().map(stretch -> stretch.closingAt().word()).toList());
    List<RunPiece> pieces = new ArrayList<>();
    Map<Integer, Integer> stretchOf = new HashMap<>();
    for (int s = 0; s < line.stretches().size(); s++) {
      for (RunPiece piece : line.stretches().get(s).pieces()) {
        pieces.add(piece);
        stretchOf.put(piece.number(), s + 1);
      }
    }
    json.list(
        "pieces",
        pieces,
        piece -> {
          json.number("piece", piece.number());
          json.words("mark", first.pieceMark(piece));
          if (line.stretches().size() > 1) {
            json.number("stretch", stretchOf.getOrDefault(piece.number(), 1));
          }
          json.length("start", piece.start(), style);
          json.length("length", piece.length(), style);
          json.wordsIfAny(
              "ticket",
              line.ticketOf().getOrDefault(first.job() + "/" + first.pieceMark(piece), ""));
        });
    Run run = run(line.plan(), first);
    if (run != null) {
      json.list(
          "joints",
          LayoutPaper.meetings(run, line.stretches()),
          joint -> {
            json.words("kind", joint.kind().word());
            json.length("at", joint.at(), style);
            json.mm("widthMm", joint.width());
          });
    }
  }

  private static @org.jspecify.annotations.Nullable Run run(MaterialPlan plan, RunLine line) {
    for (RunNeed need : plan.order().runs()) {
      if (need.job().equals(line.job()) && need.run().mark().equals(line.mark())) {
        return need.run();
      }
    }
    return null;
  }

  /** The stretches of a line, added to those of its material. */
  static boolean read(PlanFields fields, Map<String, List<RunLine>> byMaterial) {
    List<Where> closing = fields.words("closingAt", Words.CLOSING);
    SortedMap<Integer, List<RunPiece>> stretches = new TreeMap<>();
    fields.list(
        "pieces",
        piece -> {
          int stretch = piece.has("stretch") ? piece.count("stretch") : 1;
          RunPiece read =
              PlanReader.guarded(
                  piece,
                  "piece",
                  () ->
                      new RunPiece(
                          piece.count("piece"), piece.mm("startMm"), piece.mm("lengthMm")));
          return stretches.computeIfAbsent(stretch, n -> new ArrayList<>()).add(read);
        });
    List<RunLine> lines =
        byMaterial.computeIfAbsent(fields.words("material"), id -> new ArrayList<>());
    stretches.forEach(
        (number, pieces) -> {
          if (number < 1 || number > closing.size()) {
            throw fields.damaged("closingAt", "", "not one word a stretch");
          }
          lines.add(
              PlanReader.guarded(
                  fields,
                  "line",
                  () ->
                      new RunLine(
                          fields.words("job"),
                          fields.count("copy"),
                          fields.words("mark"),
                          fields.count("line"),
                          closing.get(number - 1),
                          pieces)));
        });
    return true;
  }
}
