package lapwright.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.check.CheckedPlan;
import lapwright.compare.Saving;
import lapwright.files.OrderCsv;
import lapwright.files.OrderInput;
import lapwright.files.StockAfter;
import lapwright.files.TicketsCsv;
import lapwright.files.WasteCsv;
import lapwright.files.saved.PlanFile;
import lapwright.files.source.Note;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.OrderFacts;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.WastePaper;
import org.jspecify.annotations.Nullable;

/**
 * The papers of one plan.
 *
 * @param input what it was made from
 * @param saving null when it was not asked what combining saves
 * @param day of the papers
 */
record Papers(OrderInput input, CheckedPlan plan, @Nullable Saving saving, LocalDate day) {

  /** What to buy, with what was found while the folder was read. */
  OrderPaper order() {
    return OrderPaper.of(
        plan,
        saving,
        new OrderFacts(day, input.leftOut(), input.takenAsFirm(), attention(input.notes())));
  }

  /** Slips and roundings; what was merely assumed is told by {@code check}. */
  private static List<Attention> attention(List<Note> notes) {
    return notes.stream()
        .filter(note -> note.kind() == Note.Kind.WARNING || note.kind() == Note.Kind.ROUNDED)
        .map(note -> new Attention(note.place().print(), note.text()))
        .toList();
  }

  /** Everything that a folder of papers holds, by file name. */
  Map<String, String> files(LengthStyle units) {
    Map<String, String> files = new TreeMap<>(cuttingFiles(units));
    files.put(OrderCsv.FILE, OrderCsv.text(order(), units));
    files.put(PlanFile.NAME, json());
    files.put(WasteCsv.FILE, WasteCsv.text(WastePaper.of(plan)));
    return files;
  }

  /** The plan itself, as it is saved. */
  String json() {
    return PlanFile.text(plan.plan(), input.digests(), saving);
  }

  /** The tickets, and what cutting leaves. */
  Map<String, String> cuttingFiles(LengthStyle units) {
    StockAfter after = new StockAfter(input, plan.plan());
    return Map.of(
        TicketsCsv.FILE, TicketsCsv.text(TicketPaper.of(plan), units),
        StockAfter.ON_HAND_FILE, after.onHand(units),
        StockAfter.RACK_FILE, after.rack(units));
  }
}
