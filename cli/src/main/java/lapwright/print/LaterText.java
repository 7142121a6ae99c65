package lapwright.print;

import java.util.List;
import java.util.function.Predicate;
import lapwright.compare.LaterOrder;
import lapwright.compare.LaterOrder.PieceCount;

/** What came after a saved order, as text: pieces that are added, and pieces too many. */
public final class LaterText {
  private LaterText() {}

  /**
   * Everything that is not as the saved order has it.
   *
   * @param concerned pieces that may be called too many
   */
  public static String render(LaterOrder later, Predicate<PieceCount> concerned, Style style) {
    Page page = new Page(style);
    if (later.missing().isEmpty() && later.newRuns().isEmpty()) {
      page.strongText("Nothing to buy: the saved order gives every piece that the firm jobs need.");
    } else {
      page.strongText("Added to the saved order, whose tickets stay as they are:");
      lines(page, later.missing());
      later
          .newRuns()
          .forEach(run -> page.text(run.job() + " run " + run.run().mark() + ", all of it", 2, 4));
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
