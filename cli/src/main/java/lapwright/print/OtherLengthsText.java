package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OtherLengthPaper.Side;
import lapwright.paperwork.OtherLengthsPaper;
import lapwright.paperwork.OtherLengthsPaper.Only;
import lapwright.paperwork.OtherLengthsPaper.Row;
import lapwright.print.Table.Kind;
import org.jspecify.annotations.Nullable;

/** Several other stock lengths side by side, as text. */
public final class OtherLengthsText {
  private final OtherLengthsPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;
  private final boolean priced;

  private OtherLengthsText(OtherLengthsPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
    priced = paper.materials().stream().anyMatch(row -> row.now().priced());
  }

  public static String render(OtherLengthsPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new OtherLengthsText(paper, style, limit).write());
  }

  private Page write() {
    page.strongText(answer());
    if (!paper.materials().isEmpty()) {
      table();
      page.text(
          "Bought new in every line: rack and sticks on hand are left aside. In one length only,"
              + " sticks are bought singly, at the price by length that is lowest now.",
          2,
          2);
    }
    if (!paper.notNow().isEmpty()) {
      page.heading("Not compared, because what is on offer cannot give the pieces");
      new ShortageLines(page).write(paper.notNow());
    }
    page.explainSigns();
    return page;
  }

  private String answer() {
    String lengths = Phrases.list(paper.lengths().stream().map(page::length).toList());
    if (paper.materials().isEmpty()) {
      return "In none of " + lengths + " can anything be compared.";
    }
    if (paper.compared() == 0) {
      return "No material fits all of " + lengths + "; material by material:";
    }
    int best = 0;
    for (int i = 1; i < paper.lengths().size(); i++) {
      if (figure(paper.only().get(i)) < figure(paper.only().get(best))) {
        best = i;
      }
    }
    String of = "Of " + lengths + " as the only length, " + page.length(paper.lengths().get(best));
    String rest =
        paper.compared() == paper.materials().size()
            ? "."
            : " (for the "
                + Phrases.count(paper.compared(), "material", "materials")
                + " that "
                + (paper.compared() == 1 ? "fits" : "fit")
                + " them all).";
    long difference = figure(paper.only().get(best)) - figure(paper.now());
    if (priced) {
      return of
          + " costs least: "
          + money.print(paper.only().get(best).cost())
          + (difference == 0
              ? ", as much as the lengths of now"
              : ", "
                  + money.print(new Money(Math.abs(difference)))
                  + (difference < 0 ? " less" : " more")
                  + " than the lengths of now")
          + rest;
    }
    return of + " buys least: " + page.length(paper.only().get(best).bought()) + rest;
  }

  private long figure(Side side) {
    return priced ? side.cost().tenThousandths() : side.bought().units();
  }

  private void table() {
    page.blank();
    Table table =
        new Table(page)
            .column("", Kind.NAME)
            .column("Sticks", Kind.NUMBER)
            .column("Bought for 1", Kind.NUMBER)
            .column("Waste", Kind.NUMBER)
            .columnIf(priced, "A stick", Kind.NUMBER)
            .columnIf(priced, "Cost", Kind.NUMBER)
            .column("Plan", Kind.NAME);
    int shown =
        Shortening.shown(
            paper.materials().size(), shortening.main() / (paper.lengths().size() + 2));
    for (Row row : paper.materials().subList(0, shown)) {
      table.title(shortening.material(row.material(), row.name()));
      table.row(side("now", row.now(), null));
      for (Only only : row.only()) {
        Side side = only.side();
        table.row(
            side == null ? unfit(only.length()) : side(name(only.length()), side, only.stick()));
      }
    }
    if (shown < paper.materials().size()) {
      table.note(
          "and "
              + Phrases.count(paper.materials().size() - shown, "more material", "more materials")
              + ": --all");
    }
    if (paper.compared() > 1) {
      table.rule();
      table.title(
          paper.compared() == paper.materials().size()
              ? "All"
              : "The " + paper.compared() + " materials that fit every length");
      table.sum(side("now", paper.now(), null));
      for (int i = 0; i < paper.lengths().size(); i++) {
        table.sum(side(name(paper.lengths().get(i)), paper.only().get(i), null));
      }
    }
    table.print(2);
  }

  private String name(Length length) {
    return "only " + page.length(length);
  }

  private List<String> unfit(Length length) {
    List<String> cells = new ArrayList<>(List.of(name(length), "-", "-", "-"));
    if (priced) {
      cells.addAll(List.of("", "-"));
    }
    cells.add("too short");
    return cells;
  }

  private List<String> side(String name, Side side, @Nullable Money stick) {
    List<String> cells = new ArrayList<>();
    cells.add(name);
    cells.add(MoneyStyle.grouped(side.sticks()));
    cells.add(Phrases.factor(side.figures().boughtToFinished()));
    cells.add(side.figures().wasteKeptUsed().print());
    if (priced) {
      cells.add(stick == null ? "" : Phrases.unrounded(Objects.requireNonNull(stick), money));
      cells.add(side.priced() ? money.print(side.cost()) : "");
    }
    cells.add(side.proof().word());
    return cells;
  }
}
