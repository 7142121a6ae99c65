package lapwright.files.jobs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fault;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import lapwright.shop.Piece;
import lapwright.shop.Run;
import org.jspecify.annotations.Nullable;

/** A job while its files are read: the head of one, pieces of one or two. */
final class JobDraft {
  private final String name;
  private final Place place;
  private @Nullable JobStatus status;
  private @Nullable LocalDate due;
  private @Nullable Place duePlace;
  private int times = 1;
  private final Map<String, Row> pieces = new LinkedHashMap<>();
  private final Map<String, Row> marks = new LinkedHashMap<>();
  private final Map<String, RunRow> runs = new LinkedHashMap<>();
  private final Map<String, ItemRow> items = new LinkedHashMap<>();
  private final List<Fault> notPlanned = new ArrayList<>();
  private final List<KitUse> kits = new ArrayList<>();
  private final List<KitUse.Change> changes = new ArrayList<>();

  JobDraft(String name, Place place) {
    this.name = name;
    this.place = place;
  }

  /** Pieces as listed, and where. */
  record Row(Place place, Piece piece) {}

  /**
   * A run as listed, and where.
   *
   * @param fields that it was read from
   */
  record RunRow(Place place, Run run, Fields fields) {}

  /** So many of an item, and where that is said. */
  record ItemRow(Place place, String item, int qty) {}

  String name() {
    return name;
  }

  Place place() {
    return place;
  }

  @Nullable JobStatus status() {
    return status;
  }

  int times() {
    return times;
  }

  List<Row> pieces() {
    return List.copyOf(pieces.values());
  }

  List<RunRow> runs() {
    return List.copyOf(runs.values());
  }

  /** What it asks for that this version does not plan. */
  List<Fault> notPlanned() {
    return List.copyOf(notPlanned);
  }

  /** The kits that it is made of, besides its own pieces. */
  List<KitUse> kits() {
    return List.copyOf(kits);
  }

  void add(KitUse kit) {
    kits.add(kit);
  }

  /** Quantities that differ from the lists. */
  List<KitUse.Change> changes() {
    return List.copyOf(changes);
  }

  void add(KitUse.Change change) {
    changes.add(change);
  }

  List<ItemRow> items() {
    return List.copyOf(items.values());
  }

  boolean hasItem(String item) {
    return items.containsKey(item);
  }

  /** Adds pieces of an item; the same item adds up. */
  void addItem(Place at, String item, int qty, Findings findings) {
    ItemRow before = items.get(item);
    int sum = qty + (before == null ? 0 : before.qty());
    if (sum > Values.MOST) {
      findings.fault(at, "items", item, "more than 1,000,000 of one item", "Is that right?");
      return;
    }
    items.put(item, new ItemRow(before == null ? at : before.place(), item, sum));
  }

  /** Gives an item another quantity; 0 drops it. False when the job has no such item. */
  boolean changeItem(String item, int qty) {
    ItemRow row = items.get(item);
    if (row != null && qty == 0) {
      items.remove(item);
    } else if (row != null) {
      items.put(item, new ItemRow(row.place(), item, qty));
    }
    return row != null;
  }

  /** Where a mark is listed first; null when it is not. */
  @Nullable Place placeOf(String mark) {
    Row piece = marks.get(mark);
    RunRow run = runs.get(mark);
    return piece != null ? piece.place() : run == null ? null : run.place();
  }

  /** The same in words. */
  String where(String mark) {
    Place listed = placeOf(mark);
    return listed == null ? "" : listed.print();
  }

  /** Pieces or lines of a mark, for one copy. */
  long qty(String mark) {
    RunRow run = runs.get(mark);
    return run != null
        ? run.run().qty()
        : pieces.values().stream()
            .filter(row -> row.piece().mark().equals(mark))
            .mapToLong(row -> row.piece().qty())
            .sum();
  }

  /** The marks of its pieces, then those of its runs. */
  List<String> marks() {
    List<String> all = new ArrayList<>(marks.keySet());
    all.addAll(runs.keySet());
    return all;
  }

  /** Gives a mark another quantity; 0 drops it. */
  void change(String mark, int qty) {
    RunRow run = runs.get(mark);
    if (run != null && qty == 0) {
      runs.remove(mark);
    } else if (run != null) {
      runs.put(mark, new RunRow(run.place(), run.run().withQty(qty), run.fields()));
    }
    for (Map.Entry<String, Row> entry : List.copyOf(pieces.entrySet())) {
      Piece piece = entry.getValue().piece();
      if (!piece.mark().equals(mark)) {
        continue;
      }
      if (qty == 0) {
        pieces.remove(entry.getKey());
      } else {
        pieces.put(entry.getKey(), new Row(entry.getValue().place(), piece.withQty(qty)));
      }
    }
  }

