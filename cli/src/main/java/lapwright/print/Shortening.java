package lapwright.print;

import java.util.List;
import java.util.function.Function;

/**
 * How much of a paper's lists is shown, so that its answer does not scroll off the screen.
 *
 * @param ids true to call materials by their ids, which take one line, not by their names
 * @param main most rows of the list that the paper is for
 * @param other most rows of each other list; 0 tells only that there is one
 */
record Shortening(boolean ids, int main, int other) {
  static final Shortening NONE = new Shortening(false, Integer.MAX_VALUE, Integer.MAX_VALUE);

  private static final List<Integer> FEWER = List.of(Integer.MAX_VALUE, 8, 5, 3, 1, 0);

  /** The paper as a whole where that is asked for or fits, else with as much as fits. */
  static String fitting(Style style, Function<Shortening, Page> paper) {
    Page whole = paper.apply(NONE);
    if (style.all() || whole.size() <= style.lines()) {
      return whole.printed();
    }
    for (int other : FEWER) {
      Page page = paper.apply(new Shortening(true, Integer.MAX_VALUE, other));
      if (page.size() <= style.lines()) {
        return page.printed();
      }
    }
    int few = FEWER.get(FEWER.size() - 1);
    for (int main = style.lines(); main > 1; main--) {
      Page page = paper.apply(new Shortening(true, main, few));
      if (page.size() <= style.lines()) {
        return page.printed();
      }
    }
    return paper.apply(new Shortening(true, 1, few)).printed();
  }

  /** What a material is called. */
  String material(String id, String name) {
    return ids ? id : name;
  }

  /** Rows of a list of {@code size} that are shown: a single one more is not worth hiding. */
  static int shown(int size, int most) {
    return size <= most || size - most == 1 ? size : most;
  }
}
