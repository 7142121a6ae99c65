package lapwright.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import lapwright.files.jobs.JobFields;
import lapwright.files.lists.CutList;
import lapwright.files.papers.CsvSheet;
import lapwright.files.papers.WholeFolder;
import lapwright.files.shop.MaterialFile;
import lapwright.files.source.Fault;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Place;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;

/** jobs/NAME.csv, written from a list that was read. */
public final class JobTable {
  /** Columns of such a table that a list may have under the same names. */
  public static final List<String> KEPT = JobFields.CUTTING;

  private static final Pattern NAME =
      Pattern.compile("[^\\\\/:*?\"<>|,\\p{Cntrl}.\\s][^\\\\/:*?\"<>|,\\p{Cntrl}]{0,80}");
  private static final List<String> COLUMNS = List.of("material", "length", "qty", "mark", "for");

  private static final long UNITS_PER_64TH = Length.ofInches(1).units() / 64;

  private JobTable() {}

  /** Where a table goes, or why it cannot go there. */
  public sealed interface Target {
    /**
     * It can be written.
     *
     * @param jobs the folder of the jobs
     * @param file name of the table
     * @param materials ids that the folder's materials.yaml has; empty when it cannot be read
     */
    record Free(Path jobs, String file, List<String> materials) implements Target {
      public Free {
        materials = List.copyOf(materials);
      }
    }

    /** Nothing may be written there. */
    record Refused(List<Fault> faults) implements Target {
      public Refused {
        faults = List.copyOf(faults);
      }
    }
  }

  /**
   * Where the table of {@code job} goes in an order folder.
   *
   * @param replace true when a table of that name may be replaced
   */
  public static Target target(Path folder, String job, boolean replace) {
    Findings findings = new Findings();
    if (!NAME.matcher(job).matches() || job.endsWith(" ") || job.endsWith(".")) {
      findings.fault(
          Place.whole("--as"),
          "",
          job,
          "not a name that a file can have",
          "Use letters, digits and dashes, such as kirby-barn.");
      return new Target.Refused(findings.faults());
    }
    Inputs inputs = new Inputs(folder, findings);
    boolean isOrder =
        Files.isDirectory(folder)
            && (inputs.treeFile(folder, "order") != null
                || inputs.treeFile(folder, "shop") != null
                || Files.isDirectory(folder.resolve("jobs")));
    if (!isOrder) {
      findings.fault(
          Place.whole(folder.toString()),
          "",
          "",
          "not an order folder: it has no order.yaml, no shop.yaml and no folder jobs",
          "Name it by --to FOLDER, or start one with lapwright start DIR.");
      return new Target.Refused(findings.faults());
    }
    OrderFile order = OrderFile.read(folder, inputs);
    if (order == null || !findings.isSound()) {
      return new Target.Refused(findings.faults());
    }
    String file = job + ".csv";
    Path path = order.jobs().resolve(file);
    if (Files.exists(path) && !replace) {
      findings.fault(
          Place.whole(inputs.name(path)),
          "",
          "",
          "there is such a list already",
          "Take another name, or say --replace.");
      return new Target.Refused(findings.faults());
    }
    Findings aside = new Findings();
    Path materials = new Inputs(folder, aside).treeFile(order.shop(), "materials");
    Map<String, MaterialFile.Entry> known =
        materials == null ? null : MaterialFile.read(materials, null, new Inputs(folder, aside));
    return new Target.Free(
        order.jobs(), file, known == null ? List.of() : List.copyOf(known.keySet()));
  }

  /** The text of the table. Every length is exact. */
  public static String text(CutList list) {
    TreeSet<String> others = new TreeSet<>();
    list.pieces().forEach(piece -> others.addAll(piece.other().keySet()));
    List<String> head = new ArrayList<>(COLUMNS);
    head.addAll(others);
    CsvSheet sheet = new CsvSheet(head);
    for (CutList.Piece piece : list.pieces()) {
      CsvSheet.Row row =
          new CsvSheet.Row()
              .text(piece.material())
              .exactLength(style(piece.length()), piece.length())
              .number(piece.qty())
              .text(piece.mark())
              .text(piece.purpose());
      others.forEach(column -> row.text(piece.other().getOrDefault(column, "")));
      sheet.row(row);
    }
    return sheet.text();
  }

  /** Writes the table, all of it or nothing. */
  public static void write(Target.Free target, CutList list) throws IOException {
    WholeFolder.write(target.jobs(), Map.of(target.file(), text(list)));
  }

  /** Feet and inches where the length lies on their grid of 1/64 in, else millimetres. */
  public static LengthStyle style(Length length) {
    return length.units() % UNITS_PER_64TH == 0 ? LengthStyle.FEET_INCHES : LengthStyle.MILLIMETRES;
  }
}