  void head(@Nullable JobStatus jobStatus, int jobTimes) {
    status = jobStatus;
    times = jobTimes;
  }

  void due(LocalDate day, Place at, Findings findings) {
    if (due != null && !due.equals(day)) {
      findings.fault(
          at,
          "due",
          day.toString(),
          "job " + name + " is due " + due + " elsewhere (" + duePlaceText() + ")",
          "Give one due day; the job's own file is the place for it.");
      return;
    }
    due = day;
    duePlace = at;
  }

  private String duePlaceText() {
    return duePlace == null ? "" : duePlace.print();
  }

  void notPlanned(Fault fault) {
    notPlanned.add(fault);
  }

  /** Adds a run; the same mark with the same run in one file adds up. */
  void add(Place at, Run run, Fields fields, Findings findings) {
    if (marks.containsKey(run.mark())) {
      twoKinds(at, run.mark(), findings);
      return;
    }
    RunRow known = runs.get(run.mark());
    if (known != null && !known.run().withQty(run.qty()).equals(run)) {
      findings.fault(
          at,
          "mark",
          run.mark(),
          "another run has that mark and is not the same (" + known.place().print() + ")",
          "Give one of them another mark.");
      return;
    }
    int qty = run.qty() + (known == null ? 0 : known.run().qty());
    if (qty > Values.MOST) {
      findings.fault(at, "qty", "", "more than 1,000,000 lines of one run", "Is that right?");
      return;
    }
    runs.put(
        run.mark(),
        known == null
            ? new RunRow(at, run, fields)
            : new RunRow(known.place(), run.withQty(qty), known.fields()));
  }

  private void twoKinds(Place at, String mark, Findings findings) {
    findings.fault(
        at,
        "mark",
        mark,
        "pieces and a run have that mark; the other is in " + where(mark),
        "A mark belongs to one kind in a job: give one of them another mark.");
  }

  /** Adds a piece; the same mark, material and length in one file add up. */
  void add(Place at, Piece piece, Findings findings) {
    String mark = piece.mark();
    if (runs.containsKey(mark)) {
      twoKinds(at, mark, findings);
      return;
    }
    Row known = mark.isEmpty() ? null : marks.get(mark);
    if (known != null) {
      Piece other = known.piece();
      if (!known.place().file().equals(at.file())) {
        findings.fault(
            at,
            "mark",
            mark,
            "the mark is in " + known.place().print() + " as well",
            "List each mark in one of the job's files only.");
        return;
      }
      if (!other.rules().equals(piece.rules()) || other.measured() != piece.measured()) {
        findings.fault(
            at,
            "mark",
            mark,
            "mark " + mark + " is cut in two ways; the other is in line " + known.place().line(),
            "Give the same ends and rules for both, or one of them another mark.");
        return;
      }
      if (!other.material().equals(piece.material()) || !other.length().equals(piece.length())) {
        boolean material = !other.material().equals(piece.material());
        findings.fault(
            at,
            "mark",
            mark,
            "mark "
                + mark
                + " has "
                + (material ? "two materials" : "two lengths")
                + "; "
                + (material ? other.material() : length(other.length()))
                + " in line "
                + known.place().line(),
            "Give one of them another mark.");
        return;
      }
    }
    String key =
        String.join(
            "\n",
            mark,
            piece.material(),
            Long.toString(piece.length().units()),
            piece.rules().toString(),
            piece.measured().word(),
            mark.isEmpty() ? piece.purpose() : "");
    Row before = pieces.get(key);
    int qty = piece.qty() + (before == null ? 0 : before.piece().qty());
    if (qty > Values.MOST) {
      findings.fault(at, "qty", "", "more than 1,000,000 of one piece", "Is the number right?");
      return;
    }
    String purpose =
        before == null || before.piece().purpose().isEmpty()
            ? piece.purpose()
            : before.piece().purpose();
    Row row =
        new Row(
            before == null ? at : before.place(),
            new Piece(
                piece.material(),
                mark,
                piece.length(),
                qty,
                purpose,
                piece.rules(),
                piece.measured()));
    pieces.put(key, row);
    if (!mark.isEmpty()) {
      marks.putIfAbsent(mark, row);
    }
  }

  private static String length(Length length) {
    return LengthStyle.FEET_INCHES.exact(length);
  }

  @Nullable LocalDate due() {
    return due;
  }

  Job job() {
    return new Job(
        name,
        status == null ? JobStatus.FIRM : status,
        due,
        times,
        pieces.values().stream().map(Row::piece).toList(),
        runs.values().stream().map(RunRow::run).toList(),
        items.values().stream().map(row -> new Job.Item(row.item(), row.qty())).toList());
  }
}
