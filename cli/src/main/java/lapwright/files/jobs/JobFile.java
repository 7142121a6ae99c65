package lapwright.files.jobs;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fault;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Node;
import lapwright.files.source.Note;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import lapwright.shop.JobStatus;
import lapwright.shop.Piece;
import org.jspecify.annotations.Nullable;

/** jobs/NAME.yaml: a job's head, its pieces and its runs. */
final class JobFile {
  static final String NOT_YET = "this version does not plan ";
  private static final Map<String, JobStatus> STATUSES = statuses();

  private JobFile() {}

  private static Map<String, JobStatus> statuses() {
    Map<String, JobStatus> words = new LinkedHashMap<>();
    for (JobStatus status : JobStatus.values()) {
      words.put(status.word(), status);
    }
    return words;
  }

  /**
   * Reads the file; null when it gives no job.
   *
   * @param step lengths of the pieces of runs are multiples of it where a run gives no step
   */
  static @Nullable JobDraft read(Path path, Length step, Inputs inputs) {
    Findings findings = inputs.findings();
    Node root = inputs.tree(path);
    Fields fields = root == null ? null : Fields.of(root, "", JobFields.JOB, findings);
    if (fields == null) {
      return null;
    }
    String name = fields.has("job") ? fields.words("job") : Inputs.stem(path);
    if (name == null) {
      return null;
    }
    JobDraft job = new JobDraft(name, fields.place());
    JobStatus status = fields.word("status", STATUSES);
    Integer times = fields.quantity("times", 1);
    job.head(status, times == null ? 1 : times);
    if (!fields.has("status")) {
      findings.note(
          Note.Kind.ASSUMED, fields.place(), "status", "left out; " + name + " counts as firm");
    }
    LocalDate due = fields.day("due");
    if (due != null) {
      job.due(due, fields.placeOf("due"), findings);
    }
    readContent(fields, "job " + name, step, job, findings);
    KitUse.readInto(fields, job, findings);
    return job;
  }

  /** What a job and a kit have alike: what is to be made. */
  static void readContent(
      Fields fields, String whose, Length step, JobDraft job, Findings findings) {
    for (String field : JobFields.JOB_NOT_PLANNED) {
      Node.Entry entry = fields.entry(field);
      if (entry != null && !isEmpty(entry.value())) {
        job.notPlanned(
            new Fault(
                entry.place(),
                field,
                "",
                NOT_YET + field + " yet (" + whose + ")",
                "Write them as pieces, or leave the job out of this order."));
      }
    }
    readPieces(fields, job, findings);
    RunReader.readInto(fields, step, job, findings);
    readItems(fields, job, findings);
  }

  /** Counted goods: a name and how many. */
  private static void readItems(Fields fields, JobDraft job, Findings findings) {
    Node.Entry items = fields.entry("items");
    Fields named =
        items == null || isEmpty(items.value())
            ? null
            : Fields.named(items.value(), "items", findings);
    if (named == null) {
      return;
    }
    Values values = new Values(findings);
    for (Node.Entry item : named.entries()) {
      String way = named.way(item.key());
      String name = values.name(item.place(), way, item.key());
      if (!(item.value() instanceof Node.Scalar scalar) || scalar.text().isEmpty()) {
        findings.fault(
            item.place(), way, "", "not a quantity", "Write how many, such as " + name + ": 450.");
        continue;
      }
      Integer qty = values.quantity(scalar.place(), way, scalar.text(), 1);
      if (name != null && qty != null) {
        job.addItem(item.place(), name, qty, findings);
      }
    }
  }

  private static boolean isEmpty(Node node) {
    if (node instanceof Node.Scalar scalar) {
      return scalar.text().isEmpty();
    }
    return node instanceof Node.Listing list
        ? list.items().isEmpty()
        : node instanceof Node.Mapping mapping && mapping.entries().isEmpty();
  }

  private static void readPieces(Fields fields, JobDraft job, Findings findings) {
    Node.Entry pieces = fields.entry("pieces");
    if (pieces == null) {
      return;
    }
    Fields materials = Fields.named(pieces.value(), "pieces", findings);
    if (materials == null) {
      return;
    }
    for (Node.Entry material : materials.entries()) {
      List<Node> items = materials.list(material.key());
      int n = 0;
      for (Node item : items == null ? List.<Node>of() : items) {
        String way = materials.way(material.key()) + " > " + ++n;
        Piece piece =
            item instanceof Node.Scalar scalar
                ? Shorthand.read(scalar.place(), way, scalar.text(), material.key(), findings)
                : piece(item, way, material.key(), findings);
        if (piece != null) {
          job.add(item.place(), piece, findings);
        }
      }
    }
  }

  private static @Nullable Piece piece(Node item, String way, String material, Findings findings) {
    if (item instanceof Node.Mapping mapping
        && mapping.entries().size() == 1
        && mapping.entries().get(0).key().contains("@")) {
      findings.fault(
          item.place(),
          way,
          mapping.entries().get(0).key(),
          "a colon inside words",
          "Put the whole line in quotes, or leave the colon out.");
      return null;
    }
    Fields fields = Fields.of(item, way, JobFields.PIECE, findings);
    if (fields == null) {
      return null;
    }
    Integer qty = fields.quantity("qty", 1);
    Length length = fields.positive("length", SafeSide.LONGER);
    String mark = fields.words("mark");
    String purpose = fields.words("for");
    PieceRules.Rules rules = PieceRules.of(fields, findings);
    if (!fields.has("qty")) {
      fields.missing("qty", "Say how many, such as qty: 4.");
    }
    if (!fields.has("length")) {
      fields.missing("length", "Give the finished length, such as length: 9'-6\".");
    }
    if (qty == null || length == null || rules == null) {
      return null;
    }
    return new Piece(
        material,
        mark == null ? "" : mark,
        length,
        qty,
        purpose == null ? "" : purpose,
        rules.cutting(),
        rules.measured());
  }
}
