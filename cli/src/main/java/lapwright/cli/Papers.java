package lapwright.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lapwright.check.CheckedPlan;
import lapwright.check.PlacedCheck;
import lapwright.check.PlacedVerdict;
import lapwright.check.PlanFault;
import lapwright.compare.Comparisons;
import lapwright.compare.Saving;
import lapwright.files.OrderInput;
import lapwright.files.papers.LayoutsCsv;
import lapwright.files.papers.OrderCsv;
import lapwright.files.papers.StockAfter;
import lapwright.files.papers.TicketsCsv;
import lapwright.files.papers.WasteCsv;
import lapwright.files.saved.PlanFile;
import lapwright.files.shop.OtherStock;
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
 * @param before plans of the orders that were placed before this one, the first first
 * @param savedBefore what combining saved in the first of them; null when that is not known
 * @param comparisons what the plan was held against
 * @param besides what orders beside this one call for
 * @param day of the papers
 */
record Papers(
    OrderInput input,
    List<CheckedPlan> before,
    @Nullable Saving savedBefore,
    CheckedPlan plan,
    Comparisons comparisons,
    List<Attention> besides,
    LocalDate day) {

  /** What to buy, with what was found while the folder was read. */
  OrderPaper order() {
    List<Attention> notes = new ArrayList<>(besides);
    notes.addAll(attention(input.notes()));
    return OrderPaper.of(
        plan, comparisons, new OrderFacts(day, input.leftOut(), input.takenAsFirm(), notes));
  }

  /** Slips and roundings; what was merely assumed is told by {@code check}. */
  private static List<Attention> attention(List<Note> notes) {
    List<Attention> attention = new ArrayList<>();
    notes.stream()
        .filter(note -> note.kind() == Note.Kind.WARNING || note.kind() == Note.Kind.ROUNDED)
        .forEach(note -> attention.add(new Attention(note.place().print(), note.text())));
    List<String> leftAlone =
        notes.stream()
            .filter(note -> note.field().equals(OtherStock.NOT_FOR_PLANNING))
            .map(Note::text)
            .toList();
    if (!leftAlone.isEmpty()) {
      attention.add(
          new Attention(
              "not for planning, as rack.csv says: " + String.join(", ", leftAlone),
              "empty its not-for-planning there, and it is used"));
    }
    return attention;
  }

  /** Everything that a folder of papers holds, by file name. */
  Map<String, String> files(LengthStyle units) {
    Map<String, String> files = new TreeMap<>(cuttingFiles(units));
    files.put(OrderCsv.FILE, OrderCsv.text(order(), units));
    files.put(PlanFile.NAME, json());
    files.put(WasteCsv.FILE, WasteCsv.text(WastePaper.of(plan)));
    return files;
  }

  /** The plans of all orders, the first first. */
  private List<CheckedPlan> all() {
    List<CheckedPlan> all = new ArrayList<>(before);
    all.add(plan);
    return all;
  }

  /**
   * Checks that this order takes only what the ones before it left.
   *
   * @throws IllegalStateException if it does not: a defect of this program
   */
  void checkTogether() {
    if (PlacedCheck.check(all().stream().map(CheckedPlan::plan).toList())
        instanceof PlacedVerdict.Broken broken) {
      throw new IllegalStateException(
          broken.faults().stream().map(PlanFault::message).collect(Collectors.joining("; ")));
    }
  }

  /** The plan itself, as it is saved. */
  String json() {
    return PlanFile.text(
        all().stream().map(CheckedPlan::plan).toList(),
        input.digests(),
        before.isEmpty() ? comparisons.saving() : savedBefore,
        comparisons.joints(),
        order().deliveries());
  }

  /** The tickets, how runs are laid, and what cutting leaves. */
  Map<String, String> cuttingFiles(LengthStyle units) {
    StockAfter after =
        new StockAfter(
            input.order(), input.otherStock(), all().stream().map(CheckedPlan::plan).toList());
    TicketPaper tickets = TicketPaper.of(all());
    Map<String, String> files = new TreeMap<>();
    files.put(TicketsCsv.FILE, TicketsCsv.text(tickets, units));
    files.put(StockAfter.ON_HAND_FILE, after.onHand(units));
    files.put(StockAfter.RACK_FILE, after.rack(units));
    if (!tickets.layouts().runs().isEmpty()) {
      files.put(LayoutsCsv.FILE, LayoutsCsv.text(tickets.layouts(), units));
    }
    return files;
  }
}
