package lapwright.files.papers;

import java.util.List;
import lapwright.measure.Length;
import lapwright.paperwork.JobShare;
import lapwright.paperwork.WasteFigures;
import lapwright.paperwork.WastePaper;
import lapwright.paperwork.WastePaper.MaterialPart;
import lapwright.plan.Account;

/**
 * {@code waste.csv}: where the material goes, in exact millimetres. Rows of the kind {@code
 * material} and the row {@code total} are whole accounts; rows of the kind {@code job-of-material}
 * and {@code job} are what jobs use up, without the offcuts and the surplus that are the shop's.
 */
public final class WasteCsv {
  public static final String FILE = "waste.csv";

  private static final List<String> HEAD =
      List.of(
          "row",
          "material",
          "name",
          "job",
          "finished_mm",
          "laps_mm",
          "kerf_mm",
          "end_trim_mm",
          "scrap_mm",
          "offcuts_kept_mm",
          "drawn_mm",
          "surplus_mm",
          "short_allowance_mm",
          "bought_mm",
          "bought_per_finished",
          "drawn_per_finished",
          "waste_percent",
          "waste_percent_kept_lost",
          "proof");

  private WasteCsv() {}

  public static String text(WastePaper paper) {
    CsvSheet sheet = new CsvSheet(HEAD);
    for (MaterialPart part : paper.materials()) {
      CsvSheet.Row row =
          new CsvSheet.Row().text("material").text(part.material()).text(part.name()).empty(1);
      account(row, part.account(), part.bought(), part.figures());
      sheet.row(row.text(part.proof().word()));
      for (JobShare job : part.jobs()) {
        sheet.row(
            share(
                new CsvSheet.Row().text("job-of-material").text(part.material()).text(part.name()),
                job));
      }
    }
    for (JobShare job : paper.jobs()) {
      sheet.row(share(new CsvSheet.Row().text("job").empty(2), job));
    }
    CsvSheet.Row total = new CsvSheet.Row().text("total").empty(3);
    account(total, paper.total(), paper.bought(), paper.figures());
    sheet.row(total.empty(1));
    return sheet.text();
  }

  private static void account(
      CsvSheet.Row row, Account account, Length bought, WasteFigures figures) {
    row.mm(account.finished())
        .mm(account.laps())
        .mm(account.kerf())
        .mm(account.endTrim())
        .mm(account.scrap())
        .mm(account.offcutsKept())
        .mm(account.drawn())
        .mm(account.surplus())
        .mm(account.shortAllowance())
        .mm(bought)
        .factor(figures.boughtToFinished())
        .factor(figures.drawnToFinished())
        .percent(figures.wasteKeptUsed())
        .percent(figures.wasteKeptLost());
  }

  private static CsvSheet.Row share(CsvSheet.Row row, JobShare job) {
    return row.text(job.job())
        .mm(job.finished())
        .mm(job.laps())
        .mm(job.kerf())
        .mm(job.endTrim())
        .mm(job.scrap())
        .empty(7)
        .percent(job.wasteShare())
        .empty(2);
  }
}
