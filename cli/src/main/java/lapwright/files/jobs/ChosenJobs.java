package lapwright.files.jobs;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.files.shop.MaterialFile;
import lapwright.files.shop.ShopFile;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Nearest;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.paperwork.OrderFacts.Reason;
import lapwright.shop.CutRules;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Piece;
import lapwright.shop.Run;
import lapwright.shop.Saw;
import org.jspecify.annotations.Nullable;

/**
 * The jobs that a command is about, and why the others are left out. Holds every job against the
 * shop's materials; what this version does not plan is a fault only of a job that is wanted.
 */
public final class ChosenJobs {
  private final List<JobDraft> asRead;
  private final List<JobDraft> jobs;
  private final @Nullable Map<String, MaterialFile.Entry> materials;
  private final ShopFile shop;
  private final Set<String> items;
  private final Findings findings;
  private final SortedSet<String> wanted = new TreeSet<>();
  private final List<LeftOut> leftOut = new ArrayList<>();
  private final List<String> takenAsFirm = new ArrayList<>();

  private ChosenJobs(
      List<JobDraft> jobs,
      @Nullable Map<String, MaterialFile.Entry> materials,
      Set<String> items,
      ShopFile shop,
      Findings findings) {
    this.asRead = jobs;
    this.jobs = jobs.stream().sorted(Comparator.comparing(JobDraft::name)).toList();
    this.materials = materials;
    this.items = items;
    this.shop = shop;
    this.findings = findings;
  }

  /**
   * Reads the jobs, none of them chosen yet.
   *
   * @param materials null when they could not be read; then no material is called unknown
   * @param items that somebody sells, or that lie in the shop
   */
  public static ChosenJobs read(
      Path directory,
      Path kits,
      @Nullable Map<String, MaterialFile.Entry> materials,
      Set<String> items,
      ShopFile shop,
      Inputs inputs) {
    return new ChosenJobs(
        Jobs.read(directory, kits, shop.step(), inputs), materials, items, shop, inputs.findings());
  }

  /** Every job, chosen or not, in the order of the files. */
  public List<Job> jobs() {
    return asRead.stream().map(JobDraft::job).toList();
  }

  public SortedSet<String> wanted() {
    return wanted;
  }

  public List<LeftOut> leftOut() {
    return List.copyOf(leftOut);
  }

  /** Wanted jobs whose status nobody wrote. */
  public List<String> takenAsFirm() {
    return List.copyOf(takenAsFirm);
  }

  /**
   * Chooses, and reports what is wrong with the jobs.
   *
   * @param choice of the command
   * @param without names of jobs that the order holds back, and where they stand
   * @param dueUntil only jobs due until that day; null when any are taken
   */
  public void choose(JobChoice choice, Map<String, Place> without, @Nullable LocalDate dueUntil) {
    checkNames(without, choice);
    for (JobDraft job : jobs) {
      Reason why = whyLeftOut(job, choice, without, dueUntil);
      if (why == null) {
        wanted.add(job.name());
        if (job.status() == null) {
          takenAsFirm.add(job.name());
        }
        job.notPlanned().forEach(findings::fault);
      } else {
        leftOut.add(new LeftOut(job.name(), why));
      }
      if (job.pieces().isEmpty()
          && job.runs().isEmpty()
          && job.items().isEmpty()
          && job.notPlanned().isEmpty()) {
        findings.note(
            Note.Kind.WARNING, job.place(), "pieces", "job " + job.name() + " needs nothing");
      }
      checkPieces(job, why == null);
      checkRuns(job, why == null);
      checkItems(job, why == null);
    }
    checkTotals();
  }

  /**
   * Reports the runs whose rules no split keeps.
   *
   * @param orders of the wanted jobs
   */
  public void reportRunsThatFail(List<MaterialOrder> orders) {
    new RunsThatFail(shop.style(), findings).report(jobs, orders);
  }

