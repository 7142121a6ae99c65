package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lapwright.files.JobTable;
import lapwright.files.lists.CutList;
import lapwright.files.lists.CutListReader;
import lapwright.files.lists.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A cut list out of a spreadsheet becomes a job's table. */
@Command(
    name = "read",
    description = {
      "Reads a cut list out of a spreadsheet (CSV), says row by row what it understood, and writes"
          + " it as jobs/JOB.csv. Columns may have any order and the usual names; titles, empty"
          + " rows and totals are left out. What is ambiguous is refused, and nothing is written.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright read kirby.csv --as kirby-barn --to my-shop")
final class ReadCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FILE", description = "The list, exported as CSV.")
  private Path file = Path.of("");

  @Option(
      names = "--as",
      paramLabel = "JOB",
      required = true,
      description = "Name of the job; of its file in jobs too.")
  private String job = "";

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      description = "The folder of the order; this folder when left out.")
  private Path folder = Path.of("");

  @Option(names = "--replace", description = "Replace a list of that name.")
  private boolean replace;

  @Option(
      names = "--material",
      paramLabel = "NAME",
      description = "The material of all rows, when the list has no column for it.")
  private String material = "";

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      description = "Unit of bare numbers when the header names none: in, ft, mm or m.")
  private @Nullable String unit;

  @Spec private @Nullable CommandSpec spec;

  ReadCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    LengthUnit bare = unit == null ? null : LengthUnit.of(unit);
    if (unit != null && bare == null && spec != null) {
      throw new ParameterException(
          spec.commandLine(),
          "--unit is one of "
              + Arrays.stream(LengthUnit.values())
                  .map(LengthUnit::word)
                  .collect(Collectors.joining(", "))
              + ", not '"
              + unit
              + "'");
    }
    JobTable.Target target = JobTable.target(folder.toAbsolutePath().normalize(), job, replace);
    CutList.Result result =
        CutListReader.read(file, new CutList.Hints(material.strip(), bare, JobTable.KEPT));
    List<lapwright.files.source.Fault> faults = new ArrayList<>();
    if (target instanceof JobTable.Target.Refused refused) {
      faults.addAll(refused.faults());
    }
    if (result instanceof CutList.Result.Faulty faulty) {
      faults.addAll(faulty.faults());
    }
    if (target instanceof JobTable.Target.Free free
        && result instanceof CutList.Result.Understood understood) {
      JobTable.write(free, understood.list());
      desk.print(told(understood.list(), free));
      return ExitStatus.DONE;
    }
    desk.tell(faults);
    desk.tell("Nothing was written.");
    return ExitStatus.WRONG_INPUT;
  }

  private static String told(CutList list, JobTable.Target.Free target) {
    StringBuilder text = new StringBuilder();
    List<CutList.Piece> pieces = list.pieces();
    text.append("Wrote jobs/")
        .append(target.file())
        .append(": ")
        .append(pieces.stream().mapToLong(CutList.Piece::qty).sum())
        .append(" pieces in ")
        .append(pieces.size())
        .append(pieces.size() == 1 ? " row.\n" : " rows.\n");
    text.append("Header, ").append(list.header()).append(".\n");
    list.notes().forEach(note -> text.append(note).append('\n'));
    text.append('\n');
    for (CutList.Row row : list.rows()) {
      text.append(String.format(java.util.Locale.ROOT, "%5d  ", row.line()));
      CutList.Piece piece = row.piece();
      if (piece == null) {
        text.append('(').append(row.said()).append(')');
      } else {
        text.append(piece.qty())
            .append(" @ ")
            .append(JobTable.style(piece.length()).exact(piece.length()))
            .append(piece.mark().isEmpty() ? "" : "  " + piece.mark())
            .append("  ")
            .append(piece.material())
            .append(piece.purpose().isEmpty() ? "" : "  " + piece.purpose());
        piece.other().entrySet().stream()
            .sorted(java.util.Map.Entry.comparingByKey())
            .forEach(
                each ->
                    text.append("  ").append(each.getKey()).append(' ').append(each.getValue()));
        text.append(row.said().isEmpty() ? "" : "  (" + row.said() + ")");
      }
      text.append('\n');
    }
    TreeSet<String> unknown = new TreeSet<>();
    pieces.forEach(piece -> unknown.add(piece.material()));
    unknown.removeAll(target.materials());
    if (!unknown.isEmpty()) {
      text.append("\nmaterials.yaml does not have ")
          .append(String.join(", ", unknown))
          .append(": add it there, or correct the name in the list and read it again.\n");
    }
    return text.toString();
  }
}
