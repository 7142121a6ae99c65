package lapwright.files.jobs;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import lapwright.files.source.Fault;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Table;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import lapwright.shop.Piece;
import org.jspecify.annotations.Nullable;

/**
 * The jobs folder: YAML and JSON files with a head each, and tables out of a spreadsheet. A table
 * without a job column belongs to the job of its own name; a file and a table of one name are one
 * job.
 */
final class Jobs {
  private static final List<String> WORKBOOKS = List.of(".xlsx", ".xls", ".xlsm", ".ods");

  private final Length step;
  private final Inputs inputs;
  private final Findings findings;
  private final Values values;
  private final Map<String, JobDraft> byName = new LinkedHashMap<>();
  private final Map<String, String> nameByStem = new TreeMap<>();

  private Jobs(Length step, Inputs inputs) {
    this.step = step;
    this.inputs = inputs;
    this.findings = inputs.findings();
    this.values = new Values(findings);
  }

  /**
   * All jobs of the folder, in the order of its file names, each with what its kits give.
   *
   * @param step lengths of the pieces of runs are multiples of it where a run gives no step
   */
  static List<JobDraft> read(Path directory, Path kitFolder, Length step, Inputs inputs) {
    Jobs jobs = new Jobs(step, inputs);
    List<Path> entries = inputs.entries(directory);
    entries.stream().filter(Inputs::isTree).forEach(jobs::readHead);
    entries.stream().filter(Inputs::isTable).forEach(jobs::readTable);
    Set<String> stems =
        entries.stream()
            .filter(path -> Inputs.isTree(path) || Inputs.isTable(path))
            .map(Inputs::stem)
            .collect(java.util.stream.Collectors.toSet());
    entries.stream()
        .filter(path -> !Inputs.isTree(path) && !Inputs.isTable(path))
        .forEach(path -> jobs.noteOther(path, stems));
    Kits kits = Kits.read(kitFolder, step, inputs);
    jobs.byName.values().forEach(kits::complete);
    return List.copyOf(jobs.byName.values());
  }

  private void noteOther(Path path, Set<String> stems) {
    String file = Inputs.fileName(path).toLowerCase(java.util.Locale.ROOT);
    if (WORKBOOKS.stream().noneMatch(file::endsWith)) {
      findings.note(
          Note.Kind.NOT_USED, Place.whole(inputs.name(path)), "", "not read: no YAML, JSON or CSV");
    } else if (!stems.contains(Inputs.stem(path))) {
      findings.fault(
          Place.whole(inputs.name(path)),
          "",
          "",
          "a workbook, and no CSV of that name",
          "Save the list from the spreadsheet as CSV UTF-8 into the same folder.");
    }
  }

  private void readHead(Path path) {
    JobDraft job = JobFile.read(path, step, inputs);
    if (job == null) {
      return;
    }
    JobDraft other = byName.putIfAbsent(job.name(), job);
    if (other != null) {
      findings.fault(
          job.place(),
          "job",
          job.name(),
          "another file has a job of that name (" + other.place().print() + ")",
          "Give one of the two another name.");
      return;
    }
    nameByStem.put(Inputs.stem(path), job.name());
  }

  private void readTable(Path path) {
    Table table = inputs.table(path, JobFields.JOB_TABLE, List.of("material", "length", "qty"));
    if (table == null) {
      return;
    }
    String stem = Inputs.stem(path);
    boolean named = table.columns().contains("job");
    for (Table.Row row : table.rows()) {
      String name =
          named
              ? values.name(row.place(), "job", row.cell("job"))
              : nameByStem.getOrDefault(stem, stem);
      if (name != null) {
        readRow(row, name, inputs.name(path));
      }
    }
    if (table.rows().isEmpty()) {
      findings.note(Note.Kind.WARNING, Place.whole(inputs.name(path)), "", "a header and no rows");
    }
  }

  private void readRow(Table.Row row, String name, String file) {
    Place place = row.place();
    JobDraft job = byName.get(name);
    if (job == null) {
      job = new JobDraft(name, Place.whole(file));
      byName.put(name, job);
      findings.note(
          Note.Kind.ASSUMED,
          Place.whole(file),
          "status",
          "a table gives none; " + name + " counts as firm");
    }
    if (!row.cell("due").isEmpty()) {
      LocalDate due = values.day(place, "due", row.cell("due"));
      if (due != null) {
        job.due(due, place, findings);
      }
    }
    if (!row.cell("girth").isEmpty()) {
      job.notPlanned(
          new Fault(
              place,
              "girth",
              row.cell("girth"),
              JobFile.NOT_YET + "blanks of flat sheet yet (job " + name + ")",
              "Leave the job out of this order."));
      return;
    }
    if (isItem(row)) {
      String item = values.name(place, "material", row.cell("material"));
      Integer qty = values.quantity(place, "qty", row.cell("qty"), 1);
      if (item != null && qty != null) {
        job.addItem(place, item, qty, findings);
      }
      return;
    }
    Piece piece = piece(row);
    if (piece != null) {
      job.add(place, piece, findings);
    }
  }

  /** Counted goods have a name and a quantity, and nothing of a piece. */
  private static boolean isItem(Table.Row row) {
    return !row.cell("material").isEmpty()
        && row.cell("length").isEmpty()
        && row.cell("mark").isEmpty()
        && JobFields.CUTTING.stream().allMatch(column -> row.cell(column).isEmpty());
  }

  private @Nullable Piece piece(Table.Row row) {
    Place place = row.place();
    String material = values.name(place, "material", row.cell("material"));
    Length length = values.positive(place, "length", row.cell("length"), SafeSide.LONGER);
    Integer qty = values.quantity(place, "qty", row.cell("qty"), 1);
    String mark = values.words(place, "mark", row.cell("mark"));
    String purpose = values.words(place, "for", row.cell("for"));
    PieceRules.Rules rules = PieceRules.of(row, findings);
    if (material == null
        || length == null
        || qty == null
        || mark == null
        || purpose == null
        || rules == null) {
      return null;
    }
    return new Piece(
        material,
        mark.equals("-") ? "" : mark,
        length,
        qty,
        purpose,
        rules.cutting(),
        rules.measured());
  }
}
