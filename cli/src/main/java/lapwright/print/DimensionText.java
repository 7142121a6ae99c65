package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.DimensionPaper;
import lapwright.paperwork.DimensionPaper.Row;
import lapwright.plan.Proof;
import lapwright.print.Table.Kind;

/** The dimensions that cost most, as text. */
public final class DimensionText {
  private final DimensionPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;

  private DimensionText(DimensionPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
  }

  public static String render(DimensionPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new DimensionText(paper, style, limit).write());
  }

  private Page write() {
    String most = page.style().units().exact(paper.most());
    if (paper.rows().isEmpty()) {
      page.strongText(
          "Of "
              + Phrases.count(paper.asked(), "mark", "marks")
              + " none was found that saves anything for being up to "
              + most
              + " shorter.");
    } else {
      Row first = paper.rows().get(0);
      page.strongText(
          Phrases.count(paper.rows().size(), "mark", "marks")
              + " of "
              + MoneyStyle.grouped(paper.asked())
              + " would cost less for being up to "
              + most
              + " shorter. Most saves "
              + mark(first)
              + " of "
              + first.need().job()
              + ": "
              + saves(first)
              + " for "
              + difference(first)
              + ".");
      table();
    }
    rests();
    page.explainSigns();
    return page;
  }

  private static String mark(Row row) {
    return row.need().mark().isEmpty() ? "a piece without a mark" : row.need().mark();
  }

  private String saves(Row row) {
    return row.priced()
        ? money.print(new Money(row.saves()))
        : page.length(Length.ofUnits(row.saves())) + " of stock";
  }

  private String difference(Row row) {
    return page.length(row.need().length().minus(row.shorter()));
  }

  private void table() {
    page.blank();
    boolean open = paper.rows().stream().anyMatch(row -> row.proof() != Proof.PROVED);
    Table table =
        new Table(page)
            .column("Mark", Kind.NAME)
            .column("Job", Kind.NAME)
            .column("Material", Kind.NAME)
            .column("From", Kind.NUMBER)
            .column("To", Kind.NUMBER)
            .column("Shorter", Kind.NUMBER)
            .column("Saves", Kind.NUMBER)
            .column("Sticks", Kind.NUMBER);
    int shown = Shortening.shown(paper.rows().size(), shortening.main());
    for (Row row : paper.rows().subList(0, shown)) {
      table.row(
          List.of(
              row.need().mark().isEmpty() ? "-" : row.need().mark(),
              row.need().job(),
              row.material(),
              page.length(row.need().length()),
              page.length(row.shorter()),
              difference(row),
              (row.proof() == Proof.PROVED ? "" : "at least ") + saves(row),
              sticks(row.sticksFewer())));
    }
    if (shown < paper.rows().size()) {
      table.note("and " + Phrases.count(paper.rows().size() - shown, "more", "more") + ": --all");
    }
    table.print(2);
    if (open) {
      page.text("At least: more time might show that it saves more.", 2, 2);
    }
  }

  private static String sticks(int fewer) {
    return fewer == 0
        ? "as many"
        : MoneyStyle.grouped(Math.abs(fewer)) + (fewer > 0 ? " fewer" : " more");
  }

  private void rests() {
    page.blank();
    List<String> said = new ArrayList<>();
    if (!paper.rows().isEmpty()) {
      said.add(
          "Each is confirmed by a plan of that material with this one mark shorter and all else as"
              + " it is; do not add them up.");
    }
    said.add(
        "Lengths were tried in steps of "
            + (page.style().units() == LengthStyle.FEET_INCHES ? "1/16\"" : "1 mm")
            + ", the marks first that the proof of the plan points to, and only a few of each"
            + " material.");
    if (!paper.notAsked().isEmpty()) {
      said.add(
          "Not asked: "
              + Phrases.list(paper.notAsked())
              + ", which "
              + (paper.notAsked().size() == 1 ? "has" : "have")
              + " runs or keep"
              + (paper.notAsked().size() == 1 ? "s" : "")
              + " to one lot.");
    }
    page.text(String.join(" ", said), 0, 0);
    page.blank();
    page.text(
        "Whether a piece may be shorter is decided by the engineered drawings and whoever answers"
            + " for them, not by what it costs. Ask before anything is cut.",
        0,
        0);
  }
}
