package lapwright.print;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.PricesPaper;
import lapwright.paperwork.PricesPaper.ItemPriceLine;
import lapwright.paperwork.PricesPaper.ItemPrices;
import lapwright.paperwork.PricesPaper.MaterialPrices;
import lapwright.paperwork.PricesPaper.PriceLine;
import lapwright.paperwork.PricesPaper.Standing;
import lapwright.print.Table.Kind;
import lapwright.shop.ItemStock;
import org.jspecify.annotations.Nullable;

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
    if (all.isEmpty() && paper.items().isEmpty()) {
      page.strongText("No prices: nothing is on offer.");
      return page;
    }
    page.strongText(answer(all));
    if (!all.isEmpty()) {
      materials(all);
    }
    items();
    page.explainSigns();
    return page;
  }

  /** Counted goods, the cheapest by the piece first. */
  private void items() {
    if (paper.items().isEmpty()) {
      return;
    }
    page.blank();
    Table table =
        new Table(page)
            .column("Item, supplier", Kind.NAME)
            .column("Price", Kind.NUMBER)
            .column("Sold in", Kind.NUMBER)
            .column("A piece", Kind.NUMBER)
            .column("Quoted", Kind.NAME)
            .column("Good until", Kind.NAME);
    int shown = Shortening.shown(paper.items().size(), Math.max(1, shortening.main() / 3));
    for (ItemPrices item : paper.items().subList(0, shown)) {
      table.title(item.item());
      item.lines().forEach(line -> table.row(row(line)));
    }
    if (shown < paper.items().size()) {
      table.note("and " + (paper.items().size() - shown) + " more items: --all");
    }
    table.print(2);
  }

  private List<String> row(ItemPriceLine line) {
    ItemStock.Offer offer = line.offer();
    return List.of(
        offer.supplier(),
        offer.price() == null ? "" : Phrases.price(offer.price()),
        offer.soldIn() == 1 ? "" : MoneyStyle.grouped(offer.soldIn()),
        line.each() == null ? "" : Phrases.unrounded(line.each(), money),
        offer.quoted() == null ? "" : offer.quoted().toString(),
        until(offer.goodUntil(), line.standing()));
  }

  private static String until(@Nullable LocalDate day, Standing standing) {
    return day == null ? "" : day + (standing == Standing.OUT_OF_DATE ? " over" : "");
  }

  private void materials(List<PriceLine> all) {
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
  }

  private String answer(List<PriceLine> all) {
    List<Standing> standings = new ArrayList<>(all.stream().map(PriceLine::standing).toList());
    paper.items().forEach(item -> item.lines().forEach(line -> standings.add(line.standing())));
    long prices = standings.stream().filter(each -> each != Standing.NO_PRICE).count();
    long out = standings.stream().filter(each -> each == Standing.OUT_OF_DATE).count();
    long open = standings.stream().filter(each -> each == Standing.NO_LAST_DAY).count();
    List<String> parts = new ArrayList<>();
    if (out > 0) {
      parts.add(out + (out == 1 ? " is" : " are") + " out of date: ask for today's");
    }
    if (open > 0) {
      parts.add(open + (open == 1 ? " has" : " have") + " no last day");
    }
    return Phrases.count(prices, "price", "prices")
        + " of "
        + kinds()
        + " on "
        + Phrases.day(paper.today())
        + (paper.materials().isEmpty()
            ? ", the cheapest by the piece first"
            : ", the cheapest by length first")
        + (parts.isEmpty() ? "; all still good." : ". Of these " + Phrases.list(parts) + ".");
  }

  private String kinds() {
    List<String> kinds = new ArrayList<>();
    if (!paper.materials().isEmpty()) {
      kinds.add(Phrases.count(paper.materials().size(), "material", "materials"));
    }
    if (!paper.items().isEmpty()) {
      kinds.add(Phrases.count(paper.items().size(), "kind of items", "kinds of items"));
    }
    return Phrases.list(kinds);
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
        until(line.offer().goodUntil(), line.standing()));
  }
}
