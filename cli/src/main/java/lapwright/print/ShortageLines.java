package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.Shortage;
import lapwright.measure.Length;
import lapwright.shop.Need;

/** Why materials cannot be planned, line by line. */
final class ShortageLines {
  private final Page page;

  ShortageLines(Page page) {
    this.page = page;
  }

  void write(List<Shortage> shortages) {
    for (Shortage shortage : shortages) {
      if (shortage instanceof Shortage.FitsNothing fits) {
        fitsNothing(fits);
      } else if (shortage instanceof Shortage.TooFewSticks few) {
        page.text(
            few.material()
                + ": "
                + (few.fewestKnown() ? "" : "at most ")
                + Phrases.sticks(few.sticks())
                + " of "
                + page.length(few.stockLength())
                + " more would do"
                + (few.fewestKnown() ? ", fewer would not." : "; fewer may."),
            2,
            4);
      } else if (shortage instanceof Shortage.TooFewOfLots few) {
        ofLots(few);
      } else if (shortage instanceof Shortage.NoSplit run) {
        page.text(
            run.material()
                + ", run "
                + run.mark()
                + " of "
                + run.job()
                + ": "
                + against(run, page.style())
                + ".",
            2,
            4);
      } else if (shortage instanceof Shortage.NoFullSticks none) {
        page.text(
            none.material()
                + ": no plan was found that leaves every full stick of its runs uncut (full-sticks)."
                + " To do: list more sticks of the shorter lengths, or leave full-sticks out.",
            2,
            4);
      } else if (shortage instanceof Shortage.SuppliesFallShort short1) {
        page.text(
            short1.material()
                + ": what can be had does not suffice, wherever its runs are joined and whatever"
                + " lot each job is given.",
            2,
            4);
      }
    }
  }

  private void ofLots(Shortage.TooFewOfLots few) {
    List<String> further = new ArrayList<>();
    for (Shortage.TooFewOfLots.OfMaker maker : few.further()) {
      further.add(
          Phrases.sticks(maker.sticks())
              + " of "
              + page.length(maker.stockLength())
              + (maker.supplier().isEmpty() ? " of one lot" : " of " + maker.supplier()));
    }
    page.text(
        few.material()
            + ": "
            + (few.fewestKnown() ? "" : "at most ")
            + Phrases.list(further)
            + " more would do, lots kept apart as it says"
            + (few.fewestKnown() ? "; fewer sticks would not." : "; fewer may.")
            + " Found by planning with as many more of each maker's longest as it takes.",
        2,
        4);
  }

  /** What stands against a run, by which rule, and the nearest change that would do. */
  static String against(Shortage.NoSplit run, Style style) {
    Length length = run.length();
    String advice =
        length == null ? run.advice() : run.advice().replace("{}", style.units().exact(length));
    return run.reason() + " (" + run.rule() + "). To do: " + advice;
  }

  private void fitsNothing(Shortage.FitsNothing fits) {
    List<String> pieces = new ArrayList<>();
    for (Need need : fits.needs()) {
      pieces.add(
          need.total()
              + " @ "
              + page.style().units().exact(need.length())
              + (need.mark().isEmpty() ? "" : " " + need.mark())
              + " of "
              + need.job());
    }
    page.text(
        fits.material()
            + ": no stick gives "
            + Phrases.list(pieces)
            + (fits.longestUsable().isZero()
                ? ". There is no stock that the saw takes."
                : ". The longest piece that one gives is "
                    + page.style().units().exact(fits.longestUsable())
                    + "."),
        2,
        4);
  }
}