  private void checkNames(Map<String, Place> without, JobChoice choice) {
    List<String> names = jobs.stream().map(JobDraft::name).toList();
    String all = names.isEmpty() ? "There are no jobs." : "Jobs: " + String.join(", ", names) + ".";
    without.forEach(
        (name, place) -> {
          if (!names.contains(name)) {
            findings.fault(
                place, "without", name, "no job has that name", Nearest.advice(name, names, all));
          }
        });
    List<String> asked = new ArrayList<>(choice.names());
    asked.addAll(choice.also());
    for (String name : asked) {
      if (!names.contains(name)) {
        findings.fault(
            Place.whole("--job"),
            "",
            name,
            "no job has that name",
            Nearest.advice(name, names, all));
      }
    }
  }

  private static @Nullable Reason whyLeftOut(
      JobDraft job, JobChoice choice, Map<String, Place> without, @Nullable LocalDate dueUntil) {
    if (choice.also().contains(job.name())) {
      return null;
    }
    if (!choice.names().isEmpty() && !choice.names().contains(job.name())) {
      return Reason.NOT_ASKED_FOR;
    }
    if (without.containsKey(job.name())) {
      return Reason.HELD_BACK;
    }
    JobStatus status = job.job().status();
    if (!choice.statuses().contains(status)) {
      return switch (status) {
        case BID -> Reason.BID;
        case FIRM -> Reason.NOT_ASKED_FOR;
        case DONE -> Reason.DONE;
      };
    }
    if (dueUntil != null && (job.due() == null || job.due().isAfter(dueUntil))) {
      return Reason.DUE_LATER;
    }
    return null;
  }

  private void checkPieces(JobDraft job, boolean isWanted) {
    for (JobDraft.Row row : job.pieces()) {
      Piece piece = row.piece();
      if ((long) piece.qty() * job.times() > Values.MOST) {
        findings.fault(
            row.place(),
            "qty",
            Integer.toString(piece.qty()),
            "times " + job.times() + " that is more than 1,000,000 pieces",
            "Are qty and times right?");
      }
      Material material = material(job, row.place(), piece.material(), isWanted);
      if (material != null) {
        checkCutting(row, material);
      }
    }
  }

  private void checkItems(JobDraft job, boolean isWanted) {
    for (JobDraft.ItemRow row : job.items()) {
      if ((long) row.qty() * job.times() > Values.MOST) {
        findings.fault(
            row.place(),
            "items",
            row.item(),
            "times " + job.times() + " that is more than 1,000,000 of it",
            "Are the quantity and times right?");
      }
      if (materials != null && materials.containsKey(row.item())) {
        findings.fault(
            row.place(),
            "items",
            row.item(),
            "a material of materials.yaml, which is cut, not counted",
            "Give it a length, as a piece.");
      } else if (isWanted && !items.contains(row.item())) {
        String near = Nearest.to(row.item(), items);
        if (near != null) {
          findings.note(
              Note.Kind.WARNING,
              row.place(),
              "items",
              "nobody sells " + row.item() + "; did you mean " + near + "?");
        }
      }
    }
  }

  /** The material, when it is a known stick and the job is wanted; else null. */
  private @Nullable Material material(JobDraft job, Place place, String id, boolean isWanted) {
    MaterialFile.Entry entry = materials == null ? null : materials.get(id);
    if (materials != null && entry == null) {
      findings.fault(
          place,
          "material",
          id,
          "the shop's materials.yaml has no such material",
          Nearest.advice(id, materials.keySet(), "Add it there, or correct it."));
    }
    if (entry == null || !isWanted) {
      return null;
    }
    if (entry.form() != MaterialFile.Form.STICK) {
      findings.fault(
          place,
          "material",
          id,
          JobFile.NOT_YET + "flat stock yet (job " + job.name() + ", material " + id + ")",
          "Leave the job out of this order.");
    }
    return entry.material();
  }

