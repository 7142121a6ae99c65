package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.OrderPaper.BuyLine;
import lapwright.paperwork.OrderPaper.ItemLine;
import lapwright.paperwork.OrderPaper.MoneyFigures;
import lapwright.paperwork.OrderPaper.StockLine;
import lapwright.paperwork.OrderPaper.SupplierPart;
import lapwright.paperwork.ProofFigure;
import lapwright.plan.Proof;
import lapwright.print.Table.Kind;
import org.jspecify.annotations.Nullable;

/** What to buy, as text. */
public final class OrderText {
  private final OrderPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;

  private OrderText(OrderPaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    money = new MoneyStyle(paper.shop().currency());
    page = new Page(style);
  }

  /**
   * The whole paper where the style asks for it or it is short enough; else shortened to the
   * style's lines: first what the order rests on, at last the list to buy. Each list says what it
   * leaves out, and no sum does.
   */
  public static String render(OrderPaper paper, Style style) {
    return Shortening.fitting(style, limit -> new OrderText(paper, style, limit).write());
  }

  private Page write() {
    page.strongText(answer());
    if (!paper.jobs().isEmpty()) {
      notOnOrder();
      toBuy();
      itemsToBuy();
      fromStock();
      itemsThere();
      page.blank();
      cost();
      new DeliveryText(paper.shop(), paper.deliveries(), money, page).write(shortening.other() > 3);
      new OrderRests(paper, money, page, shortening).write();
      page.explainSigns();
    }
    return page;
  }

  private String answer() {
    if (paper.jobs().isEmpty()) {
      return "Nothing to buy: no firm job has pieces to cut or items to buy.";
    }
    String jobs = Phrases.jobs(paper.jobs().size());
    if (paper.sticksBought() == 0 && paper.itemsBought() == 0) {
      return (paper.boughtBefore().isEmpty()
              ? "Buy nothing: what is on hand and on the rack gives all pieces of "
              : "Buy nothing: what is bought already, on hand or on the rack gives all pieces of ")
          + jobs
          + ". "
          + proofs();
    }
    long named = paper.suppliers().stream().filter(part -> !part.supplier().isEmpty()).count();
    List<String> goods = new ArrayList<>();
    if (paper.sticksBought() > 0) {
      goods.add(Phrases.sticks(paper.sticksBought()));
    }
    if (paper.itemsBought() > 0) {
      goods.add(Phrases.count(paper.itemsBought(), "kind of items", "kinds of items"));
    }
    return "Buy "
        + Phrases.list(goods)
        + (named == 0 ? "" : " from " + Phrases.count(named, "supplier", "suppliers"))
        + " for "
        + jobs
        + ": "
        + amount()
        + ". "
        + proofs();
  }

  private String amount() {
    List<String> amounts = new ArrayList<>();
    MoneyFigures figures = paper.money();
    if (figures != null) {
      amounts.add(
          figures.onHand().isZero()
              ? money.print(figures.billed()) + " of material"
              : money.print(figures.billed())
                  + " to pay, "
                  + money.print(figures.cost())
                  + " with the sticks on hand that it uses");
    }
    Length unpriced = paper.boughtWithoutPrice();
    if (!unpriced.isZero()) {
      amounts.add(
          page.length(unpriced) + (figures == null ? " of stock" : " of stock without a price"));
    }
    return String.join(", and ", amounts);
  }

  private String proofs() {
    List<ProofFigure> figures = paper.proofs();
    if (figures.size() == 1) {
      return Phrases.proof(figures.get(0), money, page.style().units());
    }
    if (figures.stream().allMatch(figure -> figure.proof() == Proof.PROVED)) {
      return "Proved: no plan costs less, nor takes less stock where there is no price.";
    }
    List<String> sentences = new ArrayList<>();
    for (ProofFigure figure : figures) {
      sentences.add(
          (figure.inMoney() ? "With prices: " : "Without prices: ")
              + Phrases.proof(figure, money, page.style().units()));
    }
    return String.join(" ", sentences);
  }

  private void toBuy() {
    List<SupplierPart> suppliers =
        paper.suppliers().stream().filter(part -> !part.lines().isEmpty()).toList();
    if (suppliers.isEmpty()) {
      return;
    }
    page.heading("To buy");
    List<BuyLine> all = suppliers.stream().flatMap(part -> part.lines().stream()).toList();
    BuyColumns columns =
        new BuyColumns(
            all.stream().anyMatch(line -> !line.offer().code().isEmpty()),
            all.stream().anyMatch(line -> line.offer().soldIn() > 1),
            all.stream().anyMatch(line -> line.billed() != null),
            all.stream().anyMatch(line -> line.billed() == null));
    Table table = columns.table(page);
    boolean several = suppliers.size() > 1;
    int left = Shortening.shown(all.size(), shortening.main());
    for (SupplierPart part : suppliers) {
      if (several || !part.supplier().isEmpty()) {
        table.title(part.supplier().isEmpty() ? "No supplier named" : part.supplier());
      }
      int shown = Math.min(left, part.lines().size());
      left -= shown;
      part.lines().subList(0, shown).forEach(line -> table.row(columns.row(line)));
      int hidden = part.lines().size() - shown;
      if (hidden > 0) {
        table.note("and " + Phrases.count(hidden, "more line", "more lines") + ": --all");
      }
      if (several && part.lines().size() > 1) {
        table.sum(columns.sum("in all", List.of(part)));
      }
    }
    table.rule();
    table.sum(columns.sum(paper.itemsBought() == 0 ? "All to buy" : "All sticks", suppliers));
    table.print(2);
  }

