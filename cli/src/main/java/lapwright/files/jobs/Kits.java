package lapwright.files.jobs;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Nearest;
import lapwright.files.source.Node;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.shop.Piece;
import lapwright.shop.Run;

/**
 * kits/NAME.yaml: what is made again and again, listed once. A kit has the content of a job without
 * its head; jobs name it, how many times they take it, and change single quantities.
 */
final class Kits {
  private static final int MARKS_NAMED = 3;

  private final Findings findings;

  /** By name; a kit that could not be read is there and empty, so that nobody calls it unknown. */
  private final SortedMap<String, JobDraft> byName = new TreeMap<>();

  private Kits(Findings findings) {
    this.findings = findings;
  }

  /** Reads every kit of the folder; there need be no such folder. */
  static Kits read(Path directory, Length step, Inputs inputs) {
    Kits kits = new Kits(inputs.findings());
    if (Files.exists(directory)) {
      for (Path path : inputs.entries(directory)) {
        if (Inputs.isTree(path)) {
          kits.readKit(path, step, inputs);
        } else {
          kits.findings.note(
              Note.Kind.NOT_USED, Place.whole(inputs.name(path)), "", "not read: no YAML or JSON");
        }
      }
    }
    return kits;
  }

  private void readKit(Path path, Length step, Inputs inputs) {
    String name = Inputs.stem(path);
    JobDraft kit = new JobDraft(name, Place.whole(inputs.name(path)));
    JobDraft other = byName.putIfAbsent(name, kit);
    if (other != null) {
      findings.fault(
          kit.place(), "", name, "there is " + other.place().file() + " too", "Keep one of them.");
      return;
    }
    Node root = inputs.tree(path);
    Fields fields = root == null ? null : Fields.of(root, "", JobFields.KIT, findings);
    if (fields != null) {
      JobFile.readContent(fields, "kit " + name, step, kit, findings);
    }
  }

  /** Adds what the job's kits give, then changes the quantities that it wants changed. */
  void complete(JobDraft job) {
    boolean allKnown = true;
    for (KitUse use : job.kits()) {
      JobDraft kit = byName.get(use.kit());
      if (kit == null) {
        allKnown = false;
        unknown(use);
      } else {
        add(kit, use, job);
      }
    }
    for (KitUse.Change change : job.changes()) {
      if (job.placeOf(change.mark()) != null && job.hasItem(change.mark())) {
        findings.fault(
            change.place(),
            "change",
            change.mark(),
            "a mark and an item are called like that",
            "Give the mark another name.");
      } else if (job.placeOf(change.mark()) != null) {
        if (job.qty(change.mark()) == change.qty()) {
          findings.note(
              Note.Kind.WARNING,
              change.place(),
              "change",
              change.mark() + " is " + change.qty() + " without the change");
        }
        job.change(change.mark(), change.qty());
      } else if (!job.changeItem(change.mark(), change.qty()) && allKnown) {
        noSuchMark(change, job);
      }
    }
  }

  private void unknown(KitUse use) {
    String otherwise =
        byName.isEmpty()
            ? "Put it into the folder kits, beside the folder of the jobs, as "
                + use.kit()
                + ".yaml."
            : "Kits: " + String.join(", ", byName.keySet()) + ".";
    findings.fault(
        use.place(),
        "kit",
        use.kit(),
        "there is no such kit",
        Nearest.advice(use.kit(), byName.keySet(), otherwise));
  }

  private void noSuchMark(KitUse.Change change, JobDraft job) {
    List<String> marks = new ArrayList<>(job.marks());
    job.items().forEach(row -> marks.add(row.item()));
    findings.fault(
        change.place(),
        "change",
        change.mark(),
        "job " + job.name() + " has no piece and no run of that mark, and no such item",
        Nearest.advice(
            change.mark(),
            marks,
            marks.isEmpty()
                ? "Give it a mark where it is listed."
                : "Marks, with the prefix of their kit: " + String.join(", ", marks) + "."));
  }

  private void add(JobDraft kit, KitUse use, JobDraft job) {
    kit.notPlanned().forEach(job::notPlanned);
    List<String> taken =
        kit.marks().stream()
            .map(mark -> use.prefix() + mark)
            .filter(mark -> job.placeOf(mark) != null)
            .toList();
    String where = taken.isEmpty() ? "" : job.where(taken.get(0));
    for (JobDraft.Row row : kit.pieces()) {
      Piece piece = row.piece();
      String mark = piece.mark().isEmpty() ? "" : use.prefix() + piece.mark();
      if (!taken.contains(mark) && isPossible(use, piece.qty(), "pieces", row.place())) {
        job.add(row.place(), piece.withMark(mark).withQty(piece.qty() * use.times()), findings);
      }
    }
    for (JobDraft.RunRow row : kit.runs()) {
      Run run = row.run();
      String mark = use.prefix() + run.mark();
      if (!taken.contains(mark) && isPossible(use, run.qty(), "lines", row.place())) {
        job.add(
            row.place(),
            run.withMark(mark).withQty(run.qty() * use.times()),
            row.fields(),
            findings);
      }
    }
    for (JobDraft.ItemRow row : kit.items()) {
      if (isPossible(use, row.qty(), row.item(), row.place())) {
        job.addItem(row.place(), row.item(), row.qty() * use.times(), findings);
      }
    }
    if (!taken.isEmpty()) {
      findings.fault(
          use.place(),
          "kit",
          use.kit(),
          named(taken) + " in the job already (" + where + ")",
          use.prefix().isEmpty()
              ? "Tell them apart by a prefix, such as prefix: " + prefixFor(use.kit(), job) + "."
              : "Give this kit another prefix.");
    }
  }

  private boolean isPossible(KitUse use, int qty, String what, Place listed) {
    if ((long) qty * use.times() <= Values.MOST) {
      return true;
    }
    findings.fault(
        use.place(),
        "times",
        Integer.toString(use.times()),
        "that many times, more than 1,000,000 " + what + " of " + listed.print(),
        "Are times and the kit's qty right?");
    return false;
  }

  private static String named(List<String> marks) {
    int more = marks.size() - MARKS_NAMED;
    String names = String.join(", ", marks.subList(0, Math.min(marks.size(), MARKS_NAMED)));
    return (marks.size() == 1 ? "mark " : "marks ")
        + names
        + (more > 0 ? " and " + more + " more" : "")
        + (marks.size() == 1 ? " is" : " are");
  }

  /** The kit's first letter, or with a number after it, so that none of its marks is taken. */
  private String prefixFor(String kit, JobDraft job) {
    JobDraft content = byName.get(kit);
    String letter = kit.substring(0, 1).toUpperCase(java.util.Locale.ROOT);
    for (int n = 1; ; n++) {
      String prefix = letter + (n == 1 ? "" : n) + "-";
      if (content == null
          || content.marks().stream().noneMatch(mark -> job.placeOf(prefix + mark) != null)) {
        return prefix;
      }
    }
  }
}
