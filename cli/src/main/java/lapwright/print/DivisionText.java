package lapwright.print;

import java.util.List;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.plan.Division;
import lapwright.plan.Division.JobPart;
import lapwright.print.Table.Kind;

/** What each job pays of an order, as text. */
public final class DivisionText {
  private final Division division;
  private final MoneyStyle money;
  private final Page page;

  DivisionText(Division division, MoneyStyle money, Page page) {
    this.division = division;
    this.money = money;
    this.page = page;
  }

  public static String render(Division division, String currency, Style style) {
    Page page = new Page(style);
    new DivisionText(division, new MoneyStyle(currency), page).write();
    return page.printed();
  }

  void write() {
    page.heading("Each job's part of the " + money.print(division.total()));
    boolean notNew = division.jobs().stream().anyMatch(part -> !how(part).isEmpty());
    Table table =
        new Table(page)
            .column("Job", Kind.NAME)
            .column("Alone", Kind.NUMBER)
            .column("Its part", Kind.NUMBER)
            .columnIf(notNew, "", Kind.NAME);
    for (JobPart part : division.jobs()) {
      row(table, part.job(), part.alone(), part.pays(), how(part), notNew);
    }
    table.rule();
    List<String> sum =
        notNew
            ? List.of("All", amount(division.alone()), money.print(division.total()), "")
            : List.of("All", amount(division.alone()), money.print(division.total()));
    table.sum(sum);
    table.print(2);
    page.text(
        "In proportion to what each job would cost alone, bought new, without rack and sticks on"
            + " hand"
            + (division.jobs().stream().allMatch(JobPart::proved)
                ? "; each of these costs is proved."
                : "; not each of these costs is proved."),
        2,
        2);
    if (division.isDearerThanAlone()) {
      page.text(
          "What can be had is limited, so that the order costs "
              + money.print(division.total().minus(division.alone()))
              + " more than its jobs would alone, and jobs pay more than alone.",
          2,
          2);
    }
  }

  private void row(Table table, String job, Money alone, Money pays, String how, boolean withHow) {
    table.row(
        withHow
            ? List.of(job, amount(alone), money.print(pays), how)
            : List.of(job, amount(alone), money.print(pays)));
  }

  private String amount(Money exact) {
    return Phrases.unrounded(exact, money);
  }

  private static String how(JobPart part) {
    return switch (part.how()) {
      case BOUGHT_NEW -> "";
      case WITH_STOCK -> "with the stock it needs: it cannot be bought new";
      case BY_LENGTH -> "by length: there is no plan of it alone";
    };
  }
}