  /** So that nobody takes the order for whole. */
  private void notOnOrder() {
    if (!paper.missingItems().isEmpty()) {
      page.warning(
          "! NOT ON THIS ORDER: "
              + Phrases.list(
                  paper.missingItems().stream()
                      .map(item -> MoneyStyle.grouped(item.pieces()) + " of " + item.item())
                      .toList())
              + ", which cannot be had of any supplier here.",
          0,
          2);
    }
  }

  /** Counted goods, by supplier. */
  private void itemsToBuy() {
    List<SupplierPart> suppliers =
        paper.suppliers().stream().filter(part -> !part.items().isEmpty()).toList();
    if (suppliers.isEmpty()) {
      return;
    }
    page.heading("Items to buy");
    List<ItemLine> all = suppliers.stream().flatMap(part -> part.items().stream()).toList();
    boolean codes = all.stream().anyMatch(line -> !line.offer().code().isEmpty());
    boolean packs = all.stream().anyMatch(line -> line.offer().soldIn() > 1);
    boolean priced = all.stream().anyMatch(line -> line.billed() != null);
    Table table =
        new Table(page)
            .column("Item", Kind.NAME)
            .columnIf(codes, "Code", Kind.NAME)
            .column("Pieces", Kind.NUMBER)
            .columnIf(packs, "Packs", Kind.NUMBER)
            .columnIf(priced, "Price", Kind.NUMBER)
            .columnIf(priced, "Total", Kind.NUMBER);
    int left = Shortening.shown(all.size(), shortening.main());
    for (SupplierPart part : suppliers) {
      table.title(part.supplier());
      int shown = Math.min(left, part.items().size());
      left -= shown;
      for (ItemLine line : part.items().subList(0, shown)) {
        List<String> cells = new ArrayList<>();
        cells.add(line.item());
        if (codes) {
          cells.add(line.offer().code());
        }
        cells.add(MoneyStyle.grouped(line.pieces()));
        if (packs) {
          cells.add(
              line.offer().soldIn() == 1
                  ? ""
                  : MoneyStyle.grouped(line.packs())
                      + " of "
                      + MoneyStyle.grouped(line.offer().soldIn()));
        }
        if (priced) {
          cells.add(line.offer().price() == null ? "" : Phrases.price(line.offer().price()));
          cells.add(line.billed() == null ? "" : money.print(line.billed()));
        }
        table.row(cells);
      }
      int hidden = part.items().size() - shown;
      if (hidden > 0) {
        table.note("and " + Phrases.count(hidden, "more item", "more items") + ": --all");
      }
    }
    if (priced) {
      table.rule();
      Money items =
          all.stream()
              .map(ItemLine::billed)
              .filter(Objects::nonNull)
              .reduce(Money.ZERO, Money::plus);
      table.sum(sum("All items", codes, packs, items));
      Money whole =
          paper.suppliers().stream().map(SupplierPart::billed).reduce(Money.ZERO, Money::plus);
      if (!whole.equals(items)) {
        table.sum(sum("All to buy", codes, packs, whole));
      }
    }
    table.print(2);
  }

  private List<String> sum(String name, boolean codes, boolean packs, Money total) {
    List<String> cells = new ArrayList<>(List.of(name));
    if (codes) {
      cells.add("");
    }
    cells.add("");
    if (packs) {
      cells.add("");
    }
    cells.add("");
    cells.add(money.print(total));
    return cells;
  }

  private void itemsThere() {
    if (paper.itemsThere().isEmpty()) {
      return;
    }
    page.text(
        "Items that are there already: "
            + Phrases.list(
                paper.itemsThere().stream()
                    .map(
                        item ->
                            item.item()
                                + " ("
                                + Stream.of(
                                        item.leftOver() == 0
                                            ? ""
                                            : MoneyStyle.grouped(item.leftOver())
                                                + " left over of what was bought",
                                        item.onHand() == 0
                                            ? ""
                                            : MoneyStyle.grouped(item.onHand()) + " on hand")
                                    .filter(words -> !words.isEmpty())
                                    .collect(Collectors.joining(", "))
                                + ")")
                    .toList())
            + ", at no cost.",
        0,
        2);
  }

  /** Which columns the list to buy needs. */
  private final class BuyColumns {
    private final boolean codes;
    private final boolean packs;
    private final boolean priced;
    private final boolean unpriced;

    BuyColumns(boolean codes, boolean packs, boolean priced, boolean unpriced) {
      this.codes = codes;
      this.packs = packs;
      this.priced = priced;
      this.unpriced = unpriced;
    }

