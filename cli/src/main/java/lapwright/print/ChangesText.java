package lapwright.print;

import java.util.List;
import lapwright.compare.Change;

/** What has changed since a plan was saved, as text. */
public final class ChangesText {
  private ChangesText() {}

  /**
   * All changes, those that spoil the plan first.
   *
   * @param changes empty when nothing has changed
   */
  public static String render(List<Change> changes, Style style) {
    Page page = new Page(style);
    List<Change> spoiling = changes.stream().filter(change -> change.kind().spoilsPlan()).toList();
    List<Change> others = changes.stream().filter(change -> !change.kind().spoilsPlan()).toList();
    if (spoiling.isEmpty()) {
      page.strongText("The saved plan still fits the jobs and the stock.");
    } else {
      page.strongText(
          "The saved plan no longer fits: "
              + Phrases.count(spoiling.size(), "change", "changes")
              + " in the jobs or the stock. What was bought stays bought with 'lapwright order"
              + " FOLDER --more', which buys only what is missing; '--save --replace' plans"
              + " everything anew.");
      spoiling.forEach(change -> line(page, change));
    }
    if (!others.isEmpty()) {
      page.heading(
          "Prices have changed, so it may no longer cost the least or what it says ("
              + others.size()
              + ")");
      others.forEach(change -> line(page, change));
    }
    return page.printed();
  }

  private static void line(Page page, Change change) {
    page.text(
        change.material()
            + ", "
            + change.what()
            + ": planned "
            + change.planned()
            + ", now "
            + change.now(),
        2,
        4);
  }
}
