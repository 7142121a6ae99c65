package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OtherLengthPaper;
import lapwright.paperwork.OtherLengthPaper.Row;
import lapwright.paperwork.OtherLengthPaper.Side;
import lapwright.print.Table.Kind;

/** What if stock came only in another length, as text. */
public final class OtherLengthText {
  private final OtherLengthPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;
  private final String only;

  private OtherLengthText(OtherLengthPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
    only = "only " + page.length(paper.stockLength());
  }

  public static String render(OtherLengthPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new OtherLengthText(paper, style, limit).write());
  }

  private Page write() {
    page.strongText(answer());
    if (!paper.rows().isEmpty()) {
      table();
      page.text(
          "Bought new both ways: rack and sticks on hand are left aside. In the one length, sticks"
              + " are bought singly, at the price by length that is lowest now.",
          2,
          2);
    }
    missing("Not compared, because what is on offer cannot give the pieces", paper.notNow());
    missing("Not compared, because pieces do not fit " + only, paper.notThen());
    page.explainSigns();
    return page;
  }

  private String answer() {
    String stock = "If stock came " + only.replace("only", "only in");
    if (paper.rows().isEmpty()) {
      return stock + ": nothing can be compared.";
    }
    List<String> parts = new ArrayList<>();
    if (paper.now().priced()) {
      Money more = paper.then().cost().minus(paper.now().cost());
      int sign = more.compareTo(Money.ZERO);
      parts.add(
          sign == 0
              ? "the cost stays " + money.print(paper.now().cost())
              : money.print(sign < 0 ? Money.ZERO.minus(more) : more)
                  + (sign < 0 ? " less" : " more")
                  + " than the "
                  + money.print(paper.now().cost())
                  + " of now");
    }
    Length more = paper.then().bought().minus(paper.now().bought());
    parts.add(
        more.isZero()
            ? "as much is bought as now"
            : page.length(more.units() < 0 ? Length.ZERO.minus(more) : more)
                + (more.units() < 0 ? " less" : " more")
                + " bought");
    return stock + ": " + String.join(", ", parts) + ".";
  }

  private void table() {
    page.blank();
    boolean priced = paper.now().priced();
    Table table =
        new Table(page)
            .column("", Kind.NAME)
            .column("Sticks", Kind.NUMBER)
            .column("Bought", Kind.NUMBER)
            .column("for 1 finished", Kind.NUMBER)
            .column("Waste", Kind.NUMBER)
            .columnIf(priced, "Cost", Kind.NUMBER)
            .column("Plan", Kind.NAME);
    int shown = Shortening.shown(paper.rows().size(), shortening.main() / 3);
    for (Row row : paper.rows().subList(0, shown)) {
      table.title(shortening.material(row.material(), row.name()));
      table.row(side("lengths of now", row.now(), priced));
      table.row(side(only, row.then(), priced));
    }
    if (shown < paper.rows().size()) {
      table.note(
          "and "
              + Phrases.count(paper.rows().size() - shown, "more material", "more materials")
              + ": --all");
    }
    table.rule();
    table.sum(side("All, lengths of now", paper.now(), priced));
    table.sum(side("All, " + only, paper.then(), priced));
    table.print(2);
  }

  private List<String> side(String name, Side side, boolean priced) {
    List<String> cells = new ArrayList<>();
    cells.add(name);
    cells.add(MoneyStyle.grouped(side.sticks()));
    cells.add(page.length(side.bought()));
    cells.add(Phrases.factor(side.figures().boughtToFinished()));
    cells.add(side.figures().wasteKeptUsed().print());
    if (priced) {
      cells.add(side.priced() ? money.print(side.cost()) : "");
    }
    cells.add(side.proof().word());
    return cells;
  }

  private void missing(String why, List<lapwright.Shortage> shortages) {
    if (!shortages.isEmpty()) {
      page.heading(why);
      new ShortageLines(page).write(shortages);
    }
  }
}