    Table table(Page page) {
      return new Table(page)
          .column("Material", Kind.NAME)
          .columnIf(codes, "Code", Kind.NAME)
          .column("Length", Kind.NUMBER)
          .column("Sticks", Kind.NUMBER)
          .columnIf(packs, "Packs", Kind.NUMBER)
          .columnIf(unpriced, "In all", Kind.NUMBER)
          .columnIf(priced, "Price", Kind.NUMBER)
          .columnIf(priced, "Total", Kind.NUMBER);
    }

    List<String> row(BuyLine line) {
      List<String> cells = new ArrayList<>();
      cells.add(shortening.material(line.material(), line.name()));
      if (codes) {
        cells.add(line.offer().code());
      }
      cells.add(page.length(line.offer().length()));
      cells.add(MoneyStyle.grouped(line.sticks()));
      if (packs) {
        cells.add(
            line.offer().soldIn() == 1
                ? ""
                : MoneyStyle.grouped(line.packs()) + " of " + line.offer().soldIn());
      }
      if (unpriced) {
        cells.add(line.billed() == null ? page.length(line.length()) : "");
      }
      if (priced) {
        cells.add(line.offer().price() == null ? "" : Phrases.price(line.offer().price()));
        cells.add(line.billed() == null ? "" : money.print(line.billed()));
      }
      return cells;
    }

    List<String> sum(String name, List<SupplierPart> parts) {
      List<String> cells = new ArrayList<>();
      cells.add(name);
      if (codes) {
        cells.add("");
      }
      cells.add("");
      cells.add(MoneyStyle.grouped(parts.stream().mapToLong(SupplierPart::sticks).sum()));
      if (packs) {
        cells.add("");
      }
      if (unpriced) {
        Length length =
            parts.stream()
                .flatMap(part -> part.lines().stream())
                .filter(line -> line.billed() == null)
                .map(BuyLine::length)
                .reduce(Length.ZERO, Length::plus);
        cells.add(length.isZero() ? "" : page.length(length));
      }
      if (priced) {
        cells.add("");
        cells.add(
            parts.stream().allMatch(part -> billed(part) == null)
                ? ""
                : money.print(
                    parts.stream()
                        .map(OrderText::billed)
                        .filter(Objects::nonNull)
                        .reduce(Money.ZERO, Money::plus)));
      }
      return cells;
    }
  }

  /** What a supplier bills for sticks; null where none of them has a price. */
  private static @Nullable Money billed(SupplierPart part) {
    return part.lines().stream()
        .map(BuyLine::billed)
        .filter(Objects::nonNull)
        .reduce(Money::plus)
        .orElse(null);
  }

  private void fromStock() {
    List<StockLine> lines =
        Stream.of(paper.boughtBefore(), paper.onHand(), paper.rack())
            .flatMap(List::stream)
            .toList();
    if (lines.isEmpty()) {
      return;
    }
    if (shortening.other() == 0) {
      page.blank();
      page.text(
          "From stock: "
              + Phrases.sticks(lines.stream().mapToLong(StockLine::sticks).sum())
              + " on hand or on the rack (--all)",
          0,
          2);
      return;
    }
    page.heading(
        paper.boughtBefore().isEmpty()
            ? "From stock on hand and the rack"
            : "From what is bought already, on hand and the rack");
    boolean worth = lines.stream().anyMatch(line -> line.worth() != null);
    Table table =
        new Table(page)
            .column("Material", Kind.NAME)
            .column("Take", Kind.NAME)
            .column("Length", Kind.NUMBER)
            .column("Sticks", Kind.NUMBER)
            .columnIf(worth, "Worth today", Kind.NUMBER);
    int shown = Shortening.shown(lines.size(), shortening.other());
    for (StockLine line : lines.subList(0, shown)) {
      List<String> cells = new ArrayList<>();
      cells.add(shortening.material(line.material(), line.name()));
      cells.add(Phrases.source(line.supply()));
      cells.add(page.length(line.supply().length()));
      cells.add(MoneyStyle.grouped(line.sticks()));
      if (worth) {
        cells.add(line.worth() == null ? "" : money.print(line.worth()));
      }
      table.row(cells);
    }
    if (shown < lines.size()) {
      table.note(
          "and " + Phrases.count(lines.size() - shown, "more line", "more lines") + ": --all");
    }
    table.print(2);
  }

  /** Shown only where the invoices are not all that the plan costs. */
  private void cost() {
    MoneyFigures figures = paper.money();
    if (figures == null || figures.billed().equals(figures.cost())) {
      return;
    }
    String bought =
        figures.billed().equals(figures.cash())
            ? money.print(figures.billed()) + " on invoices"
            : money.print(figures.billed())
                + " on invoices ("
                + Phrases.unrounded(figures.cash(), money)
                + " before rounding)";
    page.text(
        figures.onHand().isZero()
            ? "Cost: " + bought + "."
            : "Cost: "
                + bought
                + " and "
                + Phrases.unrounded(figures.onHand(), money)
                + " for sticks on hand at today's price, "
                + Phrases.unrounded(figures.cost(), money)
                + " in all.",
        0,
        2);
  }
}