  private void checkRuns(JobDraft job, boolean isWanted) {
    for (JobDraft.RunRow row : job.runs()) {
      Run run = row.run();
      if ((long) run.qty() * job.times() > Values.MOST) {
        findings.fault(
            row.fields().placeOf("qty"),
            "qty",
            Integer.toString(run.qty()),
            "times " + job.times() + " that is more than 1,000,000 lines",
            "Are qty and times right?");
      }
      for (JobDraft.Row piece : job.pieces()) {
        if (isPieceOf(run, piece.piece().mark())) {
          findings.fault(
              piece.place(),
              "mark",
              piece.piece().mark(),
              "the pieces of run " + run.mark() + " are called like that",
              "Give the piece another mark.");
        }
      }
      Material material = material(job, row.place(), run.material(), isWanted);
      Saw saw = material == null ? null : shop.saws().get(material.saw());
      Length whole = run.length().plus(run.addAtStart()).plus(run.addAtEnd());
      if (saw != null && whole.isShorterThan(saw.shortestCut())) {
        findings.fault(
            row.fields().placeOf("length"),
            "length",
            length(run.length()),
            "mark "
                + run.mark()
                + ": "
                + saw.id()
                + " cuts nothing shorter than "
                + length(saw.shortestCut()),
            "Cut it on another machine, or correct shortest-cut in shop.yaml.");
      }
    }
  }

  /** True for T1/2.3, which is the third piece of the second line of T1. */
  private static boolean isPieceOf(Run run, String mark) {
    String before = run.mark() + "/";
    return mark.startsWith(before) && mark.substring(before.length()).matches("\\d+\\.\\d+");
  }

  private void checkCutting(JobDraft.Row row, Material material) {
    Piece piece = row.piece();
    CutRules rules = piece.rulesOn(material);
    if (!rules.ends().isSquare() && rules.depth().isZero()) {
      findings.fault(
          row.place(),
          "depth",
          "",
          "angled ends, and nothing tells how deep " + material.id() + " is across the cut",
          "Write depth: 2\" (the side that the angle runs across) at the material, or at the piece.");
      return;
    }
    Length full = piece.pointToPoint(material);
    Length shortest = full.minus(rules.mayBeShort());
    if (shortest.minus(rules.skew()).units() <= 0) {
      findings.fault(
          row.place(),
          "length",
          length(piece.length()),
          rules.ends().isSquare()
              ? "not longer than it may be short"
              : "the angled ends meet before the piece is that short",
          "Correct the length, its ends, or may-be-short.");
      return;
    }
    Saw saw = shop.saws().get(material.saw());
    if (saw != null && shortest.isShorterThan(saw.shortestCut())) {
      findings.fault(
          row.place(),
          "length",
          length(piece.length()),
          (piece.mark().isEmpty() ? "the piece" : "mark " + piece.mark())
              + ": "
              + saw.id()
              + " cuts nothing shorter than "
              + length(saw.shortestCut()),
          "Cut it on another machine, or correct shortest-cut in shop.yaml.");
    }
  }

  private String length(Length length) {
    return shop.style().exact(length);
  }

  /** So many pieces that sums stay in range; far beyond what a shop cuts. */
  private void checkTotals() {
    Map<String, Long> totals = new TreeMap<>();
    Map<String, Long> totalsOfItems = new TreeMap<>();
    for (JobDraft job : jobs) {
      for (JobDraft.ItemRow row : job.items()) {
        long pieces = (long) row.qty() * job.times();
        long before = totalsOfItems.getOrDefault(row.item(), 0L);
        totalsOfItems.put(row.item(), before + pieces);
        if (before <= Values.MOST && before + pieces > Values.MOST && pieces <= Values.MOST) {
          findings.fault(
              row.place(),
              "items",
              row.item(),
              "with the other jobs more than 1,000,000 of it",
              "Are the quantities right?");
        }
      }
      for (JobDraft.Row row : job.pieces()) {
        long pieces = (long) row.piece().qty() * job.times();
        long before = totals.getOrDefault(row.piece().material(), 0L);
        totals.put(row.piece().material(), before + pieces);
        if (before <= Values.MOST && before + pieces > Values.MOST && pieces <= Values.MOST) {
          findings.fault(
              row.place(),
              "qty",
              Integer.toString(row.piece().qty()),
              "with the other jobs more than 1,000,000 pieces of " + row.piece().material(),
              "Are the quantities right?");
        }
      }
    }
  }
}
