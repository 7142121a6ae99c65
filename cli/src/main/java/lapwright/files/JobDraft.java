package lapwright.files;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fault;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import lapwright.shop.Piece;
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
  private final List<Fault> notPlanned = new ArrayList<>();
  private final List<KitUse> kits = new ArrayList<>();
  private final List<KitUse.Change> changes = new ArrayList<>();

  JobDraft(String name, Place place) {
    this.name = name;
    this.place = place;
  }

  /** Pieces as listed, and where. */
  record Row(Place place, Piece piece) {}

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

  /** The first row of a mark; null when there is none. */
  @Nullable Row row(String mark) {
    return marks.get(mark);
  }

  List<String> marks() {
    return List.copyOf(marks.keySet());
  }

  /** Gives a mark another quantity; 0 drops it. */
  void change(String mark, int qty) {
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

  /** Adds a piece; the same mark, material and length in one file add up. */
  void add(Place at, Piece piece, Findings findings) {
    String mark = piece.mark();
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
        pieces.values().stream().map(Row::piece).toList());
  }
}
