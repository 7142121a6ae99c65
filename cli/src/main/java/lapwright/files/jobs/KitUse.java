package lapwright.files.jobs;

import java.util.List;
import java.util.Objects;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.files.source.Place;
import lapwright.files.source.Values;

/**
 * A kit that a job is made of: {@code { kit: NAME, times: 2, prefix: N- }}.
 *
 * @param times how many of the kit one copy of the job takes
 * @param prefix put before every mark of the kit; empty when the marks stay as they are
 */
record KitUse(Place place, String kit, int times, String prefix) {
  private static final String DROPPED = "dropped";

  KitUse {
    Objects.requireNonNull(place);
    Objects.requireNonNull(kit);
    Objects.requireNonNull(prefix);
  }

  /**
   * A mark that a job takes in another quantity than its lists say, for one copy of the job.
   *
   * @param qty 0 when the mark is dropped
   */
  record Change(Place place, String mark, int qty) {}

  /** Reads the fields {@code kits} and {@code change} of a job. */
  static void readInto(Fields fields, JobDraft job, Findings findings) {
    Values values = new Values(findings);
    List<Node> uses = fields.has("kits") ? fields.list("kits") : null;
    int n = 0;
    for (Node node : uses == null ? List.<Node>of() : uses) {
      readUse(node, "kits > " + ++n, job, findings);
    }
    Node.Entry change = fields.entry("change");
    Fields changes = change == null ? null : Fields.named(change.value(), "change", findings);
    for (Node.Entry entry : changes == null ? List.<Node.Entry>of() : changes.entries()) {
      String way = "change > " + entry.key();
      if (!(entry.value() instanceof Node.Scalar scalar) || scalar.text().isEmpty()) {
        findings.fault(
            entry.place(),
            way,
            "",
            "not a quantity",
            "Write how many instead, such as " + entry.key() + ": 9, or the word dropped.");
        continue;
      }
      boolean dropped = scalar.text().strip().equals(DROPPED);
      Integer qty;
      if (dropped) {
        qty = 0;
      } else if (scalar.text().strip().equals("0")) {
        findings.fault(
            scalar.place(), way, "0", "none at all", "Write dropped, if none is wanted.");
        qty = null;
      } else {
        qty = values.quantity(scalar.place(), way, scalar.text(), 1);
      }
      if (qty != null) {
        job.add(new Change(entry.place(), entry.key(), qty));
      }
    }
  }

  private static void readUse(Node node, String way, JobDraft job, Findings findings) {
    if (node instanceof Node.Scalar scalar) {
      String kit = new Values(findings).name(scalar.place(), way, scalar.text());
      if (kit != null) {
        job.add(new KitUse(scalar.place(), kit, 1, ""));
      }
      return;
    }
    Fields use = Fields.of(node, way, JobFields.KIT_USE, findings);
    if (use == null) {
      return;
    }
    String kit = use.words("kit");
    Integer times = use.quantity("times", 1);
    String prefix = use.words("prefix");
    if (!use.has("kit")) {
      use.missing("kit", "Name the kit: the name of its file in kits, without .yaml.");
    }
    boolean sound =
        kit != null
            && (times != null || !use.has("times"))
            && (prefix != null || !use.has("prefix"));
    if (sound) {
      job.add(
          new KitUse(
              use.placeOf("kit"),
              Objects.requireNonNull(kit),
              times == null ? 1 : times,
              prefix == null ? "" : prefix));
    }
  }
}
