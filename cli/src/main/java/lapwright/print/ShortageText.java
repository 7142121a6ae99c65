package lapwright.print;

import java.util.List;
import lapwright.Shortage;

/** That no plan is possible and what is missing, as text. */
public final class ShortageText {
  private ShortageText() {}

  /** Everything, however long: each line names what to change. */
  public static String render(List<Shortage> shortages, Style style) {
    Page page = new Page(style);
    page.strongText("No plan is possible, so nothing is planned. What is missing:");
    new ShortageLines(page).write(shortages);
    page.text(
        "Make a piece shorter or of several pieces, offer a longer stock length, or raise what can"
            + " be had of one.",
        0,
        0);
    page.explainSigns();
    return page.printed();
  }
}
