package lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lapwright.files.OrderInput;
import lapwright.files.source.Note;
import lapwright.measure.MoneyStyle;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import lapwright.shop.Piece;
import lapwright.shop.Run;

/** What was read from a folder, in a few lines. */
final class InputSummary {
  private InputSummary() {}

  static String of(OrderInput input) {
    List<Job> jobs = input.order().jobs();
    List<String> kinds = new ArrayList<>();
    for (JobStatus status : List.of(JobStatus.FIRM, JobStatus.BID, JobStatus.DONE)) {
      long count = jobs.stream().filter(job -> job.status() == status).count();
      if (count > 0) {
        kinds.add(count + " " + status.word());
      }
    }
    long pieces = 0;
    long lines = 0;
    for (Job job : jobs) {
      for (Piece piece : job.pieces()) {
        pieces += (long) piece.qty() * job.times();
      }
      for (Run run : job.runs()) {
        lines += (long) run.qty() * job.times();
      }
    }
    long materials =
        jobs.stream()
            .flatMap(
                job ->
                    Stream.concat(
                        job.pieces().stream().map(Piece::material),
                        job.runs().stream().map(Run::material)))
            .distinct()
            .count();
    StringBuilder text = new StringBuilder();
    text.append("The input is sound: ")
        .append(count(jobs.size(), "job"))
        .append(kinds.isEmpty() ? "" : " (" + String.join(", ", kinds) + ")")
        .append(", ")
        .append(count(pieces, "piece"))
        .append(lines == 0 ? "" : " and " + count(lines, "line") + " of runs,")
        .append(" of ")
        .append(count(materials, "material"));
    long items =
        jobs.stream().flatMap(job -> job.items().stream()).map(Job.Item::name).distinct().count();
    text.append(items == 0 ? "" : ",\n  and " + count(items, "kind") + " of items").append(".\n");
    for (Note note : input.notes()) {
      text.append("  ").append(note.print()).append('\n');
    }
    return text.toString();
  }

  private static String count(long number, String what) {
    return MoneyStyle.grouped(number) + " " + what + (number == 1 ? "" : "s");
  }
}
