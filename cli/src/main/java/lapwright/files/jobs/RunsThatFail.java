package lapwright.files.jobs;

import java.util.List;
import java.util.Locale;
import lapwright.RunRules;
import lapwright.Shortage;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.shop.MaterialOrder;
import lapwright.shop.RunNeed;

/**
 * Finds the runs whose rules no split keeps, from the stock that the shop can have, and tells each
 * where it is written, with the nearest change that would do.
 */
final class RunsThatFail {
  /** With more pieces than this something is wrong with a length. */
  private static final long MOST_PIECES = 100_000;

  private final LengthStyle style;
  private final Findings findings;

  RunsThatFail(LengthStyle style, Findings findings) {
    this.style = style;
    this.findings = findings;
  }

  /**
   * Reports every run that fails.
   *
   * @param orders of the wanted jobs
   */
  void report(List<JobDraft> jobs, List<MaterialOrder> orders) {
    for (MaterialOrder order : orders) {
      long pieces = 0;
      for (RunNeed need : order.runs()) {
        JobDraft.RunRow row =
            jobs.stream()
                .filter(job -> job.name().equals(need.job()))
                .flatMap(job -> job.runs().stream())
                .filter(run -> run.run().mark().equals(need.run().mark()))
                .findFirst()
                .orElseThrow();
        long more = pieces(order, need, row);
        if (pieces <= MOST_PIECES && pieces + more > MOST_PIECES) {
          findings.fault(
              row.place(),
              row.fields().way("qty"),
              "",
              "more than 100,000 pieces of " + order.material().id() + " in runs",
              "Are qty, times and length right?");
        }
        pieces += more;
      }
    }
  }

  /** Pieces that its lines have at most; 0 and a fault when no split keeps its rules. */
  private long pieces(MaterialOrder order, RunNeed need, JobDraft.RunRow row) {
    // Two lines tell as much as all of them.
    RunNeed few =
        new RunNeed(need.job(), need.due(), 1, need.run().withQty(Math.min(2, need.lines())));
    Shortage.NoSplit against = RunRules.against(order.withRuns(List.of(few)), few);
    if (against == null) {
      return (long) RunRules.mostPieces(order, few) * need.lines();
    }
    if (!against.rule().equals(RunRules.NO_STOCK)) {
      Fields fields = row.fields();
      findings.fault(
          fields.placeOf(against.rule()),
          fields.way(against.rule()),
          "",
          "run " + against.mark() + " of " + against.job() + ": " + against.reason(),
          remedy(against));
    }
    return 0;
  }

  private String remedy(Shortage.NoSplit against) {
    Length length = against.length();
    String advice = against.advice();
    String told = length == null ? advice : advice.replace("{}", style.exact(length));
    return told.substring(0, 1).toUpperCase(Locale.ROOT) + told.substring(1) + ".";
  }
}
