package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.PricesPaper;
import lapwright.paperwork.PricesPaper.MaterialPrices;
import lapwright.paperwork.PricesPaper.PriceLine;
import lapwright.paperwork.PricesPaper.Standing;
import lapwright.print.Table.Kind;

/** What each material costs over all suppliers, as text. */
public final class PricesText {
  private final PricesPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;

  private PricesText(PricesPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
  }

  public static String render(PricesPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new PricesText(paper, style, limit).write());
  }

  private Page write() {
    List<PriceLine> all =
        paper.materials().stream().flatMap(each -> each.lines().stream()).toList();
    if (all.isEmpty()) {
      page.strongText("No prices: nothing is on offer.");
      return page;
    }
    page.strongText(answer(all));
    boolean feet = page.style().units() == LengthStyle.FEET_INCHES;
    page.blank();
    Table table =
        new Table(page)
            .column("Supplier", Kind.NAME)
            .column("Length", Kind.NUMBER)
            .column("Price", Kind.NUMBER)
            .column("Sold in", Kind.NUMBER)
            .column(feet ? "A foot" : "A metre", Kind.NUMBER)
            .column("Quoted", Kind.NAME)
            .column("Good until", Kind.NAME);
    int most = Math.min(shortening.other(), shortening.main());
    int shown = Shortening.shown(paper.materials().size(), Math.max(1, shortening.main() / 3));
    for (MaterialPrices material : paper.materials().subList(0, shown)) {
      table.title(shortening.material(material.material(), material.name()));
      int lines = Shortening.shown(material.lines().size(), Math.max(1, most));
      material.lines().subList(0, lines).forEach(line -> table.row(row(line, feet)));
      if (lines < material.lines().size()) {
        table.note("and " + (material.lines().size() - lines) + " dearer by length: --all");
      }
    }
    if (shown < paper.materials().size()) {
      table.note("and " + (paper.materials().size() - shown) + " more materials: --all");
    }
    table.print(2);
    if (all.stream().anyMatch(line -> !line.sawTakesIt())) {
      page.text("*: longer than its saw takes, so it is never planned.", 2, 2);
    }
    page.explainSigns();
    return page;
  }

  private String answer(List<PriceLine> all) {
    long prices = all.stream().filter(line -> line.soldAtOnce() != null).count();
    long out = count(all, Standing.OUT_OF_DATE);
    long open = count(all, Standing.NO_LAST_DAY);
    List<String> parts = new ArrayList<>();
    if (out > 0) {
      parts.add(out + (out == 1 ? " is" : " are") + " out of date: ask for today's");
    }
    if (open > 0) {
      parts.add(open + (open == 1 ? " has" : " have") + " no last day");
    }
    return Phrases.count(prices, "price", "prices")
        + " of "
        + Phrases.count(paper.materials().size(), "material", "materials")
        + " on "
        + Phrases.day(paper.today())
        + ", the cheapest by length first"
        + (parts.isEmpty() ? "; all still good." : ". Of these " + Phrases.list(parts) + ".");
  }

  private static long count(List<PriceLine> lines, Standing standing) {
    return lines.stream().filter(line -> line.standing() == standing).count();
  }

  private List<String> row(PriceLine line, boolean feet) {
    Money rate = feet ? line.perFoot() : line.perMetre();
    return List.of(
        line.offer().supplier().isEmpty() ? "(none named)" : line.offer().supplier(),
        page.length(line.offer().length()) + (line.sawTakesIt() ? "" : " *"),
        line.offer().price() == null ? "" : Phrases.price(line.offer().price()),
        line.offer().soldIn() == 1 ? "" : MoneyStyle.grouped(line.offer().soldIn()),
        rate == null ? "" : Phrases.unrounded(rate, money),
        line.offer().quoted() == null ? "" : line.offer().quoted().toString(),
        line.offer().goodUntil() == null
            ? ""
            : line.offer().goodUntil() + (line.standing() == Standing.OUT_OF_DATE ? " over" : ""));
  }
}
