package lapwright.files.source;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the name that was probably meant. */
public final class Nearest {
  private Nearest() {}

  /**
   * The known name with the fewest letters inserted, left out, replaced or swapped (optimal string
   * alignment), if that is at most a third of its letters; the first of several. Null if none is
   * near.
   */
  public static @Nullable String to(String name, Collection<String> known) {
    String best = null;
    int least = Integer.MAX_VALUE;
    String lower = name.toLowerCase(Locale.ROOT);
    for (String candidate : known) {
      int most = Math.max(1, Math.max(candidate.length(), name.length()) / 3);
      if (Math.abs(candidate.length() - name.length()) > most) {
        continue;
      }
      int distance = distance(lower, candidate.toLowerCase(Locale.ROOT));
      if (distance <= most && distance < least) {
        least = distance;
        best = candidate;
      }
    }
    return best;
  }

  /** "Did you mean X?" or, when nothing is near, the other advice. */
  public static String advice(String name, Collection<String> known, String otherwise) {
    String near = to(name, known);
    return near == null ? otherwise : "Did you mean " + near + "?";
  }

  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        d[i][j] = Math.min(replaced, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
