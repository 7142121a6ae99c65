package lapwright.print;

import java.util.List;
import java.util.function.Predicate;
import lapwright.compare.LaterItems;
import lapwright.compare.LaterItems.ItemCount;
import lapwright.compare.LaterOrder;
import lapwright.compare.LaterOrder.PieceCount;
import lapwright.measure.MoneyStyle;
import lapwright.shop.ItemOrder;
import lapwright.shop.RunNeed;

/** What came after a saved order, as text: pieces and items that are added, and those too many. */
public final class LaterText {
  private LaterText() {}

  /**
   * Everything that is not as the saved order has it.
   *
   * @param concerned pieces that may be called too many
   */
  public static String render(
      LaterOrder later, LaterItems items, Predicate<PieceCount> concerned, Style style) {
    Page page = new Page(style);
    List<ItemCount> more =
        items.changed().stream().filter(one -> one.now() > one.placed()).toList();
    List<ItemOrder> owed = items.orders().stream().filter(order -> order.leftOver() < 0).toList();
    if (later.missing().isEmpty()
        && later.newRuns().isEmpty()
        && more.isEmpty()
        && owed.isEmpty()) {
      page.strongText("Nothing to buy: the saved order gives every piece that the firm jobs need.");
    } else {
      page.strongText("Added to the saved order, whose tickets stay as they are:");
      lines(page, later.missing());
      items(page, more);
      for (ItemOrder order : owed) {
        page.text(
            order.item()
                + ": "
                + MoneyStyle.grouped(-(long) order.leftOver())
                + " that could not be had before",
            2,
            4);
      }
      later.newRuns().forEach(run -> page.text(added(run), 2, 4));
    }
    List<ItemCount> fewer =
        items.changed().stream().filter(one -> one.now() < one.placed()).toList();
    if (!fewer.isEmpty()) {
      page.heading("Items that jobs do not need any more; they serve other jobs");
      items(page, fewer);
    }
    List<PieceCount> unneeded = later.unneeded().stream().filter(concerned).toList();
    if (!unneeded.isEmpty()) {
      page.heading("Attention: pieces on the saved tickets that nobody needs any more");
      lines(page, unneeded);
      page.text(
          "They stay planned. Where a ticket is not cut yet, tell the saw to leave them out; or"
              + " plan everything anew with --save --replace.",
          2,
          2);
    }
    page.explainSigns();
    return page.printed();
  }

  private static String added(RunNeed run) {
    String name = run.job() + " run " + run.run().mark();
    if (run.firstLine() == 1) {
      return name + ", all of it";
    }
    return name
        + (run.lines() == 1
            ? ", line " + run.firstLine()
            : ", lines " + run.firstLine() + " to " + run.lastLine());
  }

  private static void items(Page page, List<ItemCount> counts) {
    for (ItemCount count : counts) {
      page.text(
          count.job()
              + " "
              + count.item()
              + ": "
              + MoneyStyle.grouped(count.placed())
              + " to "
              + MoneyStyle.grouped(count.now()),
          2,
          4);
    }
  }

  private static void lines(Page page, List<PieceCount> pieces) {
    for (PieceCount piece : pieces) {
      page.text(
          piece.job()
              + (piece.mark().isEmpty() ? "" : " " + piece.mark())
              + ", "
              + page.style().units().exact(piece.length())
              + " of "
              + piece.material()
              + ": "
              + piece.placed()
              + " to "
              + piece.now(),
          2,
          4);
    }
  }
}
