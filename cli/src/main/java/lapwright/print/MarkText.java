package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.compare.OneMore;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.MarkPaper;
import lapwright.paperwork.MarkPaper.Landing;
import lapwright.plan.Cut;
import lapwright.plan.Proof;
import lapwright.print.Table.Kind;

/** Where the pieces of one mark land, as text. */
public final class MarkText {
  private final MarkPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;

  private MarkText(MarkPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
  }

  public static String render(MarkPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new MarkText(paper, style, limit).write());
  }

  private Page write() {
    int pieces = paper.kinds().stream().mapToInt(MarkPaper.Kind::pieces).sum();
    long tickets =
        paper.kinds().stream()
            .flatMap(kind -> kind.landings().stream())
            .map(Landing::ticket)
            .distinct()
            .count();
    page.strongText(
        paper.mark()
            + ": "
            + Phrases.count(pieces, "piece", "pieces")
            + " on "
            + Phrases.count(tickets, "ticket", "tickets")
            + ".");
    paper.kinds().forEach(this::kind);
    page.explainSigns();
    return page;
  }

  private void kind(MarkPaper.Kind kind) {
    page.blank();
    page.text(
        kind.job()
            + ", "
            + shortening.material(kind.material(), kind.name())
            + ": "
            + (kind.isRun()
                ? Phrases.count(kind.count(), "line", "lines") + " of "
                : MoneyStyle.grouped(kind.count()) + " @ ")
            + page.style().units().exact(kind.length())
            + (kind.purpose().isEmpty() ? "" : " " + kind.purpose()),
        0,
        2);
    Table table =
        new Table(page)
            .column("Ticket", Kind.NAME)
            .column("Stick", Kind.NAME)
            .column("Sticks", Kind.NUMBER)
            .column("From each", Kind.NUMBER)
            .column("Beside it", Kind.LIST)
            .column("Left", Kind.NUMBER);
    List<List<String>> rows = rows(kind);
    int shown = Shortening.shown(rows.size(), Math.max(1, shortening.other()));
    rows.subList(0, shown).forEach(table::row);
    if (shown < rows.size()) {
      table.note("and " + Phrases.count(rows.size() - shown, "more row", "more rows") + ": --all");
    }
    table.print(2);
    page.text("One more: " + oneMore(kind), 2, 4);
  }

  /** Tickets that follow each other and differ in nothing else are one row. */
  private List<List<String>> rows(MarkPaper.Kind kind) {
    List<List<String>> rows = new ArrayList<>();
    List<Landing> landings = kind.landings();
    for (int i = 0; i < landings.size(); ) {
      List<String> first = row(kind, landings.get(i));
      int sticks = landings.get(i).sticks();
      int end = i + 1;
      while (end < landings.size()
          && Phrases.follow(landings.get(end - 1).ticket(), landings.get(end).ticket())
          && isAlike(first, row(kind, landings.get(end)))) {
        sticks += landings.get(end).sticks();
        end++;
      }
      List<String> row = new ArrayList<>(first);
      if (end > i + 1) {
        row.set(0, landings.get(i).ticket() + " to " + landings.get(end - 1).ticket());
        row.set(2, MoneyStyle.grouped(sticks));
      }
      rows.add(row);
      i = end;
    }
    return rows;
  }

  /** Alike but for the ticket and how many sticks it cuts. */
  private static boolean isAlike(List<String> row, List<String> other) {
    return row.get(1).equals(other.get(1))
        && row.subList(3, row.size()).equals(other.subList(3, other.size()));
  }

  private List<String> row(MarkPaper.Kind kind, Landing landing) {
    List<String> beside = new ArrayList<>();
    for (Cut cut : landing.neighbours()) {
      beside.add(
          cut.qty()
              + " "
              + (cut.mark().isEmpty() ? page.style().units().exact(cut.length()) : cut.mark())
              + (cut.job().equals(kind.job()) ? "" : " of " + cut.job()));
    }
    return List.of(
        landing.ticket(),
        page.length(landing.supply().length()) + " " + Phrases.source(landing.supply()),
        MoneyStyle.grouped(landing.sticks()),
        MoneyStyle.grouped(landing.each()),
        beside.isEmpty() ? "nothing else" : String.join(", ", beside),
        page.length(landing.offcut())
            + (landing.offcut().isZero() ? "" : landing.kept() ? " kept" : " scrap"));
  }

  private String oneMore(MarkPaper.Kind kind) {
    OneMore.Answer answer = kind.oneMore();
    OneMore.With with = answer.with();
    if (with == null) {
      return answer.shortage() == null
          ? "not planned; more --time may do."
          : "cannot be had from what is on offer and in stock.";
    }
    String costs =
        answer.difference() == 0
            ? "costs nothing, the stock that is cut gives it."
            : amount(answer, Math.abs(answer.difference()))
                + (answer.difference() < 0 ? " less" : " more")
                + " (with it "
                + amount(answer, with.cost())
                + ", without "
                + amount(answer, answer.cost())
                + ", of this material).";
    return costs + " " + proofs(answer.proof(), with.proof());
  }

  private static String proofs(Proof without, Proof with) {
    if (without == Proof.PROVED && with == Proof.PROVED) {
      return "Both plans are proved.";
    }
    return "The plan with it is "
        + with.word()
        + ", the one without it "
        + without.word()
        + ": the true difference may be another.";
  }

  private String amount(OneMore.Answer answer, long cost) {
    return answer.priced()
        ? Phrases.unrounded(new Money(cost), money)
        : page.length(Length.ofUnits(cost)) + " of stock";
  }
}
