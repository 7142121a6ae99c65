package lapwright.print;

import java.util.List;
import java.util.function.Function;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;
import lapwright.paperwork.BesideWeekPaper;
import lapwright.paperwork.BesideWeekPaper.Row;
import lapwright.paperwork.BesideWeekPaper.Side;
import lapwright.print.Table.Kind;

/** What a bid costs by itself, and what it adds to the week, as text. */
public final class BesideWeekText {
  private final BesideWeekPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;
  private final String bid;

  private BesideWeekText(BesideWeekPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
    bid = Phrases.list(paper.bids());
  }

  public static String render(BesideWeekPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new BesideWeekText(paper, style, limit).write());
  }

  private Page write() {
    if (paper.rows().isEmpty() && !hasItems()) {
      page.strongText(bid + " needs no material.");
      return page;
    }
    page.strongText(answer() + " " + proof());
    whole();
    if (paper.together().priced() && paper.rows().size() + (hasItems() ? 1 : 0) > 1) {
      materials();
    }
    rests();
    page.explainSigns();
    return page;
  }

  private String answer() {
    String week = "the " + Phrases.jobs(paper.weekJobs()) + " of the week";
    if (!paper.together().priced()) {
      Length adds = paper.together().bought().minus(paper.week().bought());
      return bid
          + " alone buys "
          + page.length(paper.alone().bought())
          + " of stock. Together with "
          + week
          + " it adds "
          + signed(adds)
          + ".";
    }
    Money less = paper.alone().cost().minus(paper.adds());
    int sign = less.compareTo(Money.ZERO);
    return bid
        + " alone, bought new, costs "
        + money.print(paper.alone().cost())
        + (hasItems() ? " of material and items" : " of material")
        + ". Together with "
        + week
        + " it adds "
        + money.print(paper.adds())
        + (sign == 0
            ? ", the same."
            : ", "
                + money.print(sign < 0 ? Money.ZERO.minus(less) : less)
                + (sign < 0 ? " more." : " less."));
  }

  /** True when the bid itself needs counted goods that cost something. */
  private boolean hasItems() {
    BesideWeekPaper.Items items = paper.items();
    return items != null && !items.alone().isZero();
  }

  private String proof() {
    return paper.isProved() ? "Proved, both ways." : "Not all of it is proved.";
  }

  private void whole() {
    page.blank();
    Table table =
        new Table(page)
            .column("", Kind.NAME)
            .column("Alone", Kind.NUMBER)
            .column("Week without", Kind.NUMBER)
            .column("Week with it", Kind.NUMBER)
            .column("It adds", Kind.NUMBER);
    if (paper.together().priced()) {
      amounts(table, paper.items() == null ? "Cost of material" : "Cost with items", Side::cost);
      amounts(table, "of it to pay now", Side::cash);
    }
    table.row(
        List.of(
            "Sticks bought",
            MoneyStyle.grouped(paper.alone().sticks()),
            MoneyStyle.grouped(paper.week().sticks()),
            MoneyStyle.grouped(paper.together().sticks()),
            MoneyStyle.grouped(paper.together().sticks() - paper.week().sticks())));
    lengths(table, "Bought", Side::bought);
    lengths(table, "Finished", side -> side.account().finished());
    table.row(
        List.of(
            "Bought for 1",
            Phrases.factor(paper.alone().boughtToFinished()),
            paper.week().account().finished().isZero()
                ? "-"
                : Phrases.factor(paper.week().boughtToFinished()),
            Phrases.factor(paper.together().boughtToFinished()),
            added()));
    lengths(table, "Waste", Side::waste);
    lengths(table, "Offcuts kept", side -> side.account().offcutsKept());
    table.print(2);
  }

  /** What the bid makes buy more, for what it finishes. */
  private String added() {
    Length bought = paper.together().bought().minus(paper.week().bought());
    Length finished =
        paper.together().account().finished().minus(paper.week().account().finished());
    return bought.units() < 0 || finished.units() <= 0
        ? "-"
        : Phrases.factor(Percent.of(bought.units(), finished.units()));
  }

  private void amounts(Table table, String name, Function<Side, Money> amount) {
    Money week = amount.apply(paper.week());
    Money together = amount.apply(paper.together());
    table.row(
        List.of(
            name,
            money.print(amount.apply(paper.alone())),
            money.print(week),
            money.print(together),
            money.print(together.minus(week))));
  }

  private void lengths(Table table, String name, Function<Side, Length> length) {
    Length week = length.apply(paper.week());
    Length together = length.apply(paper.together());
    table.row(
        List.of(
            name,
            page.length(length.apply(paper.alone())),
            page.length(week),
            page.length(together),
            signed(together.minus(week))));
  }

  private String signed(Length length) {
    return length.units() < 0 ? "-" + page.length(Length.ZERO.minus(length)) : page.length(length);
  }

  private void materials() {
    page.blank();
    Table table =
        new Table(page)
            .column("Material", Kind.NAME)
            .column("Alone", Kind.NUMBER)
            .column("It adds", Kind.NUMBER)
            .column("alone", Kind.NUMBER)
            .column("adds", Kind.NUMBER)
            .column("Plans", Kind.NAME);
    int shown = Shortening.shown(paper.rows().size(), shortening.main());
    for (Row row : paper.rows().subList(0, shown)) {
      boolean priced = row.alone().priced();
      table.row(
          List.of(
              shortening.material(row.material(), row.name()),
              priced ? money.print(row.alone().cost()) : "",
              priced ? money.print(row.together().cost().minus(row.week().cost())) : "",
              Phrases.sticks(row.alone().sticks()),
              Phrases.sticks(row.together().sticks() - row.week().sticks()),
              row.proof().word()));
    }
    if (shown < paper.rows().size()) {
      table.note(
          "and "
              + Phrases.count(paper.rows().size() - shown, "more material", "more materials")
              + ": --all");
    }
    BesideWeekPaper.Items items = paper.items();
    if (items != null && hasItems()) {
      table.row(
          List.of(
              "Items",
              money.print(items.alone()),
              money.print(items.together().minus(items.week())),
              "",
              "",
              "proved"));
    }
    table.print(2);
  }

  private void rests() {
    page.blank();
    if (!paper.missing().isEmpty()) {
      page.text(
          "Nobody sells enough of "
              + Phrases.list(paper.missing())
              + ": what is missing is in no cost.",
          0,
          2);
    }
    if (!paper.withStock().isEmpty()) {
      page.text(
          "What is on offer does not suffice for "
              + Phrases.list(paper.withStock())
              + ": there, alone too, it takes from the rack and from sticks on hand.",
          0,
          2);
    }
    page.text(
        "Alone: bought new, without rack and sticks on hand. The week, without it and with it: with"
            + " both. What it adds holds if it is ordered together with these jobs; ordered later"
            + " it may cost what it costs alone. Freight and minimum orders are not in it.",
        0,
        2);
  }
}
