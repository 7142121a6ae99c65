package lapwright.print;

import java.util.List;
import java.util.function.UnaryOperator;
import lapwright.Shortage;

/** That no plan is possible and what is missing, as text. */
public final class ShortageText {
  private ShortageText() {}

  /** Everything, however long: each line names what to change. */
  public static String render(List<Shortage> shortages, Style style) {
    return render(
        "No plan is possible, so nothing is planned. What is missing:",
        shortages,
        "Make a piece shorter or of several pieces, offer a longer stock length, or raise what can"
            + " be had of one.",
        style);
  }

  /** The same where nothing may be bought. */
  public static String renderFromStock(List<Shortage> shortages, Style style) {
    return render(
        "What is on hand and on the rack does not give all pieces, so nothing is planned. What is"
            + " missing:",
        shortages,
        "Buy it ('lapwright order FOLDER'), or name the jobs that are to be cut first (--job).",
        style);
  }

  /**
   * One run by itself whose rules no split keeps.
   *
   * @param inOptions says what is said of a file's fields of a command's options
   */
  public static String renderRun(
      Shortage.NoSplit run, Style style, UnaryOperator<String> inOptions) {
    Page page = new Page(style);
    page.strongText("No plan is possible: no split of the run keeps its rules.");
    page.text(inOptions.apply(ShortageLines.against(run, style)) + ".", 2, 4);
    return page.printed();
  }

  private static String render(String first, List<Shortage> shortages, String advice, Style style) {
    Page page = new Page(style);
    page.strongText(first);
    new ShortageLines(page).write(shortages);
    page.text(advice, 0, 0);
    page.explainSigns();
    return page.printed();
  }
}
